using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class OrderModelTests
{
    private static readonly SensoryAttribute Boxes = new("liking", AttributeKind.Liking) { LowPoints = 1, HighPoints = 9, Form = ScaleForm.Boxes };

    // The panel of a known truth, its marks put into boxes a point wide.
    private static TastingLog Boxed(int assessors, double[] trials, double assessorSpread, double noise, int seed, Func<double, double>? into = null)
    {
        var log = SimulatedPanel.Log(assessors, trials, assessorSpread, noise, seed);
        return SimulatedPanel.Log([.. log.Scores.Select(score => score with { Attribute = Boxes, Points = Math.Clamp(Math.Round(into?.Invoke(score.Points) ?? score.Points), 1, 9) })], log.Sessions[0]) with { Attributes = [Boxes] };
    }

    private static OrderModel Model(TastingLog log) => OrderModel.Of(log, log.Sessions[0], Boxes, TastingPolicy.Kit);

    // T1 lies 1.5 standard deviations of a plate above T0: Φ(1.5 / √2) = 0.856 of pairs of plates are put higher.
    [Fact]
    public void Of_KnownTruth_FindsTheShareOfPlatesPutHigher()
    {
        var pair = Model(Boxed(60, [0, 1.5], 1, 1, 11)).PairOf("T1", "T0")!;

        Assert.InRange(pair.HigherShare, 0.78, 0.92);
        Assert.Equal(Verdict.Shown, pair.Verdict);
        Assert.True(pair.Range.Low > 0.5 && pair.Range.High < 1);
        Assert.Equal((1 - pair.HigherShare, 1 - pair.Range.High), (pair.Turned.HigherShare, pair.Turned.Range.Low));
    }

    // What is asked of an order: stretching the upper half of the scale moves the points and not the order.
    [Fact]
    public void Of_ScaleStretched_SaysTheSame()
    {
        var plain = Model(Boxed(14, [0, 1, 0.5], 1, 1, 12)).PairOf("T1", "T0")!;
        var log = Boxed(14, [0, 1, 0.5], 1, 1, 12);
        var stretched = Model(log with { Scores = [.. log.Scores.Select(score => score with { Points = score.Points * score.Points })] }).PairOf("T1", "T0")!;

        Assert.Equal(plain.HigherShare, stretched.HigherShare, 9);
        Assert.Equal(plain.Range.Low, stretched.Range.Low, 9);
    }

    // Nothing differs: among all three pairs something is called in no more than one of twenty tastings. 300 panels: 0.05 + 3 × √(0.05 × 0.95 / 300) = 0.088.
    [Fact]
    public void Of_NothingDiffers_CallsAPairInOneOfTwentyTastings()
    {
        var called = Enumerable.Range(1, 300).Count(seed => Model(Boxed(12, [0, 0, 0], 1, 1.2, seed)).Pairs.Any(pair => pair.Verdict == Verdict.Shown));

        Assert.InRange(called / 300.0, 0.005, 0.088);
    }

    // The interval of one pair among three holds the truth in 95 of 100 tastings or more: 300 panels leave 0.95 − 3 × √(0.05 × 0.95 / 300) = 0.912.
    [Fact]
    public void Of_KnownTruth_IntervalsHoldIt()
    {
        const double truth = 0.7144; // Φ(0.8 / √2)
        var held = Enumerable.Range(1, 300).Count(seed => Model(Boxed(12, [0, 0.8, 0.4], 1, 1, seed)).PairOf("T1", "T0")!.Range.Contains(truth));

        Assert.True(held / 300.0 >= 0.912, $"{held} of 300");
    }

    [Fact]
    public void Of_MarksThatCannotCarryIt_SaysWhy()
    {
        Assert.Contains("too few people", Model(Boxed(5, [0, 1], 1, 1, 1)).WhyNot, StringComparison.Ordinal);
        Assert.Contains("too few people or trials", Model(Boxed(12, [0], 1, 1, 1)).WhyNot, StringComparison.Ordinal);
        Assert.Contains("is the same", Model(Boxed(12, [0, 0], 0, 0, 1)).WhyNot, StringComparison.Ordinal);
        Assert.Contains("without a single exception", Model(Boxed(12, [0, 3], 0, 0, 1)).WhyNot, StringComparison.Ordinal);
    }
}
