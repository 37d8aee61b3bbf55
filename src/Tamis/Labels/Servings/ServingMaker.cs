using System.Globalization;

namespace Tamis.Labels;

/// <summary>Makes the serving of a packed food by a rule set: from its reference amount where the law has one for the kind of food, otherwise the one that the maker states.</summary>
public static class ServingMaker
{
    private static readonly CultureInfo Style = CultureInfo.InvariantCulture;

    /// <summary>The serving.</summary>
    /// <exception cref="ServingException">Something is missing that the law needs (the kind of food, the mass of a unit, the density of what is measured by volume), the law has no such kind of food, or the serving is larger than the package; every problem with what to supply.</exception>
    public static Serving Of(RuleSet rules, PackedFood food)
    {
        var rows = ServingRules.Of(rules);
        if (rules.Servings.Count > 0 && rows.All.Count > 0) return Checked(food, () => FromReference(rules, rows, food));
        return IsOnePackage(rules, food) is { } rule ? Checked(food, () => WholePackage(rules, food, rule)) : Stated(rules, food);
    }

    /// <summary>The rule that makes the whole package the serving, held against the reference amount that the maker looked up; null where none does, or the package or that amount is not known.</summary>
    public static ServingRule? IsOnePackage(RuleSet rules, PackedFood food) =>
        food is { NetGrams: { } net, ReferenceGrams: > 0 and { } reference } ? OfPackage(rules).FirstOrDefault(rule => rule.Percent.Takes(RoundingTable.ToDecimal(net / reference * 100))) : null;

    private static IEnumerable<ServingRule> OfPackage(RuleSet rules) => ServingRules.Of(rules).All.Where(rule => rule is { OfPackage: true, Made: ServingMade.Package });

    private static Serving WholePackage(RuleSet rules, PackedFood food, ServingRule rule)
    {
        var (net, reference) = (food.NetGrams!.Value, food.ReferenceGrams!.Value);
        var isStated = food.StatedGrams is { } stated && Math.Abs(stated - net) < 0.05;
        var share = $"The package of {Written(net)} g is {Written(net / reference * 100)}\u202f% of the reference amount of {Written(reference)} g";
        Working working = new($"serving of {Written(net)} g: the package is {Written(net / reference * 100)}\u202f% of the reference amount ({rule.Origin.StrengthInWords})", net, "g", rule.Origin.Source)
        {
            From = [new("reference amount, as the kitchen looked it up", reference, "g", new("dessert.csv", Evidence.Sheet, "reference_amount_g")), new("mass of the package", net, "g", new("dessert.csv", Evidence.Sheet, "net_g"))],
        };
        return Made(rules, food, net, isStated && food.StatedHousehold is { } said ? said : "1 package", reference, working, SecondColumn(rules, food, reference)) with
        {
            Remark = isStated ? "" : $"{share}: the serving is the whole package{(food.StatedGrams is { } portion ? $", and not the {Written(portion)} g of portion_g" : "")} ({rule.Origin}).",
        };
    }

    // Of a pack whose share of the reference amount nobody knows the page asks; a serving that is the pack needs no answer.
    private static string AskedOfPackage(RuleSet rules, PackedFood food, double grams) =>
        food is { NetGrams: { } net, ReferenceGrams: null } && Math.Abs(net - grams) >= 0.05 && OfPackage(rules).FirstOrDefault() is { } rule
            ? $"A package of less than {rule.Percent.To:0.#}\u202f% of the law’s reference amount is one serving ({rule.Origin}): write the amount as reference_amount_g in dessert.csv. {rule.Origin.Note}".TrimEnd()
            : "";

    /// <summary>The serving that the maker states, whatever reference amounts the law has.</summary>
    /// <exception cref="ServingException">No serving is stated, or it is larger than the package.</exception>
    public static Serving Stated(RuleSet rules, PackedFood food) => Checked(food, () =>
    {
        if ((food.StatedGrams ?? food.UnitGrams) is not { } grams) throw Wrong("portion_g", "", $"the serving in grams: {rules.Title} leaves it to the maker");
        var household = food.StatedHousehold ?? (food is { UnitGrams: { } unit, UnitWord: { } word } && Math.Abs(grams / unit - Math.Round(grams / unit)) < 0.005 ? Units(grams / unit, word) : "");
        Working working = new($"serving of {Written(grams)} g, as the maker states it", grams, "g", new("dessert.csv", Evidence.Sheet, "portion_g"));
        return Made(rules, food, grams, household, null, working, null) with
        {
            Remark = rules.Servings.Count == 0 ? AskedOfPackage(rules, food, grams) : $"The serving of {Written(grams)} g is the one that the kitchen states; {rules.Act} takes it from the kind of food: write serving_category in dessert.csv.",
        };
    });

