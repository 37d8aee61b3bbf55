using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

public class ThermalMixtureTests
{
    private static readonly Gen<ThermalMixture> AnyMixture =
        from grams in Gen.Double[0.1, 100].Array[6]
        from point in Gen.Double[-15, -0.5]
        from air in Gen.Double[0, 0.6]
        select ThermalMixture.Make(Proximates.FromGrams(grams[0], grams[1], grams[2], grams[3], grams[4], grams[5]), point, air);

    [Fact]
    public void Enthalpy_AnyMixture_RisesWithTemperature() =>
        Gen.Select(AnyMixture, Gen.Double[-39, 120], Gen.Double[0.01, 20]).Sample((mixture, celsius, more) => mixture.EnthalpyKJPerKg(celsius + more) > mixture.EnthalpyKJPerKg(celsius));

    [Fact]
    public void Curve_AnyMixture_StaysWithinAThousandthOfTheMixture() =>
        Gen.Select(AnyMixture, Gen.Double[-39, 100]).Sample((mixture, celsius) =>
            Math.Abs(ThermalCurve.Of("any", mixture).EnthalpyAt(celsius) / 1000 - mixture.EnthalpyKJPerKg(celsius)) <= 1e-3 * mixture.EnthalpyKJPerKg(150), iter: 200);

    [Fact]
    public void Enthalpy_WaterFromOneToMinusTwenty_IsWhatSteamAndIceTablesSay()
    {
        // From memory: 4.2 kJ/kg for the degree, 333.6 for the ice, ice of about 2.03 kJ/(kg·K) for twenty degrees.
        var water = ThermalMixture.Make(Proximates.FromGrams(1), -0.01);
        Assert.Equal(4.2 + 333.6 + 20 * 2.03, water.EnthalpyKJPerKg(1) - water.EnthalpyKJPerKg(-20), 1.0);
    }

    [Fact]
    public void IceShare_TwiceTheFreezingPoint_IsHalfTheFreeWater()
    {
        var mixture = ThermalMixture.Make(Proximates.FromGrams(60, 10, 0, 30), -3);
        Assert.Equal((0.6 - 0.04) / 2, mixture.IceShare(-6), 1e-12);
        Assert.Equal(0, mixture.IceShare(-3));
    }

    [Fact]
    public void IceShare_CurveOfItsOwn_Counts()
    {
        var mixture = ThermalMixture.Make(Proximates.FromGrams(60, 0, 0, 40), -3, 0, celsius => celsius < -5 ? 0.5 : 0);
        Assert.Equal(0.3, mixture.IceShare(-6), 1e-12);
    }

    [Fact]
    public void WithFat_ThatSetsOnCooling_GivesItsMeltingHeat()
    {
        var plain = ThermalMixture.Make(Proximates.FromGrams(20, 5, 35, 40));
        var setting = plain.WithFat(new(0.35, 120, celsius => Math.Clamp((34 - celsius) / 20, 0, 1)));
        double Given(ThermalMixture mixture) => mixture.EnthalpyKJPerKg(40) - mixture.EnthalpyKJPerKg(4);
        Assert.Equal(0.35 * 120, Given(setting) - Given(plain), 1e-9);
    }

    [Fact]
    public void FatMelting_OfABalance_FallsFromColdToWarm()
    {
        var fat = FatMelting.Of(Balance.FromGrams(100, (BalancePart.Water, 20), (BalancePart.CocoaButter, 25), (BalancePart.MilkFat, 8), (BalancePart.NutFat, 3), (BalancePart.Sucrose, 44)));
        Assert.NotNull(fat);
        Assert.Equal(0.36, fat.FatShareOfMass, 1e-12);
        double[] bound = [.. Enumerable.Range(-20, 71).Select(celsius => fat.BoundKJPerKg(celsius))];
        Assert.All(bound.Zip(bound.Skip(1)), pair => Assert.True(pair.First >= pair.Second));
        Assert.True(bound[0] > 10);
        Assert.Equal(0, bound[^1], 1e-9);
    }

    [Fact]
    public void FatMelting_OfOilAlone_IsNone() => Assert.Null(FatMelting.Of(Balance.FromGrams(100, (BalancePart.Water, 20), (BalancePart.NutFat, 30), (BalancePart.Sucrose, 50))));

    [Fact]
    public void WithDensity_HalfOfTheSolid_IsHalfAir()
    {
        var solid = ThermalMixture.Make(Proximates.FromGrams(60, 5, 20, 15));
        var foam = solid.WithDensity(solid.DensityKgPerM3(20) / 2, 20);
        Assert.Equal(0.5, foam.AirShareOfVolume, 1e-12);
        Assert.True(foam.ConductivityWPerMK(20) < solid.ConductivityWPerMK(20) * 0.6);
    }

    [Fact]
    public void WithDensity_AboveTheSolid_IsRefused() =>
        Assert.Contains("Without air", Assert.Throws<ArgumentOutOfRangeException>(() => ThermalMixture.Make(Proximates.FromGrams(60, 5, 20, 15)).WithDensity(2000, 20)).Message);

    [Fact]
    public void FromGrams_NegativeMasses_AreAllNamed()
    {
        var message = Assert.Throws<ArgumentException>(() => Proximates.FromGrams(50, -1, 20, -3)).Message;
        Assert.Contains("protein", message);
        Assert.Contains("carbohydrate", message);
    }

    [Fact]
    public void Density_BelowAbsoluteZero_IsASentenceAndNoFigure()
    {
        var predicted = Desserts.Mousse.Density(new("temperature", -300, "°C", new("log.csv", Evidence.Sheet, "row 3")));
        Assert.False(predicted.IsKnown);
        Assert.Contains("row 3", predicted.Lacks.Single());
    }

    [Fact]
    public void Density_AboveTheTestedRange_SaysSo() =>
        Assert.Single(Desserts.Mousse.Density(new("temperature", 180, "°C", new("a test", Evidence.Estimate))).Outside);

    [Fact]
    public void Makeup_BalanceByHand_CountsEachPartOnce()
    {
        var makeup = HeatMakeup.Of(Balance.FromGrams(100, (BalancePart.Water, 60), (BalancePart.MilkFat, 20), (BalancePart.Sucrose, 14), (BalancePart.MilkSolids, 4), (BalancePart.Salt, 0.5)));
        Assert.NotNull(makeup.Shares);
        Assert.Equal(0.6, makeup.Shares.Water, 1e-12);
        Assert.Equal(0.2, makeup.Shares.Fat, 1e-12);
        Assert.Equal(0.04 * 0.81, makeup.Shares.Protein, 1e-12);
        Assert.Equal(1.5, makeup.AssumedPercent, 1e-9);
        Assert.Equal(0.155, makeup.Shares.Carbohydrate, 1e-12);
    }

    [Fact]
    public void Makeup_MuchOfUnknownNature_SaysWhatIsWanted()
    {
        var makeup = HeatMakeup.Of(Balance.FromGrams(100, (BalancePart.Water, 60), (BalancePart.MilkFat, 20)));
        Assert.Null(makeup.Shares);
        Assert.Contains("20 %", makeup.Lacks.Single());
    }
}
