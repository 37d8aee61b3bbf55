using System.Globalization;
using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>What can be said of a statement and a food.</summary>
public enum ParticularState
{
    /// <summary>The food must bear it.</summary>
    Applies,
    /// <summary>Nobody can say: something is missing.</summary>
    CannotBeSaid,
    /// <summary>It would apply, and an exemption that the kitchen asks for lifts it: a person judges.</summary>
    Lifted,
    /// <summary>The food need not bear it.</summary>
    DoesNotApply,
}

/// <summary>A statement held against a food.</summary>
/// <param name="Rule">The statement.</param>
/// <param name="State">What can be said.</param>
/// <param name="Because">Why, in words.</param>
/// <param name="Amount">What the content comes to, in <see cref="Unit"/>; null where the statement hangs on none, nothing is in it, or it is said by volume and no density is known.</param>
/// <param name="Supply">What to supply; empty where nothing.</param>
public sealed record Particular(ParticularRule Rule, ParticularState State, string Because, Amount? Amount, string Supply)
{
    /// <summary>The wording by language, with what the law wants filled in: a content, an additive's name, what the sheets say.</summary>
    public IReadOnlyDictionary<string, string> Wording { get; init; } = Rule.Wording;

    /// <summary>The unit of the amount and of the limit, as this food is sold: <c>mg/100 ml</c>.</summary>
    public string Unit { get; init; } = Rule.Unit;

    /// <summary>The wording in a language; null where there is none: a pack in that language cannot be printed.</summary>
    public string? In(string language) => Wording.GetValueOrDefault(language);
}

/// <summary>What the statements of a pack hang on.</summary>
public sealed record ParticularFood
{
    /// <summary>What the food is made of.</summary>
    public required Mixture Mixture { get; init; }

    /// <summary>How much a serving of stated size is, in grams, for a statement that speaks of one; null where nobody said.</summary>
    public Func<double?> ServingGrams { get; init; } = () => null;

    /// <summary>The category of food; null where nobody said.</summary>
    public string? Category { get; init; }

    /// <summary>What the sheets say, by key; null where they do not.</summary>
    public Func<string, string?> Says { get; init; } = _ => null;

    /// <summary>Keys that the sheets should say, because the method or the list makes them matter; other keys that are not there mean no.</summary>
    public IReadOnlyList<string> Asked { get; init; } = [];

    /// <summary>A figure that the document of an ingredient states, by its column; null where it does not.</summary>
    public Func<Ingredient, string, StatedFigure?> Stated { get; init; } = (_, _) => null;

    /// <summary>Whether it is sold by volume, and its nutrition panel speaks of 100 ml.</summary>
    public bool IsLiquid { get; init; }

    /// <summary>What 1 ml of the food as sold weighs, in grams; null where nobody said.</summary>
    public double? DensityGramsPerMillilitre { get; init; }

    /// <summary>Exemptions that the kitchen asks for.</summary>
    public IReadOnlyList<string> Exemptions { get; init; } = [];
}

/// <summary>Holds the statements of a rule set against a food.</summary>
public static class Particulars
{
    private const string CategoryWanted = "food_category in dessert.csv";
    private const string DensityWanted = "a row density_g_ml in dessert.csv: what 1 ml of the food as sold weighs in grams, for a content by volume";

    /// <summary>Every statement of the rule set, in the order of its file, with what can be said of it.</summary>
    /// <param name="food">The food.</param>
    /// <param name="rules">The rule set.</param>
    /// <param name="day">The day whose rules count; with no day, those that have no end.</param>
    public static IReadOnlyList<Particular> Of(ParticularFood food, RuleSet rules, DateOnly? day = null)
    {
        var uses = AdditiveUse.In(food.Mixture, rules);
        var words = LabelWords.Of(rules.Folder);
        return [.. ParticularRules.Of(rules, day).All.Select(rule => AdditiveGrams.Filled(Of(rule, food, uses, words), food, uses))];
    }

