using Tamis.Statistics;
using Tamis.Statistics.Comparisons;
using Tamis.Statistics.Discrimination;

namespace Tamis.Tasting;

/// <summary>Whether a word was ticked for some trials more often than for others.</summary>
/// <param name="Word">The word.</param>
/// <param name="Statistic">Cochran's Q; null where every assessor ticked it for all trials or for none.</param>
/// <param name="P">The probability of so large a Q if the trials were alike; null where there is none.</param>
/// <param name="PAmongAll">The same, with chance counted over all words of the list (Holm 1979).</param>
/// <param name="AssessorCount">How many assessors answered for every trial; the others are left out.</param>
public sealed record TickTest(string Word, double? Statistic, double? P, double? PAmongAll, int AssessorCount)
{
    /// <summary>Pairs of trials for this word, where the word differs among all: how many ticked it for one of them alone, and the exact chance of so lopsided a split, counted over all pairs (McNemar 1947, Psychometrika 12; Holm 1979).</summary>
    public IReadOnlyList<TickPair> Pairs { get; init; } = [];

    /// <summary>Tests every word of a list in one tasting.</summary>
    /// <remarks>Cochran (1950, Biometrika 37). An assessor who was served a trial twice counts a word as ticked if it was ticked at least every second time.
    /// In incomplete designs nobody has every trial, and nothing can be tested so.</remarks>
    public static IReadOnlyList<TickTest> Of(TastingLog log, TastingSession session, SensoryAttribute attribute)
    {
        Ticks[] ticks = [.. log.Ticks.Where(each => each.Attribute == attribute && Names.Same(each.Serving.Tasting, session.Name))];
        string[] trials = [.. ticks.Select(each => each.Serving.Trial).Distinct()];
        var whole = ticks.GroupBy(each => each.Serving.Assessor).Where(own => own.Select(each => each.Serving.Trial).Distinct().Count() == trials.Length).ToArray();
        if (trials.Length < 2 || whole.Length < 2) return [];
        var tests = attribute.Words.Select(word =>
        {
            bool[][] rows = [.. whole.Select(own => trials.Select(trial => own.Where(each => each.Serving.Trial == trial).Average(each => each.Words.Contains(word) ? 1.0 : 0) >= 0.5).ToArray())];
            return (word, q: Q(rows), rows);
        }).ToArray();
        double?[] p = [.. tests.Select(test => test.q is { } q ? (double?)Tails.ChiSquareAbove(q, trials.Length - 1) : null)];
        var adjusted = SeveralTests.Holm([.. p.Select(each => each ?? double.NaN)]);
        return [.. tests.Select((test, at) => new TickTest(test.word, test.q, p[at], p[at] is null ? null : adjusted[at], whole.Length) { Pairs = PairsOf(trials, test.rows) })];
    }

    private static TickPair[] PairsOf(string[] trials, bool[][] rows)
    {
        var pairs = (from first in Enumerable.Range(0, trials.Length)
                     from second in Enumerable.Range(first + 1, trials.Length - first - 1)
                     let onlyFirst = rows.Count(row => row[first] && !row[second])
                     let onlySecond = rows.Count(row => row[second] && !row[first])
                     select (First: trials[first], Second: trials[second], onlyFirst, onlySecond)).ToArray();
        var chances = SeveralTests.Holm([.. pairs.Select(pair => pair.onlyFirst + pair.onlySecond is var split and > 0 ? Math.Min(1, 2 * Binomials.AtLeast(Math.Max(pair.onlyFirst, pair.onlySecond), split, 0.5)) : 1)]);
        return [.. pairs.Select((pair, at) => new TickPair(pair.First, pair.Second, pair.onlyFirst, pair.onlySecond, chances[at]))];
    }

    /// <summary>Cochran's Q of a table of ticks, a row an assessor, a column a trial; null where no row tells trials apart.</summary>
    public static double? Q(IReadOnlyList<bool[]> rows)
    {
        var trials = rows[0].Length;
        double[] columns = [.. Enumerable.Range(0, trials).Select(trial => (double)rows.Count(row => row[trial]))];
        double total = columns.Sum(), below = rows.Sum(row => (double)row.Count(tick => tick) * (trials - row.Count(tick => tick)));
        return below > 0 ? (trials - 1) * (trials * columns.Sum(column => column * column) - total * total) / below : null;
    }
}

/// <summary>A word for two trials.</summary>
/// <param name="First">The one trial.</param>
/// <param name="Second">The other.</param>
/// <param name="OnlyFirst">How many ticked it for the first alone.</param>
/// <param name="OnlySecond">How many ticked it for the second alone.</param>
/// <param name="ChanceAmongPairs">The chance of so lopsided a split if the trials were alike, counted over all pairs.</param>
public sealed record TickPair(string First, string Second, int OnlyFirst, int OnlySecond, double ChanceAmongPairs);
