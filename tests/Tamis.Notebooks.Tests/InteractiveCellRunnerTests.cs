namespace Tamis.Notebooks.Tests;

/// <summary>The kernel itself, as the notebooks need it.</summary>
public class InteractiveCellRunnerTests
{
    private static Task<NotebookRun> Run(params string[] cells) => NotebookRunner.RunAsync(Sketch.Notebook(cells), new());

    [Fact]
    public async Task Run_LaterCell_SeesWhatEarlierOnesDefined()
    {
        var run = await Run("var rye = 130;", "# Text", "rye + 5");
        Assert.Null(run.Failure);
        Assert.Equal("135", Sketch.PlainText(run));
        Assert.Equal([1, null, 2], run.Notebook.Cells.Select(cell => cell.Number));
    }

    [Fact]
    public async Task Run_ConsoleDisplayAndResult_StandInTheOrderOfTheCell()
    {
        var run = await Run("Console.Write(\"one\"); display(\"two\"); Console.WriteLine(\"three\"); 4");
        Assert.Equal("one|two|three|4", Sketch.PlainText(run));
    }

    [Fact]
    public async Task Run_UpdatedDisplay_ShowsBothInOrder()
    {
        var run = await Run("var shown = display(\"before\"); shown.Update(\"now\");");
        Assert.Equal("before|now", Sketch.PlainText(run));
    }

    // The guard of the one private field that the runner reads: without it no line is known.
    [Theory]
    [InlineData("var a = 1;\nint Deep(int n) => n == 0 ? throw new InvalidOperationException(\"no rest\") : Deep(n - 1);\n\nDeep(3);", 2)]
    [InlineData("var a = 1;\n\nthrow new InvalidOperationException(\"no rest\");", 3)]
    [InlineData("var a = 1;\n\nawait Task.Delay(1);\nthrow new InvalidOperationException(\"no rest\");", 4)]
    public async Task Run_FailingCell_NamesCellLineAndMessage(string code, int line)
    {
        var run = await Run("1", code, "3");
        Assert.Equal(new CellFailure(2, line, "InvalidOperationException", "no rest"), run.Failure);
        Assert.Empty(run.Notebook.Cells[2].Outputs);
    }

    [Fact]
    public async Task Run_CellThatDoesNotCompile_NamesCellLineAndMessageWithoutPath()
    {
        var run = await Run("1", "var a = 1;\nvar b = c;");
        Assert.Equal("cell 2, line 2", run.Failure!.Where);
        Assert.Equal("error CS0103: The name 'c' does not exist in the current context", run.Failure.Message);
    }

    [Fact]
    public async Task Run_ErrorInAFunctionOfAnEarlierCell_NamesTheLineOfTheCellThatFailed()
    {
        var run = await Run("int Half(int n) =>\n  throw new InvalidOperationException(\"odd\");", "\n\nHalf(3)");
        Assert.Equal("cell 2, line 3", run.Failure!.Where);
    }

    [Fact]
    public async Task Run_ReferenceToTheKitInAnotherConfiguration_UsesTheCopyThatRuns()
    {
        var run = await Run("#r \"../nowhere/bin/Other/Tamis.dll\"\nusing Tamis;", "250.Grams.ToString()");
        Assert.Null(run.Failure);
        Assert.Equal("250 g", Sketch.PlainText(run));
    }

    [Fact]
    public async Task Run_SameNotebookTwice_GivesTheSameText()
    {
        string[] cells = ["# A", "new { Name = \"rye\", Grams = 135.5 }", "new[] { 1, 2, 3 }", "Console.WriteLine(\"done\");"];
        var first = NotebookFormat.ToText((await Run(cells)).Notebook);
        Assert.Equal(first, NotebookFormat.ToText((await Run(cells)).Notebook));
    }

    [Fact]
    public async Task Run_TwoNotebooks_ShareNoVariables()
    {
        await Run("var rye = 130;");
        var run = await Run("rye");
        Assert.Contains("'rye' does not exist", run.Failure!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_MessageWithThePathOfTheNotebook_SaysItFromTheNotebook()
    {
        var run = await Run("System.IO.File.ReadAllText(\"no-such.csv\")");
        Assert.DoesNotContain(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar), run.Failure!.Message, StringComparison.Ordinal);
        Assert.Contains("no-such.csv", run.Failure.Message, StringComparison.Ordinal);
    }
}
