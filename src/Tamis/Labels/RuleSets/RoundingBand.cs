namespace Tamis.Labels;

/// <summary>How a band turns an amount into the text of a label.</summary>
public enum RoundingMethod
{
    /// <summary>To the nearest multiple of the increment.</summary>
    Nearest,
    /// <summary>To so many significant figures.</summary>
    Significant,
    /// <summary>A text that stands for the whole band.</summary>
    Text,
}

/// <summary>One band of a rounding table: which amounts it takes and what is printed for them.</summary>
/// <remarks>The band is chosen on the amount before any rounding. All arithmetic is decimal: sodium 0.246 g makes salt 0.615 g exactly,
/// a tie that binary fractions can break the wrong way. Ties go up.</remarks>
public sealed record RoundingBand
{
    /// <summary>The figure that it rounds, by the key of the declaration.</summary>
    public required string Key { get; init; }

    /// <summary>The unit of the amounts.</summary>
    public required string Unit { get; init; }

    /// <summary>The amounts that it takes, in <see cref="Unit"/>.</summary>
    public required FigureBand Range { get; init; }

    /// <summary>The lower end, in <see cref="Unit"/>.</summary>
    public decimal From => Range.From;

    /// <summary>Whether the lower end itself belongs to the band.</summary>
    public bool IncludesFrom => Range.IncludesFrom;

    /// <summary>The upper end, in <see cref="Unit"/>; null where there is none.</summary>
    public decimal? To => Range.To;

    /// <summary>Whether the upper end itself belongs to the band.</summary>
    public bool IncludesTo => Range.IncludesTo;

    /// <summary>How it rounds.</summary>
    public required RoundingMethod Method { get; init; }

    /// <summary>The step in <see cref="Unit"/>, or the number of significant figures; 0 for a text.</summary>
    public required decimal Increment { get; init; }

    /// <summary>The pattern of the printed figure, # for the number: <c># g</c>; empty for a text.</summary>
    public string Printed { get; init; } = "";

    /// <summary>What is printed for the whole band; empty unless the method is a text.</summary>
    public string Text { get; init; } = "";

    /// <summary>Other texts that may be printed for the whole band.</summary>
    public IReadOnlyList<string> Alternatives { get; init; } = [];

    /// <summary>A step to which the amount may be rounded instead, in <see cref="Unit"/>; null where there is none.</summary>
    public decimal? AlternativeIncrement { get; init; }

    /// <summary>So many significant figures of the amount may be printed instead; null where they may not.</summary>
    public int? AlternativeFigures { get; init; }

    /// <summary>The condition that must be met for the band to be taken, in place of a band that asks for none; empty where it asks for none.</summary>
    public string If { get; init; } = "";

    /// <summary>When the band may or must be used, in words; may be empty.</summary>
    public string Condition { get; init; } = "";

    /// <summary>Where the band came from.</summary>
    public required RuleOrigin Origin { get; init; }

    /// <summary>When the row is in force.</summary>
    public InForce InForce { get; init; } = InForce.Always;

    /// <summary>Whether the band takes this amount.</summary>
    public bool Takes(decimal amount) => Range.Takes(amount);

    /// <summary>The rule in words: <c>nearest 0.1 g from 0.5 to 10 g, ties up</c>.</summary>
    public string InWords => Method switch
    {
        RoundingMethod.Text => $"'{Text}' {RangeInWords}{OnlyIf}",
        RoundingMethod.Significant => $"{Plain(Increment)} significant figures {RangeInWords}{OnlyIf}, ties up",
        _ => $"nearest {Plain(Increment)} {Unit} {RangeInWords}{OnlyIf}, ties up",
    };

    private string OnlyIf => If.Length > 0 ? $" ({If})" : "";

    /// <summary>The figure, the rule and where it came from.</summary>
    public override string ToString() => $"{Key}: {InWords} [{Origin}]";

    private string RangeInWords => To is { } to
        ? $"{(IncludesFrom ? "from" : "above")} {Plain(From)} {(IncludesTo ? "up to" : "to below")} {Plain(to)} {Unit}"
        : $"{(IncludesFrom ? "from" : "above")} {Plain(From)} {Unit}";

    private static string Plain(decimal number) => number.ToString("0.#########", System.Globalization.CultureInfo.InvariantCulture);
}
