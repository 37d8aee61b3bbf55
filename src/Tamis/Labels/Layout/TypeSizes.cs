namespace Tamis.Labels;

/// <summary>A type size that a rule asks for.</summary>
/// <param name="Part">The part of the label.</param>
/// <param name="SizeMillimetres">The least type size in the label's face, in mm.</param>
/// <param name="Rule">The rule.</param>
public sealed record RequiredSize(string Part, double SizeMillimetres, LayoutRule Rule)
{
    /// <summary>The height of a small x at this size, in mm.</summary>
    public double XHeightMillimetres => SizeMillimetres * Typeface.Kit.XHeightRatio;

    /// <summary>The height of a capital or a figure at this size, in mm.</summary>
    public double CapitalMillimetres => SizeMillimetres * Typeface.Kit.CapitalRatio;
}

/// <summary>The sizes, distances and weights of one form of label on one pack.</summary>
/// <param name="rules">The layout rules.</param>
/// <param name="pack">The pack.</param>
/// <param name="netGrams">What it holds, in grams; null where it is not known.</param>
/// <param name="form">The form of panel; empty where there is none.</param>
internal sealed class TypeSizes(LayoutRules rules, PackShape pack, double? netGrams, string form)
{
    public const string XHeight = "mm x-height";
    public const string Figure = "mm figure";
    public const string Height = "mm height";
    public const string Points = "pt";
    public const string Millimetres = "mm";
    public const string OfTheSize = "of the size";
    public const string MorePoints = "pt more than the size";

    /// <summary>The part whose rules hold where a part has none of its own.</summary>
    public const string Text = "text";

    // Where a part has no rule of its own, that of the part that it belongs to holds.
    private static readonly Dictionary<string, string> Wider = new(Names.Comparer)
    {
        ["percent"] = "nutrient", ["vitamin"] = "nutrient", ["column head"] = "nutrient",
        ["title"] = "panel", ["servings"] = "panel", ["serving size"] = "panel", ["amount per"] = "panel", ["energy"] = "panel", ["energy figure"] = "panel",
        ["percent head"] = "panel", ["nutrient"] = "panel", ["footnote"] = "panel", ["panel"] = Text,
        ["warning"] = Text, ["net quantity"] = Text, ["list"] = Text, ["contains"] = "list", ["name"] = Text,
    };

    private readonly Dictionary<string, RequiredSize> _sizes = new(Names.Comparer);

    /// <summary>The sizes that were asked for so far.</summary>
    public IReadOnlyCollection<RequiredSize> Used => _sizes.Values;

    /// <summary>The least type size of a part.</summary>
    /// <exception cref="InvalidOperationException">No size holds for this pack, not even for plain text: the rule file has a gap.</exception>
    public RequiredSize Size(string part)
    {
        if (_sizes.TryGetValue(part, out var known)) return known;
        var found = InRules("size", part).Select(rule => new RequiredSize(part, InMillimetres(rule), rule)).MaxBy(size => size.SizeMillimetres)
            ?? throw new InvalidOperationException($"The layout rules have no type size for '{part}' on a pack of {pack}.");
        _sizes.Add(part, found);
        return found;
    }

    /// <summary>From base line to base line, in mm.</summary>
    public double LeadMillimetres(string part, double sizeMillimetres) => InRules("lead", part).FirstOrDefault() switch
    {
        { Unit: OfTheSize, Number: { } ratio } => sizeMillimetres * ratio,
        { Unit: MorePoints, Number: { } points } => sizeMillimetres + points * Typeface.Kit.PointMillimetres,
        { Number: { } millimetres } => Math.Max(millimetres, sizeMillimetres),
        _ => sizeMillimetres,
    };

    /// <summary>How heavy a rule is drawn, in mm; null where none is drawn.</summary>
    public double? BarMillimetres(string part) => rules.For("bar", part, form, pack, netGrams).Select(InMillimetres).Cast<double?>().FirstOrDefault();

    /// <summary>Room within the box of a panel, in mm.</summary>
    public double PadMillimetres => PadOf("box");

    /// <summary>Room within the box of a part, in mm.</summary>
    public double PadOf(string part) => rules.For("pad", part, form, pack, netGrams).Select(InMillimetres).Cast<double?>().FirstOrDefault() ?? SpaceMillimetres("pad");

    /// <summary>The colours in which the law wants a part where those of the label are not lawful for it; null where they are.</summary>
    /// <param name="part">The part.</param>
    /// <param name="label">The colours of the label.</param>
    public LabelColours? ColoursOf(string part, LabelColours label)
    {
        LabelColour? Of(string rule) => rules.For(rule, part, form, pack, netGrams).Select(row => LabelColour.Parse(row.Value)).FirstOrDefault();
        if (Of(LayoutRules.Ink) is not { } ink || Of(LayoutRules.Ground) is not { } ground) return null;
        var tint = rules.For(LayoutRules.Tint, part, form, pack, netGrams).Select(row => row.Number).FirstOrDefault() ?? 0;
        return label.Ink == ink && label.Ground.TintPercent <= tint ? null : new(ink, ground);
    }

    /// <summary>A distance of the kit's own, in mm; 0 where the file has none.</summary>
    public double SpaceMillimetres(string part, double sizeMillimetres = 0) => rules.For("space", part, form, pack, netGrams).FirstOrDefault() switch
    {
        { Unit: OfTheSize, Number: { } ratio } => ratio * sizeMillimetres,
        { Number: { } millimetres } => millimetres,
        _ => 0,
    };

    /// <summary>Whether a part stands in bold type.</summary>
    public bool IsBold(string part) => rules.For("weight", part, form, pack, netGrams).Any();

    /// <summary>Whether a part is set as wide as its panel.</summary>
    public bool Fills(string part) => rules.For("fill", part, form, pack, netGrams).Any();

    /// <summary>The line after which a section of the panel begins; null where there is none.</summary>
    public string? SectionAfter(string section) => rules.For("section", section, form, pack, netGrams).FirstOrDefault()?.Value;

    private IEnumerable<LayoutRule> InRules(string rule, string part)
    {
        for (var each = part; ; each = Wider.GetValueOrDefault(each, Text))
        {
            var rows = rules.For(rule, each, form, pack, netGrams).ToArray();
            if (rows.Length > 0 || Names.Same(each, Text)) return rows;
        }
    }

    private static double InMillimetres(LayoutRule rule) => rule.Unit switch
    {
        XHeight => rule.Number!.Value / Typeface.Kit.XHeightRatio,
        Figure or Height => rule.Number!.Value / Typeface.Kit.CapitalRatio,
        Points => rule.Number!.Value * Typeface.Kit.PointMillimetres,
        _ => rule.Number!.Value,
    };
}
