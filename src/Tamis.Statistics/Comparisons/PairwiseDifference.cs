using MathNet.Numerics;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.Comparisons;

/// <summary>One level less another, judged as one of all pairs of levels.</summary>
/// <param name="First">The level that the other is taken from.</param>
/// <param name="Second">The level that is taken away.</param>
/// <param name="Difference">The difference with its standard error and degrees of freedom.</param>
/// <param name="LevelCount">How many levels are compared with one another.</param>
/// <remarks>
/// Adjusted as Tukey and Kramer do: the difference over its standard error, times √2, is compared with the studentized range of as many
/// means (Tukey 1953; Kramer 1956, Biometrics 12). Exact where all means are equally sure, on the safe side otherwise (Hayter 1984).
/// </remarks>
public sealed record PairwiseDifference(string First, string Second, Estimate Difference, int LevelCount)
{
    /// <summary>The probability of a difference as large between this pair alone, if there were none.</summary>
    public double PlainP => Difference.StandardError > 0 ? Tails.StudentBeyond(Difference.Value / Difference.StandardError, Difference.Degrees) : NoError;

    /// <summary>The probability of a difference as large between any pair, if no level differed from another.</summary>
    public double AdjustedP => Difference.StandardError > 0
        ? StudentizedRange.Above(Constants.Sqrt2 * Math.Abs(Difference.Value / Difference.StandardError), LevelCount, Difference.Degrees)
        : NoError;

    /// <summary>The interval that holds for all pairs together.</summary>
    /// <param name="confidence">Above 0 and below 1.</param>
    public ConfidenceLimits AdjustedLimits(double confidence = 0.95)
    {
        var half = StudentizedRange.Quantile(confidence, LevelCount, Difference.Degrees) / Constants.Sqrt2 * Difference.StandardError;
        return new(Difference.Value - half, Difference.Value + half);
    }

    // Without any spread, what differs differs for certain.
    private double NoError => Difference.Value == 0 ? 1 : 0;
}
