namespace Tamis.Labels;

/// <summary>A paragraph of a label.</summary>
/// <param name="Part">Which part of the label it is, for the rules of size and weight: <c>name</c>, <c>list</c>, <c>warning</c>, <c>text</c>.</param>
/// <param name="Runs">Its words.</param>
public sealed record LabelParagraph(string Part, IReadOnlyList<TextRun> Runs)
{
    /// <summary>The part that it goes with where a label is spread over several faces: a statement beside the name goes where the name goes.</summary>
    public string StandsWith { get; init; } = Part == "contains" ? "list" : Part;

    /// <summary>The particular that it is, by its key in <c>dessert.csv</c>, where the law may let it be left off: <c>keep</c>, <c>lot</c>; empty for all else.</summary>
    public string Particular { get; init; } = "";

    /// <summary>A paragraph of one run.</summary>
    public static LabelParagraph Of(string part, string text) => new(part, [new(text, false)]);
}

/// <summary>What a label says in one language.</summary>
/// <param name="Language">The code of the language; empty for names and numbers that are the same in all.</param>
/// <param name="Paragraphs">Its paragraphs, from the name of the food on.</param>
public sealed record LabelLanguage(string Language, IReadOnlyList<LabelParagraph> Paragraphs);

/// <summary>The colours of print and ground.</summary>
/// <param name="Ink">The colour of the print.</param>
/// <param name="Ground">The colour that it stands on.</param>
public sealed record LabelColours(LabelColour Ink, LabelColour Ground)
{
    /// <summary>Black on white.</summary>
    public static LabelColours BlackOnWhite { get; } = new(new(0, 0, 0), new(255, 255, 255));

    /// <summary>The contrast, from 1 (none) to 21 (black on white).</summary>
    /// <remarks>(L1 + 0.05) / (L2 + 0.05) of the relative luminances, the lighter one first (Web Content Accessibility Guidelines 2.1, definition of contrast ratio).</remarks>
    public double ContrastRatio
    {
        get
        {
            var (one, other) = (Ink.RelativeLuminanceRatio, Ground.RelativeLuminanceRatio);
            return (Math.Max(one, other) + 0.05) / (Math.Min(one, other) + 0.05);
        }
    }
}

/// <summary>All that a drawn label says, before it is laid out.</summary>
public sealed record LabelContent
{
    /// <summary>The rule set.</summary>
    public required RuleSet Rules { get; init; }

    /// <summary>The day whose rules it is drawn up by; null for those that have no end.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>The pack.</summary>
    public required PackShape Pack { get; init; }

    /// <summary>The panel; null where none is asked for.</summary>
    public required PanelContent? Panel { get; init; }

    /// <summary>Why the pack bears no panel, where none is asked for of it; null where it does, or where the panel stands on another face.</summary>
    public string? WhyNoPanel { get; init; }

    /// <summary>The panel without the columns and percentages that the law does not ask for; null where all that it holds is asked for.</summary>
    public PanelContent? ShortPanel { get; init; }

    /// <summary>The panel without the column of the whole package or of a unit, for a pack of which the law asks for none; null where it has no such column.</summary>
    public PanelContent? ServingPanel { get; init; }

    /// <summary>What stands beside it, a language after the other.</summary>
    public required IReadOnlyList<LabelLanguage> Languages { get; init; }

    /// <summary>What the pack holds, in grams; null where it is not known.</summary>
    public required double? NetGrams { get; init; }

    /// <summary>The net quantity as it is printed; empty where it is not known.</summary>
    public required string NetQuantity { get; init; }

    /// <summary>Which face of several it is, from 1 on; null where all stands on one.</summary>
    public int? Face { get; init; }

    /// <summary>The symbol that the law wants on this face; null where it wants none.</summary>
    public LabelSymbol? Symbol { get; init; }

    /// <summary>The colours.</summary>
    public LabelColours Colours { get; init; } = LabelColours.BlackOnWhite;

    /// <summary>What a reader should know of it that keeps it from nothing.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>What keeps it from print; none where it may be printed.</summary>
    public required IReadOnlyList<string> DraftReasons { get; init; }
}
