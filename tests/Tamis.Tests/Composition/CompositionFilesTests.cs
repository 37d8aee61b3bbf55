using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Tests.Composition;

public sealed class CompositionFilesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public CompositionFilesTests()
    {
        _folder.Write("sources.csv", "key,evidence,title\nlab,published,Our laboratory\nguess,practice,\"common practice, no source\"\n");
        _folder.Write("nutrients.csv", "tag,word,unit,derived\nFAT,fat,g,\nFIBTG,fibre,g,\nCHOCDF,total carbohydrate,g,\nCHOAVLDF,carbohydrate,g,CHOCDF - FIBTG\nNA,sodium,mg,\n");
        _folder.Write("foods.csv", "food,name,group,source\nLAB 1,Damson puree,Fruit,lab\nLAB 2,Rye crumb,Flour,lab\n");
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Load_EveryState_IsKeptApart()
    {
        var table = Load("""
            LAB 1,FAT,measured,1.5,,,,,lab,
            LAB 1,FIBTG,zero,0,,,,,lab,
            LAB 1,NA,below limit,,,5,,,lab,
            LAB 2,FAT,trace,,,,,,lab,
            LAB 2,FIBTG,estimated,3,2,5,,,lab,by analogy
            LAB 2,NA,assumed zero,0,,,,,guess,
            """);

        Assert.Equal((ContentState.Measured, 1.5), State("LAB 1", "FAT"));
        Assert.Equal((ContentState.Zero, 0), State("LAB 1", "FIBTG"));
        Assert.Equal((ContentState.BelowLimit, 2.5), State("LAB 1", "NA"));
        Assert.Equal(Interval.Between(0, 5), table.Content("LAB 1", "NA").Range);
        Assert.Equal((ContentState.Trace, 0), State("LAB 2", "FAT"));
        Assert.Equal((ContentState.Estimated, 3), State("LAB 2", "FIBTG"));
        Assert.Equal(Interval.Between(2, 5), table.Content("LAB 2", "FIBTG").Range);
        Assert.Equal((ContentState.AssumedZero, 0), State("LAB 2", "NA"));
        Assert.Equal(ContentState.Unknown, table.Content("LAB 1", "CHOCDF").State);

        (ContentState, double) State(string food, string tag) => (table.Content(food, tag).State, table.Content(food, tag).Per100Grams);
    }

    [Theory]
    [InlineData("0", ContentState.Zero)]
    [InlineData("tr", ContentState.Trace)]
    [InlineData("<0.1", ContentState.BelowLimit)]
    [InlineData("0.1", ContentState.Measured)]
    [InlineData("", ContentState.Unknown)]
    public void Load_BlankState_FollowsFromHowTheValueIsWritten(string value, ContentState expected) =>
        Assert.Equal(expected, Load($"LAB 1,FAT,,{value},,,,,lab,").Content("LAB 1", "FAT").State);

    [Fact]
    public void Load_FoodsThatDifferInLeadingZerosOnly_AreNamed()
    {
        _folder.Write("foods.csv", "food,name,source\nLAB 7,Damson puree,lab\nLAB 007,Rye crumb,lab\nlab 7,Butter,lab\n");

        Assert.Equal([3, 4], Assert.Throws<TableException>(() => Load("LAB 007,FAT,,1.5,,,,,lab,")).Problems.Select(problem => problem.Row));
    }

    [Fact]
    public void Load_FoodsThatCannotBeRead_AreNamedAndNotEveryContentOfThem()
    {
        _folder.Write("foods.csv", "food;name;edible_percent;source\nLAB 1;#N/A;120;labb\nLAB 2;Rye crumb;1;lab;beyond\n");

        var problems = Assert.Throws<TableException>(() => Load("LAB 1,FAT,,1.5,,,,,lab,\nLAB 2,FAT,,1.5,,,,,lab,\nLAB 1,NA,,lots,,,,,lab,")).Problems;

        Assert.Equal([("contents.csv", 4), ("foods.csv", 2), ("foods.csv", 2), ("foods.csv", 2), ("foods.csv", 3)], problems.Select(problem => (problem.File, problem.Row)).Order());
    }

    [Fact]
    public void Load_MeasuresWithSlips_AreNamedAllAtOnce()
    {
        _folder.Write("measures.csv", "food,amount,measure,grams,samples,source\nLAB 9,0,cup,none,2.5,lab\n");

        var problems = Assert.Throws<TableException>(() => Load("LAB 1,FAT,,1.5,,,,,lab,")).Problems;

        Assert.Equal(["amount", "food", "grams", "samples"], problems.Select(problem => problem.Column).Order());
        Assert.Equal("a number above 0", problems.First(problem => problem.Column == "amount").Expected);
    }

    [Fact]
    public void Find_ANameThatTwoFoodsShare_AsksForTheNumber()
    {
        _folder.Write("foods.csv", "food,name,source\nLAB 1,Damson puree,lab\nLAB 2,damson  puree,lab\nLAB 3,Rye crumb,lab\n");

        var table = Load("LAB 1,FAT,,1.5,,,,,lab,");

        Assert.Equal(["LAB 1", "LAB 2"], Assert.Throws<FoodNotFoundException>(() => table.Find("damson puree")).Nearest);
        Assert.Equal("LAB 3", table.Find("rye crumb").Id);
    }

    [Fact]
    public void Load_DerivedFromAnEstimate_IsAnEstimate()
    {
        var carbohydrate = Load("LAB 1,CHOCDF,measured,20,,,,,lab,\nLAB 1,FIBTG,estimated,2,,,,,lab,").Content("LAB 1", "CHOAVLDF");

        Assert.Equal((ContentState.Estimated, 18.0), (carbohydrate.State, carbohydrate.Per100Grams));
    }

    [Fact]
    public void Load_DerivedFromTwoSpreads_HasBoth()
    {
        var carbohydrate = Load("LAB 1,CHOCDF,measured,20,,,9,0.4,lab,\nLAB 1,FIBTG,measured,2,,,5,0.3,lab,").Content("LAB 1", "CHOAVLDF");

        Assert.Equal(0.5, carbohydrate.StandardDeviation!.Value, 9);
        Assert.Equal(5, carbohydrate.Samples);
    }

    [Fact]
    public void Load_DerivedColumnThatAFoodStates_IsAsStated() =>
        Assert.Equal(17, Load("LAB 1,CHOCDF,measured,20,,,,,lab,\nLAB 1,FIBTG,measured,2,,,,,lab,\nLAB 1,CHOAVLDF,measured,17,,,,,lab,").Content("LAB 1", "CHOAVLDF").Per100Grams);

    [Fact]
    public void Load_Semicolons_MayHaveADecimalComma()
    {
        _folder.Write("contents.csv", "food;tag;state;value;low;high;samples;standard_deviation;source;method\nLAB 1;FAT;measured;1,5;;;;;lab;\n");

        Assert.Equal(1.5, CompositionTable.Load(_folder.Path).Content("LAB 1", "FAT").Per100Grams);
    }

    [Fact]
    public void Load_BadCells_AreAllNamedAtOnce()
    {
        var error = Assert.Throws<TableException>(() => Load("""
            LAB 3,FAT,measured,1,,,,,lab,
            LAB 1,FATT,measured,1,,,,,lab,
            LAB 1,FAT,guessed,1,,,,,lab,
            LAB 1,FAT,measured,1;5,,,,,lab,
            LAB 1,FIBTG,measured,,,,,,lab,
            LAB 1,NA,zero,3,,,,,lab,
            LAB 2,FAT,measured,101,,,,,lab,
            LAB 2,FIBTG,measured,1,2,1,,,lab,
            LAB 2,CHOCDF,measured,1,,,,,labb,
            LAB 2,NA,measured,-1,,,,,lab,
            LAB 2,FAT,measured,3,,,2.5,,lab,
            """));

        Assert.Equal(
            [(2, "food"), (3, "tag"), (4, "state"), (5, "value"), (6, "value"), (7, "value"), (8, "value"), (9, "high"), (10, "source"), (11, "value"), (12, "samples"), (12, "tag")],
            error.Problems.Select(problem => (problem.Row, problem.Column)));
        Assert.All(error.Problems, problem => Assert.Equal("contents.csv", problem.File));
        Assert.Contains("LAB 1", error.Problems[0].Expected, StringComparison.Ordinal);
        Assert.Contains("FAT", error.Problems[1].Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Load_SeveralBadFiles_AreReportedTogether()
    {
        _folder.Write("nutrients.csv", "tag,word,unit,derived\nFAT,fat,g,FAT - FAT\n");
        _folder.Write("foods.csv", "food,name,source,edible_percent\nLAB 1,Damson puree,nobody,120\n");

        var error = Assert.Throws<TableException>(() => Load("LAB 1,FAT,measured,x,,,,,lab,"));

        Assert.Equal(["nutrients.csv", "foods.csv", "foods.csv", "contents.csv"], error.Problems.Select(problem => problem.File));
    }

    [Fact]
    public void Load_MissingFile_IsNamed()
    {
        var error = Assert.Throws<TableException>(() => CompositionTable.Load(_folder.Path));

        Assert.Equal("contents.csv", error.Problems.Single().File);
    }

    [Fact]
    public void Load_UnclosedQuote_IsNamedNotSwallowed()
    {
        var error = Assert.Throws<TableException>(() => Load("LAB 1,FAT,measured,1,,,,,lab,\n\"LAB 1,FIBTG,measured,1,,,,,lab,\nLAB 2,FAT,measured,1,,,,,lab,\n"));

        Assert.Equal("contents.csv", error.Problems.Single().File);
    }

    private CompositionTable Load(string contents)
    {
        _folder.Write("contents.csv", "food,tag,state,value,low,high,samples,standard_deviation,source,method\n" + contents + "\n");
        return CompositionTable.Load(_folder.Path);
    }
}
