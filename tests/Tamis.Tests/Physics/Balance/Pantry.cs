using Tamis.Composition;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Tests.Physics;

/// <summary>Ingredients and mixtures for tests of the physics room.</summary>
internal static class Pantry
{
    private static readonly Source Test = new("a test", Evidence.Estimate);

    public static readonly NutrientList Nutrients = KitData.Composition.Nutrients;

    /// <summary>An ingredient of which the given contents are known, in g (sodium in mg) in 100 g.</summary>
    public static Ingredient Of(string name, params (string Tag, double Per100Grams)[] contents) => new()
    {
        Name = name,
        Profile = new(name, Nutrients, [.. Nutrients.All.Select(nutrient => contents.Where(each => each.Tag == nutrient.Tag).Select(each => new Content(ContentState.Measured, each.Per100Grams, null, Test)).DefaultIfEmpty(Content.Unknown).First())]),
    };

    /// <summary>A food of the shipped table.</summary>
    public static Ingredient Food(string id) => new() { Name = KitData.Composition.Find(id).Name, Food = id, Profile = KitData.Composition.Profile(id) };

    public static MixturePart Part(Ingredient ingredient, double massGrams) => new(ingredient, massGrams, 0, Test);

    public static Mixture Mixture(params (Ingredient Ingredient, double MassGrams)[] lines) => new() { Parts = [.. lines.Select(line => Part(line.Ingredient, line.MassGrams))] };
}
