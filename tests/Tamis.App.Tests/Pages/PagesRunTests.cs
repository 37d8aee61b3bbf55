using Tamis.App.Pages;
using Tamis.Notebooks;

namespace Tamis.App.Tests.Pages;

/// <summary>Whole runs, with small notebooks of their own and the real kernel.</summary>
public class PagesRunTests
{
    private const string Setup = """
        #r "../src/Tamis.Notebooks/bin/Debug/net10.0/Tamis.dll"
        #r "../src/Tamis.Notebooks/bin/Debug/net10.0/Tamis.Views.dll"
        #r "../src/Tamis.Notebooks/bin/Debug/net10.0/Tamis.Notebooks.dll"
        using Tamis;
        using Tamis.Tables;
        using Tamis.Views;
        using Tamis.Notebooks;
        Notebook.Init()
        """;

    private const string Masses = """
        var sheet = SheetFile.Read(System.IO.Path.Combine(Notebook.Folder("../tart"), "formula.csv"));
        new DataTable("Masses", [Column.Words("line"), Column.Words("T1")],
            [.. sheet.Rows.Select(row => new Row(row["line"], ((Cell)row["T1"]).Tracked(row["line"])))]).ToHtml()
        """;

    private sealed class Silent : IRunReport
    {
        public void Start(string notebook, int cells)
        {
        }

        public void Cell(string notebook, int cell)
        {
        }

        public void End(string notebook, CellFailure? failure)
        {
        }
    }

    /// <summary>A folder with a dessert, a notebook that reads it and one that does not.</summary>
    private static ScratchFolder Kitchen()
    {
        var scratch = new ScratchFolder();
        scratch.Write("tart/formula.csv", "component,line,T1\nshell,rye flour,130 g\nshell,<img src=x onerror=alert(1)>,20 g\n");
        Notebook(scratch, "01-masses", "# Masses\n\nWhat is in it.", Setup, "## All of it", Masses);
        Notebook(scratch, "02-lesson", "# Lesson", Setup, "Console.WriteLine(6 * 7);");
        return scratch;
    }

    private static void Notebook(ScratchFolder scratch, string name, params string[] cells) => scratch.Write($"notebooks/{name}.ipynb", NotebookFormat.ToText(new()
    {
        Name = name,
        Folder = scratch["notebooks"],
        Cells = [.. cells.Select((text, index) => new NotebookCell { Id = $"c{index}", IsCode = text[0] != '#' || text == Setup, Text = text })],
    }));

    private static Task<PagesResult> Run(ScratchFolder scratch, Func<PagesRequest, PagesRequest>? change = null)
    {
        var request = new PagesRequest(scratch["notebooks"], scratch["pages"]);
        return new PagesRun(change is null ? request : change(request), new Silent()).RunAsync();
    }

    private static string Page(ScratchFolder scratch, string name) => File.ReadAllText(scratch[$"pages/{name}"]);

