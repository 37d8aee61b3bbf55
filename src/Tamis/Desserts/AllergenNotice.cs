using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What trials contain that some people must not eat, for whoever is about to taste them.</summary>
/// <param name="Contains">Allergens that are in.</param>
/// <param name="MayContain">Allergens that may have got in by way of an ingredient.</param>
/// <param name="NotLookedAt">Ingredients whose allergens nobody has written down: they may hold any.</param>
public sealed record AllergenNotice(IReadOnlyList<string> Contains, IReadOnlyList<string> MayContain, IReadOnlyList<string> NotLookedAt)
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
        string[] contains = Sorted(ingredients.SelectMany(ingredient => ingredient.Allergens ?? []));
        return new(contains, [.. Sorted(ingredients.SelectMany(ingredient => ingredient.MayContain ?? [])).Except(contains, Names.Comparer)],
            Sorted(ingredients.Where(ingredient => ingredient.Allergens is null).Select(ingredient => ingredient.Name)))
        {
            AlsoTell = [.. from told in Listed.Value
                           where ingredients.Any(ingredient => Holds(ingredient.Name, told.Word) || Holds(ingredient.LabelName, told.Word))
                           select told],
        };
    }

    private static bool Holds(string? name, string word) => name is not null && $" {Names.Key(name)} ".Contains($" {Names.Key(word)} ", StringComparison.Ordinal);

    private static string[] Sorted(IEnumerable<string> names) => [.. names.Distinct(Names.Comparer).Order(StringComparer.Ordinal)];
}
