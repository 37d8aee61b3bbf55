using System.Globalization;

namespace Tamis.Composition;

/// <summary>Fills in what a table does not know, only where somebody asks for it.</summary>
/// <remarks>No sum does this by itself: an estimate counts only in a profile that was made with it (<see cref="NutrientProfile.With"/>),
/// and stays marked as an estimate wherever it is shown. After Greenfield and Southgate (2003), Food Composition Data, chapter on imputed values.</remarks>
public static class Imputation
{
    // What 100 g of a food are; what one of them is follows from the others.
    private static readonly string[] Constituents = ["WATER", "PROCNT", "FAT", "CHOCDF", "ASH", "ALC"];

    /// <summary>From foods that are like it: the middle of their contents, its interval where a further food of that kind would lie (from three foods on; else from the lowest to the highest).</summary>
    /// <param name="table">The table.</param>
    /// <param name="food">The food that lacks the nutrient.</param>
    /// <param name="tag">The nutrient's tagname.</param>
    /// <param name="similar">The foods that are like it, chosen by somebody who knows them; none for the nearest ones of its group by water, protein, fat and carbohydrate.</param>
    /// <returns>The estimate, or null where no such food has the nutrient.</returns>
    /// <exception cref="FoodNotFoundException">There is no such food.</exception>
    /// <exception cref="KeyNotFoundException">There is no such nutrient.</exception>
    public static Imputed? BySimilarFoods(CompositionTable table, string food, string tag, params IReadOnlyList<string> similar)
    {
        var nutrient = table.Nutrients[tag];
        Food[] chosen = [.. similar.Count > 0 ? similar.Select(table.Find) : Nearest(table, table.Find(food), tag)];
        (Food Food, Content Content)[] known = [.. chosen.Select(other => (other, table.Content(other.Id, tag))).Where(pair => pair.Item2.IsOfRecord)];
        if (known.Length == 0) return null;
        double[] values = [.. known.Select(pair => pair.Content.Per100Grams)];
        var mean = values.Average();
        var deviation = values.Length > 1 ? Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1)) : double.NaN;
        var range = LotSpread.Of(mean, values.Length, deviation) ?? (values.Max() > values.Min() ? Interval.Between(values.Min(), values.Max()) : null);
        return Imputed.Of(nutrient, ImputationMethod.SimilarFoods, mean, range, $"mean of {string.Join("; ", known.Select(pair => $"{pair.Food.Name} ({pair.Food.Id})"))}",
            known.Select(pair => ($"{pair.Food.Name}, {nutrient.Word}", pair.Content)));
    }

    /// <summary>As what the other constituents leave of 100 g: water, protein, fat, total carbohydrate, ash or alcohol.</summary>
    /// <param name="profile">The food.</param>
    /// <param name="tag">The missing constituent.</param>
    /// <returns>The estimate, never below zero; null where another constituent but alcohol is unknown as well, or the tag is no constituent.</returns>
    public static Imputed? ByDifference(NutrientProfile profile, string tag)
    {
        if (!Constituents.Contains(tag, StringComparer.OrdinalIgnoreCase)) return null;
        (string Tag, Content Content)[] others = [.. Constituents.Where(other => !other.Equals(tag, StringComparison.OrdinalIgnoreCase)).Select(other => (other, profile[other])).Where(pair => pair.Item2.IsKnown || pair.other != "ALC")];
        if (others.Any(pair => !pair.Content.IsKnown)) return null;
        var rest = 100 - others.Sum(pair => pair.Content.Per100Grams);
        // Each interval that is there widens the rest; without any, none is pretended.
        Interval? range = others.Any(pair => pair.Content.Range is not null)
            ? Interval.Between(Math.Max(0, 100 - others.Sum(pair => pair.Content.Range?.High ?? pair.Content.Per100Grams)), Math.Max(0, 100 - others.Sum(pair => pair.Content.Range?.Low ?? pair.Content.Per100Grams)))
            : null;
        return Imputed.Of(profile.Nutrients[tag], ImputationMethod.Difference, Math.Max(0, rest), range,
            $"100 g less {string.Join(", ", others.Select(pair => profile.Nutrients[pair.Tag].Word))}{(rest < 0 ? string.Create(CultureInfo.InvariantCulture, $"; they leave {rest:0.##} g, which counts as none") : "")}",
            others.Select(pair => (profile.Nutrients[pair.Tag].Word, pair.Content)));
    }

    /// <summary>From what it is made of, after what evaporates.</summary>
    /// <param name="table">The table.</param>
    /// <param name="tag">The nutrient's tagname.</param>
    /// <param name="parts">The foods and their masses in grams as weighed in.</param>
    /// <param name="waterLostGrams">The water that leaves, in grams.</param>
    /// <returns>The estimate; null where a part does not know the nutrient: a part of a sum is no estimate of the whole.</returns>
    /// <exception cref="FoodNotFoundException">There is no such food.</exception>
    /// <exception cref="ArgumentOutOfRangeException">More water leaves than all parts weigh.</exception>
    public static Imputed? ByRecipe(CompositionTable table, string tag, IReadOnlyList<(string Food, double MassGrams)> parts, double waterLostGrams = 0)
    {
        var finished = parts.Sum(part => part.MassGrams) - waterLostGrams;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(finished, nameof(waterLostGrams));
        (Food Food, double MassGrams, Content Content)[] known = [.. parts.Select(part => (table.Find(part.Food), part.MassGrams, table.Content(part.Food, tag)))];
        if (known.Any(part => !part.Content.IsKnown)) return null;
        var lost = tag.Equals("WATER", StringComparison.OrdinalIgnoreCase) ? waterLostGrams * 100 : 0;
        Interval? range = known.Any(part => part.Content.Range is not null)
            ? Interval.Between(Per100Grams(content => content.Range?.Low ?? content.Per100Grams), Per100Grams(content => content.Range?.High ?? content.Per100Grams))
            : null;
        return Imputed.Of(table.Nutrients[tag], ImputationMethod.Recipe, Per100Grams(content => content.Per100Grams), range,
            string.Join("; ", known.Select(part => string.Create(CultureInfo.InvariantCulture, $"{part.MassGrams:0.##} g {part.Food.Name}"))) + (waterLostGrams > 0 ? string.Create(CultureInfo.InvariantCulture, $"; less {waterLostGrams:0.##} g water") : ""),
            known.Select(part => (part.Food.Name, part.Content)));

        double Per100Grams(Func<Content, double> of) => Math.Max(0, (known.Sum(part => part.MassGrams * of(part.Content)) - lost) / finished);
    }

    // Five foods are few enough to be alike and enough for an interval.
    private static IEnumerable<Food> Nearest(CompositionTable table, Food food, string tag) => table.Foods
        .Where(other => other.Id != food.Id && Names.Same(other.Group, food.Group) && table.Content(other.Id, tag).IsOfRecord)
        .Select(other => (Food: other, Far: Far(table.Profile(food.Id), table.Profile(other.Id))))
        .Where(pair => double.IsFinite(pair.Far))
        .OrderBy(pair => pair.Far).ThenBy(pair => pair.Food.Id, StringComparer.Ordinal)
        .Take(5).Select(pair => pair.Food);

    // The mean distance over the constituents that both know; infinite where they share none.
    private static double Far(NutrientProfile left, NutrientProfile right)
    {
        double[] distances = [.. Constituents.Where(tag => left[tag].IsKnown && right[tag].IsKnown).Select(tag => Math.Abs(left[tag].Per100Grams - right[tag].Per100Grams))];
        return distances.Length == 0 ? double.PositiveInfinity : distances.Average();
    }
}
