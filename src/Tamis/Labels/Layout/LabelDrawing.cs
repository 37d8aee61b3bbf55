using System.Globalization;

namespace Tamis.Labels;

/// <summary>How the panel and the text stand on the face.</summary>
public enum LabelArrangement
{
    /// <summary>The panel at the left, the text beside it.</summary>
    Beside,
    /// <summary>The panel under the text.</summary>
    Under,
    /// <summary>The text alone: the panel stands on another face, or none is asked for.</summary>
    TextAlone,
    /// <summary>The text without the panel that belongs to it: the law lets it be left off.</summary>
    WithoutPanel,
    /// <summary>The panel alone: the text stands on another face.</summary>
    PanelAlone,
}

/// <summary>One layout that was tried.</summary>
/// <param name="Form">The form of panel; null for the text alone.</param>
/// <param name="Arrangement">How panel and text stand.</param>
/// <param name="Why">Why the law allows it.</param>
/// <param name="WidthMillimetres">The width that it needs, with its margins.</param>
/// <param name="HeightMillimetres">The height that it needs, with its margins.</param>
/// <param name="OverWidthMillimetres">By how much it is too wide; 0 where it is not.</param>
/// <param name="OverHeightMillimetres">By how much it is too high; 0 where it is not.</param>
public sealed record LayoutAttempt(LayoutForm? Form, LabelArrangement Arrangement, RuleOrigin Why, double WidthMillimetres, double HeightMillimetres, double OverWidthMillimetres, double OverHeightMillimetres)
{
    /// <summary>Whether the panel is without the columns and percentages that the law does not ask for: they may not take the room of what it asks for.</summary>
    public bool IsShort { get; init; }

    /// <summary>Whether the panel is without the column of the whole package or of a unit, because the law asks for none in this form.</summary>
    public bool IsWithoutSecondColumn { get; init; }

    /// <summary>Where the print stands beside the place of a symbol: empty where none is kept free.</summary>
    public string BesideSymbol { get; init; } = "";

    /// <summary>What is left off because no layout has room for it and the law lets it go, by the rules that do; none where all stands on the face.</summary>
    public IReadOnlyList<LayoutRule> LeftOff { get; init; } = [];

    /// <summary>Whether it stays within the face.</summary>
    public bool Fits => OverWidthMillimetres <= 0 && OverHeightMillimetres <= 0;

    /// <summary>The layout in words: <c>tabular, beside the text</c>.</summary>
    public string InWords => $"{ArrangementInWords}{(BesideSymbol.Length > 0 ? $", {BesideSymbol}" : "")}{(LeftOff.Count > 0 ? $", without the {string.Join(", ", LeftOff.Select(rule => rule.Value))}" : "")}";

    private string ArrangementInWords => Arrangement switch
    {
        LabelArrangement.Beside => $"{FormInWords}, beside the text",
        LabelArrangement.Under => $"{FormInWords}, under the text",
        LabelArrangement.PanelAlone => $"{FormInWords}, alone",
        LabelArrangement.WithoutPanel => "text without the panel",
        _ => "text alone",
    };

    /// <summary>The layout with what it needs, and by how much it does not fit.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{InWords}: needs {WidthMillimetres:0.0} × {HeightMillimetres:0.0}\u202fmm{(Fits ? ", fits" : $", {string.Join(" and ", Over())}")}");

    private string FormInWords => $"{Form?.Name}{(IsShort ? " of what is asked for" : IsWithoutSecondColumn ? " without the second column" : "")}";

    private IEnumerable<string> Over()
    {
        if (OverWidthMillimetres > 0) yield return string.Create(CultureInfo.InvariantCulture, $"{OverWidthMillimetres:0.0}\u202fmm too wide");
        if (OverHeightMillimetres > 0) yield return string.Create(CultureInfo.InvariantCulture, $"{OverHeightMillimetres:0.0}\u202fmm too high");
    }
}

/// <summary>A label laid out on the face of its pack, in mm.</summary>
public sealed record LabelDrawing
{
    /// <summary>What it says.</summary>
    public required LabelContent Content { get; init; }

    /// <summary>The layout that was taken: the first that fits, or the one that comes nearest.</summary>
    public required LayoutAttempt Layout { get; init; }

    /// <summary>Every layout that was tried, in order.</summary>
    public required IReadOnlyList<LayoutAttempt> Attempts { get; init; }

    /// <summary>What is drawn, in reading order.</summary>
    public required IReadOnlyList<LabelMark> Marks { get; init; }

    /// <summary>The type sizes that the rules ask for, part by part.</summary>
    public required IReadOnlyList<RequiredSize> Sizes { get; init; }

    /// <summary>The contrast that the rules ask for, with its rule; null where they ask for none.</summary>
    public required LayoutRule? ContrastRule { get; init; }

    /// <summary>What a reader should know beside it.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }

    /// <summary>The width of the face, in mm.</summary>
    public double WidthMillimetres => Content.Pack.FaceWidthMillimetres;

    /// <summary>The height of the face, in mm.</summary>
    public double HeightMillimetres => Content.Pack.FaceHeightMillimetres;

    /// <summary>Where the place of the symbol stands, without its buffer; null where none is kept free.</summary>
    public ReserveMark? SymbolPlace { get; init; }

    /// <summary>Why the place of the symbol is none that the law allows; null where it is, or where none is kept free.</summary>
    public string? SymbolProblem { get; init; }

    /// <summary>What keeps it from print: gaps in its figures and words, a layout that does not fit, too little contrast.</summary>
    public IReadOnlyList<string> DraftReasons =>
    [
        .. Content.DraftReasons,
        .. SymbolProblem is { } problem ? [problem] : Array.Empty<string>(),
        .. Layout.Fits ? Array.Empty<string>() : [$"No lawful layout fits the face of {Content.Pack}. {Layout}."],
        .. ContrastRule is { Number: { } least } && Content.Colours.ContrastRatio < least
            ? [string.Create(CultureInfo.InvariantCulture, $"The contrast of {Content.Colours.Ink} on {Content.Colours.Ground} is {Content.Colours.ContrastRatio:0.0} to 1; {least:0.#} to 1 is asked for.")] : Array.Empty<string>(),
    ];

    /// <summary>Whether it may not be printed.</summary>
    public bool IsDraft => DraftReasons.Count > 0;

    /// <summary>Lays a label out in the first lawful layout that fits the face of its pack.</summary>
    /// <exception cref="Tables.TableException">The layout rules cannot be read.</exception>
    public static LabelDrawing Of(LabelContent content) => new LabelComposer(content).Compose();

    /// <summary>The face in words: <c>face 2, 75 × 65 mm</c>.</summary>
    public string FaceInWords => Content.Face is { } face ? $"face {face.ToString(CultureInfo.InvariantCulture)}, {Content.Pack}" : Content.Pack.ToString();
}
