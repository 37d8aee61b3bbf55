using Tamis.Formulas;

namespace Tamis.Tests.Formulas;

public class FormulaSheetTests
{
    private const string Trials = "trial,parent\nT1,\nT2,T1\nT3,T2\n";

    [Fact]
    public void Read_ComponentLeftBlank_IsAsInTheParentTrial()
    {
        var formulas = Kitchen.Formulas("component,line,way,step,T1,T2,T3\nshell,flour,,1,100 g,,\nshell,butter,,1,50 g,,\ngel,water,,1,10,12,\n", Trials);

        var shell = formulas[2].Find("shell")!;
        Assert.Equal("T1", shell.WrittenIn);
        Assert.Equal([100, 50], shell.Lines.Select(line => line.Quantity.Range.Middle));
        Assert.Equal("T2", formulas[2].Find("gel")!.WrittenIn);
    }

    [Fact]
    public void Read_BlankBesideFilledCells_IsRefusedAndNamesEachCell()
    {
        var problems = Kitchen.ProblemsOf(() => Kitchen.Formulas("component,line,way,step,T1,T2,T3\nshell,flour,,1,100 g,,90 g\nshell,butter,,1,50 g,40 g,\nshell,salt,,1,2,,\n", Trials));

        Assert.Equal([("T2", 2), ("T2", 4), ("T3", 3), ("T3", 4)], problems.Select(problem => (problem.Column, problem.Row)));
        Assert.All(problems, problem => Assert.Contains("write 0 or a quantity", problem.Expected, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_WithoutTrialsSheet_TakesTheColumnsThatReadAsQuantities()
    {
        var formulas = Kitchen.Formulas("Component,Line,First go,shelf,Notes\nshell,flour,100 g,top,sift\nshell,egg,2 eggs,cold,\n");

        Assert.Equal(["First go"], formulas.Select(formula => formula.Trial));
        Assert.Equal(["shelf"], FormulaSheet.UnreadColumns(Kitchen.Sheet("formula.csv", "component,line,First go,shelf\nshell,flour,100 g,top\n"), null));
    }

    [Fact]
    public void Read_YieldOfTheParent_IsNotInherited()
    {
        var formulas = Kitchen.Formulas("component,line,way,step,T1,T2,T3\nshell,flour,,1,100 g,,\nshell,,yield,2,96 g,,95\n", Trials);

        Assert.Equal([96, null, 95], formulas.Select(formula => formula.Find("shell")!.WeighedYield?.Quantity.Range.Middle));
    }

    [Fact]
    public void Read_ComponentMadeWithItself_IsRefused()
    {
        var problems = Kitchen.ProblemsOf(() => Kitchen.Formulas("component,line,T1\npaste,crumble,10 g\npaste,nut,10 g\ncrumble,paste,5 g\n"));

        Assert.Contains("itself", Assert.Single(problems).Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_EveryFaultAtOnce_NamesRowColumnAndWhatIsExpected()
    {
        var problems = Kitchen.ProblemsOf(() => Kitchen.Formulas(
            "component,line,way,step,T1\nshell,flour,,1,lots\nshell,butter,,1,12 %\nshell,trim,out,2,112 %\nshell,bowl,out,2,2 leaves\nshell,egg,,1,08. Dec\nshell,salt,,1,-2 g\n", "trial\nT1\n"));

        Assert.Equal([2, 3, 4, 5, 6, 7], problems.Select(problem => problem.Row));
        Assert.All(problems, problem => Assert.Equal("T1", problem.Column));
    }

    [Theory]
    [InlineData("component,line,way,step,T1\nshell,flour,sideways,1,10 g\n", "way")]
    [InlineData("component,line,way,step,T1\nshell,flour,,0,10 g\n", "step")]
    [InlineData("component,line,way,step,T1\n,flour,,1,10 g\n", "component")]
    [InlineData("component,line,way,step,T1\nshell,,,1,10 g\n", "line")]
    public void Read_FaultInAKitColumn_IsNamed(string sheet, string column) =>
        Assert.Equal(column, Assert.Single(Kitchen.ProblemsOf(() => Kitchen.Formulas(sheet))).Column);

    [Fact]
    public void Read_TrialWithoutAColumn_IsAskedFor() =>
        Assert.Equal("T3", Assert.Single(Kitchen.ProblemsOf(() => Kitchen.Formulas("component,line,T1,T2\nshell,flour,10 g,\n", Trials))).Column);
}
