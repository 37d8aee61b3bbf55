using System.Globalization;
using Tamis.Composition;
using Tamis.Formulas;

namespace Tamis.Physics;

/// <summary>What is in 100 g of one ingredient by function, from its composition, its functional data and its kind.</summary>
/// <remarks>Rules, in this order: what is stated counts; what one kind alone can be is that kind (the sugars of cream are lactose); what the stated figures leave is what the kind says (starch in a flour, milk solids in a cream); what a kind never holds is none; all else stays unknown. A figure that a known total leaves no room for is none.</remarks>
public sealed class IngredientParts
{
    /// <summary>Analyses are made apart and rounded: their sum may pass 100 g by this much before the record contradicts itself.</summary>
    private const double MostPer100Grams = 103;

    private readonly PartContent[] _contents;

    private IngredientParts(Ingredient ingredient, IngredientKind kind, PartContent[] contents, double higherSaccharidesMoles, IReadOnlyList<string> remarks) =>
        (Ingredient, Kind, _contents, HigherSaccharidesMolesPer100Grams, Remarks) = (ingredient, kind, contents, higherSaccharidesMoles, remarks);

    /// <summary>The ingredient.</summary>
    public Ingredient Ingredient { get; }

    /// <summary>Its kind.</summary>
    public IngredientKind Kind { get; }

    /// <summary>Moles of higher saccharides in 100 g, from the dextrose equivalent; NaN where that is not known.</summary>
    public double HigherSaccharidesMolesPer100Grams { get; }

    /// <summary>What a reader should know: data that contradict each other, a split that was estimated.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>The content of a part; unknown for the rest, which follows from a whole mixture.</summary>
    public PartContent this[BalancePart part] => part == BalancePart.Rest ? PartContent.Unknown : _contents[(int)part];

    /// <summary>Everything that has a figure, added up, in 100 g.</summary>
    public double KnownPer100Grams => _contents.Where(content => content.IsKnown).Sum(content => content.Per100Grams);

    internal static IngredientParts Of(Ingredient ingredient, IngredientKind kind, GlucoseSyrups syrups)
    {
        List<string> remarks = [];
        var contents = new PartsBuilder(ingredient, kind, syrups, remarks).Build();
        var sum = contents.Where(content => content.IsKnown).Sum(content => content.Per100Grams);
        if (sum > MostPer100Grams)
        {
            remarks.Add(string.Create(CultureInfo.InvariantCulture, $"{ingredient.Name}{Where(contents)}: its figures add up to {sum:0.#} g in 100 g; nothing is computed from them"));
            Array.Fill(contents, PartContent.Unknown);
        }
        return new(ingredient, kind, contents, Moles(ingredient, contents), remarks);
    }

    private static double Moles(Ingredient ingredient, PartContent[] contents)
    {
        var higher = contents[(int)BalancePart.HigherSaccharides];
        if (!higher.IsKnown) return double.NaN;
        if (higher.Per100Grams == 0) return 0;
        var (glucose, maltose) = (contents[(int)BalancePart.Glucose].Per100Grams, contents[(int)BalancePart.Maltose].Per100Grams);
        return ingredient.DextroseEquivalentPercent is { } de && !double.IsNaN(glucose + maltose)
            ? GlucoseSyrups.HigherSaccharidesMoles(de, glucose, maltose, higher.Per100Grams)
            : double.NaN;
    }

    // The largest figure is where a slip is seen first.
    private static string Where(PartContent[] contents) =>
        contents.Where(content => content.IsKnown).MaxBy(content => content.Per100Grams).Source is { Locator.Length: > 0 } source ? $" ({source})" : "";
}
