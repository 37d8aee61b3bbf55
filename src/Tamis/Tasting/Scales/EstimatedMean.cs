using Tamis.Statistics.Comparisons;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Tasting;

/// <summary>The mean of a trial by a model, in points.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Points">The mean.</param>
/// <param name="Range">Its interval for people like these assessors; null where nothing says how sure it is.</param>
/// <param name="ServingCount">How many servings were scored.</param>
public sealed record EstimatedMean(string Trial, double Points, Interval? Range, int ServingCount)
{
    internal static EstimatedMean? Of(string trial, Estimate? estimate, int servings, SensoryAttribute attribute, TastingPolicy policy) =>
        estimate is { } known && double.IsFinite(known.Value) ? new(trial, known.Value, Ranges.Of(known, policy, attribute.LengthPoints), servings) : null;
}

/// <summary>One trial less another by a model, as one of all pairs of trials.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Against">The trial that it is compared with.</param>
/// <param name="Points">The difference, in points.</param>
/// <param name="Range">Its interval, wide enough for all pairs together; null where nothing says how sure it is.</param>
/// <param name="Verdict">What can be said of it, by the interval as printed.</param>
public sealed record TrialPair(string Trial, string Against, double Points, Interval? Range, Verdict Verdict)
{
    /// <summary>The smallest difference that would have been seen among all pairs: half the width of the interval.</summary>
    public double? SmallestGapPoints => Range?.Width / 2;

    /// <summary>The same pair, the other way round.</summary>
    public TrialPair Turned => this with { Trial = Against, Against = Trial, Points = -Points, Range = Range is { } range ? Interval.Between(-range.High, -range.Low) : null };

    internal static TrialPair? Of(PairwiseDifference pair, SensoryAttribute attribute, TastingPolicy policy, RangeQuantiles quantiles)
    {
        if (!double.IsFinite(pair.Difference.Value)) return null;
        var tiny = Ranges.SmallestErrorShare * attribute.LengthPoints;
        if (!(pair.Difference.StandardError > tiny) || !(pair.Difference.Degrees > 0)) return new(pair.First, pair.Second, pair.Difference.Value, null, Verdict.NoSpread);
        var half = quantiles.Of(policy.ConfidenceShare, pair.LevelCount, pair.Difference.Degrees) / Math.Sqrt(2) * pair.Difference.StandardError;
        var (low, high) = (pair.Difference.Value - half, pair.Difference.Value + half);
        return double.IsFinite(half)
            ? new(pair.First, pair.Second, pair.Difference.Value, Interval.Between(low, high), Verdicts.Of(low, high, policy.PrintedStepPoints))
            : new(pair.First, pair.Second, pair.Difference.Value, null, Verdict.NoSpread);
    }
}

/// <summary>Quantiles of the studentized range that were worked out already: the pairs of a balanced tasting all ask for the same one.</summary>
internal sealed class RangeQuantiles
{
    private readonly Dictionary<(double Confidence, int Levels, double Degrees), double> _known = [];

    /// <summary>The quantile, degrees of freedom taken to seven digits: in a report that shows one decimal nobody sees the eighth.</summary>
    public double Of(double confidence, int levels, double degrees)
    {
        var rounded = double.IsFinite(degrees) && degrees > 0 ? Math.Round(degrees, Math.Clamp(6 - (int)Math.Floor(Math.Log10(degrees)), 0, 15)) : degrees;
        if (!_known.TryGetValue((confidence, levels, rounded), out var quantile))
            _known[(confidence, levels, rounded)] = quantile = StudentizedRange.Quantile(confidence, levels, rounded);
        return quantile;
    }
}

/// <summary>A part of the spread of marks.</summary>
/// <param name="From">What varies, as a model names it: the assessor, the assessor in single trials, the plate.</param>
/// <param name="Points">Its standard deviation, in points.</param>
/// <param name="Share">Its share of the variance, 0 to 1.</param>
public sealed record SpreadPart(SpreadFrom From, double Points, double Share)
{
    internal static IReadOnlyList<SpreadPart> Of(MixedFit fit)
    {
        var total = fit.Components.Sum(component => component.Variance) + fit.ResidualVariance;
        return total > 0
            ? [.. fit.Components.Select(component => new SpreadPart(Word(component.Group), component.StandardDeviation, component.Variance / total)),
               new SpreadPart(SpreadFrom.Plate, Math.Sqrt(fit.ResidualVariance), fit.ResidualVariance / total)]
            : [];
    }

    private static SpreadFrom Word(string group) => group switch
    {
        "assessor" => SpreadFrom.Assessor,
        "assessor:trial" => SpreadFrom.AssessorInTrial,
        "make" => SpreadFrom.Make,
        "assessor:tasting" => SpreadFrom.AssessorOnTheDay,
        _ => SpreadFrom.Plate,
    };
}

/// <summary>What makes marks differ besides the trials.</summary>
public enum SpreadFrom
{
    /// <summary>Some people use the top of the scale, some the bottom.</summary>
    Assessor,
    /// <summary>Some people find more in one trial than in another, and find it again.</summary>
    AssessorInTrial,
    /// <summary>People score otherwise on another day.</summary>
    AssessorOnTheDay,
    /// <summary>The same trial made again is another batch.</summary>
    Make,
    /// <summary>What is left from plate to plate.</summary>
    Plate,
}

/// <summary>Turns estimates into intervals, or nothing where nothing says how sure they are.</summary>
internal static class Ranges
{
    // Scores have few digits: an error this far below the scale is rounding of sums, not spread.
    public const double SmallestErrorShare = 1e-7;

    /// <summary>The interval; null where the error is no more than rounding of a scale of this length, or nothing tells it.</summary>
    public static Interval? Of(Estimate estimate, TastingPolicy policy, double lengthPoints)
    {
        if (!(estimate.StandardError > SmallestErrorShare * lengthPoints) || !(estimate.Degrees > 0) || !double.IsFinite(estimate.Degrees) && !double.IsPositiveInfinity(estimate.Degrees)) return null;
        var limits = estimate.Limits(policy.ConfidenceShare);
        return double.IsFinite(limits.Low) && double.IsFinite(limits.High) ? Interval.Between(limits.Low, limits.High) : null;
    }
}
