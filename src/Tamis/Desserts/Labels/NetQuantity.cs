using System.Globalization;
using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>The net quantity of a pack, how far a single one may fall short, and what a piece of the formula comes to.</summary>
public sealed record NetQuantity
{
    /// <summary>The quantity on the pack, in grams: <c>net_g</c>, or <c>net_ml</c> by <c>density_g_ml</c>; null where <c>dessert.csv</c> does not say it.</summary>
    public required double? NominalGrams { get; init; }

    /// <summary>The quantity on the pack where it is labelled by volume, in millilitres: <c>net_ml</c>, or <c>net_g</c> by <c>density_g_ml</c> of a liquid that the law wants stated so; otherwise null.</summary>
    public required double? NominalMillilitres { get; init; }

    /// <summary>The cell.</summary>
    public required Source? Origin { get; init; }

    /// <summary>How far a single pack may fall short, in grams; null where the rule set has no table or no band takes the quantity.</summary>
    public required decimal? ShortfallGrams { get; init; }

    /// <summary>The band; null as above.</summary>
    public required ShortfallBand? Band { get; init; }

    /// <summary>What a piece comes to by the formula, in grams; null where masses or pieces are not known.</summary>
    public required double? ComputedGrams { get; init; }

    /// <summary>What a piece comes to by the weighed yield, in grams; null where nobody weighed.</summary>
    public required double? WeighedGrams { get; init; }

    /// <summary>What does not agree in the sheets, in sentences.</summary>
    public required IReadOnlyList<string> Problems { get; init; }

    /// <summary>The rules.</summary>
    public required NetQuantityRules Rules { get; init; }

    /// <summary>How a pack of the rule set says it.</summary>
    public required NetQuantityWords Words { get; init; }

    /// <summary>The words of the rule set, with the decimal mark of a language.</summary>
    public required PanelTerms Terms { get; init; }

    /// <summary>The mass of a piece to hold against the pack: weighed where it was, or else computed.</summary>
    public double? PieceGrams => WeighedGrams ?? ComputedGrams;

    /// <summary>The quantity as a pack in a language prints it, with the rule of the wording where the set has one (otherwise grams or millilitres); null where nothing is known of it.</summary>
    /// <param name="language">The language's code.</param>
    public (string Text, RuleOrigin? Origin)? Stated(string language) =>
        (NominalMillilitres ?? NominalGrams) is not { } quantity ? null
        : Words.Stated((decimal)quantity, NominalMillilitres is not null, language) is { } stated ? (Terms.Marked(stated.Text, language), stated.Origin)
        : (Terms.Marked(string.Create(CultureInfo.InvariantCulture, $"{quantity:0.#} {(NominalMillilitres is null ? "g" : "ml")}"), language), null);

    /// <summary>The net quantity of a trial.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    public static NetQuantity Of(Dessert dessert, string trial, string rules)
    {
        var (set, words) = (NetQuantityRules.Of(KitData.Rules(rules)), NetQuantityWords.Of(KitData.Rules(rules)));
        var batch = dessert.Trial(trial);
        var (stated, weight, pieces) = (dessert.Facts.Number("net_ml", batch.Trial), dessert.Facts.Number("net_g", batch.Trial), dessert.Facts.Number("pieces", batch.Trial));
        var density = dessert.Facts.Number("density_g_ml", batch.Trial);
        var nominal = weight ?? stated * density;
        var byVolume = Names.Same(dessert.Facts.Text("state", batch.Trial), "liquid") ? set.LiquidsByVolume : null;
        // The last bits of a division are no millilitre less.
        var volume = stated ?? (byVolume is null || weight is not { } net ? null : net / density is { } millilitres ? Math.Round(millilitres, 6) : null);
        var shortfall = nominal is { } grams ? set.Shortfall((decimal)grams) : null;
        var weighed = batch.Placed is [{ WeighedYieldGrams: { } yield }] && pieces is not null ? yield / pieces : null;
        var computed = batch.Whole is { FinishedGrams: > 0 } whole && pieces is not null ? whole.FinishedGrams / pieces : null;
        List<string> problems = [];
        var (portion, portions) = (dessert.Facts.Number("portion_g", batch.Trial), dessert.Facts.Number("portions", batch.Trial));
        if (portion > nominal) problems.Add(FormattableString.Invariant($"A portion of {portion:0.#} g is more than the {nominal:0.#} g of the pack: mend portion_g or net_g in dessert.csv."));
        else if (portion is { } one && portions is { } many && nominal is { } all && Math.Abs(one * many - all) > 0.02 * all)
            problems.Add(FormattableString.Invariant($"{many:0.#} portions of {one:0.#} g are {one * many:0.#} g, and the pack says {all:0.#} g: mend one of them in dessert.csv."));
        if ((weighed ?? computed) is { } piece && piece < nominal)
            problems.Add(FormattableString.Invariant($"A piece comes to {piece:0.#} g, {(weighed is null ? "by the formula" : "as weighed")}, and the pack says {nominal:0.#} g: the mean must not be less."));
        if (byVolume is not null && volume is null && weight is not null)
            problems.Add($"The food is a liquid, and the pack states its volume ({byVolume}): write net_ml, the quantity in millilitres, or density_g_ml, what 1 ml of it weighs in grams, in dessert.csv.");
        return new()
        {
            NominalGrams = nominal, NominalMillilitres = volume, Origin = dessert.Facts.OriginOf(stated is null ? "net_g" : "net_ml", batch.Trial), ShortfallGrams = shortfall?.Grams, Band = shortfall?.Band,
            ComputedGrams = computed, WeighedGrams = weighed, Problems = problems, Rules = set, Words = words, Terms = PanelTerms.Of(KitData.Rules(rules)),
        };
    }
}
