using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Looks at the allergens that somebody wrote down: a word that nobody knows would be emphasised on no label and stand on no notice.</summary>
public static class AllergenCells
{
    private static readonly string[] Files = ["ingredients.csv", "specifications.csv"], Columns = ["allergens", "may_contain"];

    /// <summary>The cells with a word that is no allergen of the kit's, also in older documents and in ingredients that no trial uses yet.</summary>
    /// <param name="dessert">A dessert whose sheets can be read.</param>
    public static IReadOnlyList<CellProblem> Problems(Dessert dessert)
    {
        var known = AllergenRules.Of(KitData.Rules(KitData.RuleSetNames[0])).Words;
        return
        [
            .. from sheet in dessert.Sheets.Where(sheet => Files.Contains(sheet.File, Names.Comparer))
               from row in sheet.Rows
               from column in Columns.Intersect(sheet.Columns, Names.Comparer)
               let strange = (Store.LookedAt(new RowReader(row, []).Words(column)) ?? []).Where(word => known.SubstanceOf(word) is null).ToArray()
               where strange.Length > 0
               select row.Problem(column, Expected(strange, known)),
            .. dessert.Batches.SelectMany(batch => dessert.Facts.RowsOf("cross_contact", batch.Trial)).DistinctBy(each => each.Row)
                .Select(each => (each.Row, Strange: each.Value.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Where(word => known.SubstanceOf(word) is null).ToArray()))
                .Where(each => each.Strange.Length > 0).Select(each => each.Row.Problem("value", Expected(each.Strange, known))),
        ];
    }

    private static string Expected(string[] strange, AllergenWords known) =>
        $"allergens that the kit knows, parted by semicolons; {string.Join("; ", strange.Select(word => $"'{word}' is none{(Names.Nearest(word, known.Substances) is { Count: > 0 } near ? $", is it {string.Join(" or ", near)}?" : "")}"))}";
}
