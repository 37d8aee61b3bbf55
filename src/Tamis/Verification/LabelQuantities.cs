using System.Globalization;
using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;

namespace Tamis.Verification;

/// <summary>What the label room lends to the published checks: rounded amounts, percentages of reference values, energies and whole panels.</summary>
/// <remarks><list type="bullet">
/// <item><c>declared_amount</c>: <c>rule_set</c>, <c>nutrient</c> (key of the rounding table), <c>amount</c>, <c>unit</c>; where bands hang on conditions <c>free</c> (yes, no): whether all of them are met.</item>
/// <item><c>declared_percent</c>: the same inputs and, where rules changed, <c>day</c>; the percentage of the reference value, rounded.</item>
/// <item><c>significant_amount</c>: the same inputs as <c>declared_amount</c>, <c>food</c> (drink, no drink, single portion); whether such an amount, in 100 g, 100 ml or the portion, may be declared, yes or no.</item>
/// <item><c>may_be_left_off</c>: <c>rule_set</c>, <c>way</c> (alone, simplified), <c>nutrient</c>, <c>amount</c> and <c>unit</c> of the figure that decides, <c>free</c>; yes or no.</item>
/// <item><c>declared_energy</c>: <c>rule_set</c> and grams: <c>fat_g</c>, <c>carbohydrate_g</c> as the rule set defines it, <c>protein_g</c>, <c>fibre_g</c>, <c>alcohol_g</c>, <c>organic_acid_g</c>, <c>polyols_g</c>; what is not given is none.</item>
/// <item><c>simplified_format</c>: <c>rule_set</c>, <c>insignificant</c>: whether so many insignificant figures allow it, yes or no.</item>
/// <item><c>mandatory_figures</c>: <c>rule_set</c>; how many figures the law asks for, whatever their units.</item>
/// <item><c>reference_values</c>: <c>rule_set</c> and <c>percent_shown</c> (yes, optional) or <c>group</c>; how many contents have a reference value.</item>
/// <item><c>panel_energy</c>: <c>lines</c>, <c>water_lost_g</c>, <c>rule_set</c>, <c>protein_factor</c> (food, 6.25), <c>energy_unit</c>; in 100 g, not rounded.</item>
/// <item><c>declared_panel_text</c>: the same and <c>nutrients</c>, <c>serving_g</c> where the rule set wants servings; <c>name=amount; name=amount</c>.</item>
/// </list>
/// Panels of checks speak of the published record alone and are unknown as soon as one line is, whatever share a label may leave open.</remarks>
public static class LabelQuantities
{
    private const string Unknown = "unknown";

    private static readonly Dictionary<string, string> Tags = new(StringComparer.Ordinal)
    {
        ["fat_g"] = "FAT",
        ["carbohydrate_g"] = "CHOCDF",
        ["protein_g"] = "PROCNT",
        ["fibre_g"] = "FIBTG",
        ["alcohol_g"] = "ALC",
        ["organic_acid_g"] = "OA",
        ["polyols_g"] = "POLYL",
    };

    /// <summary>The quantities by name, computed from the table and the rules that the kit ships.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } =
        Of(new(() => CompositionTable.Load(KitFolder.Data("composition"))), CheckedRules.Named);

