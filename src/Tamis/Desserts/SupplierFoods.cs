using Tamis.Composition;

namespace Tamis.Desserts;

/// <summary>Puts what suppliers declare beside the foods of a composition table.</summary>
public static class SupplierFoods
{
    /// <summary>The rows of a table and, behind them, every ingredient of a store whose document states figures: numbered <c>SHEET 1</c> and on.</summary>
    /// <param name="rows">The rows of a table.</param>
    /// <param name="dessert">A dessert of the store; its day decides which documents count.</param>
    /// <param name="group">The group that they stand in.</param>
    public static CompositionRows With(this CompositionRows rows, Dessert dessert, string group = "Suppliers’ sheets")
    {
        var number = 1;
        foreach (var ingredient in dessert.Store.Ingredients.All)
            if (ingredient.Profile is { } profile && DocumentOf(profile) is { } document) rows = rows.With($"SHEET {number++}", group, profile, document);
        return rows;
    }

    // A pack label or an own estimate is no supplier's sheet.
    private static string? DocumentOf(NutrientProfile profile) =>
        profile.Nutrients.All.Select(nutrient => profile[nutrient.Tag].Source).FirstOrDefault(source => source is { Evidence: Evidence.Supplier })?.Key;
}
