using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;
using Tamis.Tests.Composition;

namespace Tamis.Tests.Labels;

/// <summary>The rule sets that the kit ships, and mixtures to label.</summary>
internal static class LabelKit
{
    public static string Folder { get; } = Repository.Path("data", "rules");

    public static RuleSet Eu { get; } = RuleSets.Load(Folder, "eu");

    public static RuleSet Us { get; } = RuleSets.Load(Folder, "us");

    public static RuleSet Gb { get; } = RuleSets.Load(Folder, "gb");

    public static RuleSet Canada { get; } = RuleSets.Load(Folder, "ca");

    public static RuleSet AustraliaNewZealand { get; } = RuleSets.Load(Folder, "au-nz");

    public static RuleSet Codex { get; } = RuleSets.Load(Folder, "codex");

    /// <summary>The nutrients of profiles that are written out in a test.</summary>
    public static NutrientList Nutrients { get; } = new(
    [
        new("WATER", "water", "g"), new("PROCNT", "protein", "g"), new("FAT", "fat", "g"), new("FASAT", "saturates", "g"), new("CHOCDF", "total carbohydrate", "g"),
        new("CHOAVLDF", "carbohydrate", "g"), new("FIBTG", "fibre", "g"), new("SUGAR", "sugars", "g"), new("POLYL", "polyols", "g"), new("OA", "organic acids", "g"),
        new("ALC", "alcohol", "g"), new("NA", "sodium", "mg"),
    ]);

    /// <summary>A profile from what is known in 100 g; every other content is unknown.</summary>
    public static NutrientProfile Profile(string name, double? nitrogenFactor, params (string Tag, double Per100Grams)[] contents) =>
        new(name, Nutrients, [.. Nutrients.All.Select(nutrient => contents.Where(one => one.Tag == nutrient.Tag)
            .Select(one => new Content(ContentState.Measured, one.Per100Grams, null, new("written for a test", Evidence.Computed))).FirstOrDefault(Content.Unknown))], nitrogenFactor);

    /// <summary>A profile with every content that the European panel needs, all zero unless given.</summary>
    public static NutrientProfile Whole(string name, double? nitrogenFactor, params (string Tag, double Per100Grams)[] contents) =>
        Profile(name, nitrogenFactor, [.. Nutrients.All.Select(nutrient => (nutrient.Tag, contents.FirstOrDefault(one => one.Tag == nutrient.Tag).Per100Grams))]);

    public static MixturePart Part(string name, double massGrams, NutrientProfile? profile, int row = 2) =>
        new(new Ingredient { Name = name, Profile = profile }, massGrams, 0, new("formula.csv", Evidence.Sheet, $"row {row}, column T1"));

    /// <summary>Foods of the shipped table by number, grams each, with so much water lost.</summary>
    public static Mixture Foods(double waterLostGrams, params (string Food, double MassGrams)[] foods) => new()
    {
        Parts = [.. foods.Select((food, index) => Part(ShippedTable.Table.Find(food.Food).Name, food.MassGrams, ShippedTable.Table.Profile(food.Food), index + 2))],
        EvaporatedGrams = waterLostGrams,
    };

    public static Mixture Of(params MixturePart[] parts) => new() { Parts = parts };
}
