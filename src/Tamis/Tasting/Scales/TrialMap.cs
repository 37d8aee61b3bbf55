using MathNet.Numerics.LinearAlgebra;

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
/// χ² with two degrees of freedom.</remarks>
public sealed record TrialMap(TastingSession Session, IReadOnlyList<MappedTrial> Trials, IReadOnlyList<MappedScale> Scales, (double Across, double Up) Shares)
{
    private const int Draws = 400, OutlinePoints = 48;
    private const double ChiSquareOfTwo = 5.991464547;

    /// <summary>The map of a tasting; null where fewer than three trials were scored on two intensities by enough assessors, or they do not differ.</summary>
    public static TrialMap? Of(TastingLog log, TastingSession session, TastingPolicy? policy = null)
    {
        SensoryAttribute[] scales = [.. log.Attributes.Where(attribute => attribute.Kind == AttributeKind.Intensity && log.Asked(session.Name, attribute))];
        Score[] scores = [.. log.Scores.Where(score => scales.Contains(score.Attribute) && Names.Same(score.Serving.Tasting, session.Name))];
        string[] trials = [.. scores.Select(score => score.Serving.Trial).Distinct().Order(StringComparer.Ordinal)];
        var people = scores.GroupBy(score => score.Serving.Assessor).OrderBy(group => group.Key, StringComparer.Ordinal).Select(own => Cells(own, trials, scales)).ToArray();
        if (trials.Length < 3 || scales.Length < 2 || people.Length < (policy ?? TastingPolicy.Kit).FewestAssessors) return null;
        if (Centred(people, trials.Length, scales.Length) is not { } means) return null;
        var parts = means.Svd();
        var total = parts.S.Sum(value => value * value);
        if (!(total > 1e-12) || parts.S.Count < 2) return null;
        // The sign of a direction is chance; the strongest scale points right and up.
        var directions = Matrix<double>.Build.DenseOfColumnVectors(Turned(parts.VT.Row(0)), Turned(parts.VT.Row(1)));
        var at = means * directions;
        var clouds = trials.Select(_ => new List<(double, double)>()).ToArray();
        SeededOrder random = new(session.Seed ?? 1);
        for (var draw = 0; draw < Draws; draw++)
        {
            if (Centred([.. people.Select(_ => people[random.Below(people.Length)])], trials.Length, scales.Length) is not { } drawn) continue;
            var place = drawn * directions;
            for (var trial = 0; trial < trials.Length; trial++) clouds[trial].Add((place[trial, 0], place[trial, 1]));
        }
        return new(session, [.. trials.Select((trial, row) => new MappedTrial(trial, at[row, 0], at[row, 1], Ellipse(clouds[row], (at[row, 0], at[row, 1]))))],
            [.. scales.Select((scale, row) => new MappedScale(scale, directions[row, 0], directions[row, 1]))], (parts.S[0] * parts.S[0] / total, parts.S[1] * parts.S[1] / total));
    }

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
    private static Matrix<double>? Centred(IReadOnlyList<(double Sum, int Count)[,]> people, int trials, int scales)
    {
        var means = Matrix<double>.Build.Dense(trials, scales);
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
            for (var trial = 0; trial < trials; trial++) means[trial, scale] = sums[trial] / counts[trial] - middle;
        }
        return means;
    }

    private static Vector<double> Turned(Vector<double> direction) => direction[direction.AbsoluteMaximumIndex()] < 0 ? -direction : direction;

    private static (double, double)[] Ellipse(IReadOnlyList<(double X, double Y)> cloud, (double X, double Y) middle)
    {
        if (cloud.Count < 2) return [];
        var (mx, my) = (cloud.Average(point => point.X), cloud.Average(point => point.Y));
        double xx = cloud.Average(point => (point.X - mx) * (point.X - mx)), yy = cloud.Average(point => (point.Y - my) * (point.Y - my)), xy = cloud.Average(point => (point.X - mx) * (point.Y - my));
        // The Cholesky factor of the covariance turns a circle into the ellipse.
        var a = Math.Sqrt(Math.Max(xx, 0));
        var b = a > 0 ? xy / a : 0;
        var c = Math.Sqrt(Math.Max(yy - b * b, 0));
        var radius = Math.Sqrt(ChiSquareOfTwo);
        return [.. Enumerable.Range(0, OutlinePoints).Select(step => 2 * Math.PI * step / OutlinePoints).Select(angle => (middle.X + radius * a * Math.Cos(angle), middle.Y + radius * (b * Math.Cos(angle) + c * Math.Sin(angle))))];
    }
}
