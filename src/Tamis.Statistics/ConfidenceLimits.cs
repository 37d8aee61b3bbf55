namespace Tamis.Statistics;

/// <summary>A two-sided confidence interval, in the unit of what was estimated.</summary>
/// <param name="Low">The lower limit.</param>
/// <param name="High">The upper limit.</param>
public readonly record struct ConfidenceLimits(double Low, double High)
{
    /// <summary>Half the distance between the limits.</summary>
    public double HalfWidth => (High - Low) / 2;

    /// <summary>Whether a value lies between the limits, ends included.</summary>
    public bool Contains(double value) => Low <= value && value <= High;
}