    private static Particular Of(ParticularRule rule, ParticularFood food, IReadOnlyList<AdditiveUse> uses, LabelWords words)
    {
        List<string> because = [];
        string[] additives = [];
        Amount? amount = null;
        var unit = rule.UnitFor(food.IsLiquid);
        if (rule.For.Count > 0 && food.Category is { } category && !rule.For.Contains(category, Names.Comparer)) return No($"only for {string.Join(", ", rule.For)}");
        var all = food.Mixture.Parts.Where(part => part.MassGrams > 0).Select(part => part.Ingredient).DistinctBy(each => each.Name, Names.Comparer).ToArray();
        var holders = all;
        if (rule.Additives.Count > 0 || rule.Class is not null)
        {
            var met = uses.Where(use => (rule.Additives.Count == 0 || rule.Additives.Contains(use.Additive.Number, Names.Comparer)) && (rule.Class is null || Names.Same(use.Class, rule.Class))).ToArray();
            if (met.Length == 0) return No(rule.Class is { } wanted ? $"no additive is used as {wanted}" : "no such additive is in it");
            because.Add(string.Join(", ", met.Select(use => use.IsOwn && Names.Same(use.Ingredient.Name, use.Additive.Name) ? use.Additive.Name : $"{use.Additive.Name} by way of {use.Ingredient.Name}").Distinct()));
            additives = [.. met.Select(use => use.Additive.Name).Distinct()];
            holders = [.. met.Select(use => use.Ingredient).DistinctBy(each => each.Name, Names.Comparer)];
        }
        if (rule.Ingredients.Count > 0)
        {
            // An ingredient beside an additive is a trigger of its own: the content is that of the additives.
            Ingredient[] met = [.. all.Where(each => rule.Ingredients.Any(word => Holds(each, word)))];
            if (met.Length == 0) return No("no such ingredient is in it");
            because.Add(string.Join(", ", met.Select(each => each.Name)));
            if (rule.Additives.Count == 0 && rule.Class is null) holders = met;
        }
        if (rule.Without.Count > 0 && all.FirstOrDefault(each => rule.Without.Any(word => Holds(each, word))) is { } other)
            return No($"{other.Name} is in it");
        if (rule.Says is { } says)
        {
            if (food.Says(says.Key) is not { } said)
                return because.Count == 0 && rule.Content is null && !food.Asked.Contains(says.Key, Names.Comparer) ? No($"dessert.csv does not say {says.Key}") : Unknown($"a row {says.Key} in dessert.csv: {says.Yes}, or no");
            if (!Names.Same(said, says.Yes)) return No($"dessert.csv says {says.Key}: {said}");
            because.Add($"dessert.csv says {says.Key}: {said}");
        }
        if (rule.Content is { } content)
        {
            var perMass = AmountOf(content, holders, food);
            // Of nothing there is nothing in any volume; of anything else the density says how much.
            if (rule.IsByVolume(food.IsLiquid) && food.DensityGramsPerMillilitre is null && perMass is not { IsWhole: true, Known: 0 }) return Unknown(rule.For.Count > 0 && food.Category is null ? CategoryWanted : DensityWanted);
            var found = InUnit(perMass, rule, food);
            amount = found;
            // What is not known lies between nothing and all of the mass.
            var least = (decimal)found.Known;
            var most = least + (decimal)InUnit(new((double)MostOf(rule.Unit), 1, 1), rule, food).Known * (decimal)(1 - found.CoveredShare);
            var passes = rule.Test.Passes(least, rule.Limit);
            if (!passes && rule.Test.Passes(most, rule.Limit)) return Unknown(rule.For.Count > 0 && food.Category is null ? CategoryWanted : MissingOf(content, holders, food));
            if (!passes) return No($"{(because.Count > 0 ? $"{string.Join("; ", because)}: " : "")}under the limit");
        }
        if (rule.For.Count > 0 && food.Category is null) return Unknown(CategoryWanted);
        if (rule.Exemptions.FirstOrDefault(exemption => food.Exemptions.Contains(exemption, Names.Comparer)) is { } lifted)
            return new(rule, ParticularState.Lifted, $"{string.Join("; ", because)}; the kitchen asks for the exemption: {lifted}", amount, "a competent person’s word that the exemption holds") { Unit = unit };
        if (LackingFor(rule, food, all) is { } lacking) return Unknown(lacking);
        return new(rule, ParticularState.Applies, string.Join("; ", because), amount, "") { Unit = unit, Wording = Filled(rule, food, all, additives, words) };

        Particular No(string why) => new(rule, ParticularState.DoesNotApply, why, amount, "") { Unit = unit };
        Particular Unknown(string supply) => new(rule, ParticularState.CannotBeSaid, string.Join("; ", because), amount, supply) { Unit = unit };
    }

