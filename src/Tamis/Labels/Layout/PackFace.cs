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
        var apart = Apart(content.Rules, faces, part => Has(content, part), part => StandingWith(content, part)).ToLookup(each => each.IsLaw, each => each.Words);
        string[] reasons = [.. content.DraftReasons, .. apart[true]];
        var carried = faces.Select(face => face.Part(content, faces)).Where(part => part.Panel is not null || part.Languages.Count > 0 || part.NetQuantity.Length > 0);
        return [.. carried.Select((part, at) => part with { Face = at + 1, DraftReasons = reasons, Remarks = [.. content.Remarks, .. apart[false]] })];
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

    // What goes with a part wherever it stands: a strength in one field of vision with the name.
    private static IReadOnlyList<string> StandingWith(LabelContent content, string part) =>
        [.. content.Languages.SelectMany(language => language.Paragraphs).Where(paragraph => Names.Same(paragraph.StandsWith, part) && Names.Same(paragraph.Part, "warning")).Select(paragraph => string.Concat(paragraph.Runs.Select(run => run.Text))).Distinct()];

    /// <summary>Which parts stand on different faces and belong on one, a sentence each, and whether the law says so.</summary>
    /// <param name="rules">The rule set.</param>
    /// <param name="faces">The faces; with fewer than two nothing is apart.</param>
    /// <param name="has">Whether the label has a part.</param>
    /// <param name="with">What else stands with a part, in its own words.</param>
    internal static IEnumerable<(bool IsLaw, string Words)> Apart(RuleSet rules, IReadOnlyList<PackFace> faces, Func<string, bool> has, Func<string, IReadOnlyList<string>> with) =>
        from row in LayoutRules.Of(rules).Rows
        where Names.Same(row.Rule, LayoutRules.Together) && has(row.Part) && has(row.Value) && faces.Count > 0 && row.Conditions.All(condition => condition.Holds(faces[0].Shape, null)) && !faces.Any(face => face.Carries(row.Part, faces) && face.Carries(row.Value, faces))
        let isLaw = row.Origin.Strength is RuleStrength.Law or RuleStrength.Guidance
        let others = with(row.Part) is { Count: > 0 } texts ? $" (with {string.Join(", ", texts.Select(text => $"‘{text}’"))})" : ""
        select (isLaw, $"The {row.Part}{others} and the {row.Value} {(isLaw ? "must" : "should")} stand on one face ({row.Origin}): mend the rows 'face' in dessert.csv.");
}
