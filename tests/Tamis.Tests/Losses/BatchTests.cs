using Tamis.Losses;

namespace Tamis.Tests.Losses;

public class BatchTests
{
    // Worked by hand from the rules of the sheets: 2 yolks of 17.4 g, then 1.5 % bowl, 12 % trim, 10 % water, each of what is there.
    [Fact]
    public void Of_LossesStepByStep_ActOnWhatIsThere()
    {
        var shell = Kitchen.Batch("component,line,way,step,T1\nshell,flour,,1,225 g\nshell,butter,,1,140\nshell,egg yolk,,2,2 yolks\nshell,bowl,out,2,1.5 %\nshell,trim,out,4,12 %\nshell,water,out,5,10 %\n").Find("shell")!;

        Assert.Equal(399.8, shell.MassInGrams, 9);
        Assert.Equal(399.8 * 0.985 * 0.88 * 0.9, shell.YieldGrams, 9);
        Assert.Equal([399.8 * 0.015, 399.8 * 0.985 * 0.12, 399.8 * 0.985 * 0.88 * 0.1], shell.Losses.Select(loss => loss.MassGrams).Select(grams => Math.Round(grams, 10)), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact]
    public void Of_WaterLost_TakesNothingElseAlong()
    {
        var gel = Kitchen.Batch("component,line,way,step,T1\ngel,milk,,1,100\ngel,water,out,2,20 g\n").Find("gel")!;

        Assert.Equal(68, gel.Out.Amount("WATER").Known, 9);
        Assert.Equal(3.5 / 80 * 100, gel.Out.Per100Grams("FAT")!.Value, 9);
    }

    [Fact]
    public void Of_LineStrainedOut_LeavesWithItsGap()
    {
        var mousse = Kitchen.Batch("component,line,way,step,T1\nmousse,milk,,1,200\nmousse,powder,,1,5\nmousse,strained,out,1,100 % of powder\n").Find("mousse")!;

        Assert.Equal(200, mousse.YieldGrams, 9);
        Assert.Equal(1, mousse.Out.Amount("FAT").CoveredShare);
    }

    [Fact]
    public void Of_IngredientWithoutFigures_IsAGapInCoverageAndNeverZero()
    {
        var mousse = Kitchen.Batch("component,line,T1\nmousse,milk,75 g\nmousse,powder,25 g\n").Find("mousse")!;

        Assert.Equal(0.75, mousse.Out.Amount("FAT").CoveredShare);
        Assert.Null(mousse.Out.Per100Grams("FAT"));
        Assert.Equal(2.625, mousse.Out.Amount("FAT").Known, 9);
    }

    [Fact]
    public void Of_PieceWithoutAMass_LeavesTheComponentUnknownAndSaysWhy()
    {
        var batch = Kitchen.Batch("component,line,T1\ncream,milk,2 jugs\nshell,flour,100 g\n");

        Assert.Null(batch.Find("cream"));
        Assert.Null(batch.Whole);
        Assert.Equal(100, batch.Find("shell")!.YieldGrams);
        Assert.Equal((2, "T1"), (Assert.Single(batch.Gaps).Row, batch.Gaps[0].Column));
    }

    [Fact]
    public void Of_Rest_IsAllThatIsLeftOfThatComponent()
    {
        var batch = Kitchen.Batch("component,line,way,step,T1\npaste,sugar,,1,100 g\npaste,bowl,out,1,10 g\nbase,paste,,1,30 g\ntop,paste,,1,rest\n");

        Assert.Equal(60, batch.Find("top")!.MassInGrams, 9);
        Assert.Equal(90, batch.UsedGrams("paste"), 9);
        Assert.Equal(["base", "top"], batch.Placed.Select(component => component.Name));
    }

    [Theory]
    [InlineData("paste,sugar,,1,100 g\nbase,paste,,1,130 g\ntop,paste,,1,rest\n", "something left of paste")]
    [InlineData("shell,flour,,1,rest\n", "rest is for what is left of a component")]
    [InlineData("shell,flour,,1,100\nshell,water,out,1,8 % of rye\n", "a line of shell")]
    [InlineData("shell,flour,,1,100\nshell,milk,,2,10\nshell,water,out,1,8 % of milk\n", "comes later")]
    [InlineData("shell,flour,,1,100\nshell,trim,out,1,120 g\n", "at most the 100 g")]
    [InlineData("shell,sugar,,1,100\nshell,water,out,1,10 %\n", "no more water leaving shell")]
    [InlineData("cream,egg yolk,,1,3 eggs\n", "yolk")]
    [InlineData("flour,sugar,,1,100\nshell,flour,,1,10 g\n", "one name for one thing")]
    public void Of_Impossible_IsRefusedInWords(string rows, string expected)
    {
        var problems = Kitchen.ProblemsOf(() => Kitchen.Batch("component,line,way,step,T1\n" + rows));

        Assert.Contains(problems, problem => problem.Expected.Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_WeighedYield_ShowsWhatTheLossesLeaveUnexplained()
    {
        var cake = Kitchen.Batch("component,line,way,step,T1\ncake,flour,,1,100\ncake,water,out,2,5 %\ncake,,yield,2,93 g\n").Find("cake")!;

        Assert.Equal(2, cake.UnexplainedGrams!.Value, 9);
        Assert.Equal(95, cake.YieldGrams, 9);
    }
}
