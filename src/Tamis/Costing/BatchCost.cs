using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Costing;

/// <summary>What a batch costs as it is made: every line as bought, every loss paid for by what is left.</summary>
public sealed class BatchCost
{
    private readonly Dictionary<string, ComponentCost> _byName = new(Names.Comparer);

    private BatchCost(Batch batch) => Batch = batch;

    /// <summary>The batch.</summary>
    public Batch Batch { get; }

    /// <summary>Every component with known masses, in the order of the formula.</summary>
    public IReadOnlyList<ComponentCost> Components => field ??= [.. Batch.Components.Select(made => _byName[made.Name])];

    /// <summary>A component; null where the batch has none of this name with known masses.</summary>
    public ComponentCost? Find(string component) => _byName.GetValueOrDefault(component);

    /// <summary>All that is bought for the batch: a component that others take in is counted once.</summary>
    public Amount Total => Components.SelectMany(component => component.Lines).Where(line => line.Inner is null).Aggregate(default(Amount), (sum, line) => sum + line.Cost);

    /// <summary>Works out the costs of a batch.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="priceOf">The price of an ingredient that counts; null where there is none.</param>
    /// <param name="currency">The currency of the prices, for the working.</param>
    public static BatchCost Of(Batch batch, Func<string, PriceInUse?> priceOf, string currency)
    {
        var cost = new BatchCost(batch);
        foreach (var made in batch.Components) cost.Add(made, priceOf, currency);
        return cost;
    }

    private ComponentCost Add(ComponentBatch made, Func<string, PriceInUse?> priceOf, string currency)
    {
        if (_byName.TryGetValue(made.Name, out var known)) return known;
        CostLine[] lines = [.. made.Lines.Select(line => line.IsComponent
            ? new CostLine(line, currency) { Inner = Add(Batch.Find(line.Name)!, priceOf, currency) }
            : new CostLine(line, currency) { Ingredient = IngredientOf(made, line), Price = priceOf(line.Name) })];
        return _byName[made.Name] = new(made, lines, currency);
    }

    private static Ingredient IngredientOf(ComponentBatch made, BatchLine line) => made.In.Parts.First(part => Names.Same(part.Ingredient.Name, line.Name)).Ingredient;
}
