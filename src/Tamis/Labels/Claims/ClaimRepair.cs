using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>What a swap keeps of what it takes out.</summary>
public enum SwapKeeps
{
    /// <summary>The mass, gram for gram: the food holds more or less water than before.</summary>
    Mass,
    /// <summary>The dry matter: baked to the same water, the food comes to the same mass as before.</summary>
    DryMatter,
}

/// <summary>A swap of two ingredients that would carry a figure over its limit: a hint from the figures, not a recipe.</summary>
/// <param name="Out">What would go.</param>
/// <param name="In">What would come in its place.</param>
/// <param name="MassGrams">How much would go, in grams of what was used; at most all of what is there.</param>
/// <param name="InGrams">How much would come, in grams.</param>
public sealed record ClaimSwap(string Out, string In, double MassGrams, double InGrams);

/// <summary>What would carry a failing claim.</summary>
public static class ClaimRepair
{
    private const int Most = 3;
    private const string Water = "WATER";

    /// <summary>The swaps that would carry a condition in 100 g, smallest first.</summary>
    /// <param name="food">The food.</param>
    /// <param name="condition">The condition that is not met.</param>
    /// <param name="candidates">Ingredients that may come in: those of the formula and of its other trials.</param>
    /// <param name="mayStandFor">Whether one ingredient can take the place of another at all.</param>
    /// <param name="keeps">What a swap keeps; by dry matter, ingredients whose water is not known are passed over.</param>
    /// <remarks>The finished mass is taken to stay as it is: gram for gram as much leaves as before, by dry matter all the water that came with the swap.</remarks>
    public static IReadOnlyList<ClaimSwap> Swaps(ClaimedFood food, ClaimCondition condition, IEnumerable<Ingredient> candidates, Func<Ingredient, Ingredient, bool> mayStandFor, SwapKeeps keeps = SwapKeeps.Mass)
    {
        if (condition.Basis != ClaimBasis.Per100Grams || condition.Figure.Length == 0) return [];
        var (amount, _) = ClaimCheck.FigureOf(food, food.Mixture, condition.Figure, condition.Unit, condition.Origin);
        var needed = (condition.Limit - amount.Known) / 100 * food.Mixture.FinishedGrams;
        if (needed == 0) return [];
        Ingredient[] incoming = [.. candidates.DistinctBy(each => each.Name, Names.Comparer)];
        return [.. (from there in food.Mixture.Parts.GroupBy(part => part.Ingredient.Name, Names.Comparer)
                   let mass = there.Sum(part => part.MassGrams)
                   from other in incoming
                   where !Names.Same(other.Name, there.Key) && mayStandFor(there.First().Ingredient, other)
                   let times = InForOut(there.First().Ingredient, other, keeps)
                   let gain = times * Per100Grams(food, condition, other) - Per100Grams(food, condition, there.First().Ingredient)
                   where gain is { } known && known * needed > 0
                   let swap = needed / gain!.Value * 100
                   where swap <= mass
                   orderby swap
                   select new ClaimSwap(there.Key, other.Name, swap, swap * times!.Value)).Take(Most)];
    }

    // How many grams come in for one that goes; null where it is not known.
    private static double? InForOut(Ingredient leaving, Ingredient coming, SwapKeeps keeps) =>
        keeps == SwapKeeps.Mass ? 1 : DryIn100Grams(leaving) / DryIn100Grams(coming) is { } times && double.IsFinite(times) && times > 0 ? times : null;

    private static double? DryIn100Grams(Ingredient ingredient) => ingredient.Profile?[Water] is { IsKnown: true } water ? 100 - water.Per100Grams : null;

    private static double? Per100Grams(ClaimedFood food, ClaimCondition condition, Ingredient ingredient)
    {
        if (ingredient.Profile is null) return null;
        Mixture alone = new() { Parts = [new(ingredient, 100, 0, new(ingredient.Name, Evidence.Computed))] };
        return ClaimCheck.FigureOf(food, alone, condition.Figure, condition.Unit, condition.Origin).Amount.Whole;
    }
}
