namespace Tamis.Notebooks.Tests;

/// <summary>What the runner does around the cells, with cells that need no kernel.</summary>
public class NotebookRunnerTests
{
    private sealed class ScriptedCells(Func<string, int, CancellationToken, Task<IReadOnlyList<CellOutput>>> run) : ICellRunner
    {
        public bool IsDisposed { get; private set; }

        public Task<IReadOnlyList<CellOutput>> RunAsync(string code, int cell, CancellationToken cancel) => run(code, cell, cancel);

        public void Dispose() => IsDisposed = true;
    }

    private static ScriptedCells Echo { get; } = new((code, _, _) => Task.FromResult<IReadOnlyList<CellOutput>>([new StreamOutput("stdout", code)]));

    [Theory]
    [InlineData("var a = 1;\n#!time\na", 2, "#!time")]
    [InlineData("  #!markdown x", 1, "#!markdown")]
    public async Task Run_MagicLine_IsRefusedByName(string code, int line, string word)
    {
        var run = await NotebookRunner.RunAsync(Sketch.Notebook(code), new(), _ => Echo);
        Assert.Equal(line, run.Failure!.Line);
        Assert.Contains($"'{word}'", run.Failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_CellThatNeverEnds_IsGivenUpAndNamed()
    {
        var endless = new ScriptedCells(async (_, _, _) =>
        {
            await Task.Delay(Timeout.Infinite, CancellationToken.None);
            return [];
        });
        var run = await NotebookRunner.RunAsync(Sketch.Notebook("1", "2"), new() { CellLimit = TimeSpan.FromMilliseconds(20) }, _ => endless);
        Assert.Equal(1, run.Failure!.Cell);
        Assert.Contains("still running", run.Failure.Message, StringComparison.Ordinal);
        Assert.True(endless.IsDisposed);
    }

    [Fact]
    public async Task Run_FailingCell_StopsTheCellsAfterIt()
    {
        List<string> ran = [];
        var cells = new ScriptedCells((code, cell, _) =>
        {
            ran.Add(code);
            return Task.FromResult<IReadOnlyList<CellOutput>>(code == "bad" ? [new ErrorOutput(new(cell, 1, "Error", "bad"))] : []);
        });
        await NotebookRunner.RunAsync(Sketch.Notebook("good", "bad", "never"), new(), _ => cells);
        Assert.Equal(["good", "bad"], ran);
    }

    [Fact]
    public async Task Run_AnyOutcome_LeavesTheWorkingDirectoryAsItWas()
    {
        using var scratch = new ScratchFolder();
        var before = Directory.GetCurrentDirectory();
        var there = "";
        var cells = new ScriptedCells((_, _, _) =>
        {
            there = Directory.GetCurrentDirectory();
            throw new InvalidOperationException("kernel gone");
        });
        await Assert.ThrowsAsync<InvalidOperationException>(() => NotebookRunner.RunAsync(Sketch.Notebook("1") with { Folder = scratch.Path }, new(), _ => cells));
        Assert.Equal(Path.GetFileName(scratch.Path), Path.GetFileName(there));
        Assert.Equal(before, Directory.GetCurrentDirectory());
    }

    [Fact]
    public async Task Folder_WithAndWithoutAChoice_IsTheChoiceOrTheNotebooksOwn()
    {
        List<string> folders = [];
        var cells = new ScriptedCells((_, _, _) =>
        {
            folders.Add(Notebook.Folder("own"));
            return Task.FromResult<IReadOnlyList<CellOutput>>([]);
        });
        using var scratch = new ScratchFolder();
        var own = await NotebookRunner.RunAsync(Sketch.Notebook("1"), new(), _ => cells);
        await NotebookRunner.RunAsync(Sketch.Notebook("1"), new() { DessertFolder = scratch.Path }, _ => cells);
        Assert.Equal([Path.Combine(AppContext.BaseDirectory, "own"), scratch.Path], folders);
        Assert.Equal([folders[0]], own.DessertFolders);
    }

    [Fact]
    public async Task OnCell_EachCodeCell_IsToldWithTheirNumber()
    {
        List<(int, int)> told = [];
        await NotebookRunner.RunAsync(Sketch.Notebook("# Text", "1", "2"), new() { OnCell = (cell, all) => told.Add((cell, all)) }, _ => Echo);
        Assert.Equal([(1, 2), (2, 2)], told);
    }
}
