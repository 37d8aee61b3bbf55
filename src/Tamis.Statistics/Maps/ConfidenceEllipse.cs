namespace Tamis.Statistics.Maps;

/// <summary>An ellipse about the place of an item on a map, within which it lies with a stated confidence.</summary>
/// <param name="X">The centre along the first component.</param>
/// <param name="Y">The centre along the second component.</param>
/// <param name="HalfLength">Half the long axis.</param>
/// <param name="HalfWidth">Half the short axis.</param>
/// <param name="AngleRadians">The long axis against the first component, counter-clockwise.</param>
public sealed record ConfidenceEllipse(double X, double Y, double HalfLength, double HalfWidth, double AngleRadians)
{
    /// <summary>The ellipse of an item whose place was drawn again and again.</summary>
    /// <param name="x">The place itself, along the first component.</param>
    /// <param name="y">The place itself, along the second component.</param>
    /// <param name="drawn">The places that were drawn; two or more.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <remarks>The spread of the draws with normal limits, as in the partial bootstrap of Husson, Lê and Pagès (2005), Food Quality and Preference 16.</remarks>
    /// <exception cref="ArgumentException">There are fewer than two draws.</exception>
    public static ConfidenceEllipse About(double x, double y, IReadOnlyCollection<(double X, double Y)> drawn, double confidence)
    {
        if (drawn.Count < 2) throw new ArgumentException($"An ellipse needs two draws; there are {drawn.Count}.", nameof(drawn));
        // The squared distance of a bivariate normal point has a χ² of 2 degrees, whose quantile is a logarithm.
        var reach = Math.Sqrt(-2 * Math.Log(1 - confidence));
        var (meanX, meanY) = (drawn.Average(point => point.X), drawn.Average(point => point.Y));
        var xx = drawn.Average(point => (point.X - meanX) * (point.X - meanX));
        var yy = drawn.Average(point => (point.Y - meanY) * (point.Y - meanY));
        var xy = drawn.Average(point => (point.X - meanX) * (point.Y - meanY));
        var (middle, half) = ((xx + yy) / 2, Math.Sqrt((xx - yy) * (xx - yy) / 4 + xy * xy));
        return new(x, y, reach * Math.Sqrt(middle + half), reach * Math.Sqrt(Math.Max(0, middle - half)), Math.Atan2(2 * xy, xx - yy) / 2);
    }

    /// <summary>Points of the ellipse, counter-clockwise from the end of the long axis.</summary>
    /// <param name="count">How many.</param>
    public IReadOnlyList<(double X, double Y)> Outline(int count) => [.. Enumerable.Range(0, count).Select(step => 2 * Math.PI * step / count).Select(turn =>
    {
        var (along, aside) = (HalfLength * Math.Cos(turn), HalfWidth * Math.Sin(turn));
        return (X + along * Math.Cos(AngleRadians) - aside * Math.Sin(AngleRadians), Y + along * Math.Sin(AngleRadians) + aside * Math.Cos(AngleRadians));
    })];
}
