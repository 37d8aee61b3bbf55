using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

public class ClosedModelTests
{
    private static readonly FreezingCase Mousse = FreezingCase.Of(ConductionShape.Slab, Of(30, "mm"), Desserts.Mousse, Of(30, "W/(m²·K)"), Of(-35, "°C"), Of(10, "°C"), Of(-18, "°C"));

    [Fact]
    public void Pham_MixtureOfItsOwn_TakesLongerThanPlank()
    {
        Assert.True(Mousse.Pham().Value > Mousse.Plank().Value);
        Assert.True(Mousse.Pham().IsSound);
    }

    [Fact]
    public void Pham_SugaryMixture_SaysThatItLiesOutside()
    {
        var outside = FreezingCase.Of(ConductionShape.Slab, Of(30, "mm"), ThermalMixture.Make(Proximates.FromGrams(40, 3, 17, 40), -6), Of(30, "W/(m²·K)"), Of(-35, "°C"), Of(10, "°C"), Of(-18, "°C")).Pham().Outside;
        Assert.Contains(outside, sentence => sentence.StartsWith("water is 40", StringComparison.Ordinal));
    }

    [Fact]
    public void Plank_WithoutADensity_NamesIt() => Assert.Contains("density", (Mousse with { Density = Of(double.NaN, "kg/m³") }).Plank().Lacks);

    [Fact]
    public void Plank_ThicknessInCentimetres_IsNotTakenForMillimetres() => Assert.Contains("thickness in mm", (Mousse with { Thickness = Of(3, "cm") }).Plank().Lacks.Single());

    [Fact]
    public void Plank_AirWarmerThanTheFreezingPoint_IsASentence() => Assert.Equal("air colder than the freezing point", (Mousse with { Air = Of(-1, "°C") }).Plank().Lacks.Single());

    [Fact]
    public void Pham_RangeOfTransfer_GivesARangeOfTimes()
    {
        var pham = (Mousse with { Transfer = SurfaceTransfer.In("blast chiller") }).Pham();
        Assert.True(pham.Range is { } range && range.Low < pham.Value && pham.Value < range.High);
    }

    [Fact]
    public void MixingTemperature_EqualParts_IsTheMean()
    {
        MixedPart Part(double celsius) => new(Of(200, "g"), Of(3, "kJ/(kg·K)"), Of(celsius, "°C"));
        Assert.Equal(45, HeatBalance.MixingTemperature(Part(80), Part(10)).Value, 1e-12);
    }

    [Fact]
    public void MixingTemperature_NegativeMass_NamesTheCell()
    {
        var lacks = HeatBalance.MixingTemperature(new MixedPart(new("cream", -5, "g", new("formula.csv", Evidence.Sheet, "row 4, column T1")), Of(3, "kJ/(kg·K)"), Of(80, "°C")), new(Of(200, "g"), Of(3, "kJ/(kg·K)"), Of(8, "°C"))).Lacks;
        Assert.Contains("row 4", lacks.Single());
    }

    [Fact]
    public void HeatToBake_EvaporatedWater_CostsItsLatentHeat() =>
        Assert.Equal(0.5 * 3 * 80 + 0.05 * 2257, HeatBalance.HeatToBake(Of(500, "g"), Of(3, "kJ/(kg·K)"), Of(20, "°C"), Of(100, "°C"), Of(50, "g")).Value, 1e-9);

    [Fact]
    public void WaterPercentAfter_MoreLossThanWater_IsRefusedWithItsCell()
    {
        var predicted = BakingLoss.WaterPercentAfter(Of(10, "%"), new("loss", 12, "%", new("formula.csv", Evidence.Sheet, "row 9, column T2")));
        Assert.False(predicted.IsKnown);
        Assert.Contains("row 9", predicted.Lacks.Single());
    }

    [Fact]
    public void Rate_FromTheCourseItself_GivesTheRateBack()
    {
        var later = BakingLoss.WaterAfter(Of(30, "g"), Of(2, "g"), Of(0.02, "1/min"), Of(25, "min")).Value;
        Assert.Equal(0.02, BakingLoss.Rate(Of(30, "g"), Of(later, "g"), Of(2, "g"), Of(25, "min")).Value, 1e-12);
    }

    [Fact]
    public void Percent_HeavierAfterTheOven_IsRefused() => Assert.False(BakingLoss.Percent(Of(400, "g"), Of(410, "g")).IsKnown);

    [Fact]
    public void UsualLosses_EachHasARangeAndASource()
    {
        Assert.Contains(BakingLoss.Usual, usual => usual.Preparation == "choux" && usual.LossPercent == Interval.Between(30, 45));
        Assert.All(BakingLoss.Usual, usual => Assert.True(usual.LossPercent.Low > 0 && usual.MoisturePercent.High > 0));
    }

    private static Given Of(double value, string unit) => new("test", value, unit, new("a test", Evidence.Estimate));
}
