using System.Collections.Concurrent;
using MathNet.Numerics.Distributions;

namespace Tamis.Composition;

/// <summary>Where the content of one further lot of a food will lie, from the lots that were analysed.</summary>
/// <remarks>A kitchen weighs in one lot, not the average of all lots: the range is the two-sided 95 % prediction interval
/// of a normal sample, mean ± t(n − 1) · s · √(1 + 1/n) (ISO 16269-8:2004, from memory). It needs three samples;
/// two say next to nothing about a spread. It never reaches below zero.</remarks>
public static class LotSpread
{
    /// <summary>The fewest samples from which a range is given.</summary>
    public const int FewestSamples = 3;

    private static readonly ConcurrentDictionary<int, double> Factors = new();

    /// <summary>The half-width of the range in standard deviations of the sample.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than <see cref="FewestSamples"/> samples.</exception>
    public static double Factor(int samples) => samples >= FewestSamples
        ? Factors.GetOrAdd(samples, n => StudentT.InvCDF(0, 1, n - 1, 0.975) * Math.Sqrt(1 + 1.0 / n))
        : throw new ArgumentOutOfRangeException(nameof(samples), samples, $"A range needs {FewestSamples} samples or more.");

    /// <summary>The range, or null where samples or spread do not give one.</summary>
    /// <param name="mean">The mean of the samples.</param>
    /// <param name="samples">How many samples were analysed.</param>
    /// <param name="standardDeviation">Their standard deviation, in the unit of the mean; NaN where not known.</param>
    /// <param name="canBeNegative">Whether the content may lie below zero (a difference of two contents can).</param>
    public static Interval? Of(double mean, int? samples, double standardDeviation, bool canBeNegative = false)
    {
        if (samples is not >= FewestSamples || !(standardDeviation > 0)) return null;
        var half = Factor(samples.Value) * standardDeviation;
        return Interval.Between(canBeNegative ? mean - half : Math.Max(0, mean - half), mean + half);
    }
}
