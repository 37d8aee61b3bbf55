using CsCheck;
using Tamis.Statistics.Discrimination;

namespace Tamis.Statistics.Tests.Discrimination;

public class ForcedChoiceTests
{
    // Ennis (1993), Journal of Sensory Studies 8, at d' = 1, from memory.
    [Theory]
    [InlineData("triangle", 0.418)]
    [InlineData("two_afc", 0.760)]
    [InlineData("three_afc", 0.634)]
    [InlineData("duo_trio", 0.582)]
    public void ProportionRight_OneStandardDeviationApart_AsTabled(string name, double printed) =>
        Assert.Equal(printed, ForcedChoice.All.Single(test => test.Name == name).ProportionRight(1), tolerance: 6e-4);

    [Fact]
    public void ProportionRight_NothingApart_IsGuessing() => Assert.All(ForcedChoice.All, test => Assert.Equal(test.Guess, test.ProportionRight(0), tolerance: 1e-9));

    [Fact]
    public void DPrime_OfItsProportion_ComesBack() => Gen.Double[0.2, 4].Sample(distance =>
        Assert.All(ForcedChoice.All, test => Assert.Equal(distance, test.DPrime(test.ProportionRight(distance)), tolerance: 1e-7)), iter: 20);

    [Fact]
    public void DPrime_AtTheEnds_IsNilAndInfinite() => Assert.All(ForcedChoice.All, test =>
    {
        Assert.Equal(0, test.DPrime(test.Guess / 2));
        Assert.Equal(double.PositiveInfinity, test.DPrime(1));
    });

    [Fact]
    public void Of_CountsAsChanceSpreadsThem_HasHardlyOverdispersion()
    {
        // Binomial counts of four answers at one half, in their very proportions: 1 4 6 4 1.
        var fit = BetaBinomialFit.Of([0, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 3, 3, 3, 3, 4], 4)!;

        Assert.Equal(0.5, fit.Mean, 5);
        Assert.InRange(fit.Overdispersion, 0, 0.01);
    }

    [Fact]
    public void Of_NoSpreadToTell_IsNull()
    {
        Assert.Null(BetaBinomialFit.Of([4, 4, 4], 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => BetaBinomialFit.Of([5], 4));
    }
}
