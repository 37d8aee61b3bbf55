using Tamis.Statistics.Maps;

namespace Tamis.Tasting;

/// <summary>A trial on a map, with the ellipse within which it would lie for other people like these.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Across">Where it lies across.</param>
/// <param name="Up">Where it lies upwards.</param>
/// <param name="Outline">Points of the 95 % ellipse around it.</param>
public sealed record MappedTrial(string Trial, double Across, double Up, IReadOnlyList<(double Across, double Up)> Outline);

/// <summary>A scale on a map: the direction in which trials have more of it.</summary>
/// <param name="Attribute">The scale.</param>
/// <param name="Across">Its part across.</param>
/// <param name="Up">Its part upwards.</param>
public sealed record MappedScale(SensoryAttribute Attribute, double Across, double Up);

/// <summary>The trials of one tasting by their intensities, on the two directions in which they differ most.</summary>
/// <param name="Session">The tasting.</param>
/// <param name="Trials">The trials.</param>
/// <param name="Scales">The scales.</param>
/// <param name="Shares">The shares of the differences that the two directions hold, 0 to 1.</param>
/// <remarks>Principal components of the means of the trials, each scale about its own mean, points as they are: no scale is blown up to weigh as much as another.
/// Ellipses by drawing the assessors again with replacement (Efron 1979), 400 times with a stated seed, projected on the same directions; their size is that of
/// χ² with two degrees of freedom at the policy's confidence.</remarks>
public sealed record TrialMap(TastingSession Session, IReadOnlyList<MappedTrial> Trials, IReadOnlyList<MappedScale> Scales, (double Across, double Up) Shares)
{
    private const int Draws = 400, OutlinePoints = 48;

    /// <summary>The map of a tasting; null where fewer than three trials were scored on two intensities by enough assessors, or they do not differ.</summary>
    public static TrialMap? Of(TastingLog log, TastingSession session, TastingPolicy? policy = null)
    {
        policy ??= TastingPolicy.Kit;
        SensoryAttribute[] scales = [.. log.Attributes.Where(attribute => attribute.Kind == AttributeKind.Intensity && log.Asked(session.Name, attribute))];
        Score[] scores = [.. log.Scores.Where(score => scales.Contains(score.Attribute) && Names.Same(score.Serving.Tasting, session.Name))];
        string[] trials = [.. scores.Select(score => score.Serving.Trial).Distinct().Order(StringComparer.Ordinal)];
        var people = scores.GroupBy(score => score.Serving.Assessor).OrderBy(group => group.Key, StringComparer.Ordinal).Select(own => Cells(own, trials, scales)).ToArray();
        if (trials.Length < 3 || scales.Length < 2 || people.Length < policy.FewestAssessors) return null;
        if (Centred(people, trials.Length, scales.Length) is not { } means) return null;
        // Directions of means without any difference are noise of the arithmetic.
        if (PrincipalComponents.Of(means, scaled: false) is not { Variances.Count: > 1 } found || !(found.Variances.Sum() > 1e-12)) return null;
        var clouds = trials.Select(_ => new List<(double, double)>()).ToArray();
        SeededOrder random = new(session.Seed ?? 1);
        for (var draw = 0; draw < Draws; draw++)
        {
            if (Centred([.. people.Select(_ => people[random.Below(people.Length)])], trials.Length, scales.Length) is not { } drawn) continue;
            for (var trial = 0; trial < trials.Length; trial++)
                if (found.Place(drawn[trial]) is var place) clouds[trial].Add((place[0], place[1]));
        }
        return new(session, [.. trials.Select((trial, row) => Placed(trial, found.Scores[row], clouds[row], policy.ConfidenceShare))],
            [.. scales.Select((scale, column) => new MappedScale(scale, found.Loadings[0][column], found.Loadings[1][column]))], (found.Share(0), found.Share(1)));
    }

    private static MappedTrial Placed(string trial, IReadOnlyList<double> at, List<(double, double)> cloud, double confidence) =>
        new(trial, at[0], at[1], cloud.Count < 2 ? [] : ConfidenceEllipse.About(at[0], at[1], cloud, confidence).Outline(OutlinePoints));

    private static (double Sum, int Count)[,] Cells(IEnumerable<Score> own, string[] trials, SensoryAttribute[] scales)
    {
        var cells = new (double Sum, int Count)[trials.Length, scales.Length];
        foreach (var score in own)
        {
            ref var cell = ref cells[Array.IndexOf(trials, score.Serving.Trial), Array.IndexOf(scales, score.Attribute)];
            cell = (cell.Sum + score.Points, cell.Count + 1);
        }
        return cells;
    }

    // Means over people after each one's level was taken away, so that who lacks a trial does not shift it; null where a cell has nobody.
    private static double[][]? Centred(IReadOnlyList<(double Sum, int Count)[,]> people, int trials, int scales)
    {
        double[][] means = [.. Enumerable.Range(0, trials).Select(_ => new double[scales])];
        for (var scale = 0; scale < scales; scale++)
        {
            var (sums, counts) = (new double[trials], new int[trials]);
            foreach (var person in people)
            {
                var own = Enumerable.Range(0, trials).Where(trial => person[trial, scale].Count > 0).Select(trial => (Trial: trial, Points: person[trial, scale].Sum / person[trial, scale].Count)).ToArray();
                if (own.Length < 2) continue;
                var level = own.Average(each => each.Points);
                foreach (var (trial, points) in own) (sums[trial], counts[trial]) = (sums[trial] + points - level, counts[trial] + 1);
            }
            if (counts.Contains(0)) return null;
            var middle = Enumerable.Range(0, trials).Average(trial => sums[trial] / counts[trial]);
            for (var trial = 0; trial < trials; trial++) means[trial][scale] = sums[trial] / counts[trial] - middle;
        }
        return means;
    }
}
