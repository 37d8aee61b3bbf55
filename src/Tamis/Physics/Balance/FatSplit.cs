using System.Globalization;
using Tamis.Formulas;

namespace Tamis.Physics;

/// <summary>The fat of one ingredient by kind, from its total, its kind and the cocoa butter and milk fat that the sheet states.</summary>
internal sealed class FatSplit(Ingredient ingredient, IngredientKind kind, PartContent[] parts, List<string> remarks)
{
    // Stated to a tenth of a per cent on a pack and to a hundredth in a record: so much is no other fat.
    private const double RoundingGrams = 0.5;

    public void Set()
    {
        var total = ingredient.Profile?["FAT"] is { IsKnown: true } fat ? new PartContent(fat.Per100Grams, "as stated", fat.Source) : PartContent.Unknown;
        if (Stated(BalancePart.CocoaButter, ingredient.CocoaButterPercent) is { } cocoaButter) parts[(int)BalancePart.CocoaButter] = cocoaButter;
        if (Stated(BalancePart.MilkFat, ingredient.MilkFatPercent) is { } milkFat) parts[(int)BalancePart.MilkFat] = milkFat;
        if (!total.IsKnown)
        {
            // A sheet that states the only fat that a kind has states its total.
            if (kind.FatIs is not [var alone] || !parts[(int)alone].IsKnown) return;
            total = parts[(int)alone];
        }
        Split(total);
    }

    private void Split(PartContent total)
    {
        BalancePart[] open = [.. kind.FatIs.Where(part => !parts[(int)part].IsKnown)];
        var stated = BalanceParts.Fats.Where(part => parts[(int)part].IsKnown).Sum(part => parts[(int)part].Per100Grams);
        var left = total.Per100Grams - stated;
        if (left < -RoundingGrams)
            remarks.Add(string.Create(CultureInfo.InvariantCulture, $"{ingredient.Name}: the kinds of fat of its sheet add up to {stated:0.#} g in 100 g, its fat is {total.Per100Grams:0.#} g, of which they are taken as shares"));
        if (open is [var only] && left >= 0)
        {
            parts[(int)only] = new(left, stated > 0 ? "total fat less the kinds that are stated" : "all of its fat", total.Source);
            left = 0;
        }
        else if (left <= RoundingGrams && stated > 0)
        {
            // What is stated is all there is; the record's total, which other figures were made with, wins over the pack's rounding.
            foreach (var part in BalanceParts.Fats.Where(part => parts[(int)part].IsKnown).ToArray())
                parts[(int)part] = parts[(int)part] with { Per100Grams = parts[(int)part].Per100Grams * total.Per100Grams / stated };
            left = 0;
        }
        parts[(int)BalancePart.UnsplitFat] = new(Math.Max(0, left), "total fat less the kinds that are known", total.Source);
        foreach (var part in BalanceParts.Fats)
            if (!parts[(int)part].IsKnown && (left <= RoundingGrams || part is BalancePart.NutFat or BalancePart.EggFat && kind.FatIs.Count > 0))
                parts[(int)part] = new(0, "none by its kind", kind.Source);
    }

    private PartContent? Stated(BalancePart part, double? percent) => percent is { } value
        ? new(value, $"{BalanceParts.Word(part)} of the sheet", ingredient.Origin) : null;
}
