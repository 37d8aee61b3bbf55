using System.Globalization;
using Tamis.Formulas;
using Tamis.Labels;

namespace Tamis.Verification;

/// <summary>What lists of ingredients and allergens lend to the published checks.</summary>
/// <remarks><list type="bullet">
/// <item><c>added_water_listed</c>: <c>rule_set</c>, <c>other_ingredients_g</c>, <c>finished_g</c>; yes or no.</item>
/// <item><c>quantity_declaration</c>: <c>rule_set</c>, <c>ingredient_g</c>, <c>finished_g</c>; as printed.</item>
/// <item><c>compound_opened</c>: <c>rule_set</c>, <c>name</c>, <c>kind</c> of <c>compound-foods.csv</c> (may be left out), <c>share_percent</c>; whether its own list must stand, yes or no.</item>
/// <item><c>compound_by_law</c>: <c>rule_set</c>, <c>kind</c>; whether the law makes a compound of a single food of this kind, yes or no.</item>
/// <item><c>list_titles</c>, <c>list_first_letter</c>: <c>rule_set</c>; bold or regular, upper case or as written.</item>
/// <item><c>allergen_groups</c>: <c>rule_set</c>; how many groups of the law's list are numbered.</item>
/// <item><c>allergen_named</c>: <c>rule_set</c>, <c>substance</c>, <c>mg_per_kg</c>; yes or no.</item>
/// <item><c>allergen_in_list</c>: <c>rule_set</c>, <c>name</c>, <c>allergen</c>, <c>language</c>; the list of a food of this ingredient alone, as printed.</item>
/// <item><c>allergen_statement</c>: the same; the statement of what that food contains, as printed.</item>
/// </list></remarks>
public static class IngredientListQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["added_water_listed"] = inputs => YesOrNo(ListRules.Of(CheckedRules.Of(inputs)).ListsWater((inputs.Number("finished_g") - inputs.Number("other_ingredients_g")) / inputs.Number("finished_g") * 100)),
        ["quantity_declaration"] = inputs => CheckValue.Of(ListRules.Of(CheckedRules.Of(inputs)).Quantity(inputs.Number("ingredient_g"), inputs.Number("finished_g")).Replace('\u00a0', ' ')),
        ["compound_opened"] = inputs => YesOrNo(IsOpened(CheckedRules.Of(inputs), inputs)),
        ["compound_by_law"] = inputs => YesOrNo(CompoundRules.Of(CheckedRules.Of(inputs)).All.Any(rule => rule.AsksForList && Names.Same(rule.Kind, inputs.Text("kind")))),
        ["list_titles"] = inputs => CheckValue.Of(ListRules.Of(CheckedRules.Of(inputs)).HasBoldTitles ? "bold" : "regular"),
        ["list_first_letter"] = inputs => CheckValue.Of(ListRules.Of(CheckedRules.Of(inputs)).HasCapitals ? "upper case" : "as written"),
        ["allergen_groups"] = inputs => CheckValue.Of(AllergenRules.Of(CheckedRules.Of(inputs)).All.Where(rule => rule.GroupNumber.Length > 0).Select(rule => rule.GroupNumber).Distinct().Count().ToString(CultureInfo.InvariantCulture)),
        ["allergen_named"] = inputs => YesOrNo(AllergenRules.Of(CheckedRules.Of(inputs)).For(inputs.Text("substance")) is { } rule && rule.Counts(inputs.OptionalNumber("mg_per_kg") ?? double.PositiveInfinity)),
        ["allergen_in_list"] = inputs => CheckValue.Of(ListOfOne(inputs).Text),
        ["allergen_statement"] = inputs => CheckValue.Of(string.Concat(ListOfOne(inputs).ContainsStatement.Select(run => run.Text))),
    };

    private static bool IsOpened(RuleSet rules, CheckInputs inputs) =>
        CompoundRules.Of(rules).LeaveOf(ListRules.Of(rules), inputs.Text("name"), inputs.OptionalText("kind") ?? "", inputs.Number("share_percent")) is null;

    private static IngredientDeclaration ListOfOne(CheckInputs inputs)
    {
        var name = inputs.Text("name");
        Ingredient ingredient = new() { Name = name, LabelName = name, Allergens = [inputs.Text("allergen")] };
        return IngredientDeclaration.Of([new(ingredient, 100, [], new("a published check", Evidence.Computed))], 100, 0, CheckedRules.Of(inputs), inputs.OptionalText("language") ?? "en", new() { Translate = (word, _) => word });
    }

    private static CheckValue YesOrNo(bool yes) => CheckValue.Of(yes ? "yes" : "no");
}
