using Tamis.Notebooks;
using Tamis.Views;

namespace Tamis.App.Pages;

/// <summary>The content of the page that lists the others.</summary>
internal static class IndexPage
{
    // More than this is no news but another dessert.
    private const int MostChanges = 40;

    /// <summary>The list of pages, what changed since the last run, what must be mended, and the sheets that were read.</summary>
    public static Html Content(string dessert, IReadOnlyList<NotebookFile> notebooks, IReadOnlyList<NotebookRun> failed, IReadOnlyList<DessertPages> desserts, RunChanges? changes, LastRun now) => Html.Of($"""
        <h1>{(dessert.Length == 0 ? "All pages" : dessert)}</h1>
        {LookAt(failed)}<section>
        <h2>Pages</h2>
        {IndexParts.PageList(notebooks.Select(notebook => new PageLink(notebook.Title, notebook.Name + ".html", MarkdownView.RenderSentence(notebook.About))))}</section>
        {Weighing(desserts)}<section>
        <h2>What changed since the last run</h2>
        {Changes(changes, notebooks)}</section>
        <section>
        <h2>Sheets that were read</h2>
        {Sheets(now)}</section>

        """);

    private static Html Weighing(IReadOnlyList<DessertPages> desserts) => desserts.All(dessert => dessert.Sheets.Count == 0) ? Html.Empty : Html.Of($"""
        <section>
        <h2>Weighing sheets, for paper</h2>
        {desserts.Select(dessert => dessert.Links())}</section>

        """);

    private static Html LookAt(IReadOnlyList<NotebookRun> failed) => failed is [] ? Html.Empty : Html.Of($"""
        <section>
        <h2>Look at before you go on</h2>
        {failed.Select(run => Html.Of($"<p><a href=\"{run.Notebook.Name}.html\">{run.Notebook.Title}</a> could not be made.</p>\n{PageBuilder.Stop(run.Failure!)}"))}</section>

        """);

    private static Html Changes(RunChanges? changes, IReadOnlyList<NotebookFile> notebooks)
    {
        if (changes is null) return Html.Of($"<p>These are the first pages here; there is nothing yet to compare them with.</p>\n");
        if (changes.IsNothing) return Html.Of($"<p>Nothing: every cell and every figure is as it was.</p>\n");
        MovedFigure[] moved = [.. changes.Figures.Take(MostChanges).Select(figure => new MovedFigure(Title(figure) + figure.Name, figure.Page + ".html", figure.Was, figure.Now))];
        ChangedCell[] cells = [.. changes.Cells.Take(MostChanges).Select(cell => new ChangedCell(cell.Sheet, cell.Place, cell.Was, cell.Now, changes.Cells.Count == 1 ? moved : []))];
        // Which of several cells moved a figure is not known, and not guessed.
        if (cells.Length != 1 && moved.Length > 0) cells = [.. cells, new(cells.Length == 0 ? "no sheet" : "all of these together", "", null, null, moved)];
        var more = Math.Max(0, changes.Cells.Count - MostChanges) + Math.Max(0, changes.Figures.Count - MostChanges);
        return IndexParts.ChangedSince(cells) + (more == 0 ? Html.Empty : Html.Of($"<p class=\"small\">And {more} more.</p>\n"));

        string Title(FigureChange figure) => notebooks.FirstOrDefault(notebook => notebook.Name == figure.Page) is { } notebook ? notebook.ShortTitle + ": " : "";
    }

    private static Html Sheets(LastRun now) => now.Sheets is []
        ? Html.Of($"<p class=\"small\">None.</p>\n")
        : Html.Join(now.Sheets.GroupBy(sheet => sheet.Folder).Select(folder =>
            Html.Of($"<p class=\"small\">{folder.Key}: {string.Join(", ", folder.Select(sheet => Path.GetFileNameWithoutExtension(sheet.File)))}.</p>\n")));
}