    /// <summary>The reference amount of a kind of food in grams. Words that stand in one category alone are enough to name it.</summary>
    /// <exception cref="ServingException">It is a volume and the density is not known, the law fixes no amount, or it has no such kind of food.</exception>
    public static (double Grams, ServingSize Row) Reference(RuleSet rules, string category, double? densityGramsPerMillilitre)
    {
        var row = rules.Servings.FirstOrDefault(serving => Names.Same(serving.Category, category))
            ?? (rules.Servings.Where(serving => serving.Category.Contains(category, StringComparison.OrdinalIgnoreCase)).ToArray() is [var only] ? only : null)
            ?? throw Wrong("serving_category", category, $"a kind of food of the rule set '{rules.Name}', such as: {string.Join(" | ", Near(rules, category))}");
        if (Amount(row.Quantity) is not { } quantity) throw Wrong("serving_category", category, $"a kind of food whose reference amount the law fixes in grams; for '{row.Category}' it says: {row.Household}. Leave it out, and portion_g counts");
        if (row.Unit == "g") return (quantity, row);
        var measures = VolumeMeasures.Of(rules);
        if (measures.Find(row.Unit) is not { } measure)
            throw Wrong("serving_category", category, $"a kind of food in a known measure; '{row.Category}' is in '{row.Unit}', and measures.csv of the rule set has: {string.Join(", ", measures.Known)}");
        return densityGramsPerMillilitre is { } density ? (quantity * measure.Millilitres * density, row)
            : throw Wrong("density_g_ml", "", $"the density of the food as sold, in g/ml: the reference amount of '{row.Category}' is a volume ({row.Quantity} {row.Unit})");
    }

    private static Serving Checked(PackedFood food, Func<Serving> make)
    {
        List<ServingProblem> problems = [.. TooLarge(food)];
        Serving? serving = null;
        try
        {
            serving = make();
        }
        catch (ServingException error)
        {
            problems.AddRange(error.Problems);
        }
        return serving is not null && problems is [] ? serving : throw new ServingException(problems);
    }

    private static IEnumerable<ServingProblem> TooLarge(PackedFood food)
    {
        // What was weighed in grams may differ from the sum of its portions by the last digit.
        if (food.NetGrams is { } net && (food.StatedGrams ?? food.UnitGrams) is { } one && one > net * 1.0001)
            yield return new("portion_g", Written(one), $"at most the {Written(net)} g of the package: correct portion_g or net_g");
    }

    // The words before the bracket are enough, and where none is near all are named.
    private static IEnumerable<string> Near(RuleSet rules, string category)
    {
        string[] kinds = [.. rules.Servings.Select(serving => serving.Category.Split(" (")[0])];
        return Names.Nearest(category, kinds) is { Count: > 0 } near ? near : kinds;
    }

    private static ServingException Wrong(string key, string found, string expected) => new([new(key, found, expected)]);

    private static Serving FromReference(RuleSet rules, ServingRules rows, PackedFood food)
    {
        if (food.Category is null) throw Wrong("serving_category", "", $"the kind of food, from which {rules.Title} takes the serving, such as '{rules.Servings[0].Category}'");
        var word = food.UnitWord ?? "piece";
        var (reference, size) = Reference(rules, food.Category, food.DensityGramsPerMillilitre);
        var unit = food.UnitGrams ?? food.NetGrams ?? throw Wrong("portion_g", "", "the mass of a unit in grams, or net_g, the net content");
        var rule = rows.All.FirstOrDefault(rule => (rule.OfPackage ? food.NetGrams : unit) is { } grams && rule.Percent.Takes(RoundingTable.ToDecimal(grams / reference * 100)))
            ?? throw Wrong("portion_g", Written(unit), $"the mass of a unit that a row of serving-rules.csv takes beside a reference amount of {Written(reference)} g");
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
        if (food.StatedHousehold is { } said && food.StatedGrams == grams) household = said;
        return Made(rules, food, grams, household, reference, working, SecondColumn(rules, food, reference)) with
        {
            UnitColumn = IsOfSeveral(food) && grams < unit ? ServingWords.Of(rules).UnitColumn(unit / reference * 100) : null,
            UnitGrams = IsOfSeveral(food) ? food.UnitGrams : null,
        };

        (double, string) OfUnits(double count) => (count * unit, Units(count, word));

        (double, string) OfFraction()
        {
            var part = rows.Parts.MinBy(part => Math.Abs(unit / part - reference));
            return (unit / part, $"1/{part.ToString(Style)} {word}");
        }
    }

    private static Serving Made(RuleSet rules, PackedFood food, double grams, string household, double? reference, Working working, RuleOrigin? second)
    {
        var words = ServingWords.Of(rules);
        if (food is { IsLiquid: true, DensityGramsPerMillilitre: not > 0 }) throw Wrong("density_g_ml", "", "the density of the food as sold, in g/ml: the serving of a liquid is said in millilitres");
        var millilitres = food.IsLiquid ? grams / food.DensityGramsPerMillilitre : null;
        var size = millilitres is { } volume ? words.MetricSize(rules, volume, "ml") : words.MetricSize(rules, grams, "g");
        var perContainer = food.NetGrams / grams ?? food.StatedCount;
        return new()
        {
            // Where a law asks for a serving it says so; where it only lets one stand beside 100 g it speaks of a portion.
            Basis = (rules.Columns.Contains(PanelColumn.Serving) ? PanelBasis.Serving(grams, household, millilitres) : PanelBasis.Portion(grams, household, millilitres)) with { ReferenceGrams = reference },
            Grams = grams,
            Household = household,
            PerContainer = perContainer,
            ContainerGrams = food.NetGrams,
            Lines = [.. words.Lines(rules, household, size, perContainer)],
            SecondColumn = second,
            Working = working,
        };
    }

    private static RuleOrigin? SecondColumn(RuleSet rules, PackedFood food, double reference) =>
        food.NetGrams is { } net ? ServingWords.Of(rules).SecondColumn(net / reference * 100) : null;

    // A package that holds one unit is that unit: the column of the package speaks of it.
    private static bool IsOfSeveral(PackedFood food) => food is { NetGrams: { } net, UnitGrams: { } one } && Math.Round(net / one) >= 2;

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
