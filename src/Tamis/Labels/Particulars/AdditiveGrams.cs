using System.Globalization;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>What a serving holds of the additives that trigger a statement, for words that name the grams.</summary>
internal static class AdditiveGrams
{
    /// <summary>The words in braces.</summary>
    public const string Word = "additive_grams", ServingWord = "serving_grams";

    /// <summary>A statement with the grams filled in; what cannot be said names what to supply.</summary>
    public static Particular Filled(Particular particular, ParticularFood food, IReadOnlyList<AdditiveUse> uses)
    {
        if (particular.State != ParticularState.Applies || !particular.Rule.Named.Contains(Word)) return particular;
        AdditiveUse[] met = [.. uses.Where(use => particular.Rule.Additives.Contains(use.Additive.Number, Names.Comparer))];
        if (Array.Find(met, use => Share(use) is null) is { } open) return Lacking($"how much {open.Additive.Name} {open.Ingredient.Name} holds: its share in the supplier’s list");
        if (food.ServingGrams() is not { } serving) return Lacking("a row portion_g in dessert.csv: the serving of stated size");
        var grams = met.Sum(use => Share(use)!.Value * use.IngredientGrams) / food.Mixture.FinishedGrams * serving;
        return particular with
        {
            Wording = particular.Wording.ToDictionary(each => each.Key, each => each.Value.Replace($"{{{Word}}}", Said(grams), StringComparison.Ordinal).Replace($"{{{ServingWord}}}", Said(serving), StringComparison.Ordinal), Names.Comparer),
        };

        Particular Lacking(string supply) => particular with { State = ParticularState.CannotBeSaid, Supply = supply };
    }

    // A mixture of several additives that the kitchen weighs as one does not say how much of each it is.
    private static double? Share(AdditiveUse use) => use.IsOwn ? use.Ingredient.AdditiveNumbers.Count == 1 ? 1 : null
        : use.IsShareKnown ? use.MostGrams / use.IngredientGrams : null;

    private static string Said(double grams) => grams.ToString("0.#", CultureInfo.InvariantCulture);
}
