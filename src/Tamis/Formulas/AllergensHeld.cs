namespace Tamis.Formulas;

/// <summary>What ingredients hold, together, that some people must not eat.</summary>
/// <param name="Contains">Allergens that are in, by the words of the sheets, in order.</param>
/// <param name="MayContain">Allergens that are not in and may have got in by way of an ingredient.</param>
/// <param name="NotLookedAt">Ingredients whose allergens nobody has written down: they may hold any.</param>
public sealed record AllergensHeld(IReadOnlyList<string> Contains, IReadOnlyList<string> MayContain, IReadOnlyList<string> NotLookedAt)
{
    /// <summary>What ingredients hold. A blank of the sheet is unknown, never none.</summary>
    public static AllergensHeld By(IEnumerable<Ingredient> ingredients)
    {
        Ingredient[] all = [.. ingredients.DistinctBy(each => each.Name, Names.Comparer)];
        string[] contains = Sorted(all.SelectMany(each => each.Allergens ?? []));
        return new(contains, [.. Sorted(all.SelectMany(each => each.MayContain ?? [])).Except(contains, Names.Comparer)], [.. all.Where(each => each.Allergens is null).Select(each => each.Name)]);
    }

    private static string[] Sorted(IEnumerable<string> words) => [.. words.Distinct(Names.Comparer).Order(StringComparer.Ordinal)];
}