    [Fact]
    public async Task Run_TwoNotebooks_WritesPagesNotebooksAndIndex()
    {
        using var scratch = Kitchen();
        var result = await Run(scratch);
        Assert.Empty(result.Failed);
        Assert.Null(result.Changes);
        Assert.Equal(["01-masses.html", "01-masses.ipynb", "02-lesson.html", "02-lesson.ipynb", "index.html", "last-run.json", "weighing-tart-t1.html"],
            Directory.EnumerateFiles(scratch["pages"]).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("130 g", Page(scratch, "01-masses.html"), StringComparison.Ordinal);
        Assert.Contains("<a href=\"01-masses.html\">Masses</a><p>What is in it.</p>", Page(scratch, "index.html"), StringComparison.Ordinal);
        Assert.Contains("Notebook.Init()", Page(scratch, "01-masses.ipynb"), StringComparison.Ordinal);
        Assert.DoesNotContain("Notebook.Init()", Page(scratch, "01-masses.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_MarkupInASheet_IsTextOnEveryPage()
    {
        using var scratch = Kitchen();
        await Run(scratch);
        File.WriteAllText(scratch["tart/formula.csv"], File.ReadAllText(scratch["tart/formula.csv"]).Replace("20 g", "21 g", StringComparison.Ordinal));
        await Run(scratch);
        foreach (var page in (string[])["01-masses.html", "index.html"])
        {
            Assert.DoesNotContain("<img src=x", Page(scratch, page), StringComparison.Ordinal);
            Assert.Contains("&lt;img src=x", Page(scratch, page), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Run_CellOfASheetChanged_IsSaidWithTheFigureThatMoved()
    {
        using var scratch = Kitchen();
        await Run(scratch);
        File.WriteAllText(scratch["tart/formula.csv"], File.ReadAllText(scratch["tart/formula.csv"]).Replace("130 g", "135 g", StringComparison.Ordinal));
        var changes = (await Run(scratch)).Changes!;
        Assert.Equal([new CellChange("formula.csv", "shell, rye flour, T1", "130 g", "135 g")], changes.Cells);
        Assert.Equal([new FigureChange("01-masses", "rye flour", "130 g", "135 g")], changes.Figures);
        Assert.Contains("<span class=\"was\">130 g</span> <span class=\"now\">135 g</span>", Page(scratch, "index.html"), StringComparison.Ordinal);
        Assert.True((await Run(scratch)).Changes!.IsNothing);
    }

    [Fact]
    public async Task Run_BadSheet_StopsThePageThatUsesItAndNoOther()
    {
        using var scratch = Kitchen();
        await Run(scratch);
        scratch.Write("tart/formula.csv", "component,line,T1\nshell,rye flour,130 g,7,8\n");
        var result = await Run(scratch);
        var failed = Assert.Single(result.Failed);
        Assert.Equal(("01-masses.ipynb", 2, 1), (failed.Notebook, failed.Failure.Cell, failed.Failure.Line));
        Assert.Contains("formula.csv, row 2", failed.Failure.Message, StringComparison.Ordinal);
        Assert.Contains("formula.csv, row 2", Page(scratch, "01-masses.html"), StringComparison.Ordinal);
        Assert.Contains("formula.csv, row 2", Page(scratch, "index.html"), StringComparison.Ordinal);
        Assert.Contains("42", Page(scratch, "02-lesson.html"), StringComparison.Ordinal);
        Assert.True(result.Changes!.IsNothing);
    }

    [Fact]
    public async Task Run_SomeNotebooks_KeepsTheOtherPages()
    {
        using var scratch = Kitchen();
        await Run(scratch);
        var kept = Page(scratch, "02-lesson.html");
        var result = await Run(scratch, request => request with { Notebooks = ["01"] });
        Assert.Equal(kept, Page(scratch, "02-lesson.html"));
        Assert.Contains("02-lesson.html", Page(scratch, "index.html"), StringComparison.Ordinal);
        Assert.True(result.Changes!.IsNothing);
    }

    [Fact]
    public async Task Run_OtherDessertFolder_IsReadByEveryNotebook()
    {
        using var scratch = Kitchen();
        scratch.Write("elsewhere/cake/formula.csv", "component;line;T1\nbase;spelt;90 g\n");
        await Run(scratch, request => request with { Dessert = scratch["elsewhere/cake"] });
        Assert.Contains("spelt", Page(scratch, "01-masses.html"), StringComparison.Ordinal);
        Assert.DoesNotContain("rye flour", Page(scratch, "01-masses.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Twice_WritesTheSameBytes()
    {
        using var scratch = Kitchen();
        await Run(scratch);
        await Run(scratch, request => request with { Out = scratch["again"] });
        foreach (var path in Directory.EnumerateFiles(scratch["pages"]))
            Assert.Equal(File.ReadAllBytes(path), File.ReadAllBytes(Path.Combine(scratch["again"], Path.GetFileName(path))));
    }

    [Fact]
    public async Task Run_AnyPage_NamesNoPathOfTheMachine()
    {
        using var scratch = Kitchen();
        Notebook(scratch, "03-broken", "# Broken", Setup, "System.IO.File.ReadAllText(\"nowhere.csv\")");
        await Run(scratch);
        foreach (var path in Directory.EnumerateFiles(scratch["pages"]))
            Assert.DoesNotContain(scratch.Path, File.ReadAllText(path), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("01-mases", "No notebook is called '01-mases'; near ones: 01-masses")]
    [InlineData("99", "No notebook is called '99'")]
    public async Task Run_UnknownNotebook_NamesTheNearOnes(string name, string sentence)
    {
        using var scratch = Kitchen();
        var problem = await Assert.ThrowsAsync<UserProblem>(() => Run(scratch, request => request with { Notebooks = [name] }));
        Assert.StartsWith(sentence, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_MissingDessertFolder_IsSaidBeforeAnythingRuns()
    {
        using var scratch = Kitchen();
        var problem = await Assert.ThrowsAsync<UserProblem>(() => Run(scratch, request => request with { Dessert = scratch["no-such"] }));
        Assert.Contains("no-such", problem.Message, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch["pages"]));
    }
}
