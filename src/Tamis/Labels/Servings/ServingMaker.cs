using System.Globalization;

namespace Tamis.Labels;

/// <summary>Makes the serving of a packed food by a rule set: from its reference amount where the law has one for the kind of food, otherwise the one that the maker states.</summary>
public static class ServingMaker
{
    private static readonly CultureInfo Style = CultureInfo.InvariantCulture;

    /// <summary>The serving.</summary>
    /// <exception cref="ArgumentException">Something is missing that the law needs (the kind of food, the mass of a unit, the density of what is measured by volume), or the serving is larger than the package; the message says what to supply.</exception>
    /// <exception cref="KeyNotFoundException">The law has no such kind of food; the message names the nearest.</exception>
    public static Serving Of(RuleSet rules, PackedFood food)
    {
        var rows = ServingRules.Of(rules);
        if (food.NetGrams is { } net && (food.StatedGrams ?? food.UnitGrams) is { } one && one > net * 1.0001)
            throw new ArgumentException($"A serving of {Written(one)} g is larger than the package of {Written(net)} g: correct portion_g or net_g.", nameof(food));
        return rules.Servings.Count == 0 || rows.All.Count == 0 ? Stated(rules, food) : FromReference(rules, rows, food);
    }

    /// <summary>The reference amount of a kind of food in grams.</summary>
    /// <exception cref="ArgumentException">It is a volume and the density is not known, or the law fixes no amount.</exception>
    /// <exception cref="KeyNotFoundException">The law has no such kind of food.</exception>
    public static (double Grams, ServingSize Row) Reference(RuleSet rules, string category, double? densityGramsPerMillilitre)
    {
        var row = rules.Servings.FirstOrDefault(serving => Names.Same(serving.Category, category))
            ?? (rules.Servings.Where(serving => serving.Category.Contains(category, StringComparison.OrdinalIgnoreCase)).ToArray() is [var only] ? only : null)
            ?? throw new KeyNotFoundException($"The rule set '{rules.Name}' has no kind of food '{category}'; near ones: {string.Join(" | ", Names.Nearest(category, rules.Servings.Select(serving => serving.Category)))}. Write it as serving_category in dessert.csv.");
        if (Amount(row.Quantity) is not { } quantity) throw new ArgumentException($"The law fixes no reference amount in grams for '{row.Category}' ({row.Household}): state portion_g.", nameof(category));
        if (row.Unit == "g") return (quantity, row);
        var millilitres = VolumeUnits.TryGetValue(row.Unit, out var each) ? quantity * each
            : throw new ArgumentException($"The reference amount of '{row.Category}' is in '{row.Unit}', which is no known measure: g, {string.Join(", ", VolumeUnits.Keys)}.", nameof(category));
        return densityGramsPerMillilitre is { } density ? (millilitres * density, row)
            : throw new ArgumentException($"The reference amount of '{row.Category}' is a volume ({row.Quantity} {row.Unit}): supply density_g_ml, the density of the food as sold.", nameof(densityGramsPerMillilitre));
    }

    // 21 CFR 101.9(b)(5)(viii): a cup is 240 ml, a tablespoon 15 ml, a teaspoon 5 ml on a label.
    private static readonly Dictionary<string, double> VolumeUnits = new(Names.Comparer) { ["mL"] = 1, ["cup"] = 240, ["tbsp"] = 15, ["tsp"] = 5 };

    private static Serving Stated(RuleSet rules, PackedFood food)
    {
        var grams = food.StatedGrams ?? food.UnitGrams
            ?? throw new ArgumentException($"The serving is not known: {rules.Title} leaves it to the maker, so state portion_g in dessert.csv.", nameof(food));
        var household = food.UnitGrams is { } unit && Math.Abs(grams / unit - Math.Round(grams / unit)) < 0.005 ? Units(grams / unit, food.UnitWord) : "";
        Working working = new($"serving of {Written(grams)} g, as the maker states it", grams, "g", new("dessert.csv", Evidence.Sheet, "portion_g"));
        return Made(rules, food, grams, household, null, working, null);
    }

