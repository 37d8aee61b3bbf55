namespace Tamis.Verification;

/// <summary>Everything that the kit can recompute, by the name that check files use. Each room lends its own.</summary>
public static class Quantities
{
    /// <summary>The quantities of all rooms.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = Merge(
        CompositionQuantities.All,
        CompositionTableQuantities.All,
        CostQuantities.All,
        HeatQuantities.All,
        LabelQuantities.All,
        IngredientListQuantities.All,
        LabelNameQuantities.All,
        LabelLayoutQuantities.All,
        ClaimQuantities.All,
        ToleranceQuantities.All,
        MixtureQuantities.All,
        MigrationQuantities.All,
        ProductionQuantities.All,
        QuantityQuantities.All,
        ShapeQuantities.All,
        ComparisonQuantities.All,
        StatisticsQuantities.All,
        StructureQuantities.All,
        UncertaintyQuantities.All);

    /// <summary>Several rooms' quantities together.</summary>
    /// <exception cref="InvalidOperationException">Two rooms lend one name.</exception>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> Merge(params IReadOnlyList<IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>>> rooms)
    {
        Dictionary<string, Func<CheckInputs, CheckValue>> all = new(StringComparer.Ordinal);
        foreach (var (name, compute) in rooms.SelectMany(room => room))
            if (!all.TryAdd(name, compute)) throw new InvalidOperationException($"Two rooms lend the quantity '{name}'; give one of them another name.");
        return all;
    }
}
