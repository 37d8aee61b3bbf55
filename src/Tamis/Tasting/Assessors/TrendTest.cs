using Tamis.Statistics;
using Tamis.Statistics.Comparisons;

namespace Tamis.Tasting;

/// <summary>Whether marks rise in the order that the kitchen expected before anybody tasted.</summary>
/// <param name="Attribute">The question.</param>
/// <param name="Order">The trials from least to most, as they were expected.</param>
/// <param name="MeanRanks">The mean rank of each, in that order: 1 is the lowest.</param>
/// <param name="AssessorCount">How many assessors marked every trial; the others are left out.</param>
/// <param name="AlongCount">How many of them marked along the expected order more than against it.</param>
/// <param name="P">The probability of so much of a rise if marks came in any order.</param>
/// <param name="AnyOrderP">The probability of so much agreement on whatever order, if marks came in any order.</param>
public sealed record TrendTest(SensoryAttribute Attribute, IReadOnlyList<string> Order, IReadOnlyList<double> MeanRanks, int AssessorCount, int AlongCount, double P, double AnyOrderP)
{
    /// <summary>The same probability counted against all orders that were expected in the tasting (Holm 1979).</summary>
    public double PAmongAll { get; init; } = P;

    /// <summary>Tests every order that a tasting expected; what fewer than two people marked whole is left out.</summary>
    /// <remarks>Page (1963, Journal of the American Statistical Association 58): marks are ranked within the assessor, who counts once however often a trial was served to him; one-sided, by
    /// the normal distribution, ties taken as they are. Beside it Friedman's test of the same ranks, which asks for no order.</remarks>
    public static IReadOnlyList<TrendTest> Of(TastingLog log, TastingSession session)
    {
        TrendTest[] tests = [.. session.ExpectedOrders.Select(order => Of(log, session, order)).OfType<TrendTest>()];
        var amongAll = SeveralTests.Holm([.. tests.Select(test => test.P)]);
        return [.. tests.Select((test, at) => test with { PAmongAll = amongAll[at] })];
    }

    private static TrendTest? Of(TastingLog log, TastingSession session, ExpectedOrder expected)
    {
        if (log.Attribute(expected.Attribute) is not { } attribute) return null;
        ScoreCells cells = new(log.ScoresOf(session.Name, attribute));
        double[][] whole = [.. cells.All.GroupBy(cell => cell.Assessor)
            .Select(own => expected.Trials.Select(trial => own.FirstOrDefault(cell => Names.Same(cell.Trial, trial))?.Points).ToArray())
            .Where(row => row.All(points => points is not null)).Select(row => row.Select(points => points!.Value).ToArray())];
        if (whole.Length < 2) return null;
        var ranked = RankedBlocks.Of(whole);
        var middle = (expected.Trials.Count + 1) / 2.0;
        var along = ranked.Ranks.Count(row => row.Select((rank, at) => (rank - middle) * (at + 1 - middle)).Sum() > 0);
        return new(attribute, expected.Trials, [.. ranked.RankSums.Select(sum => sum / whole.Length)], whole.Length, along, ranked.PageChance, Tails.ChiSquareAbove(ranked.Friedman() ?? 0, expected.Trials.Count - 1));
    }
}
