using Tamis.Statistics.Uncertainty;

namespace Tamis.Composition;

/// <summary>What an interval of a content rests on.</summary>
public enum IntervalBasis
{
    /// <summary>The standard deviation of analysed samples: where one further lot will lie.</summary>
    Lots,
    /// <summary>The standard error of analysed samples: where the mean of all lots lies.</summary>
    Mean,
    /// <summary>The rounding of a declared figure.</summary>
    Declaration,
    /// <summary>A stated limit: anywhere between nothing and it.</summary>
    Limit,
    /// <summary>The bounds that an estimate came with.</summary>
    Bounds,
    /// <summary>The spread between foods of the same group: an estimate of the kit, only on request.</summary>
    FoodGroup,
}

/// <summary>The interval of a content, with what it rests on.</summary>
/// <param name="Basis">What it rests on.</param>
/// <param name="Range">Where the content lies in 95 of 100 cases, or between its bounds, in the nutrient's unit.</param>
/// <param name="Number">The content as a number with its standard uncertainty, to be carried through sums.</param>
public sealed record ContentInterval(IntervalBasis Basis, Interval Range, UncertainNumber Number)
{
    /// <summary>The interval that the data of a content give; null where they give none, and then nobody pretends one.</summary>
    public static ContentInterval? Of(Content content) => content switch
    {
        { IsKnown: false } => null,
        { State: ContentState.BelowLimit, Range: { IsPoint: false } range } => new(IntervalBasis.Limit, range, UncertainNumber.Between(range.Low, range.High)),
        { Samples: { } samples, StandardDeviation: { } deviation, Range: { } range } when samples >= LotSpread.FewestSamples =>
            new(IntervalBasis.Lots, range, new(content.Per100Grams, deviation * Math.Sqrt(1 + 1.0 / samples))),
        { Source.Evidence: Evidence.Supplier, Range: { IsPoint: false } range } => new(IntervalBasis.Declaration, range, UncertainNumber.Between(range.Low, range.High)),
        { Range: { IsPoint: false } range } => new(IntervalBasis.Bounds, range, UncertainNumber.Between(range.Low, range.High)),
        _ => null,
    };

    /// <summary>Where the mean of all lots lies: mean ± t(n − 1) · s / √n; null where samples or spread are not known. For what is bought from many lots.</summary>
    public static ContentInterval? OfMean(Content content)
    {
        if (content is not { IsKnown: true, Samples: { } samples and >= LotSpread.FewestSamples, StandardDeviation: { } deviation }) return null;
        var error = deviation / Math.Sqrt(samples);
        var half = Propagation.CoverageFactor(0.95, samples - 1) * error;
        return new(IntervalBasis.Mean, Interval.Between(Math.Max(0, content.Per100Grams - half), content.Per100Grams + half), new(content.Per100Grams, error));
    }

    /// <summary>What a declared figure can have been before it was rounded.</summary>
    /// <param name="declared">The figure as declared, in the nutrient's unit.</param>
    /// <param name="step">The step that it was rounded to, above 0, in the same unit: 0.1 for <c>3.4</c>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero.</exception>
    public static ContentInterval OfDeclaration(double declared, double step)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step);
        var range = Interval.Between(Math.Max(0, declared - step / 2), declared + step / 2);
        return new(IntervalBasis.Declaration, range, UncertainNumber.Between(range.Low, range.High));
    }

    /// <summary>An estimate from how the foods of the same group differ; null where fewer than <paramref name="fewest"/> of them have the nutrient.</summary>
    /// <remarks>Foods differ more than lots of one food do, so this is wide. Only on request: the data themselves give no spread.</remarks>
    /// <exception cref="FoodNotFoundException">There is no such food.</exception>
    public static ContentInterval? OfFoodGroup(CompositionTable table, string food, string tag, int fewest = 5)
    {
        var content = table.Content(food, tag);
        if (!content.IsKnown || !(content.Per100Grams > 0)) return null;
        var group = table.Find(food).Group;
        var spread = FoodGroupSpread.Of(table.Foods.Where(other => Names.Same(other.Group, group)).Select(other => table.Content(other.Id, tag)).Where(other => other.IsOfRecord).Select(other => other.Per100Grams));
        if (spread.Foods < fewest || !(spread.Deviation > 0)) return null;
        var factor = Math.Pow(10, Propagation.CoverageFactor(0.95) * spread.Deviation);
        // The deviation of the logarithm to the base ten as one of the natural logarithm, and that as a standard deviation of the content.
        var natural = spread.Deviation * Math.Log(10);
        return new(IntervalBasis.FoodGroup, Interval.Between(content.Per100Grams / factor, content.Per100Grams * factor),
            new(content.Per100Grams, content.Per100Grams * Math.Sqrt(Math.Exp(natural * natural) - 1), DrawShape.Lognormal));
    }
}
