using Tamis.Statistics.Discrimination;

namespace Tamis.Statistics.Tests.Discrimination;

public class BinomialsTests
{
    // ISO 4120, triangle at 5 %: 6 of 8, 13 of 24, 19 of 42 … (from memory; each follows from the exact binomial tail).
    [Theory]
    [InlineData(6, 5), InlineData(12, 8), InlineData(24, 13), InlineData(36, 18), InlineData(60, 27)]
    public void FewestRight_Triangle_IsThePublishedCount(int answers, int right) => Assert.Equal(right, Binomials.FewestRight(answers, 1.0 / 3, 0.05));

    // Triangle at 5 % with a power of 80 %: 16, 23, 40, 87, 325 answers for 50, 40, 30, 20, 10 % of distinguishers (ISO 4120 and handbooks, from memory).
    [Theory]
    [InlineData(0.5, 16), InlineData(0.4, 23), InlineData(0.3, 40), InlineData(0.2, 87), InlineData(0.1, 325)]
    public void AnswersNeeded_Triangle_IsThePublishedNumber(double share, int answers) => Assert.Equal(answers, Binomials.AnswersNeeded(1.0 / 3, share, 0.05, 0.8));

    [Fact]
    public void AtLeast_AllOutcomes_AreSummedByHand()
    {
        // 3 of 5 at a half: (10 + 5 + 1)/32.
        Assert.Equal(16 / 32.0, Binomials.AtLeast(3, 5, 0.5), 12);
        Assert.Equal(1, Binomials.AtLeast(0, 5, 0.5));
        Assert.Equal(0, Binomials.AtLeast(6, 5, 0.5));
    }

    // Clopper and Pearson (1934): none of ten leaves 0 to 1 − 0.025^(1/10) = 0.3085.
    [Fact]
    public void Limits_NoneAndAll_EndAtTheEnds()
    {
        Assert.Equal((0, 0.3085), (Binomials.Limits(0, 10, 0.95).Low, Math.Round(Binomials.Limits(0, 10, 0.95).High, 4)));
        Assert.Equal((0.6915, 1), (Math.Round(Binomials.Limits(10, 10, 0.95).Low, 4), Binomials.Limits(10, 10, 0.95).High));
    }
}
