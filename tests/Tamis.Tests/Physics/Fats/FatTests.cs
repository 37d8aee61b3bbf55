using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class FatTests
{
    private static readonly Source Here = new("a test", Evidence.Estimate);

    private static Given Celsius(double value) => new("temperature", value, "°C", Here);

    // Computed from the ideal solubility law with ΔH 135 kJ/mol and 33.8 °C (Wille and Lutton 1966).
    [Theory]
    [InlineData(0.5, 20, 0.455)]
    [InlineData(0.8, 25, 0.747)]
    [InlineData(0.05, 20, 0)]
    [InlineData(1, 20, 1)]
    [InlineData(0.9, 40, 0)]
    public void SolidShare_CocoaButterInOil_ByTheLever(double share, double celsius, double solid) => Assert.Equal(solid, CocoaButter.SolidShare(share, celsius), 0.001);

    [Fact]
    public void SolidShare_WarmerOrMoreOil_IsNeverFirmer() => Gen.Select(Gen.Double[0, 1], Gen.Double[0, 0.5], Gen.Double[10, 34], Gen.Double[0, 10]).Sample((share, oil, celsius, warmer) =>
        CocoaButter.SolidShare(share, celsius + warmer) <= CocoaButter.SolidShare(share, celsius) + 1e-12
        && CocoaButter.SolidShare(share * (1 - oil), celsius) <= CocoaButter.SolidShare(share, celsius) + 1e-12);

    [Fact]
    public void SolidPercent_BetweenPoints_IsStraight()
    {
        var ghana = SolidFatCurve.Named("cocoa butter, Ghana");

        Assert.Equal((76.0 + 69.6) / 2, ghana.SolidPercent(22.5), 1e-9);
        Assert.True(double.IsNaN(ghana.SolidPercent(10)));
        Assert.Contains("begins at 20", Assert.Single(ghana.Solid(Celsius(10)).Lacks), StringComparison.Ordinal);
        Assert.Equal(Interval.Between(14, 22), SolidFatCurve.Named("milk fat").Solid(Celsius(20)).Range);
    }

    [Fact]
    public void SolidOfMixture_NutOilOrMilkFat_Softens()
    {
        var hard = new FatPhase(100, 0, 0).SolidOfMixture(300, Celsius(20));
        var milky = new FatPhase(80, 20, 0).SolidOfMixture(300, Celsius(20));
        var nutty = new FatPhase(80, 0, 20).SolidOfMixture(300, Celsius(20));

        Assert.True(milky.Value < hard.Value);
        Assert.True(nutty.Value < hard.Value);
        Assert.True(hard.Range!.Value.Contains(hard.Value));
        Assert.True(hard.IsSound);
        Assert.Contains("milk fat", Assert.Single(new FatPhase(50, 50, 0).SolidOfMixture(300, Celsius(20)).Outside), StringComparison.Ordinal);
    }

    [Fact]
    public void SolidShare_MilkFatAlone_IsItsOwnCurve() =>
        Assert.Equal(0.18, new FatPhase(0, 100, 0).SolidShare(20, SolidFatCurve.Named("cocoa butter, Ghana"), SolidFatCurve.Named("milk fat")), 1e-9);

    // The dip of the eutectic (Timms 1980, Hartel): equal parts are softer than either fat's own share would give.
    [Fact]
    public void SolidShare_EqualParts_LieBelowTheStraightLine()
    {
        var (cocoa, milk) = (SolidFatCurve.Named("cocoa butter, Ghana"), SolidFatCurve.Named("milk fat"));
        var straight = (cocoa.SolidPercent(20) + milk.SolidPercent(20)) / 200;

        Assert.True(new FatPhase(50, 50, 0).SolidShare(20, cocoa, milk) < straight);
    }

    [Theory]
    [InlineData(3, "runs")]
    [InlineData(8, "spoon")]
    [InlineData(15, "slices")]
    [InlineData(30, "firm")]
    public void Of_SolidFat_SaysHowItFeels(double percent, string word) => Assert.Contains(word, Firmness.Of(percent).Word, StringComparison.Ordinal);

    [Fact]
    public void Working_WithMilkFat_IsLower()
    {
        var milk = Tempering.Working(new("milk fat", 11, "%", Here));

        Assert.Equal(30.5, milk.Value, 1e-9);
        Assert.Equal(2, Tempering.Of("milk").Count);
    }

    [Fact]
    public void Contact_FrozenPiece_SetsAsItLands_WarmPieceRuns()
    {
        var frozen = SprayCoat.Contact(new("gun", 43, "°C", Here), new("piece", -18, "°C", Here));

        // Between the two, nearer to the body of the greater effusivity.
        Assert.InRange(frozen.Value, -18, 43);
        Assert.Equal(SprayFinish.Velvet, SprayCoat.Finish(frozen));
        Assert.Equal(SprayFinish.Runs, SprayCoat.Finish(SprayCoat.Contact(new("gun", 43, "°C", Here), new("piece", 8, "°C", Here))));
        Assert.Equal(SprayFinish.NotKnown, SprayCoat.Finish(SprayCoat.Contact(new("gun", double.NaN, "°C", Here), new("piece", -18, "°C", Here))));
    }

    [Fact]
    public void ContactCelsius_EqualBodies_IsTheMiddle() => Assert.Equal(20, SprayCoat.ContactCelsius(40, 700, 0, 700));

    [Fact]
    public void ThicknessMillimetres_TwelveGramsOnTheTart_IsHalfAMillimetre() => Assert.Equal(0.40, SprayCoat.ThicknessMillimetres(12, 285.88, 1.05), 0.005);
}
