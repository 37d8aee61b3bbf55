using Spectre.Console;
using Tamis.Notebooks;

namespace Tamis.App.Pages;

/// <summary>Is told how far a run has come.</summary>
internal interface IRunReport
{
    /// <summary>A notebook begins.</summary>
    void Start(string notebook, int cells);

    /// <summary>A cell begins, counted from 1.</summary>
    void Cell(string notebook, int cell);

    /// <summary>A notebook has ended, well or not.</summary>
    void End(string notebook, CellFailure? failure);
}

/// <summary>Says a line a notebook: for a file, a pipe, or a log.</summary>
internal sealed class PlainReport(TextWriter writer) : IRunReport
{
    public void Start(string notebook, int cells) => writer.WriteLine($"{notebook} …");

    public void Cell(string notebook, int cell)
    {
    }

    public void End(string notebook, CellFailure? failure)
    {
        if (failure is not null) writer.WriteLine($"{notebook} stopped at {failure.Where}");
    }
}

/// <summary>Shows a bar a notebook in a terminal.</summary>
internal sealed class LiveReport(ProgressContext context) : IRunReport
{
    private readonly Dictionary<string, ProgressTask> _bars = [];

    public void Start(string notebook, int cells) => _bars[notebook] = context.AddTask(Markup.Escape(notebook), maxValue: Math.Max(1, cells));

    public void Cell(string notebook, int cell) => _bars[notebook].Value = cell - 1;

    public void End(string notebook, CellFailure? failure)
    {
        if (failure is null) _bars[notebook].Value = _bars[notebook].MaxValue;
        _bars[notebook].StopTask();
    }
}
