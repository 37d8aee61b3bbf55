using Tamis.Statistics.Uncertainty;

namespace Tamis.Labels;

/// <summary>How sure a declared figure is.</summary>
/// <param name="Line">The figure.</param>
/// <param name="Declared">The number that is printed, in the unit of the figure; where words are printed, the upper end of what they stand for.</param>
/// <param name="Number">The figure of one pack with its standard uncertainty to first order.</param>
/// <param name="Range">Where it lies in 95 of 100 cases, to first order and no lower than zero.</param>
/// <param name="SpreadShare">The share of the amount, 0 to 1, that comes from contents whose spread is known.</param>
public sealed record FigureCertainty(PanelLine Line, double Declared, UncertainNumber Number, Interval Range, double SpreadShare)
{
    /// <summary>The authority's tolerance; null where it lists none.</summary>
    public Tolerance? Tolerance { get; init; }

    /// <summary>What it accepts, in the unit of the figure: from minus infinity or to infinity where it sets no limit on a side; null where it lists no tolerance.</summary>
    /// <remarks>What the law itself prints as zero or in words is accepted for that print, however small the percentage of it.</remarks>
    public (double Lowest, double Highest)? Accepted { get; init; }

    /// <summary>The probability that the analysis of one pack falls outside, to first order and from the spreads that are known: too small where <see cref="IsRangeKnown"/> is false. Null where there is no tolerance.</summary>
    public double? OutsideProbability { get; init; }

    /// <summary>The same for the sample that the authority takes: packs put together, analyses averaged; null where it takes one pack and analyses once, or there is no tolerance.</summary>
    public double? SampleProbability { get; init; }

    /// <summary>What each ingredient, and the water that leaves, has of the variance, 0 to 1, largest first: the first one is to be analysed first.</summary>
    public IReadOnlyList<(string Ingredient, double Share)> Shares { get; init; } = [];

    /// <summary>Whether the spread is known for as much of the amount as the rule set asks before a range is shown.</summary>
    public bool IsRangeKnown => Number.StandardUncertainty > 0 && SpreadShare * 100 >= Line.Panel.Rules.KnownSpreadPercent;
}

/// <summary>A figure as draws have it.</summary>
/// <param name="Mean">Its mean, in its unit.</param>
/// <param name="StandardDeviation">Its standard deviation.</param>
/// <param name="Outside">The share of draws of one pack outside the tolerance; null where there is none.</param>
/// <param name="SampleOutside">The same for the authority's sample; null where it takes one pack and analyses once.</param>
public sealed record DrawnFigure(double Mean, double StandardDeviation, double? Outside, double? SampleOutside);
