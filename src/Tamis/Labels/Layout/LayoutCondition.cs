using System.Globalization;
using System.Text.RegularExpressions;

namespace Tamis.Labels;

/// <summary>A condition on a pack, as a rule file writes it: <c>largest surface &lt; 80 cm2</c>; several are parted by semicolons and all must hold.</summary>
public sealed partial record LayoutCondition
{
    private static readonly Dictionary<string, (PackMeasure Measure, string[] Units)> Measures = new(Names.Comparer)
    {
        ["largest surface"] = (PackMeasure.LargestSurface, ["cm2", "sq in"]),
        ["total surface"] = (PackMeasure.TotalSurface, ["cm2", "sq in"]),
        ["display surface"] = (PackMeasure.DisplaySurface, ["cm2", "sq in"]),
        ["vertical space"] = (PackMeasure.VerticalSpace, ["mm"]),
        ["longest side"] = (PackMeasure.LongestSide, ["mm"]),
        ["net quantity"] = (PackMeasure.NetQuantity, ["g"]),
    };

    // 1 in is 25.4 mm exactly.
    private const double SquareCentimetresPerSquareInch = 2.54 * 2.54;

    private LayoutCondition(string text, PackMeasure measure, string comparison, double limit) => (Text, Measure, Comparison, Limit) = (text, measure, comparison, limit);

    /// <summary>The condition as it is written.</summary>
    public string Text { get; }

    /// <summary>What is measured.</summary>
    public PackMeasure Measure { get; }

    private string Comparison { get; }

    // In cm², mm or g, whatever the unit it is written in.
    private double Limit { get; }

    /// <summary>What a cell may hold, for a message.</summary>
    public static string Expected => $"such as 'largest surface < 80 cm2', parted by semicolons; known measures: {string.Join(", ", Measures.Keys)}";

    /// <summary>Reads the conditions of a cell; null where one cannot be read.</summary>
    public static IReadOnlyList<LayoutCondition>? ParseAll(string text)
    {
        LayoutCondition?[] read = [.. text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Parse)];
        return Array.TrueForAll(read, one => one is not null) ? [.. read.OfType<LayoutCondition>()] : null;
    }

    /// <summary>Whether it holds for a pack; not where the measure is not known.</summary>
    public bool Holds(PackShape pack, double? netGrams) => pack.Measure(Measure, netGrams) is { } value && Comparison switch
    {
        "<" => value < Limit,
        "<=" => value <= Limit,
        ">" => value > Limit,
        _ => value >= Limit,
    };

    /// <summary>The condition with the signs of print: <c>largest surface ≥ 80 cm²</c>.</summary>
    public override string ToString() => Text.Replace("<=", "≤").Replace(">=", "≥").Replace("cm2", "cm²").Replace(" sq in", "\u202fsq in").Replace(" cm²", "\u202fcm²").Replace(" mm", "\u202fmm").Replace(" g", "\u202fg");

    private static LayoutCondition? Parse(string text)
    {
        if (Written().Match(text) is not { Success: true } found || !Measures.TryGetValue(found.Groups["measure"].Value.Trim(), out var known)) return null;
        var unit = found.Groups["unit"].Value.Trim();
        if (!known.Units.Contains(unit, StringComparer.Ordinal)) return null;
        var number = double.Parse(found.Groups["number"].Value, CultureInfo.InvariantCulture);
        return new(text, known.Measure, found.Groups["comparison"].Value, unit == "sq in" ? number * SquareCentimetresPerSquareInch : number);
    }

    [GeneratedRegex(@"^(?<measure>[a-z ]+?)\s*(?<comparison><=|>=|<|>)\s*(?<number>[0-9]+(\.[0-9]+)?)\s*(?<unit>.+)$")]
    private static partial Regex Written();
}
