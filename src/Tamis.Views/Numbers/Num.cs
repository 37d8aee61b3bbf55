namespace Tamis.Views;

/// <summary>A number as it is shown: rounded, with the marks of its language, the unit kept apart so that a column can stand on the decimal mark.</summary>
/// <param name="Whole">All that stands before the decimal mark, its sign with it; words such as <c>not known</c> stand here whole.</param>
/// <param name="Decimals">The decimal mark and what follows, or nothing.</param>
/// <param name="Unit">The unit, or nothing for a pure number.</param>
public readonly record struct Num(string Whole, string Decimals, string Unit)
{
    /// <summary>What parts a number from its unit: narrow, and no line ends there.</summary>
    public const string UnitSpace = "\u202f";

    /// <summary>Words in place of a number.</summary>
    public static Num Said(string words) => new(words, "", "");

    /// <summary>The number without its unit.</summary>
    public string Figure => (Whole ?? "") + Decimals;

    /// <summary>The number and its unit as text.</summary>
    public string Text => string.IsNullOrEmpty(Unit) ? Figure : Figure + UnitSpace + Unit;

    /// <summary>The number as the content of a <c>.num</c> cell: the decimals apart, so that decimal marks stand above each other.</summary>
    public Html Cell => Html.Of($"{Whole}<i>{Decimals}</i>");

    /// <summary>The number and its unit for a sentence, never broken at a line's end.</summary>
    public Html InText => Html.Of($"<span class=\"n\">{Text}</span>");

    /// <summary>The number without its unit, where a header names the unit.</summary>
    public Num WithoutUnit() => this with { Unit = "" };

    /// <inheritdoc/>
    public override string ToString() => Text;
}

/// <summary>An estimate and its interval as shown: both to the same place.</summary>
/// <param name="Value">The estimate.</param>
/// <param name="Low">The lower end of the interval, or null where the data give none.</param>
/// <param name="High">The upper end of the interval, or null where the data give none.</param>
public readonly record struct Estimate(Num Value, Num? Low, Num? High)
{
    /// <summary>The word between the two ends.</summary>
    internal string To { get; init; } = "to";

    /// <summary>Whether there is an interval to show.</summary>
    public bool HasInterval => Low is not null && High is not null;

    /// <summary>The interval as text, <c>1.1 to 4.0</c>, or nothing.</summary>
    public string Range => Low is { } low && High is { } high ? $"{low.Figure} {To} {high.Figure}" : "";

    /// <summary>The estimate, its unit and its interval in a sentence.</summary>
    public Html InText => HasInterval ? Html.Of($"{Value.InText} <span class=\"sure\">({Range})</span>") : Value.InText;

    /// <summary>The same as plain text.</summary>
    public string Text => HasInterval ? $"{Value.Text} ({Range})" : Value.Text;

    /// <inheritdoc/>
    public override string ToString() => Text;
}
