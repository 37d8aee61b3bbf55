namespace Tamis.Statistics;

/// <summary>Middle and spread of numbers that a few wild ones do not move.</summary>
public static class RobustSpread
{
    // The median distance of a normal distribution is 0.6745 standard deviations (its quartile): 1 / 0.67449 = 1.4826.
    private const double NormalConsistency = 1.482602218505602;

    /// <summary>The median, and 1.4826 times the median distance from it: the standard deviation where the numbers are normal (Hampel 1974).</summary>
    /// <exception cref="ArgumentException">There are no numbers.</exception>
    public static (double Median, double Deviation) Of(IReadOnlyList<double> values)
    {
        var median = Median(values);
        return (median, NormalConsistency * Median([.. values.Select(value => Math.Abs(value - median))]));
    }

    /// <summary>The middle value, or the mean of the two middle ones.</summary>
    /// <exception cref="ArgumentException">There are no numbers.</exception>
    public static double Median(IReadOnlyList<double> values)
    {
        if (values.Count == 0) throw new ArgumentException("No numbers have no middle.", nameof(values));
        double[] sorted = [.. values.Order()];
        var half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
