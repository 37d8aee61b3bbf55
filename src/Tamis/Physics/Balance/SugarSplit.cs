using Tamis.Formulas;

namespace Tamis.Physics;

/// <summary>The sugars of one ingredient by species, from the total and what is stated of each.</summary>
internal sealed class SugarSplit(Ingredient ingredient, IngredientKind kind, GlucoseSyrups syrups, PartContent[] parts)
{
    private static readonly (BalancePart Part, string Tag)[] Species =
    [
        (BalancePart.Sucrose, "SUCS"), (BalancePart.Glucose, "GLUS"), (BalancePart.Fructose, "FRUS"),
        (BalancePart.Galactose, "GALS"), (BalancePart.Lactose, "LACS"), (BalancePart.Maltose, "MALS"),
    ];

    // Less than this in 100 g of what the total leaves is its rounding.
    private const double RoundingGrams = 0.05;

    public void Set()
    {
        foreach (var (part, tag) in Species) parts[(int)part] = Stated(tag);
        BalancePart[] open = [.. Species.Select(each => each.Part).Where(part => !parts[(int)part].IsKnown)];
        var known = Species.Where(each => parts[(int)each.Part].IsKnown).Sum(each => parts[(int)each.Part].Per100Grams);
        var total = Stated("SUGAR");
        if (!total.IsKnown && open.Length == 0) total = new(known, "its sugars added up", parts[(int)BalancePart.Sucrose].Source);
        if (!total.IsKnown && open.Length == Species.Length && kind.HasNone(BalancePart.UnsplitSugars)) total = None();
        if (!total.IsKnown)
        {
            if (open.Length == Species.Length) ByDextroseEquivalent();
            return;
        }
        Split(total, known, open);
    }

    private void Split(PartContent total, double known, BalancePart[] open)
    {
        var left = total.Per100Grams - known;
        var unsplit = 0.0;
        if (left <= RoundingGrams || total.Per100Grams == 0)
        {
            // Species analysed apart may add up to a little more than their total: they are a split of it.
            if (left < 0) foreach (var (part, _) in Species) parts[(int)part] = parts[(int)part] with { Per100Grams = parts[(int)part].Per100Grams * total.Per100Grams / known };
            Close(open);
            unsplit = Math.Max(0, left);
        }
        else if (kind.SugarsAre is { } only && (open.Contains(only) || only == BalancePart.Trehalose))
        {
            Close(open);
            parts[(int)only] = new(left, "the sugars that are not stated by kind", total.Source);
        }
        else if (open is [var last]) parts[(int)last] = new(left, "total sugars less the others", total.Source);
        else unsplit = left;
        if (!parts[(int)BalancePart.Trehalose].IsKnown && !(unsplit > RoundingGrams && open.Length > 0)) parts[(int)BalancePart.Trehalose] = None();
        parts[(int)BalancePart.UnsplitSugars] = new(unsplit, "total sugars less those stated by kind", total.Source);
    }

    private void Close(IEnumerable<BalancePart> open)
    {
        foreach (var part in open) parts[(int)part] = None();
    }

    private void ByDextroseEquivalent()
    {
        if (kind.CarbohydrateIs != BalancePart.HigherSaccharides || ingredient.DextroseEquivalentPercent is not { } de || !parts[(int)BalancePart.Water].IsKnown) return;
        var dry = (100 - parts[(int)BalancePart.Water].Per100Grams) / 100;
        var (glucose, maltose, source) = syrups.At(de);
        foreach (var (part, _) in Species) parts[(int)part] = None();
        parts[(int)BalancePart.Glucose] = new(glucose * dry, "typical for its dextrose equivalent", source);
        parts[(int)BalancePart.Maltose] = new(maltose * dry, "typical for its dextrose equivalent", source);
        parts[(int)BalancePart.Trehalose] = parts[(int)BalancePart.UnsplitSugars] = None();
    }

    private PartContent Stated(string tag) => ingredient.Profile?[tag] is { IsKnown: true } content ? new(content.Per100Grams, "as stated", content.Source) : PartContent.Unknown;

    private PartContent None() => new(0, "none beside the others", kind.Source);
}
