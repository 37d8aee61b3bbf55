namespace Tamis.Labels;

/// <summary>A face of a pack with the parts of the label that stand on it.</summary>
/// <param name="Shape">The pack, with this face to print.</param>
/// <param name="Parts">The parts: of <see cref="Known"/>.</param>
public sealed record PackFace(PackShape Shape, IReadOnlyList<string> Parts)
{
    /// <summary>The word for all parts that no face names.</summary>
    public const string Rest = "rest";

    private const string Panel = "panel";
    private const string NetQuantity = "net quantity";

    /// <summary>The parts that a face may carry.</summary>
    public static IReadOnlyList<string> Known { get; } = ["name", NetQuantity, "list", "warning", "text", Panel, Rest];

    /// <summary>Spreads a label over faces; one that carries nothing is left out.</summary>
    /// <param name="content">All that the label says.</param>
    /// <param name="faces">The faces.</param>
    /// <returns>What each face says. What keeps the label from print keeps each of its faces from it, and so does a part that the law wants beside another and that stands elsewhere.</returns>
    public static IReadOnlyList<LabelContent> Spread(LabelContent content, IReadOnlyList<PackFace> faces)
    {
        string[] reasons = [.. content.DraftReasons, .. Apart(content, faces)];
        var carried = faces.Select(face => face.Part(content, faces)).Where(part => part.Panel is not null || part.Languages.Count > 0 || part.NetQuantity.Length > 0);
        return [.. carried.Select((part, at) => part with { Face = at + 1, DraftReasons = reasons })];
    }

    private LabelContent Part(LabelContent content, IReadOnlyList<PackFace> faces) => content with
    {
        Pack = Shape,
        Panel = Carries(Panel, faces) ? content.Panel : null,
        ShortPanel = Carries(Panel, faces) ? content.ShortPanel : null,
        ServingPanel = Carries(Panel, faces) ? content.ServingPanel : null,
        NetQuantity = Carries(NetQuantity, faces) ? content.NetQuantity : "",
        // The front is the face that a buyer sees first: that of the name.
        Symbol = Carries("name", faces) ? content.Symbol : null,
        Languages = [.. content.Languages.Select(language => language with { Paragraphs = [.. language.Paragraphs.Where(paragraph => Carries(paragraph.StandsWith, faces))] }).Where(language => language.Paragraphs.Count > 0)],
    };

    private bool Carries(string part, IReadOnlyList<PackFace> faces) => Parts.Contains(part, Names.Comparer) || Parts.Contains(Rest, Names.Comparer) && !faces.Any(face => face.Parts.Contains(part, Names.Comparer));

    // What the label does not have stands beside nothing.
    private static bool Has(LabelContent content, string part) =>
        Names.Same(part, Panel) ? content.Panel is not null
        : Names.Same(part, NetQuantity) ? content.NetQuantity.Length > 0
        : content.Languages.SelectMany(language => language.Paragraphs).Any(paragraph => Names.Same(paragraph.StandsWith, part));

    private static IEnumerable<string> Apart(LabelContent content, IReadOnlyList<PackFace> faces) =>
        from row in LayoutRules.Of(content.Rules).Rows
        where Names.Same(row.Rule, LayoutRules.Together) && Has(content, row.Part) && Has(content, row.Value) && !faces.Any(face => face.Carries(row.Part, faces) && face.Carries(row.Value, faces))
        select $"The {row.Part} and the {row.Value} must stand on one face ({row.Origin}): mend the rows 'face' in dessert.csv.";
}
