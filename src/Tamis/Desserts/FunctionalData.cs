using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What a sheet says of how an ingredient works: bloom, cocoa, fats, dextrose equivalent, solids, acidity. The columns are the same in <c>ingredients.csv</c> and in <c>specifications.csv</c>, where a filled cell wins.</summary>
internal static class FunctionalData
{
    /// <summary>An ingredient with what a row states of it; a blank cell leaves what is known.</summary>
    public static Ingredient Over(Ingredient ingredient, RowReader reader)
    {
        var read = ingredient with
        {
            BloomGrams = reader.Number("bloom", 10, 400) ?? ingredient.BloomGrams,
            CocoaPercent = reader.Percent("cocoa_percent") ?? reader.Percent("cocoa_dry_solids_percent") ?? ingredient.CocoaPercent,
            CocoaButterPercent = reader.Percent("cocoa_butter_percent") ?? ingredient.CocoaButterPercent,
            MilkFatPercent = reader.Percent("milk_fat_percent") ?? ingredient.MilkFatPercent,
            DextroseEquivalentPercent = reader.Number("dextrose_equivalent", 0, 100) ?? ingredient.DextroseEquivalentPercent,
            SolidsPercent = reader.Percent("solids_percent") ?? ingredient.SolidsPercent,
            BrixPercent = reader.Number("brix", 0, 100) ?? ingredient.BrixPercent,
            PH = reader.Number("ph", 0, 14) ?? ingredient.PH,
        };
        if (read.CocoaButterPercent > read.CocoaPercent && reader.Text("cocoa_butter_percent") is not null)
            reader.Note("cocoa_butter_percent", FormattableString.Invariant($"at most the {read.CocoaPercent:0.##} % of cocoa, which cocoa butter is part of"));
        if (read.CocoaButterPercent + read.MilkFatPercent > 100 && reader.Text("milk_fat_percent") is not null)
            reader.Note("milk_fat_percent", "with the cocoa butter, at most 100 %");
        return read;
    }
}
