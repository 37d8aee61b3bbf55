using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public sealed class KitchenVariationTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private Dessert Of(string facts, string measured)
    {
        Write("formula.csv", "component,line,way,step,T1\ncake,flour,,1,600\ncake,egg,,1,500\ncake,water,out,2,100\n");
        Write("trials.csv", "trial,parent,made_on\nT1,,2026-05-06; 2026-05-13; 2026-05-20\n");
        Write("dessert.csv", "key,value,trial,notes\nname,cake,,\n" + facts);
        if (measured.Length > 0) Write("measured.csv", "trial,make,component,what,value,unit,at,notes\n" + measured);
        return Dessert.Open(_folder.Path);
    }

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(_folder.Path, file), text);

    [Fact]
    public void Of_NothingStated_IsNothing() => Assert.False(KitchenVariations.Of(Of("", ""), "T1").IsStated);

    [Fact]
    public void Of_Stated_IsTakenWithItsCell()
    {
        var variation = KitchenVariations.Of(Of("weighing_g,2,,\ndrying_percent,10,,\npiece_drying_percent,5,,\nleft_behind_percent,1,,\nanalysis_percent,4,,\n", ""), "T1");

        Assert.Equal((2.0, 10.0, 5.0, 1.0, 4.0), (variation.WeighingGrams, variation.WaterLossPercent, variation.PieceWaterPercent, variation.LeftBehindPercent, variation.MeasurementPercent));
        Assert.Contains(variation.Origins, origin => origin.Contains("dessert.csv, row 3", StringComparison.Ordinal));
    }

    // By hand: yields of 990, 1000 and 1010 g have a standard deviation of 10 g; 100 g of water leave by the formula: 10 %.
    [Fact]
    public void Of_YieldsOfThreeMakes_GiveTheDrying()
    {
        var variation = KitchenVariations.Of(Of("", "T1,1,cake,yield,990,g,,\nT1,2,cake,yield,1000,g,,\nT1,3,cake,yield,1010,g,,\n"), "T1");

        Assert.Equal(10, variation.WaterLossPercent, 9);
        Assert.Contains("cake, 3 makes", Assert.Single(variation.Origins), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "T1,1,cake,yield,990,g,,\n")]
    [InlineData("", "T1,1,cake,yield,990,g,,\nT1,1,cake,yield,1010,g,,\n")]
    public void Of_OneMake_GivesNone(string facts, string measured) => Assert.False(KitchenVariations.Of(Of(facts, measured), "T1").IsStated);

    [Fact]
    public void Of_Unreadable_NamesEveryCell()
    {
        var problems = Assert.Throws<TableException>(() => KitchenVariations.Of(Of("weighing_g,two,,\ndrying_percent,-5,,\n", ""), "T1")).Problems;

        Assert.Equal([("dessert.csv", 3, "two"), ("dessert.csv", 4, "-5")], problems.Select(problem => (problem.File, problem.Row, problem.Found)));
    }
}
