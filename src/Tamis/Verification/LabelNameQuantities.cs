using System.Globalization;
using Tamis.Labels;

namespace Tamis.Verification;

/// <summary>What reserved names, net quantities, dates and warnings lend to the published checks.</summary>
/// <remarks><list type="bullet">
/// <item><c>reserved_name_allowed</c>: <c>rule_set</c>, <c>name</c>, figures by their keys in <c>name-figures.csv</c>; where they apply <c>day</c>, <c>list</c>; yes, no or cannot be said.</item>
/// </list></remarks>
public static class LabelNameQuantities
{
    private static readonly Dictionary<string, RuleSet> Read = new(Names.Comparer);

    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["reserved_name_allowed"] = ReservedName,
    };

    private static CheckValue ReservedName(CheckInputs inputs)
    {
        DateOnly? day = inputs.OptionalText("day") is { } text ? DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture) : null;
        Source row = new("the row of the check", Evidence.Sheet);
        var check = ReservedNames.Of(Rules(inputs), day)[inputs.Text("name")].Check(new(inputs.Text("name"),
            term => inputs.OptionalNumber(term) is { } value ? new StatedFigure((decimal)value, row) : null, inputs.OptionalText("list") ?? ""));
        return CheckValue.Of(check.Verdict switch { NameVerdict.Allowed => "yes", NameVerdict.Refused => "no", _ => "cannot be said" });
    }

    private static RuleSet Rules(CheckInputs inputs)
    {
        var name = inputs.Text("rule_set");
        lock (Read) return Read.TryGetValue(name, out var rules) ? rules : Read[name] = RuleSets.Load(KitFolder.Data("rules"), name);
    }
}