    /// <summary>The quantities by name, computed from a composition table and rule sets that are read when they are first asked for.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> Of(Lazy<CompositionTable> table, Func<string, RuleSet> load)
    {
        Dictionary<string, RuleSet> read = new(Names.Comparer);
        return new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
        {
            ["declared_amount"] = inputs => CheckValue.Of(Rounded(Rules(inputs), inputs.Text("nutrient"), inputs).Text),
            ["significant_amount"] = inputs => CheckValue.Of(Significant(Rules(inputs), inputs) ? "yes" : "no"),
            ["may_be_left_off"] = inputs => CheckValue.Of(MayBeLeftOff(Rules(inputs), inputs) ? "yes" : "no"),
            ["declared_percent"] = inputs => CheckValue.Of(Percent(Rules(inputs), inputs)),
            ["declared_energy"] = inputs => CheckValue.Of(Energy(Rules(inputs), inputs)),
            ["simplified_format"] = inputs => CheckValue.Of(ShortPanelRules.Of(Rules(inputs)).SimplifiedFrom is { } least && inputs.Number("insignificant") >= least ? "yes" : "no"),
            ["mandatory_figures"] = inputs => Counted(Rules(inputs).Declaration.Where(figure => figure.IsMandatory).Select(figure => figure.Key)),
            ["reference_values"] = inputs => Counted(Rules(inputs).ReferenceValues
                .Where(value => inputs.OptionalText("group") is { } group ? Names.Same(value.Group, group) : value.Shown == (Names.Same(inputs.Text("percent_shown"), "yes") ? PercentShown.Yes : PercentShown.Optional)).Select(value => value.Key)),
            ["panel_energy"] = inputs => PanelEnergy(table.Value, Rules(inputs), inputs),
            ["declared_panel_text"] = inputs => CheckValue.Of(PanelText(table.Value, Rules(inputs), inputs)),
        };

        RuleSet Rules(CheckInputs inputs)
        {
            var name = inputs.Text("rule_set");
            if (!read.TryGetValue(name, out var rules)) read[name] = rules = load(name);
            return inputs.OptionalText("day") is { } day ? rules.AsOf(DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture)) : rules.AsOf(null);
        }
    }

    private static decimal Amount(CheckInputs inputs) => decimal.TryParse(inputs.Text("amount"), NumberStyles.Float, CultureInfo.InvariantCulture, out var amount)
        ? amount
        : throw new FormatException($"the input 'amount' is '{inputs.Text("amount")}', not a number");

    private static CheckValue Counted(IEnumerable<string> keys) => CheckValue.Of(keys.Distinct(Names.Comparer).Count().ToString(CultureInfo.InvariantCulture));

    private static RoundedAmount Rounded(RuleSet rules, string nutrient, CheckInputs inputs) =>
        rules.Rounding.Round(nutrient, inputs.Text("unit"), Amount(inputs), _ => Names.Same(inputs.OptionalText("free"), "yes"));

    private static bool Significant(RuleSet rules, CheckInputs inputs)
    {
        var (key, unit, food) = (inputs.Text("nutrient"), inputs.Text("unit"), inputs.OptionalText("food"));
        var reference = rules.Reference(key, unit) ?? throw new KeyNotFoundException($"the rule set '{rules.Name}' has no reference value for '{key}' in {unit}");
        var isPortion = Names.Same(food, "single portion");
        var rows = SignificantAmounts.Of(rules).For(reference, Names.Same(food, "drink"), isPortion).Where(row => row.In == SignificantIn.Portion == isPortion).ToArray();
        return rows.Length > 0 ? Array.Exists(rows, row => row.IsMetBy(reference, Amount(inputs))) : throw new KeyNotFoundException($"the rule set '{rules.Name}' has no significant amount of '{key}' for '{food}'");
    }

    private static bool MayBeLeftOff(RuleSet rules, CheckInputs inputs)
    {
        var (figure, way) = (inputs.Text("nutrient"), inputs.Text("way") switch { "simplified" => ShortWay.Simplified, "single serving" => ShortWay.SingleServing, _ => ShortWay.Alone });
        var row = ShortPanelRules.Of(rules).Figures.FirstOrDefault(row => row.Way == way && Names.Same(row.Figure, figure))
            ?? throw new KeyNotFoundException($"the rule set '{rules.Name}' lets no '{figure}' be left off {inputs.Text("way")}");
        return row.IsWithoutLimit || row.Takes(rules, Amount(inputs), Rounded(rules, row.Held[0], inputs).IsZero);
    }

    private static string Percent(RuleSet rules, CheckInputs inputs)
    {
        var (key, unit) = (inputs.Text("nutrient"), inputs.Text("unit"));
        var reference = rules.Reference(key, unit) ?? throw new KeyNotFoundException($"the rule set '{rules.Name}' has no reference value for '{key}' in {unit}");
        return rules.Percent(reference, (double)Amount(inputs)).Text;
    }

    private static string Energy(RuleSet rules, CheckInputs inputs)
    {
        if (inputs.Values.Keys.FirstOrDefault(name => name != "rule_set" && !Tags.ContainsKey(name)) is { } other)
            throw new FormatException($"the input '{other}' is none of {string.Join(", ", Tags.Keys)}");
        NutrientList nutrients = new([.. Tags.Select(tag => new Nutrient(tag.Value, tag.Key, "g")), new("CHOAVLDF", "carbohydrate", "g")]);
        // A law's carbohydrate holds no organic acids; carbohydrate by difference, as tables have it, does.
        var available = (inputs.OptionalNumber("carbohydrate_g") ?? 0) + (inputs.OptionalNumber("organic_acid_g") ?? 0);
        Source source = new("check row", Evidence.Sheet);
        Content[] contents = [.. Tags.Keys.Select(name => inputs.OptionalNumber(name) ?? 0).Append(available).Select(grams => new Content(ContentState.Measured, grams, null, source))];
        Ingredient ingredient = new() { Name = "check row", Profile = new("check row", nutrients, contents, rules.ProteinFactor) };
        var panel = NutritionPanel.Of(new() { Parts = [new(ingredient, 100, 0, source)] }, rules, rules.IsPerServing ? PanelBasis.Serving(100) : PanelBasis.Per100Grams);
        return string.Join(" / ", panel.Lines.Where(line => line.IsEnergy).Select(line => line.Declared));
    }

    private static CheckValue PanelEnergy(CompositionTable table, RuleSet rules, CheckInputs inputs)
    {
        var unit = inputs.Text("energy_unit");
        var panel = Panel(table, rules, inputs, PanelBasis.Per100Grams, []);
        // A rule set may print its kilocalories under another name.
        var energy = panel.Lines.Where(line => line.IsEnergy).ToArray();
        var line = energy.FirstOrDefault(line => line.Unit == unit) ?? (unit == "kcal" ? energy.FirstOrDefault(line => line.Unit == "Cal") : null)
            ?? throw new KeyNotFoundException($"the rule set '{rules.Name}' has no energy in {unit}");
        return line.Value is { } value && IsStated(panel.Mixture, "ALC") ? CheckValue.Of(value) : CheckValue.Of(Unknown);
    }

    private static string PanelText(CompositionTable table, RuleSet rules, CheckInputs inputs)
    {
        var names = inputs.List("nutrients");
        var panel = Panel(table, rules, inputs, rules.IsPerServing ? PanelBasis.Serving(inputs.Number("serving_g")) : PanelBasis.Per100Grams, names);
        return string.Join("; ", names.Select(name => $"{name}={(Lines(panel, name).All(line => line.Value is not null) ? panel.Declared(name) : Unknown)}"));
    }

    private static PanelLine[] Lines(NutritionPanel panel, string name) => panel.Lines.Where(line => Names.Same(line.Key, name)).ToArray() is { Length: > 0 } lines
        ? lines
        : [panel.Line(name)];

    private static NutritionPanel Panel(CompositionTable table, RuleSet rules, CheckInputs inputs, PanelBasis basis, IReadOnlyList<string> names)
    {
        var asked = inputs.Text("protein_factor");
        double? factor = asked == "food" ? null : inputs.Number("protein_factor");
        var mixture = CompositionQuantities.MixtureOf(table, inputs);
        if (factor is not null && mixture.Parts.FirstOrDefault(part => part.Ingredient.Profile is { NitrogenFactor: not > 0 } profile && profile["PROCNT"].Per100Grams > 0) is { } part)
            throw new FormatException($"the nitrogen factor of {part.Ingredient.Name} is not known");
        return NutritionPanel.Of(mixture, rules with { ProteinFactor = factor, KnownSharePercent = 100 }, basis, null, names);
    }

    private static bool IsStated(Mixture mixture, string tag) => mixture.Amount(tag).IsWhole;
}
