using System.Globalization;
using Tamis.Labels;

namespace Tamis.Verification;

/// <summary>What reserved names, net quantities, dates and warnings lend to the published checks.</summary>
/// <remarks><list type="bullet">
/// <item><c>reserved_name_allowed</c>: <c>rule_set</c>, <c>name</c>, figures by their keys in <c>name-figures.csv</c>; where they apply <c>day</c>, <c>list</c>; yes, no or cannot be said.</item>
/// <item><c>tolerable_negative_error</c>: <c>rule_set</c>, <c>nominal_g</c>; g.</item>
/// <item><c>net_quantity_words</c>: <c>rule_set</c>, <c>nominal_g</c> or <c>nominal_ml</c>; where it is not English <c>language</c>; the statement on the pack.</item>
/// <item><c>particular_triggered</c>: <c>rule_set</c>, <c>particular</c>, <c>amount</c> in the unit of its limit; yes or no.</item>
/// <item><c>additive_level_allowed</c>: <c>rule_set</c>, <c>additive</c>, <c>category</c>, <c>mg_per_kg</c>; yes or no.</item>
/// <item><c>date_form</c>: <c>rule_set</c>, <c>days</c>; the form in words.</item>
/// </list></remarks>
public static class LabelNameQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["reserved_name_allowed"] = ReservedName,
        ["tolerable_negative_error"] = inputs => NetQuantityRules.Of(CheckedRules.Of(inputs)).Shortfall((decimal)inputs.Number("nominal_g")) is { } shortfall ? CheckValue.Of((double)shortfall.Grams) : CheckValue.Of("no band"),
        ["net_quantity_words"] = inputs => inputs.OptionalNumber("nominal_ml") is var volume && NetQuantityWords.Of(CheckedRules.Of(inputs))
            .Stated((decimal)(volume ?? inputs.Number("nominal_g")), volume is not null, inputs.OptionalText("language") ?? "en") is { } stated ? CheckValue.Of(stated.Text) : CheckValue.Of("no words"),
        ["particular_triggered"] = inputs => ParticularRules.Of(CheckedRules.Of(inputs)).All.First(rule => Names.Same(rule.Name, inputs.Text("particular"))) is { Content: not null } rule
            ? YesOrNo(rule.Test.Passes((decimal)inputs.Number("amount"), rule.Limit)) : CheckValue.Of("no limit"),
        ["additive_level_allowed"] = inputs => AdditiveLevels.Of(CheckedRules.Of(inputs)).For(inputs.Text("additive"), inputs.Text("category")) is { } level
            ? YesOrNo(AdditiveLevels.IsWithin(level, (decimal)inputs.Number("mg_per_kg"))) : CheckValue.Of("no row"),
        ["date_form"] = inputs => CheckValue.Of(DateRules.Of(CheckedRules.Of(inputs)).Form((int)inputs.Number("days"))?.Name ?? "no form"),
    };

    private static CheckValue ReservedName(CheckInputs inputs)
    {
        DateOnly? day = inputs.OptionalText("day") is { } text ? DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture) : null;
        Source row = new("the row of the check", Evidence.Sheet);
        var check = ReservedNames.Of(CheckedRules.Of(inputs), day)[inputs.Text("name")].Check(new(inputs.Text("name"),
            term => inputs.OptionalNumber(term) is { } value ? new StatedFigure((decimal)value, row) : null, inputs.OptionalText("list") ?? ""));
        return CheckValue.Of(check.Verdict switch { NameVerdict.Allowed => "yes", NameVerdict.Refused => "no", _ => "cannot be said" });
    }

    private static CheckValue YesOrNo(bool yes) => CheckValue.Of(yes ? "yes" : "no");
}
