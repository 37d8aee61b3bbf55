using CsCheck;

namespace Tamis.Statistics.Tests;

public class SampleSummaryTests
{
    // NIST StRD NumAcc4, from memory: 10000000.2, then 10000000.1 and 10000000.3 in turn, 1001 values; certified mean 10000000.2,
    // standard deviation 0.1. Read as doubles the values carry eight digits of the deviation.
    [Fact]
    public void Of_NumAcc4_KeepsTheDigitsThatDoublesHold()
    {
        var summary = SampleSummary.Of([10000000.2, .. Enumerable.Range(0, 1000).Select(i => i % 2 == 0 ? 10000000.1 : 10000000.3)]);

        Assert.Equal(1001, summary.Count);
        Assert.Equal(10000000.2, summary.Mean, 8);
        Assert.Equal(0.1, summary.StandardDeviation, 8);
    }

    [Fact]
    public void Of_NoValue_IsUnknown()
    {
        var summary = SampleSummary.Of([]);

        Assert.True(double.IsNaN(summary.Mean));
        Assert.Null(summary.MeanLimits());
    }

    [Fact]
    public void MeanLimits_OneValue_IsNull() => Assert.Null(SampleSummary.Of([4.2]).MeanLimits());

    [Fact]
    public void MeanLimits_EqualValues_IsThePoint() => Assert.Equal(new ConfidenceLimits(3.3, 3.3), SampleSummary.Of([3.3, 3.3, 3.3]).MeanLimits());

    [Fact]
    public void MeanLimits_Shifted_MoveWithTheValues() =>
        Gen.Double[-5, 5].Array[2, 30].Select(Gen.Double[-100, 100]).Sample((values, shift) =>
        {
            var (before, after) = (SampleSummary.Of(values).MeanLimits()!.Value, SampleSummary.Of([.. values.Select(value => value + shift)]).MeanLimits()!.Value);
            Assert.Equal(before.Low + shift, after.Low, 9);
            Assert.Equal(before.HalfWidth, after.HalfWidth, 9);
        });
}
