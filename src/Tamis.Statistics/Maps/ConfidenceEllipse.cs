using MathNet.Numerics.Random;

namespace Tamis.Statistics.Maps;

/// <summary>An ellipse about the place of an item on a map, within which it lies with a stated confidence.</summary>
/// <param name="X">The centre along the first component.</param>
/// <param name="Y">The centre along the second component.</param>
/// <param name="HalfLength">Half the long axis.</param>
/// <param name="HalfWidth">Half the short axis.</param>
/// <param name="AngleRadians">The long axis against the first component, counter-clockwise.</param>
public sealed record ConfidenceEllipse(double X, double Y, double HalfLength, double HalfWidth, double AngleRadians)
{
    /// <summary>Ellipses of all items, by drawing judges again with replacement and placing the means on the map as it is.</summary>
    /// <param name="map">The components of the means over judges; at least two.</param>
    /// <param name="judges">For each judge the table of items by attributes, complete.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <param name="draws">How often the panel is drawn.</param>
    /// <param name="seed">The seed; the same seed gives the same ellipses.</param>
    /// <remarks>The partial bootstrap of Husson, Lê and Pagès (2005), Food Quality and Preference 16, with normal limits.</remarks>
    /// <exception cref="ArgumentException">There are fewer than two judges or fewer than two components.</exception>
    public static IReadOnlyList<ConfidenceEllipse> Of(PrincipalComponents map, IReadOnlyList<double[][]> judges, double confidence, int draws, int seed)
    {
        if (judges.Count < 2 || map.Variances.Count < 2)
            throw new ArgumentException($"Ellipses need two judges and two components; there are {judges.Count} and {map.Variances.Count}.", nameof(judges));
        MersenneTwister random = new(seed);
        double[][][] placed = [.. judges.Select(judge => judge.Select(map.Place).ToArray())];
        var items = map.Scores.Count;
        var drawn = Enumerable.Range(0, items).Select(_ => new List<(double X, double Y)>(draws)).ToArray();
        for (var draw = 0; draw < draws; draw++)
        {
            double[][][] panel = [.. judges.Select(_ => placed[random.Next(placed.Length)])];
            for (var item = 0; item < items; item++) drawn[item].Add((panel.Average(judge => judge[item][0]), panel.Average(judge => judge[item][1])));
        }
        // The squared distance of a bivariate normal point has a χ² of 2 degrees, whose quantile is a logarithm.
        var reach = Math.Sqrt(-2 * Math.Log(1 - confidence));
        return [.. Enumerable.Range(0, items).Select(item => About(map.Scores[item][0], map.Scores[item][1], drawn[item], reach))];
    }

    private static ConfidenceEllipse About(double x, double y, List<(double X, double Y)> points, double reach)
    {
        var (meanX, meanY) = (points.Average(point => point.X), points.Average(point => point.Y));
        var xx = points.Average(point => (point.X - meanX) * (point.X - meanX));
        var yy = points.Average(point => (point.Y - meanY) * (point.Y - meanY));
        var xy = points.Average(point => (point.X - meanX) * (point.Y - meanY));
        var (middle, half) = ((xx + yy) / 2, Math.Sqrt((xx - yy) * (xx - yy) / 4 + xy * xy));
        return new(x, y, reach * Math.Sqrt(middle + half), reach * Math.Sqrt(Math.Max(0, middle - half)), Math.Atan2(2 * xy, xx - yy) / 2);
    }
}
