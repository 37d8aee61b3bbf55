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
    /// <exception cref="TableException">The masses of a trial are not all known, or a row compares with a trial that there is none of.</exception>
    public static IReadOnlyList<(ClaimVerdict Verdict, Source Origin)> Asked(Dessert dessert, string trial, string rules) =>
        [.. RowsOf(dessert, trial).Select(each => (ClaimCheck.Of(FoodOf(dessert, trial, rules, OtherOf(dessert, each)), each.Claim), each.Row.Origin("value")))];

    /// <summary>The rows <c>claim</c> of a trial: the claim, and behind a semicolon the trial that a comparative one compares with (<c>reduced fat; T1</c>).</summary>
    internal static IEnumerable<(string Claim, string? Other, SheetRow Row)> RowsOf(Dessert dessert, string trial) =>
        from each in dessert.Facts.RowsOf("claim", trial)
        let parts = each.Value.Split(';', 2, StringSplitOptions.TrimEntries)
        select (parts[0], parts.Length == 2 ? parts[1] : null, each.Row);

    /// <summary>The trial that a row compares with; null where it names none.</summary>
    /// <exception cref="TableException">No trial has the name.</exception>
    internal static string? OtherOf(Dessert dessert, (string Claim, string? Other, SheetRow Row) asked) => asked.Other is not { } other ? null
        : dessert.Batches.FirstOrDefault(batch => Names.Same(batch.Trial, other))?.Trial
            ?? throw new TableException([asked.Row.Problem("value", $"the claim, a semicolon and the trial that it compares with, one of: {string.Join(", ", dessert.Batches.Select(batch => batch.Trial))}")]);

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
