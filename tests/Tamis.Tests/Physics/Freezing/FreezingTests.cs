using CsCheck;
using Tamis.Desserts;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class FreezingTests
{
    private static readonly Gen<Balance> GenBalance =
        Gen.Select(Gen.Double[40, 80], Gen.Double[2, 20], Gen.Double[0, 8], Gen.Double[0, 6], Gen.Double[0, 5]).Select(each => Balance.FromGrams(200,
            (BalancePart.Water, each.Item1), (BalancePart.Sucrose, each.Item2), (BalancePart.Glucose, each.Item3), (BalancePart.MilkSolids, each.Item4), (BalancePart.Lactose, each.Item5)));

    [Fact]
    public void IceShare_Colder_IsNeverLessAndNeverAll() => Gen.Select(GenBalance, Gen.Double[-35, 0], Gen.Double[0.05, 5]).Sample((balance, celsius, colder) =>
    {
        var curve = FreezingCurve.Of(balance);
        var (warm, cold) = (curve.IceShareAt(celsius).Value, curve.IceShareAt(celsius - colder).Value);
        return warm is >= 0 and < 1 && cold < 1 && cold >= warm - 1e-9;
    });

    [Fact]
    public void IceShare_AtTheFreezingPoint_IsZeroAndJustUnderItIsNot() => GenBalance.Sample(balance =>
    {
        var curve = FreezingCurve.Of(balance);
        var point = curve.InitialFreezingPoint.Value;
        return curve.IceShareAt(point + 1e-6).Value == 0 && curve.IceShareAt(point - 0.05).Value > 0;
    });

    [Fact]
    public void CelsiusAtIceShare_AndBack_IsTheSame() => Gen.Select(GenBalance, Gen.Double[0.1, 0.7]).Sample((balance, share) =>
        FreezingCurve.Of(balance) is var curve && Math.Abs(curve.IceShareAt(curve.CelsiusAtIceShare(share)).Value - share) < 1e-6);

    [Fact]
    public void InitialFreezingPoint_MoreSugar_IsLower() => GenBalance.Sample(balance =>
        FreezingCurve.Of(Balance.FromGrams(200, (BalancePart.Water, balance[BalancePart.Water].Known), (BalancePart.Sucrose, balance[BalancePart.Sucrose].Known + 1))).InitialFreezingPoint.Value
        < FreezingCurve.Of(Balance.FromGrams(200, (BalancePart.Water, balance[BalancePart.Water].Known), (BalancePart.Sucrose, balance[BalancePart.Sucrose].Known))).InitialFreezingPoint.Value);

    // The unfrozen solution is as strong as one that begins to freeze at that temperature: sugars and salts are conserved.
    [Fact]
    public void IceShare_ByTable_LeavesASolutionThatFreezesThere() => Gen.Select(GenBalance, Gen.Double[-10, -4]).Sample((balance, celsius) =>
    {
        var curve = FreezingCurve.Of(balance);
        var point = curve.Points(celsius, celsius).Single();
        var left = curve.Mix with { WaterGrams = curve.Mix.WaterGrams * (1 - point.IceShareOfWater) };
        return !point.IsByTable || point.IceShareOfWater == 0 || Math.Abs(FreezingCurve.Of(left).InitialFreezingPoint.Value - celsius) < 1e-6;
    });

    [Fact]
    public void Points_AcrossTheEndOfTheTable_DoNotJump()
    {
        var points = FreezingCurve.Of(Balance.FromGrams(100, (BalancePart.Water, 60), (BalancePart.Sucrose, 15), (BalancePart.Glucose, 5))).Points(0, -30, 0.05);

        Assert.Contains(points, point => !point.IsByTable);
        Assert.All(points.Zip(points.Skip(1)).Where(pair => pair.First.Celsius < -5), pair => Assert.InRange(pair.Second.IceShareOfWater - pair.First.IceShareOfWater, 0, 0.006));
    }

    // Lactose of milk counts once: 0.545 of milk solids not fat, whether it is given apart or within them (Leighton 1927; Goff).
    [Fact]
    public void Of_MilkByItsBalance_AgreesWithLeightonsMilkSolids()
    {
        var apart = FreezingCurve.Of(Balance.FromGrams(100, (BalancePart.Water, 60), (BalancePart.Sucrose, 12), (BalancePart.MilkSolids, 4.55), (BalancePart.Lactose, 5.45)));
        var within = FreezingCurve.Of(FreezingMix.FromGrams(60, 12, milkSolidsGrams: 10));

        Assert.Equal(within.InitialFreezingPoint.Value, apart.InitialFreezingPoint.Value, 0.001);
    }

    // Milk freezes at −0.54 to −0.51 °C (a legal limit in many countries against added water; from memory).
    [Fact]
    public void Of_WholeMilk_FreezesAboutHalfADegreeUnderZero() =>
        Assert.InRange(FreezingCurve.Of(Balance.Of(Pantry.Mixture((Pantry.Food("SR28 01211"), 100)))).InitialFreezingPoint.Value, -0.65, -0.5);

    [Fact]
    public void Of_DemoComponents_GiveFiguresOrSayWhatTheyLack()
    {
        var tart = Dessert.Open(KitFolder.Data("desserts/damson-tart")).Trial("T1");

        Assert.All(tart.Components, component =>
        {
            var ice = FreezingCurve.Of(Balance.Of(component.Out)).IceShareAt(-18);
            Assert.True(ice.IsKnown ? ice.Value is >= 0 and < 1 : ice.Lacks.Count > 0, component.Name);
        });
    }

    [Theory]
    [InlineData(0.2, "liquid to slush")]
    [InlineData(0.67, "right to scoop")]
    [InlineData(0.95, "hard")]
    public void HardnessAt_AServingTemperature_GoesByTheIce(double share, string word)
    {
        var curve = FreezingCurve.Of(Balance.FromGrams(100, (BalancePart.Water, 90), (BalancePart.Sucrose, 5)));

        Assert.Equal(word, curve.HardnessAt(curve.CelsiusAtIceShare(share))!.Word);
    }

    [Fact]
    public void FreezingCelsius_OfTheWaterActivityOfIce_IsTheSame() => Gen.Double[-40, -0.01].Sample(celsius =>
        Math.Abs(FreezingEquations.FreezingCelsius(FreezingEquations.WaterActivityOfIce(celsius, 9.6934e-3, 4.761e-6), 9.6934e-3, 4.761e-6) - celsius) < 1e-9);

    [Fact]
    public void Impossible_IsRefusedInWords()
    {
        Assert.Contains("zero grams or more", Assert.Throws<ArgumentOutOfRangeException>(() => FreezingMix.FromGrams(60, -12)).Message, StringComparison.Ordinal);
        Assert.Contains("absolute zero", Assert.Throws<ArgumentOutOfRangeException>(() => FreezingCurve.Of(FreezingMix.FromGrams(60, 12)).IceShareAt(-300)).Message, StringComparison.Ordinal);
        Assert.Contains("one by one", Assert.Single(FreezingCurve.Of(FreezingMix.FromGrams(60, 12)).IceShareAt(-25).Lacks), StringComparison.Ordinal);
    }
}