    // What the wording names and the sheets do not give.
    private static string? LackingFor(ParticularRule rule, ParticularFood food, Ingredient[] all)
    {
        if (rule.Named.Contains(ParticularRule.AmountWord) && !AmountOf(rule.Content!, all, food).IsWhole) return MissingOf(rule.Content!, all, food);
        return rule.NamedKeys.FirstOrDefault(key => food.Says(key) is null) is { } silent ? $"a row {silent} in dessert.csv" : null;
    }

    // The content is that of the whole food, whatever brought it; a language without an additive's name has no wording.
    private static Dictionary<string, string> Filled(ParticularRule rule, ParticularFood food, Ingredient[] all, string[] additives, LabelWords words)
    {
        Dictionary<string, string> filled = [];
        foreach (var (language, wording) in rule.Wording)
        {
            var said = wording;
            if (rule.Named.Contains(ParticularRule.AmountWord))
                said = said.Replace($"{{{ParticularRule.AmountWord}}}", string.Create(CultureInfo.InvariantCulture, $"{InUnit(AmountOf(rule.Content!, all, food), rule, food).Known:0.#}\u202f{rule.UnitFor(food.IsLiquid)}"), StringComparison.Ordinal);
            if (rule.Named.Contains(ParticularRule.AdditivesWord))
            {
                string?[] names = [.. additives.Select(name => language == "en" ? name : words.In(name, language))];
                if (names.Contains(null)) continue;
                said = said.Replace($"{{{ParticularRule.AdditivesWord}}}", string.Join(", ", names), StringComparison.Ordinal);
            }
            foreach (var key in rule.NamedKeys) said = said.Replace($"{{{key}}}", food.Says(key), StringComparison.Ordinal);
            filled[language] = said;
        }
        return filled;
    }

    // The amount in the finished food of what the holders bring, in the unit of the content; the share that is known is of the holders' part in the food.
    private static Amount AmountOf(string content, IReadOnlyList<Ingredient> holders, ParticularFood food)
    {
        double known = 0, unknownGrams = 0;
        foreach (var part in food.Mixture.Parts.Where(part => holders.Any(each => Names.Same(each.Name, part.Ingredient.Name))))
        {
            double? per = IsColumn(content) ? (double?)food.Stated(part.Ingredient, content)?.Value : part.Ingredient.Profile?[content] is { IsKnown: true } stated ? stated.Per100Grams : null;
            if (per is { } figure) known += figure * part.MassGrams;
            else unknownGrams += part.MassGrams;
        }
        var finished = food.Mixture.FinishedGrams;
        return new(known / finished, Math.Max(0, finished - unknownGrams), finished);
    }

    // What 100 ml hold is what their mass holds. Without a density this is asked only of what has none of it.
    private static Amount InUnit(Amount per100Grams, ParticularRule rule, ParticularFood food) =>
        rule.IsByVolume(food.IsLiquid) ? per100Grams with { Known = per100Grams.Known * (food.DensityGramsPerMillilitre ?? 0) } : per100Grams;

    // A column of a document is written small, a tagname is not.
    private static bool IsColumn(string content) => content.Any(char.IsAsciiLetterLower);

    private static string MissingOf(string content, IReadOnlyList<Ingredient> holders, ParticularFood food) => IsColumn(content)
        ? $"{content} of {string.Join(", ", holders.Where(each => food.Stated(each, content) is null).Select(each => each.Name))} in specifications.csv"
        : $"{WordOf(content, holders)} of {string.Join(", ", holders.Where(each => each.Profile?[content] is not { IsKnown: true }).Select(each => each.Name))}";

    private static string WordOf(string tag, IReadOnlyList<Ingredient> holders) =>
        holders.Select(each => each.Profile?.Nutrients).OfType<Composition.NutrientList>().FirstOrDefault(list => list.IndexOf(tag) >= 0) is { } known ? $"the {known.All[known.IndexOf(tag)].Word}" : "a food or the figures";

    // All of the mass, in the unit of the content: of 100 g where it is said by volume.
    private static decimal MostOf(string unit) => unit is "mg/kg" ? 1_000_000 : unit.StartsWith("mg/", StringComparison.Ordinal) ? 100_000 : 100;

    private static bool Holds(Ingredient ingredient, string word) => new[] { ingredient.Name, ingredient.LabelName, ingredient.NamedWithin }.Any(text => text is not null && Names.HoldsBeginning(text, word));
}
