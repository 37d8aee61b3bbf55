using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class LeaveningTests
{
    private static readonly Source Here = new("a test", Evidence.Estimate);

    // Miller, food chemistry text: sodium acid pyrophosphate 72, so 1.39 g to a gram of soda.
    [Fact]
    public void Acid_OfAKnownKind_UsesUpTheSoda()
    {
        var acid = Leavening.Acid(new("soda", 10, "g", Here), LeaveningAcid.Named("SAPP"));

        Assert.Equal(13.9, acid.Value, 0.02);
        Assert.Equal(0, Leavening.SodaLeftGrams(10, acid.Value, 72), 1e-9);
        Assert.True(Leavening.SodaLeftGrams(10, 5, 72) > 0);
    }

    // Two texts, two values of cream of tartar: the answer carries both.
    [Fact]
    public void Acid_TextsDiffer_AnswerHasARange() => Assert.Equal(Interval.Between(20, 22.2222222222222222), Leavening.Acid(new("soda", 10, "g", Here), LeaveningAcid.Named("cream of tartar")).Range);

    [Fact]
    public void CarbonDioxideGrams_ScarcerOneDecides() => Gen.Select(Gen.Double[0, 20], Gen.Double[0, 40], Gen.Double[30, 150]).Sample((soda, acid, value) =>
        Leavening.CarbonDioxideGrams(soda, acid, value) <= Leavening.CarbonDioxideGrams(soda, SodaReaction.WithAcid) + 1e-12
        && Leavening.CarbonDioxideGrams(soda, Leavening.AcidGrams(soda, value), value) - Leavening.CarbonDioxideGrams(soda, SodaReaction.WithAcid) < 1e-9);

    [Fact]
    public void CarbonDioxideGrams_ByHeat_IsHalf() =>
        Assert.Equal(Leavening.CarbonDioxideGrams(4, SodaReaction.WithAcid) / 2, Leavening.CarbonDioxideGrams(4, SodaReaction.ByHeat), 1e-12);

    // Molar masses: 0.4886 g to a gram of glucose.
    [Fact]
    public void CarbonDioxideGramsOfGlucose_OneGram_HalfOfIt() => Assert.Equal(0.4886, Leavening.CarbonDioxideGramsOfGlucose(1), 0.0001);

    [Fact]
    public void DoughWater_ThreeTerms_AndFourWithAPreferment()
    {
        Assert.Equal(27, Leavening.DoughWater(new("dough", 25, "°C", Here), new("flour", 20, "°C", Here), new("room", 22, "°C", Here), new("friction", 6, "K", Here)).Value, 1e-9);
        Assert.Equal(32, Leavening.DoughWaterCelsius(25, 6, 20, 22, 20), 1e-9);
    }

    [Fact]
    public void DriedYeast_ForFresh_HasTheRangeOfPractice() => Assert.Equal(Interval.Between(8, 10), Leavening.DriedYeast(new("fresh yeast", 20, "g", Here), "active dry").Range);
}
