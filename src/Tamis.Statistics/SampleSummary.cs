namespace Tamis.Statistics;

/// <summary>What a plain sample says: how many values, their mean and their spread.</summary>
/// <param name="Count">How many values there are.</param>
/// <param name="Mean">Their mean; NaN for an empty sample.</param>
/// <param name="StandardDeviation">The square root of the sum of squares about the mean over (count − 1); NaN below two values.</param>
public readonly record struct SampleSummary(int Count, double Mean, double StandardDeviation)
{
    /// <summary>The standard error of the mean; NaN below two values.</summary>
    public double StandardError => StandardDeviation / Math.Sqrt(Count);

    /// <summary>Sums up a sample.</summary>
    /// <remarks>
    /// Deviations are taken from the first value before anything is summed, so that values which agree in their leading digits keep the
    /// digits in which they differ; the mean is corrected by the mean of what is left, and the sum of squares by the square of that
    /// (the corrected two-pass method: Chan, Golub and LeVeque 1983).
    /// </remarks>
    public static SampleSummary Of(IReadOnlyCollection<double> values)
    {
        if (values.Count == 0) return new(0, double.NaN, double.NaN);
        var origin = values.First();
        var shift = values.Sum(value => value - origin) / values.Count;
        double squares = 0, left = 0;
        foreach (var value in values)
        {
            var deviation = value - origin - shift;
            squares += deviation * deviation;
            left += deviation;
        }
        var variance = values.Count > 1 ? Math.Max(0, squares - left * left / values.Count) / (values.Count - 1) : double.NaN;
        return new(values.Count, origin + (shift + left / values.Count), Math.Sqrt(variance));
    }

    /// <summary>The interval of the mean by Student's t, or <see langword="null"/> below two values.</summary>
    /// <param name="confidence">Above 0 and below 1.</param>
    public ConfidenceLimits? MeanLimits(double confidence = 0.95)
    {
        if (Count < 2) return null;
        var half = Tails.StudentTwoSided(confidence, Count - 1) * StandardError;
        return new(Mean - half, Mean + half);
    }
}
