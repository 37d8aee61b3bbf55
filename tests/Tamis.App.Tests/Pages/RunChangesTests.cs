using System.Text;
using Tamis.App.Pages;
using Tamis.Tables;

namespace Tamis.App.Tests.Pages;

public class RunChangesTests
{
    private const string Formula = "component,line,way,step,T1,T2\nshell,rye flour,,1,130 g,140 g\nshell,butter,,1,120 g,\nshell,butter,,1,5 g,\n";

    private static SheetCells Sheet(string text, string file = "formula.csv", string folder = "tart") =>
        SheetCells.Of(folder, SheetFile.Parse(file, Encoding.UTF8.GetBytes(text)));

    private static IReadOnlyList<CellChange> Cells(SheetCells before, SheetCells now) => RunChanges.Between(Run(before), Run(now)).Cells;

    private static LastRun Run(params SheetCells[] sheets) => new(sheets, new Dictionary<string, IReadOnlyDictionary<string, string>>());

    private static LastRun Run(string page, params (string Name, string Text)[] figures) =>
        new([], new Dictionary<string, IReadOnlyDictionary<string, string>> { [page] = figures.ToDictionary(figure => figure.Name, figure => figure.Text) });

    [Fact]
    public void Between_SameSheets_IsNothing() => Assert.True(RunChanges.Between(Run(Sheet(Formula)), Run(Sheet(Formula))).IsNothing);

    [Fact]
    public void Between_OneCell_SaysRowInWordsColumnWasAndNow() =>
        Assert.Equal([new CellChange("formula.csv", "shell, rye flour, 1, T1", "130 g", "135 g")], Cells(Sheet(Formula), Sheet(Formula.Replace("130 g", "135 g", StringComparison.Ordinal))));

    [Fact]
    public void Between_SecondRowOfTheSameWords_IsToldApart() =>
        Assert.Equal([new CellChange("formula.csv", "shell, butter, 1 (2), T1", "5 g", "6 g")], Cells(Sheet(Formula), Sheet(Formula.Replace("5 g", "6 g", StringComparison.Ordinal))));

    [Fact]
    public void Between_CellFilledAndCleared_SaysNothingStoodThere()
    {
        var filled = Sheet(Formula.Replace("120 g,\n", "120 g,110 g\n", StringComparison.Ordinal));
        Assert.Equal([new CellChange("formula.csv", "shell, butter, 1, T2", null, "110 g")], Cells(Sheet(Formula), filled));
        Assert.Equal([new CellChange("formula.csv", "shell, butter, 1, T2", "110 g", null)], Cells(filled, Sheet(Formula)));
    }

    [Fact]
    public void Between_RowInsertedAbove_IsOneRowAndNothingElse() =>
        Assert.Equal([new CellChange("formula.csv", "shell, salt, 1", null, "T1 2 g, T2 2 g")],
            Cells(Sheet(Formula), Sheet(Formula.Replace("shell,rye", "shell,salt,,1,2 g,2 g\nshell,rye", StringComparison.Ordinal))));

    [Fact]
    public void Between_NewTrial_IsOneColumn()
    {
        var more = Sheet("component,line,way,step,T1,T2,T3\nshell,rye flour,,1,130 g,140 g,150 g\nshell,butter,,1,120 g,,\nshell,butter,,1,5 g,,6 g\n");
        Assert.Equal([new CellChange("formula.csv", "column T3", null, "2 cells")], Cells(Sheet(Formula), more));
        Assert.Equal([new CellChange("formula.csv", "column T3", "2 cells", null)], Cells(more, Sheet(Formula)));
    }

    [Fact]
    public void Between_OtherDialectHeaderCaseAndOrderOfRows_IsNothing() =>
        Assert.Empty(Cells(Sheet(Formula), Sheet("Component;Line;Way;Step;T1;T2\r\nshell;butter;;1;120 g;\r\nshell;butter;;1;5 g;\r\nshell;rye flour;;1;130 g;140 g\r\n")));

    [Fact]
    public void Between_SheetsOfTwoDesserts_NamesTheDessert()
    {
        var cake = Sheet(Formula, folder: "cake");
        var changes = RunChanges.Between(Run(Sheet(Formula), cake), Run(Sheet(Formula.Replace("130 g", "131 g", StringComparison.Ordinal)), cake));
        Assert.Equal([new CellChange("formula.csv", "tart: shell, rye flour, 1, T1", "130 g", "131 g")], changes.Cells);
    }

    [Fact]
    public void Between_SheetNewOrGone_IsOneChange()
    {
        var trials = Sheet("trial\nT1\n", "trials.csv");
        Assert.Equal([new CellChange("trials.csv", "", null, "1 row")], RunChanges.Between(Run(), Run(trials)).Cells);
        Assert.Equal([new CellChange("trials.csv", "", "1 row", null)], RunChanges.Between(Run(trials), Run()).Cells);
    }

    [Fact]
    public void Between_Figures_SaysMovedNewAndGone() =>
        Assert.Equal(
            [new FigureChange("chef", "rye", "59 %", "60 %"), new FigureChange("chef", "salt", null, "1 %"), new FigureChange("chef", "bay", "2 %", null)],
            RunChanges.Between(Run("chef", ("rye", "59 %"), ("bay", "2 %")), Run("chef", ("rye", "60 %"), ("salt", "1 %"))).Figures);

    [Fact]
    public void Between_NewPage_HasNoFigureChanges() => Assert.Empty(RunChanges.Between(Run("chef"), Run("label", ("rye", "1"))).Figures);
}