    private static Serving FromReference(RuleSet rules, ServingRules rows, PackedFood food)
    {
        if (food.Category is null) throw new ArgumentException($"The kind of food is not known, from which {rules.Title} takes the serving: write serving_category in dessert.csv, such as '{rules.Servings[0].Category}'.", nameof(food));
        var (reference, size) = Reference(rules, food.Category, food.DensityGramsPerMillilitre);
        var unit = food.UnitGrams ?? food.NetGrams ?? throw new ArgumentException("Neither the mass of a unit nor the net content is known: write portion_g or net_g in dessert.csv.", nameof(food));
        var rule = rows.All.FirstOrDefault(rule => rule.OfPackage ? food.NetGrams is { } net && rule.Takes(net / reference * 100) : rule.Takes(unit / reference * 100))
            ?? throw new ArgumentException($"No row of serving-rules.csv takes a unit of {Written(unit)} g beside a reference amount of {Written(reference)} g.", nameof(food));
        var (grams, household) = rule.Made switch
        {
            ServingMade.Package => (food.NetGrams!.Value, "1 package"),
            ServingMade.NearestUnits => OfUnits(Math.Max(1, Math.Round(reference / unit, MidpointRounding.AwayFromZero))),
            ServingMade.OneOrTwoUnits => OfUnits(2 * unit - reference < reference - unit ? 2 : 1),
            ServingMade.OneUnit => OfUnits(1),
            _ => OfFraction(),
        };
        Working working = new($"serving of {(household.Length > 0 ? household + ", " : "")}{Written(grams)} g: a {(rule.OfPackage ? "package" : "unit")} of {Written((rule.OfPackage ? food.NetGrams!.Value : unit) / reference * 100)}\u202f% of the reference amount ({rule.Origin.StrengthInWords})", grams, "g", rule.Origin.Source)
        {
            From = [new($"reference amount of '{size.Category}' ({size.Origin.StrengthInWords})", reference, "g", size.Origin.Source), new("mass of a unit", unit, "g", new("dessert.csv", Evidence.Sheet, food.UnitGrams is null ? "net_g" : "portion_g"))],
        };
        return Made(rules, food, grams, household, reference, working, SecondColumn(rules, food, reference));

        (double, string) OfUnits(double count) => (count * unit, Units(count, food.UnitWord));

        (double, string) OfFraction()
        {
            var part = rows.Parts.MinBy(part => Math.Abs(unit / part - reference));
            return (unit / part, $"1/{part.ToString(Style)} {food.UnitWord}");
        }
    }

    private static Serving Made(RuleSet rules, PackedFood food, double grams, string household, double? reference, Working working, RuleOrigin? second)
    {
        var words = ServingWords.Of(rules);
        var size = words.MetricSize(rules, grams);
        var perContainer = food.NetGrams / grams;
        return new()
        {
            Basis = PanelBasis.Serving(grams, household) with { ReferenceGrams = reference },
            Grams = grams,
            Household = household,
            PerContainer = perContainer,
            Lines = [.. words.Lines(rules, household, size, perContainer)],
            SecondColumn = second,
            Working = working,
        };
    }

    private static RuleOrigin? SecondColumn(RuleSet rules, PackedFood food, double reference) =>
        food.NetGrams is { } net ? ServingWords.Of(rules).SecondColumn(net / reference * 100) : null;

    private static string Units(double count, string word) => $"{Math.Round(count).ToString(Style)} {word}{(Math.Round(count) == 1 ? "" : "s")}";

    // Amounts as a law writes them: 80, 1/2, 2/3.
    private static double? Amount(string text) => text.Split('/') switch
    {
        [var whole] when double.TryParse(whole, NumberStyles.AllowDecimalPoint, Style, out var number) => number,
        [var over, var under] when double.TryParse(over, NumberStyles.None, Style, out var numerator) && double.TryParse(under, NumberStyles.None, Style, out var denominator) && denominator > 0 => numerator / denominator,
        _ => null,
    };

    private static string Written(double number) => number.ToString("0.#", Style);
}
