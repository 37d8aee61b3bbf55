namespace Tamis.Statistics.Tests;

public class TailsTests
{
    // Closed forms of Student's t with one and two degrees of freedom (Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 2).
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.9)]
    [InlineData(0.95)]
    [InlineData(0.99)]
    public void StudentTwoSided_OneAndTwoDegrees_AreTheClosedForms(double confidence)
    {
        Assert.Equal(Math.Tan(Math.PI * confidence / 2), Tails.StudentTwoSided(confidence, 1), 9);
        Assert.Equal(confidence * Math.Sqrt(2 / (1 - confidence * confidence)), Tails.StudentTwoSided(confidence, 2), 9);
    }

    // R 4.2.2, qt. Below one degree of freedom the tail is longer than the library can follow; beyond ten million it is the normal's.
    [Theory]
    [InlineData(0.95, 0.1, 1682362288745), InlineData(0.95, 0.2, 768848.479701), InlineData(0.95, 0.3, 6582.0356994), InlineData(0.95, 0.5, 164.55767348)]
    [InlineData(0.95, 0.99, 13.0135480116), InlineData(0.99, 0.25, 27275093.2935), InlineData(0.5, 0.4, 1.97522742456)]
    [InlineData(0.95, 1e8, 1.95996400818), InlineData(0.95, 1e12, 1.95996398454), InlineData(0.95, 1e300, 1.95996398454)]
    public void StudentTwoSided_OddDegrees_IsThatOfR(double confidence, double degrees, double t) => Assert.Equal(1, Tails.StudentTwoSided(confidence, degrees) / t, 1e-9);

    [Fact]
    public void StudentTwoSided_HardlyADegree_IsInfinite() => Assert.True(double.IsPositiveInfinity(Tails.StudentTwoSided(0.95, 1e-3)));

    // P(F(2, d) > f) = (1 + 2 f / d)^(-d / 2), from the density.
    [Theory]
    [InlineData(0.5, 4)]
    [InlineData(3.2, 10)]
    [InlineData(250, 40)]
    public void FAbove_TwoDegreesAbove_IsTheClosedForm(double f, double degrees)
    {
        var expected = Math.Pow(1 + 2 * f / degrees, -degrees / 2);
        Assert.Equal(1, Tails.FAbove(f, 2, degrees) / expected, 11);
    }

    [Fact]
    public void FAbove_Infinite_IsZero() => Assert.Equal(0, Tails.FAbove(double.PositiveInfinity, 3, 10));

    [Fact]
    public void StudentBeyond_TheQuantile_IsTheRest() => Assert.Equal(0.05, Tails.StudentBeyond(Tails.StudentTwoSided(0.95, 7.3), 7.3), 9);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(95)]
    public void StudentTwoSided_NoConfidence_IsRefused(double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Tails.StudentTwoSided(confidence, 5));

    [Fact]
    public void StudentTwoSided_NoDegree_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => Tails.StudentTwoSided(0.95, 0));

    // 1.959963984540054 is the normal quantile of every printed table, from memory.
    [Fact]
    public void NormalTwoSided_NinetyFive_IsTheTableValue() => Assert.Equal(1.959963984540054, Tails.NormalTwoSided(0.95), 12);
}
