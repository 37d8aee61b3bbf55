namespace Tamis.Physics;

/// <summary>Finds the least changes of one or two masses under straight limits.</summary>
/// <param name="windows">The windows over all lines.</param>
/// <param name="masses">The present mass of each line, in grams.</param>
internal sealed class MendingSearch(IReadOnlyList<LinearWindow> windows, double[] masses)
{
    private const double Tolerance = 1e-9;
    private const double LeastChangeGrams = 1e-6;

    /// <summary>A change that helps.</summary>
    internal sealed record Way(IReadOnlyList<(int Line, double ToGrams)> Changes, double MovedGrams);

    /// <summary>The least change of each line, and of each pair of lines that moves less than either of them alone.</summary>
    public IEnumerable<Way> Ways(IReadOnlyList<int> free)
    {
        Dictionary<int, double> alone = [];
        foreach (var line in free)
            if (Single(line) is { } way)
            {
                alone[line] = way.MovedGrams;
                yield return way;
            }
        for (var i = 0; i < free.Count; i++)
            for (var j = i + 1; j < free.Count; j++)
                if (Pair(free[i], free[j]) is { } way
                    && way.MovedGrams < Math.Min(alone.GetValueOrDefault(free[i], double.PositiveInfinity), alone.GetValueOrDefault(free[j], double.PositiveInfinity)) - LeastChangeGrams
                    && way.Changes.All(change => Math.Abs(change.ToGrams - masses[change.Line]) > LeastChangeGrams))
                    yield return way;
    }

    private Way? Single(int line)
    {
        var (low, high) = (0.0, double.PositiveInfinity);
        foreach (var window in windows)
            foreach (var (a, _, c) in window.Limits(masses, line, line))
            {
                if (a > Tolerance) low = Math.Max(low, c / a);
                else if (a < -Tolerance) high = Math.Min(high, c / a);
                else if (c > Tolerance) return null;
            }
        if (low > high) return null;
        var to = Math.Clamp(masses[line], low, high);
        return new([(line, to)], Math.Abs(to - masses[line]));
    }

    private Way? Pair(int x, int y)
    {
        List<(double A, double B, double C)> limits = [(1, 0, 0), (0, 1, 0)];
        foreach (var window in windows) limits.AddRange(window.Limits(masses, x, y));
        // The present masses are no limits, but the cost bends there.
        List<(double A, double B, double C)> edges = [.. limits, (1, 0, masses[x]), (0, 1, masses[y])];
        Way? best = null;
        for (var i = 0; i < edges.Count; i++)
            for (var j = i + 1; j < edges.Count; j++)
            {
                var (a, b) = (edges[i], edges[j]);
                var determinant = a.A * b.B - a.B * b.A;
                if (Math.Abs(determinant) < 1e-12) continue;
                var (toX, toY) = ((a.C * b.B - a.B * b.C) / determinant, (a.A * b.C - a.C * b.A) / determinant);
                var moved = Math.Abs(toX - masses[x]) + Math.Abs(toY - masses[y]);
                if (best is not null && moved >= best.MovedGrams || !limits.TrueForAll(limit => limit.A * toX + limit.B * toY >= limit.C - Slack(limit, toX, toY))) continue;
                best = new([(x, Math.Max(0, toX)), (y, Math.Max(0, toY))], moved);
            }
        return best;
    }

    // A corner lies on its own two limits only to the last digits.
    private static double Slack((double A, double B, double C) limit, double x, double y) => Tolerance * (1 + Math.Abs(limit.A * x) + Math.Abs(limit.B * y) + Math.Abs(limit.C));
}
