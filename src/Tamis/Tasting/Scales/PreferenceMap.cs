using Tamis.Statistics.Maps;

namespace Tamis.Tasting;

/// <summary>People who like alike.</summary>
/// <param name="People">How many.</param>
/// <param name="MeanLiking">The mean liking of each trial among them, in points.</param>
public sealed record TasteGroup(int People, IReadOnlyList<(string Trial, double Points)> MeanLiking);

/// <summary>What many people like, and the groups among them that like different things.</summary>
/// <param name="Session">The tasting.</param>
/// <param name="Trials">Each trial with its place by what sets people apart.</param>
/// <param name="Groups">The groups, largest first; one where people are not parted.</param>
/// <param name="Shares">The shares of all that people differ in along the two directions, 0 to 1.</param>
/// <param name="People">How many scored every trial; the others are left out.</param>
/// <remarks>Principal components of liking, each person about their own mean (internal preference mapping, Carroll 1972); groups by k-means on the centred scores, two to four of them,
/// as many as have the largest ratio of squares between to squares within (Caliński and Harabasz 1974, Communications in Statistics 3).</remarks>
public sealed record PreferenceMap(TastingSession Session, IReadOnlyList<(string Trial, double Across, double Up)> Trials, IReadOnlyList<TasteGroup> Groups, (double Across, double Up) Shares, int People)
{
    private const int MostGroups = 4, Starts = 20;

    /// <summary>The map of a tasting; null with fewer people than the policy asks for, fewer than three trials, or nothing that they differ in.</summary>
    public static PreferenceMap? Of(TastingLog log, TastingSession session, TastingPolicy? policy = null)
    {
        Score[] scores = [.. log.Scores.Where(score => score.Attribute.Kind == AttributeKind.Liking && Names.Same(score.Serving.Tasting, session.Name))];
        string[] trials = [.. scores.Select(score => score.Serving.Trial).Distinct().Order(StringComparer.Ordinal)];
        double[][] whole = [.. scores.GroupBy(score => score.Serving.Assessor).OrderBy(own => own.Key, StringComparer.Ordinal)
            .Select(own => trials.Select(trial => own.Where(score => score.Serving.Trial == trial).Select(score => score.Points).DefaultIfEmpty(double.NaN).Average()).ToArray()).Where(row => row.All(double.IsFinite))];
        if (trials.Length < 3 || whole.Length < (policy ?? TastingPolicy.Kit).FewestForMap) return null;
        double[][] centred = [.. whole.Select(row => row.Select(points => points - row.Average()).ToArray())];
        if (PrincipalComponents.Of(centred, scaled: false) is not { Variances.Count: > 1 } found) return null;
        var different = centred.Select(row => string.Join(' ', row)).Distinct(StringComparer.Ordinal).Count();
        var best = Enumerable.Range(2, MostGroups - 1).Where(count => count < different).Select(count => Segments.Find(centred, count, Starts, session.Seed ?? 1)).MaxBy(each => Parted(centred, each));
        var groups = best is null ? [new TasteGroup(whole.Length, Means([.. whole]))]
            : best.Of.Select((group, person) => (group, row: whole[person])).GroupBy(each => each.group).Select(each => new TasteGroup(each.Count(), Means([.. each.Select(one => one.row)]))).OrderByDescending(group => group.People).ToArray();
        return new(session, [.. trials.Select((trial, at) => (trial, found.Loadings[0][at], found.Loadings[1][at]))], groups, (found.Share(0), found.Share(1)), whole.Length);

        IReadOnlyList<(string, double)> Means(double[][] rows) => [.. trials.Select((trial, at) => (trial, rows.Average(row => row[at])))];
    }

    private static double Parted(double[][] rows, Segments groups)
    {
        double n = rows.Length, k = groups.Centres.Count;
        double[] middle = [.. Enumerable.Range(0, rows[0].Length).Select(at => rows.Average(row => row[at]))];
        var all = rows.Sum(row => row.Select((value, at) => Math.Pow(value - middle[at], 2)).Sum());
        return groups.SquaresWithin > 0 ? (all - groups.SquaresWithin) / (k - 1) / (groups.SquaresWithin / (n - k)) : double.PositiveInfinity;
    }
}
