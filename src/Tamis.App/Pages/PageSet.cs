using Tamis.Notebooks;
using Tamis.Views;

namespace Tamis.App.Pages;

/// <summary>The pages of one run: those just made, and those that an earlier run made of notebooks that were not chosen this time.</summary>
internal sealed class PageSet
{
    /// <summary>The page that lists the others.</summary>
    public const string Index = "index.html";

    private readonly string? _earlier;
    private readonly IReadOnlyList<NotebookRun> _runs;
    private readonly Dictionary<string, Html> _contents;
    private readonly NotebookFile[] _notebooks;
    private readonly string[] _dessertFolders;
    private readonly Dictionary<string, DessertPages> _desserts;

    /// <summary>Puts the pages together.</summary>
    /// <param name="all">All notebooks there are, in order.</param>
    /// <param name="earlier">The folder with the pages of an earlier run to keep; null where all are made anew.</param>
    /// <param name="runs">The notebooks that were run.</param>
    public PageSet(IReadOnlyList<NotebookFile> all, string? earlier, IReadOnlyList<NotebookRun> runs)
    {
        (_earlier, _runs) = (earlier, runs);
        _contents = runs.ToDictionary(run => run.Notebook.Name, PageBuilder.Content);
        _notebooks = [.. all.Where(notebook => _contents.ContainsKey(notebook.Name) || Kept(notebook))];
        _dessertFolders = [.. runs.SelectMany(run => run.DessertFolders).Distinct().Where(Directory.Exists)];
        _desserts = _dessertFolders.ToDictionary(folder => folder, DessertPages.Of);
    }

    /// <summary>The whole page of a notebook.</summary>
    public string Page(NotebookRun run) => PageShell.Render(new(run.Notebook.Title, _contents[run.Notebook.Name])
    {
        Description = MarkdownView.ToText(run.Notebook.About),
        Running = Running(run.DessertFolders),
        Links = Links(run.Notebook.Name),
        IsSheet = run.Notebook.IsSheet && run.Failure is null,
    });

    /// <summary>The weighing sheets of every dessert that a notebook opened, by file name.</summary>
    public IEnumerable<(string FileName, string Text)> WeighingSheets() => _desserts.Values.SelectMany(dessert => dessert.Sheets)
        .Select(sheet => (sheet.FileName, PageShell.Render(sheet.Page with { Links = Links(sheet.FileName) })));

    /// <summary>The page that lists the others, what changed, and what must be mended.</summary>
    public string IndexPage(RunChanges? changes, LastRun now) => PageShell.Render(new("All pages", Pages.IndexPage.Content(
        Running(_dessertFolders), _notebooks, [.. _runs.Where(run => run.Failure is not null)], [.. _desserts.Values], changes, now))
    {
        Description = "All pages and what changed since the last run.",
        Running = Running(_dessertFolders),
        Links = Links(Index),
    });

    /// <summary>Takes over the pages of notebooks that were not chosen this time.</summary>
    public void KeepOthers(string building)
    {
        foreach (var notebook in _notebooks.Where(notebook => !_contents.ContainsKey(notebook.Name)))
            foreach (var ending in (string[])[".html", ".ipynb"])
                File.Copy(Path.Combine(_earlier!, notebook.Name + ending), Path.Combine(building, notebook.Name + ending));
        if (_earlier is null || !Directory.Exists(_earlier)) return;
        foreach (var sheet in Directory.EnumerateFiles(_earlier, DessertPages.Prefix + "*.html").Select(path => Path.GetFileName(path)))
            if (!File.Exists(Path.Combine(building, sheet))) File.Copy(Path.Combine(_earlier, sheet), Path.Combine(building, sheet));
    }

    /// <summary>What the next run will compare with; of a page or a sheet that could not be read it is what the last run left.</summary>
    public LastRun Remember(LastRun? before)
    {
        // Two stores may both be called store: then the folder above tells them apart.
        string[] folders = [.. _dessertFolders.Concat(_desserts.Values.Select(dessert => dessert.StoreFolder).OfType<string>()).Distinct()];
        var labels = folders.ToDictionary(folder => folder, folder => folders.Count(other => Path.GetFileName(other) == Path.GetFileName(folder)) == 1
            ? Path.GetFileName(folder) : $"{Path.GetFileName(folder)} of {Path.GetFileName(Path.GetDirectoryName(folder))}");
        SheetCells[] read = [.. folders.SelectMany(folder => SheetCells.Of(folder, labels[folder]))];
        string[] unreadable = [.. folders.SelectMany(folder => Directory.EnumerateFiles(folder, "*.csv").Select(path => Key(labels[folder], Path.GetFileName(path))))
            .Except(read.Select(sheet => Key(sheet.Folder, sheet.File)))];
        var sheets = read.Concat(before?.Sheets.Where(sheet => unreadable.Contains(Key(sheet.Folder, sheet.File)) || Missing(sheet)) ?? []);
        var figures = new SortedDictionary<string, IReadOnlyDictionary<string, string>>(StringComparer.Ordinal);
        foreach (var notebook in _notebooks)
        {
            var isFresh = _runs.Any(run => run.Notebook.Name == notebook.Name && run.Failure is null);
            if (isFresh) figures[notebook.Name] = PageFigures.Read(_contents[notebook.Name].Markup);
            else if (before is not null && before.Figures.TryGetValue(notebook.Name, out var old)) figures[notebook.Name] = old;
        }
        return new([.. sheets], figures);

        // Where not all notebooks ran, the sheets that only the others read are as the last run left them.
        bool Missing(SheetCells sheet) => _earlier is not null && !read.Any(other => other.Folder == sheet.Folder);
        static string Key(string folder, string file) => $"{folder}/{file}";
    }

    private bool Kept(NotebookFile notebook) => _earlier is not null && File.Exists(Path.Combine(_earlier, notebook.Name + ".html"));

    private NavLink[] Links(string current) =>
        [new("All pages", Index, current == Index), .. _notebooks.Select(notebook => new NavLink(notebook.ShortTitle, notebook.Name + ".html", notebook.Name == current))];

    // One dessert gives its name to the pages; several give none.
    private string Running(IEnumerable<string> dessertFolders) =>
        dessertFolders.Where(_desserts.ContainsKey).Select(folder => _desserts[folder].Name).ToArray() is [var only] ? only : "";
}
