using Tamis.Statistics;
using Tamis.Statistics.Comparisons;

namespace Tamis.Tasting;

/// <summary>What the rankings of a tasting say: places summed, and how far two sums must lie apart.</summary>
/// <param name="Attribute">What was ranked.</param>
/// <param name="RankSums">The sum of the places of each trial; the smallest came first.</param>
/// <param name="AssessorCount">How many assessors ranked every trial; the others are left out.</param>
/// <param name="Statistic">Friedman's statistic, 0 or more.</param>
/// <param name="P">The probability of so large a statistic if nobody had a preference.</param>
/// <param name="GapNeeded">How far two sums must lie apart, all pairs counted together.</param>
public sealed record RankTest(SensoryAttribute Attribute, IReadOnlyList<(string Trial, double Sum)> RankSums, int AssessorCount, double Statistic, double P, double GapNeeded)
{
    /// <summary>Whether a trial was ranked several times by one assessor, so that its mean place was ranked anew among those of the other trials.</summary>
    public bool HasSeveralPlates { get; init; }

    /// <summary>Tests the rankings of a tasting; null where fewer than two assessors ranked every trial. Several plates of a trial in one ranking count by their mean place.</summary>
    /// <remarks>Friedman (1937, Journal of the American Statistical Association 32), corrected for ties, χ² with k − 1 degrees of freedom; pairs by the studentized range (Nemenyi 1963).</remarks>
    public static RankTest? Of(TastingLog log, TastingSession session, SensoryAttribute attribute, TastingPolicy policy)
    {
        ScoreCells cells = new(log.ScoresOf(session.Name, attribute));
        string[] trials = [.. cells.All.Select(cell => cell.Trial).Distinct()];
        var whole = cells.All.GroupBy(cell => cell.Assessor).Where(own => own.Count() == trials.Length).ToArray();
        if (trials.Length < 2 || whole.Length < 2) return null;
        var ranked = RankedBlocks.Of([.. whole.Select(own => trials.Select(trial => own.First(cell => cell.Trial == trial).Points).ToArray())]);
        var sums = trials.Zip(ranked.RankSums, (trial, sum) => (Trial: trial, Sum: sum)).OrderBy(each => each.Sum).ToArray();
        // Where every assessor ties all trials nothing speaks for a difference.
        var statistic = ranked.Friedman() ?? 0;
        return new(attribute, sums, whole.Length, statistic, Tails.ChiSquareAbove(statistic, trials.Length - 1), ranked.GapNeeded(policy.ConfidenceShare)) { HasSeveralPlates = whole.Any(own => own.Any(cell => cell.Servings > 1)) };
    }
}
