using Tamis.Statistics.Discrimination;

namespace Tamis.Statistics.Tests.Discrimination;

public class BetaBinomialFitTests
{
    // SciPy 1.10.1: the likelihood by betaln and gammaln, found by its Nelder-Mead; half the upper tail of χ² with one degree of freedom.
    [Fact]
    public void Of_PeopleWhoAnsweredUnequallyOften_IsThatOfSciPy()
    {
        var fit = BetaBinomialFit.Of([(2, 3), (1, 4), (4, 4), (0, 2), (3, 3), (1, 1), (2, 5), (5, 5), (0, 4)])!;

        Assert.Equal(0.59623264, fit.Mean, 6);
        Assert.Equal(0.53425419, fit.Overdispersion, 6);
        Assert.Equal(-12.241448000630527, fit.LogLikelihood, 9);
        Assert.Equal(0.0022044151779, fit.ChanceOfNoSpread, 8);
    }

    [Fact]
    public void Of_NobodyAnsweredTwice_IsNone() => Assert.Null(BetaBinomialFit.Of([(1, 1), (0, 1)]));

    [Fact]
    public void Of_SpreadBelowChance_SpeaksForNoSpread() => Assert.Equal(1, BetaBinomialFit.Of([(2, 4), (2, 4), (2, 4), (2, 4)])!.ChanceOfNoSpread, 6);

    // SciPy 1.10.1, binom.cdf: 30 % who tell apart are overlooked in at most 5 of 100 tests; triangle.
    [Theory]
    [InlineData(60, 25, 0.9319848216411192)]
    [InlineData(100, 44, 0.9899949150242592)]
    public void SimilarityPower_Triangle_IsThatOfSciPy(int answers, int most, double power)
    {
        Assert.Equal(most, ForcedChoice.Triangle.MostForSimilarity(answers, 0.3, 0.05));
        Assert.Equal(power, ForcedChoice.Triangle.SimilarityPower(answers, 0.3, 0.05), 12);
        Assert.True(ForcedChoice.Triangle.AnswersForSimilarity(0.3, 0.05, 0.9) <= answers);
    }
}
