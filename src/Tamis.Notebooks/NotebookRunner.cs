namespace Tamis.Notebooks;

/// <summary>Runs notebooks with no notebook server, one after another.</summary>
/// <remarks>The working directory and the kernel's formatters belong to the process, so two notebooks never run at once.</remarks>
public static class NotebookRunner
{
    private static readonly SemaphoreSlim OneAtATime = new(1);

    /// <summary>Runs a notebook's cells in order, with a kernel of its own, and stops at the first that fails.</summary>
    public static Task<NotebookRun> RunAsync(NotebookFile notebook, RunOptions options) =>
        RunAsync(notebook, options, static folder => new InteractiveCellRunner(folder));

    /// <summary>Runs a notebook's cells in order with a given runner of cells.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="options">How to run it.</param>
    /// <param name="start">Starts a runner of cells for a notebook's folder.</param>
    public static async Task<NotebookRun> RunAsync(NotebookFile notebook, RunOptions options, Func<string, ICellRunner> start)
    {
        await OneAtATime.WaitAsync().ConfigureAwait(false);
        var before = Directory.GetCurrentDirectory();
        try
        {
            // Cells name files from their notebook's folder, as Jupyter has them do.
            Directory.SetCurrentDirectory(notebook.Folder);
            var current = new CurrentRun(options.DessertFolder);
            CurrentRun.Now = current;
            using var runner = start(notebook.Folder);
            var cells = notebook.Cells.Select(cell => cell with { Outputs = [], Number = null }).ToArray();
            var failure = await RunCellsAsync(cells, runner, options).ConfigureAwait(false);
            return new(notebook with { Cells = cells }, failure, current.DessertFolders);
        }
        finally
        {
            CurrentRun.Now = null;
            Directory.SetCurrentDirectory(before);
            OneAtATime.Release();
        }
    }

    private static async Task<CellFailure?> RunCellsAsync(NotebookCell[] cells, ICellRunner runner, RunOptions options)
    {
        var total = cells.Count(cell => cell.IsCode);
        var number = 0;
        for (var i = 0; i < cells.Length; i++)
        {
            if (!cells[i].IsCode) continue;
            options.OnCell(++number, total);
            var outputs = await OutputsAsync(cells[i].Text, number, runner, options.CellLimit).ConfigureAwait(false);
            cells[i] = cells[i] with { Outputs = outputs, Number = number };
            if (outputs is [.., ErrorOutput error]) return error.Failure;
        }
        return null;
    }

    private static async Task<IReadOnlyList<CellOutput>> OutputsAsync(string code, int number, ICellRunner runner, TimeSpan limit)
    {
        if (MagicLine(code) is var (line, word))
            return [new ErrorOutput(new(number, line, "MagicCommand", $"found '{word}', expected C#: these notebooks use no line that begins with '#!'."))];
        using var stop = new CancellationTokenSource();
        // On a thread of its own, because a cell that never waits would never let go of ours.
        var running = Task.Run(() => runner.RunAsync(code, number, stop.Token));
        if (await Task.WhenAny(running, Task.Delay(limit)).ConfigureAwait(false) == running) return await running.ConfigureAwait(false);
        await stop.CancelAsync().ConfigureAwait(false);
        return [new ErrorOutput(new(number, null, nameof(TimeoutException), $"the cell was still running after {limit.TotalSeconds:0} s and was given up."))];
    }

    private static (int Line, string Word)? MagicLine(string code)
    {
        var lines = code.Split('\n');
        var index = Array.FindIndex(lines, line => line.TrimStart().StartsWith("#!", StringComparison.Ordinal));
        return index < 0 ? null : (index + 1, lines[index].Trim().Split(' ')[0]);
    }
}
