using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The claims of a dessert: asked for in <c>dessert.csv</c>, and free to be made.</summary>
public static class DessertClaims
{
    /// <summary>A trial as a food that claims are held against.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="other">The trial to compare with; null where the claim needs none.</param>
    /// <exception cref="TableException">The masses of a trial are not all known.</exception>
    public static ClaimedFood FoodOf(Dessert dessert, string trial, string rules, string? other = null)
    {
        var set = KitData.Rules(rules);
        set = set.AsOf(DessertPanels.DayOf(dessert, trial, set));
        return new(CookedMixture.Of(dessert, trial), set)
        {
            IsLiquid = Names.Same(dessert.Facts.Text("state", trial), "liquid"),
            DensityGramsPerMillilitre = dessert.Facts.Number("density_g_ml", trial),
            ServingGrams = dessert.Facts.Number("portion_g", trial),
            ReferenceAmountGrams = dessert.Facts.Number("reference_amount_g", trial) ?? DessertPanels.ReferenceGramsOf(dessert, trial, set),
            Other = other is null ? null : CookedMixture.Of(dessert, other),
        };
    }

    /// <summary>The claims asked for, each with the cell that asks.</summary>
    public static IReadOnlyList<(ClaimVerdict Verdict, Source Origin)> Asked(Dessert dessert, string trial, string rules)
    {
        var food = FoodOf(dessert, trial, rules);
        return [.. dessert.Facts.RowsOf("claim", trial).Select(row => (ClaimCheck.Of(food, row.Value), row.Row.Origin("value")))];
    }

    /// <summary>What would carry the conditions that a claim fails, by swaps of ingredients of one kind (a flour for a flour) among those of all trials, gram for gram or as <c>swap_by</c> of <c>dessert.csv</c> says.</summary>
    /// <exception cref="TableException">The masses of the trial are not all known, or <c>swap_by</c> says something else.</exception>
    public static IReadOnlyList<ClaimSwap> Repairs(Dessert dessert, string trial, string rules, ClaimVerdict verdict)
    {
        var (food, keeps) = (FoodOf(dessert, trial, rules), LabelAsked.SwapBy(dessert, trial));
        Ingredient[] known = [.. dessert.Batches.SelectMany(batch => batch.Components).SelectMany(component => component.Out.Parts).Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer)];
        return [.. verdict.Conditions.Where(condition => condition.Holds == false).SelectMany(condition => ClaimRepair.Swaps(food, condition.Condition, known, AreOfOneKind, keeps))];
    }

    // Cinnamon for eggs would carry much fibre and no cake.
    private static bool AreOfOneKind(Ingredient left, Ingredient right) => IngredientKinds.Kit.Of(left).Name is var kind && kind != IngredientKind.Unknown.Name && kind == IngredientKinds.Kit.Of(right).Name;
}
