using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class GelatineTests
{
    private static readonly Source Here = new("a test", Evidence.Estimate);

    private static Given Grams(double grams) => new("mass", grams, "g", Here);

    // Myhrvold, Young and Bilet 2011, as quoted: 2.6 g of 225 bloom are 3.7 g of 160 bloom; the root rule is C·√B = constant.
    [Theory]
    [InlineData(2.6, 225, 160, 3.656, 3.083)]
    [InlineData(10, 200, 240, 8.333, 9.129)]
    public void Convert_TwoGrades_BothRules(double grams, double from, double to, double linear, double root)
    {
        var converted = Gelatine.Convert(Grams(grams), new("gold", from, "g Bloom", Here), new("other", to, "g Bloom", Here));

        Assert.Equal(linear, converted.Linear.Value, 0.001);
        Assert.Equal(root, converted.SquareRoot.Value, 0.001);
        Assert.Equal(root - linear, converted.DifferenceGrams, 0.002);
        Assert.True(converted.Linear.IsSound);
    }

    [Fact]
    public void Convert_StrengthOutsideTheTestedRange_SaysSo() =>
        Assert.Contains("strength to is 300", Assert.Single(Gelatine.Convert(Grams(10), new("a", 200, "g Bloom", Here), new("b", 300, "g Bloom", Here)).Linear.Outside), StringComparison.Ordinal);

    [Fact]
    public void Convert_ThereAndBack_IsTheSameMass() => Gen.Select(Gen.Double[0.1, 100], Gen.Double[80, 260], Gen.Double[80, 260]).Sample((grams, from, to) =>
        Math.Abs(Gelatine.SquareRootEquivalentGrams(Gelatine.SquareRootEquivalentGrams(grams, from, to), to, from) - grams) < 1e-9
        && Math.Abs(Gelatine.LinearEquivalentGrams(Gelatine.LinearEquivalentGrams(grams, from, to), to, from) - grams) < 1e-9);

    // Common practice: leaves take up five to six times their mass.
    [Fact]
    public void WaterCarriedIn_TenGrams_FiveToSixTimes()
    {
        var water = Gelatine.WaterCarriedIn(Grams(10));

        Assert.Equal(55, water.Value, 1e-9);
        Assert.Equal(Interval.Between(50, 60), water.Range);
    }

    [Fact]
    public void Convert_UnknownStrength_NamesWhatItLacks() =>
        Assert.Equal(["strength from"], Gelatine.Convert(Grams(10), new("powder", double.NaN, "g Bloom", Here), new("b", 200, "g Bloom", Here)).SquareRoot.Lacks);

    // Makers' tables: a gold leaf weighs 2 g at about 200 bloom, a platinum leaf 1.6 to 1.7 g.
    [Fact]
    public void Leaves_OfAGrade_WeighAsMakersSay()
    {
        Assert.Equal(10, GelatineGrade.Named("gold").Leaves(5).Value, 1e-9);
        Assert.Equal(Interval.Between(1.6, 1.7), GelatineGrade.Named("platinum").LeafGrams);
        Assert.Throws<InvalidOperationException>(() => GelatineGrade.Named("powder").Leaves(1));
        Assert.Contains("gold", Assert.Throws<KeyNotFoundException>(() => GelatineGrade.Named("diamond")).Message, StringComparison.Ordinal);
    }

    // A leaf of any grade sets about the same volume: by the root rule they agree better than their masses, which differ by a factor of two.
    [Fact]
    public void Leaves_OfAllGrades_SetAboutTheSameVolume()
    {
        double[] asGold = [.. GelatineGrade.All.Where(grade => grade.LeafGrams is not null).Select(grade => Gelatine.SquareRootEquivalentGrams(grade.LeafGrams!.Value.Middle, grade.WorkingBloomGrams, 200))];

        Assert.InRange(asGold.Max() / asGold.Min(), 1, 1.5);
    }

    [Fact]
    public void Conditions_AmidatedPectinInALightGel_LacksSugar()
    {
        // The demo's T7 gel, 27 % solids at pH 3.1: sets soft, as its maker says.
        var conditions = Hydrocolloid.Named("LM pectin, amidated").Conditions(new(DosePercent: 1.19, SolubleSolidsPercent: 27, Ph: 3.1));

        Assert.True(conditions.Single(each => each.What.StartsWith("dose", StringComparison.Ordinal)).IsMet);
        Assert.False(conditions.Single(each => each.What == "soluble solids").IsMet);
        Assert.Null(Hydrocolloid.Named("LM pectin").Conditions(new()).Single(each => each.What == "calcium to the agent").IsMet);
    }

    // Figoni 2003, McGee 2004: maize swells at 62 to 72 °C, sugar lifts it by about 5 to 15 K at 40 to 60 %.
    [Theory]
    [InlineData(0, 72)]
    [InlineData(40, 77)]
    [InlineData(60, 87)]
    public void Gelatinisation_WithSugar_Rises(double sugarPercent, double celsius)
    {
        var found = Starch.Named("maize").Gelatinisation(new("sugar", sugarPercent, "%", Here));

        Assert.Equal(celsius, found.Value, 1e-9);
        Assert.True(found.Range!.Value.Contains(celsius));
        Assert.True(found.IsSound);
    }

    [Fact]
    public void In_MoreSugar_EggSetsHotter()
    {
        var plain = EggSetting.Named("egg yolk thickens").In(new("sugar", 0, "%", Here));
        var sweet = EggSetting.Named("egg yolk thickens").In(new("sugar", 30, "%", Here));

        Assert.Equal(65, plain.Value);
        Assert.InRange(sweet.Value, 70, 73);
        Assert.False(EggSetting.Named("egg yolk thickens").In(new("sugar", 70, "%", Here)).IsSound);
    }
}
