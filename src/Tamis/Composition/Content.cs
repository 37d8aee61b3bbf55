namespace Tamis.Composition;

/// <summary>What kind of statement a composition table makes about a content.</summary>
public enum ContentState : byte
{
    /// <summary>Nobody has a figure. The default, so that a forgotten value is an honest one.</summary>
    Unknown,
    /// <summary>A figure, analysed or calculated by the table's publisher.</summary>
    Measured,
    /// <summary>Zero, as the publisher states it.</summary>
    Zero,
    /// <summary>There, but too little to put a figure on.</summary>
    Trace,
    /// <summary>Between zero and a stated limit.</summary>
    BelowLimit,
    /// <summary>An estimate of the kit or the kitchen, whose method its source names.</summary>
    Estimated,
    /// <summary>Zero by the nature of the food (no alcohol in a flour), assumed by the kit and marked so.</summary>
    AssumedZero,
}

/// <summary>How much of a nutrient is in 100 g of the edible portion of a food; <c>default</c> is unknown.</summary>
/// <param name="State">What kind of statement it is.</param>
/// <param name="Per100Grams">The figure in the nutrient's unit; NaN where unknown; the middle of 0 and the limit where below a limit; 0 for a trace.</param>
/// <param name="Range">The range of the figure where the data give one, in the nutrient's unit.</param>
/// <param name="Source">Where the figure came from; null where unknown.</param>
public readonly record struct Content(ContentState State, double Per100Grams, Interval? Range, Source? Source)
{
    /// <summary>Not known.</summary>
    public static Content Unknown { get; } = new(ContentState.Unknown, double.NaN, null, null);

    /// <summary>How many samples were analysed; null where the data do not say.</summary>
    public int? Samples { get; init; }

    /// <summary>The standard deviation of the samples, in the nutrient's unit; null where the data do not say.</summary>
    public double? StandardDeviation { get; init; }

    /// <summary>Whether there is a figure.</summary>
    public bool IsKnown => State != ContentState.Unknown;

    /// <summary>Whether the figure stands in a published record or a document, and was not filled in by the kit.</summary>
    public bool IsOfRecord => State is not (ContentState.Unknown or ContentState.Estimated or ContentState.AssumedZero);

    /// <summary>Between zero and a stated limit.</summary>
    /// <exception cref="ArgumentException"><paramref name="limit"/> is negative or not finite.</exception>
    public static Content Below(double limit, Source source) => new(ContentState.BelowLimit, limit / 2, Interval.Between(0, limit), source);

    /// <summary>A figure with what is known of its samples; the range is that of a single lot, see <see cref="LotSpread"/>.</summary>
    public static Content Spread(ContentState state, double per100Grams, Source source, int? samples, double standardDeviation, bool canBeNegative = false) =>
        new(state, per100Grams, LotSpread.Of(per100Grams, samples, standardDeviation, canBeNegative), source)
        {
            Samples = double.IsNaN(standardDeviation) || samples == int.MaxValue ? null : samples,
            StandardDeviation = standardDeviation > 0 ? standardDeviation : null,
        };
}

/// <summary>The contents of one food or ingredient, for every nutrient of a list.</summary>
public sealed class NutrientProfile
{
    private readonly Content[] _contents;
    private readonly double[] _per100Grams;

    /// <summary>Makes a profile; one content for each nutrient of the list.</summary>
    public NutrientProfile(string name, NutrientList nutrients, IReadOnlyList<Content> contents, double? nitrogenFactor = null)
    {
        if (contents.Count != nutrients.Count)
            throw new ArgumentException($"{nutrients.Count} nutrients but {contents.Count} contents; give one content a nutrient.", nameof(contents));
        Name = name;
        Nutrients = nutrients;
        NitrogenFactor = nitrogenFactor;
        _contents = [.. contents];
        _per100Grams = [.. contents.Select(content => content.IsKnown ? content.Per100Grams : double.NaN)];
    }

    /// <summary>The name of the food, document or ingredient.</summary>
    public string Name { get; }

    /// <summary>The nutrients, in the order of the contents.</summary>
    public NutrientList Nutrients { get; }

    /// <summary>Grams of protein to a gram of nitrogen that the protein figure was made with; null where the data do not say.</summary>
    public double? NitrogenFactor { get; }

    /// <summary>The contents in 100 g, NaN where unknown, in the order of the nutrients.</summary>
    public ReadOnlySpan<double> Per100Grams => _per100Grams;

    /// <summary>The content of a nutrient; unknown where the list does not have it.</summary>
    public Content this[string tag] => Nutrients.IndexOf(tag) is var i and >= 0 ? _contents[i] : Content.Unknown;

    /// <summary>The content of a nutrient by its column.</summary>
    public Content this[int column] => _contents[column];

    /// <summary>The same profile with a content that follows from what the food is.</summary>
    /// <exception cref="ArgumentException">The content is known already, or the list of nutrients does not have it.</exception>
    public NutrientProfile WithDerived(string tag, Content content)
    {
        if (Nutrients.IndexOf(tag) is not (var at and >= 0) || this[at].IsKnown) throw new ArgumentException($"{Name} has a figure for {tag}, or its list does not have it.", nameof(tag));
        var contents = (Content[])_contents.Clone();
        contents[at] = content;
        return new(Name, Nutrients, contents, NitrogenFactor);
    }

    /// <summary>The same profile after cooking: of each nutrient that the factors speak of so much as stays, and unknown where they state no factor.</summary>
    /// <remarks>Contents stay those of 100 g as weighed in: what leaves as mass is a loss and not a retention.</remarks>
    /// <param name="retention">The food and what is done with it.</param>
    public NutrientProfile Cooked(Retention retention)
    {
        Content[] contents = [.. _contents.Select((content, at) => !content.IsKnown || !retention.SpeaksOf(Nutrients.All[at].Tag) || retention.KeptShare(Nutrients.All[at].Tag) is 1 ? content
            : retention.KeptShare(Nutrients.All[at].Tag) is not { } share ? Content.Unknown
            : content with
            {
                State = content.State is ContentState.Measured ? ContentState.Estimated : content.State,
                Per100Grams = content.Per100Grams * share,
                Range = content.Range is { } range ? Interval.Between(range.Low * share, range.High * share) : null,
                StandardDeviation = content.StandardDeviation * share,
                Source = new(FormattableString.Invariant($"{content.Source?.ToString() ?? Name}, of which {share * 100:0.#} % stay"), Evidence.Computed, $"{retention.Key} ({retention.Description})"),
            })];
        return new(Name, Nutrients, contents, NitrogenFactor);
    }

    /// <summary>The same profile with contents that somebody asked to have filled in.</summary>
    /// <exception cref="ArgumentException">One of them is known already: an estimate never takes the place of a figure.</exception>
    public NutrientProfile With(params IReadOnlyList<Imputed> imputed)
    {
        var contents = (Content[])_contents.Clone();
        foreach (var each in imputed)
        {
            if (this[each.Tag].IsKnown) throw new ArgumentException($"{Name} has a figure for {Nutrients[each.Tag].Word}; an estimate never takes its place.", nameof(imputed));
            contents[Nutrients.IndexOf(each.Tag)] = each.Content;
        }
        return new(Name, Nutrients, contents, NitrogenFactor);
    }
}
