using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Labels;

namespace Tamis.Verification;

/// <summary>What tolerances about declared figures lend to the published checks.</summary>
/// <remarks><list type="bullet">
/// <item><c>accepted_lowest</c>, <c>accepted_highest</c>: <c>rule_set</c>, <c>nutrient</c> (key of the declaration), <c>unit</c>, <c>declared</c>; where it matters <c>claim</c> (at least, at most, added) and <c>measurement_percent</c>. A number, or <c>no limit</c>.</item>
/// <item><c>sample_packs</c>: the same inputs; how many packs the authority puts together.</item>
/// <item><c>outside_probability</c>: <c>rule_set</c>, <c>nutrient</c>, <c>unit</c>, <c>tag</c> (the one content that the figure is), <c>amount</c> in 100 g, <c>standard_deviation</c> of the lots, <c>samples</c>; what is declared is the amount, rounded.</item>
/// </list></remarks>
public static class ToleranceQuantities
{
    private static readonly Dictionary<string, ClaimSubject> Claims = new(StringComparer.Ordinal) { ["at least"] = ClaimSubject.AtLeast, ["at most"] = ClaimSubject.AtMost, ["added"] = ClaimSubject.Added };

    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["accepted_lowest"] = inputs => Limit(ToleranceOf(inputs).Lowest(inputs.Number("declared"), inputs.OptionalNumber("measurement_percent") ?? 0)),
        ["accepted_highest"] = inputs => Limit(ToleranceOf(inputs).Highest(inputs.Number("declared"), inputs.OptionalNumber("measurement_percent") ?? 0)),
        ["sample_packs"] = inputs => CheckValue.Of(ToleranceOf(inputs).Sample.Units),
        ["outside_probability"] = inputs => CheckValue.Of(OutsideProbability(inputs)),
    };

    private static Tolerance ToleranceOf(CheckInputs inputs)
    {
        var subject = inputs.OptionalText("claim") is { } claim ? Claims.TryGetValue(claim, out var known) ? known : throw new FormatException($"the input 'claim' is '{claim}', not one of {string.Join(", ", Claims.Keys)}") : ClaimSubject.NoClaim;
        return Tolerances.Of(CheckedRules.Of(inputs)).For(inputs.Text("nutrient"), inputs.Text("unit"), inputs.Number("declared"), subject)
            ?? throw new KeyNotFoundException($"the rule set '{inputs.Text("rule_set")}' lists no tolerance for '{inputs.Text("nutrient")}' in {inputs.Text("unit")}");
    }

    private static CheckValue Limit(double limit) => double.IsFinite(limit) ? CheckValue.Of(limit) : CheckValue.Of("no limit");

    private static double OutsideProbability(CheckInputs inputs)
    {
        Source source = new("check row", Evidence.Published);
        var rules = CheckedRules.Of(inputs) with { KnownSharePercent = 0 };
        var content = Content.Spread(ContentState.Measured, inputs.Number("amount"), source, (int)inputs.Number("samples"), inputs.Number("standard_deviation"));
        Ingredient ingredient = new() { Name = "check row", Profile = new("check row", new([new(inputs.Text("tag"), inputs.Text("nutrient"), inputs.Text("unit"))]), [content]) };
        var panel = NutritionPanel.Of(new() { Parts = [new(ingredient, 100, 0, source)] }, rules, PanelBasis.Per100Grams);
        return LabelCertainty.Of(panel).Figures.FirstOrDefault(figure => Names.Same(figure.Line.Key, inputs.Text("nutrient")))?.OutsideProbability
            ?? throw new KeyNotFoundException($"the rule set '{rules.Name}' gives no chance for '{inputs.Text("nutrient")}'");
    }
}
