using System.Globalization;

namespace Tamis.Composition;

/// <summary>A figure of a table that does not fit a rule.</summary>
/// <param name="Food">The food.</param>
/// <param name="Figure">What was tested, in words: a nutrient or a sum of some.</param>
/// <param name="Tag">The nutrient's tagname; empty where a sum was tested.</param>
/// <param name="Value">What the table has in 100 g, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit of the value and of what was expected.</param>
/// <param name="Rule">The rule that it does not fit.</param>
public sealed record AuditFinding(Food Food, string Figure, string Tag, double Value, string Unit, AuditRule Rule)
{
    /// <summary>The least that the rule expects, in <see cref="Unit"/>; null where it sets none.</summary>
    public double? Low { get; init; }

    /// <summary>The most that the rule expects, in <see cref="Unit"/>; null where it sets none.</summary>
    public double? High { get; init; }

    /// <summary>What it was held against, in words: <c>carbohydrate</c>, <c>25 foods of its group</c>; empty for fixed limits.</summary>
    public string Against { get; init; } = "";

    /// <summary>Where the figure comes from; null where several were summed.</summary>
    public Source? Origin { get; init; }

    /// <summary>Why it may stand as it is; null where nobody has looked it up.</summary>
    public string? Explanation { get; init; }

    /// <summary>Whether somebody has looked it up.</summary>
    public bool IsExplained => Explanation is not null;

    /// <summary>What was expected, in words.</summary>
    public string Expected => (Low, High) switch
    {
        ({ } low, { } high) => $"{Written(low)} to {Written(high)} {Unit}",
        ({ } low, null) => $"{Written(low)} {Unit} or more",
        (null, { } high) => $"at most {Written(high)} {Unit}",
        _ => "",
    };

    /// <summary>The finding as a sentence.</summary>
    public override string ToString() =>
        $"{Food.Name} ({Food.Id}), {Rule.Name}: {Figure} {Written(Value)} {Unit}, expected {Expected}{(Against.Length > 0 ? $" ({Against})" : "")}{(Explanation is { } why ? $"; looked up: {why}" : "")}";

    private static string Written(double value) => Math.Abs(value) >= 100
        ? value.ToString("0.#", CultureInfo.InvariantCulture) : value.ToString("G3", CultureInfo.InvariantCulture);
}
