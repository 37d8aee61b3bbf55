using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What trials contain that some people must not eat, for whoever is about to taste them.</summary>
/// <param name="Held">The allergens of their ingredients.</param>
public sealed record AllergenNotice(AllergensHeld Held)
{
    private static readonly Lazy<IReadOnlyList<(string Word, string Why)>> Listed = new(() =>
        [.. SheetFile.Read(Path.Combine(KitFolder.Data("tasting"), "also-tell.csv")).Rows.Select(row => (row["word"], row["why"]))]);

    /// <summary>What else some people do not or must not eat, with the reason: gelatine, alcohol.</summary>
    public IReadOnlyList<(string What, string Why)> AlsoTell { get; init; } = [];

    /// <summary>The notice for several trials together, so that it tells nothing of which plate is which.</summary>
    /// <remarks>Every line of every component counts, also one that is strained out again. A blank in the store is unknown, never none.</remarks>
    public static AllergenNotice Of(Dessert dessert, IEnumerable<string> trials)
    {
        Ingredient[] ingredients = [.. trials.SelectMany(trial => dessert.Trial(trial).Formula.Components).SelectMany(component => component.Lines
                .Where(line => line.Quantity is { Kind: QuantityKind.Rest } or { Range.High: > 0 })).Select(line => line.Name).Distinct(Names.Comparer)
            .Where(name => !dessert.Batches.Any(batch => batch.Formula.Find(name) is not null)).Select(dessert.Store.Ingredients.FindOrBare)];
        return new(AllergensHeld.By(ingredients))
        {
            AlsoTell = [.. from told in Listed.Value
                           where ingredients.Any(ingredient => Names.HoldsWhole(ingredient.Name, told.Word) || ingredient.LabelName is { } label && Names.HoldsWhole(label, told.Word))
                           select told],
        };
    }
}
