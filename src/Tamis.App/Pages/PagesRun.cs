using System.Text;
using Tamis.Notebooks;
using Tamis.Views;

namespace Tamis.App.Pages;

/// <summary>Makes the pages: runs the notebooks, writes what they showed, and compares with the last run.</summary>
internal sealed class PagesRun(PagesRequest request, IRunReport report)
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly List<NotebookRun> _runs = [];

    /// <summary>Runs all of it; the output folder is replaced at the end or left as it was.</summary>
    /// <exception cref="UserProblem">The request names something that is not there.</exception>
    public async Task<PagesResult> RunAsync()
    {
        var found = NotebookSet.In(request.NotebooksFolder);
        var all = request is { Dessert: not null, Notebooks: [] } ? found.ForAnyDessert : found;
        var chosen = all.Choose(request.Notebooks);
        if (request.Dessert is { } dessert && !Directory.Exists(dessert)) throw new UserProblem($"There is no folder {dessert}; give --dessert a folder with a formula.csv in it.");
        using var output = OutputFolder.Begin(request.Out, LastRun.FileName);
        var before = LastRun.Read(output.Path);

        foreach (var notebook in chosen)
        {
            report.Start(notebook.Name, notebook.Cells.Count(cell => cell.IsCode));
            var run = await NotebookRunner.RunAsync(notebook, new() { DessertFolder = request.Dessert, OnCell = (cell, _) => report.Cell(notebook.Name, cell) }).ConfigureAwait(false);
            report.End(notebook.Name, run.Failure);
            _runs.Add(run);
        }

        var pages = new PageSet(all.Notebooks, chosen.Count == all.Notebooks.Count ? null : output.Path, _runs);
        foreach (var run in _runs)
        {
            Write(output, run.Notebook.Name + ".ipynb", NotebookFormat.ToText(run.Notebook));
            Write(output, run.Notebook.Name + ".html", pages.Page(run));
        }
        foreach (var (name, text) in pages.WeighingSheets()) Write(output, name, text);
        pages.KeepOthers(output.Building);
        var now = pages.Remember(before);
        var changes = before is null ? null : RunChanges.Between(before, now);
        Write(output, PageSet.Index, pages.IndexPage(changes, now));
        now.Write(output.Building);
        output.Finish();

        NotebookProblem[] failed = [.. _runs.Where(run => run.Failure is not null).Select(run => new NotebookProblem(run.Notebook.Name + ".ipynb", run.Notebook.Title, run.Failure!))];
        return new(Path.Combine(output.Path, PageSet.Index), failed, changes);
    }

    private static void Write(OutputFolder output, string name, string text) => File.WriteAllText(Path.Combine(output.Building, name), text, Utf8);
}
