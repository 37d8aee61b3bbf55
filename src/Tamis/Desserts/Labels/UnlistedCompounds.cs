using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Compounds of a dessert that nobody has listed, cell by cell: what stops its labels before anybody draws one.</summary>
public static class UnlistedCompounds
{
    /// <summary>The cells to fill, over all trials and the markets that they are for, each once; none for a dessert that names no market.</summary>
    /// <param name="dessert">A dessert whose sheets can be read.</param>
    public static IReadOnlyList<CellProblem> Problems(Dessert dessert) =>
    [
        .. from batch in dessert.Batches
           where dessert.Trial(batch.Trial).Whole is { FinishedGrams: > 0 }
           from market in dessert.Markets(batch.Trial)
           from problem in dessert.IngredientList(batch.Trial, market.Rules, market.Language).Problems
           where problem.ListOf is not null
           group (problem, market.Rules) by (problem.ListOf, problem.Supply) into ofOne
           select CellOf(dessert, ofOne.Key.ListOf!, ofOne.First().problem, [.. ofOne.Select(each => each.Rules).Distinct(Names.Comparer)]),
    ];

    // The blank cell is that of its document where it has one, otherwise that of the ingredients sheet, which need not have the column yet.
    private static CellProblem CellOf(Dessert dessert, string ingredient, ListProblem problem, IReadOnlyList<string> rules)
    {
        var expected = $"{problem.Supply}: {problem.What} (rules: {string.Join(", ", rules)})";
        if (dessert.Specifications.On(ingredient, dessert.Store.AsOf) is { } document) return document.Row.Problem("ingredient_list", expected);
        var row = dessert.Sheets.First(sheet => Names.Same(sheet.File, "ingredients.csv")).Rows.First(row => Names.Same(row["ingredient"], ingredient));
        return row.Problem("ingredient_list", $"for {row["ingredient"]} {expected}");
    }
}
