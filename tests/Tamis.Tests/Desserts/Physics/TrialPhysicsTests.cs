using Tamis.Desserts;
using Tamis.Physics;

namespace Tamis.Tests.Desserts.Physics;

public class TrialPhysicsTests
{
    private static readonly Dessert Tart = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));
    private static readonly Dessert Loaf = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "travel-loaf"));

    // Water activities of T1 by Norrish's equation, worked out by a second program from the same sheets.
    [Theory]
    [InlineData("almond cream", 0.912)]
    [InlineData("gel", 0.97)]
    [InlineData("ganache", 0.88)]
    public void WaterActivity_Demo_IsAsTheSecondProgramHasIt(string component, double expected) =>
        Assert.Equal(expected, Tart.Physics("T1").Of(component).WaterActivity.Predicted.Value, 0.006);

    [Theory]
    [InlineData("shell")]
    [InlineData("wafer")]
    public void WaterActivity_DryLayer_SaysThatAnIsothermIsWanted(string component)
    {
        var found = Tart.Physics("T1").Of(component).WaterActivity;
        Assert.False(found.Predicted.IsKnown);
        Assert.Contains(found.Predicted.Lacks, lack => lack.Contains("isotherm", StringComparison.Ordinal));
    }

    [Fact]
    public void Freezing_Demo_StartsWithItsInsertsFrozenAndKeepsItsHeat()
    {
        var course = Tart.Physics("T10").Freezing;
        Assert.Empty(course.Lacks);
        Assert.Equal("blast chiller", course.Transfer!.Name);
        var start = course.History!.Readings[0];
        Assert.Equal(26, start.WarmestCelsius, 0.5);
        Assert.Equal(-18, start.ColdestCelsius, 0.5);
        Assert.InRange(course.History.EnergyMissShare, 0, 1e-3);
        // Best air first, poorest last, and the plan of four to five hours is ample for all of them.
        Assert.True(course.Between.Earliest < course.Minutes && course.Minutes < course.Between.Latest);
        Assert.InRange(course.Between.Latest!.Value, 1, 240);
    }

    [Fact]
    public void Thawing_Demo_LosesItsLastIceWhereTheMousseFreezes()
    {
        var course = Tart.Physics("T10").Thawing;
        Assert.Empty(course.Lacks);
        Assert.Equal(Math.Round(Tart.Physics("T10").Of("mousse").Ice.InitialFreezingPoint.Value, 1), course.GoalCelsius);
        Assert.Equal(4, course.Step!.TemperatureCelsius);
        Assert.True(course.History!.Readings[^1].ColdestCelsius > course.History.Readings[0].ColdestCelsius);
    }

    [Fact]
    public void Water_Demo_StacksEveryLayerThroughTheMiddle()
    {
        var water = Tart.Physics("T10").Water;
        Assert.Empty(water.Lacks);
        Assert.Equal(["shell", "almond cream", "ganache", "bound crumble", "mousse under gel", "gel", "mousse over gel"], water.Stack!.Layers.Select(layer => layer.Name));
        Assert.Equal(48.6, water.Stack.Layers.Sum(layer => layer.ThicknessMillimetres), 9);
        Assert.Contains(water.Assumed, each => each.Contains("illustrative", StringComparison.Ordinal));
    }

    [Fact]
    public void Logs_Demo_FindTheCoolingOfTheMousse()
    {
        var log = Assert.Single(Tart.Physics("T8").Logs);
        Assert.Equal(5, log.Log.Readings.Count);
        Assert.Equal(83, log.Log.Readings[0].Celsius);
    }

    [Fact]
    public void Piece_WithoutAMontageOfLayers_SaysWhatIsLacking()
    {
        Assert.NotEmpty(Loaf.Physics("V1").Freezing.Lacks);
        Assert.NotEmpty(Loaf.Physics("V1").Thawing.Lacks);
        Assert.NotEmpty(Loaf.Physics("V1").Water.Lacks);
        var bare = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "first"));
        Assert.Contains(bare.Physics(bare.Candidate).Freezing.Lacks, lack => lack.StartsWith("montage.csv", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_UnknownComponent_NamesTheOnesThereAre() =>
        Assert.Contains("mousse", Assert.Throws<KeyNotFoundException>(() => Tart.Physics("T1").Of("musse")).Message, StringComparison.Ordinal);
}
