namespace Tamis.Labels;

/// <summary>What may be left off a nutrition panel because there is next to nothing of it, and what is said in its place.</summary>
public sealed class ShortPanel
{
    private readonly ShortPanelRules _rules;

    private ShortPanel(ShortPanelRules rules, bool isSimplified, IReadOnlyList<InsignificantFigure> leftOff) => (_rules, IsSimplified, LeftOff) = (rules, isSimplified, leftOff);

    /// <summary>Whether the law's simplified format may be used; otherwise each figure is left off by itself.</summary>
    public bool IsSimplified { get; }

    /// <summary>The figures that may be left off, each with the row that lets it be; none where nothing may.</summary>
    public IReadOnlyList<InsignificantFigure> LeftOff { get; }

    /// <summary>What may be left off a panel: in the simplified format where enough is insignificant, otherwise figure by figure.</summary>
    /// <param name="columns">The panel on every basis that is printed; at least one. A figure is left off where there is next to nothing of it in each of them, and never where it is not known well enough.</param>
    /// <param name="claimed">The figures about which the pack claims something.</param>
    public static ShortPanel Of(IReadOnlyList<NutritionPanel> columns, IReadOnlyCollection<string> claimed)
    {
        var rules = ShortPanelRules.Of(columns[0].Rules);
        InsignificantFigure[] open = [.. rules.Figures.Where(row => columns.All(panel => IsInsignificant(panel, row)) && !row.UnlessClaimed.Any(figure => claimed.Contains(figure, Names.Comparer)))];
        var simplified = open.Where(row => row.Way == ShortWay.Simplified).ToArray();
        var isSimplified = rules.SimplifiedFrom is { } least && simplified.Count(row => row.Role != SimplifiedRole.NotCounted) >= least;
        InsignificantFigure[] leftOff = [.. isSimplified ? simplified.Where(row => row.Role != SimplifiedRole.Kept) : open.Where(row => row.Way == ShortWay.Alone)];
        return new(rules, isSimplified, [.. leftOff.Where(row => columns[0].Lines.Any(line => Names.Same(line.Key, row.Figure)))]);
    }

    /// <summary>The languages in which the rule set has words for what is left off.</summary>
    public IReadOnlyCollection<string> Languages => [.. _rules.Statements.Keys];

    /// <summary>What is said in place of the figures; null where nothing is left off or the rule set has no words in the language.</summary>
    public string? StatementIn(string language)
    {
        if (!_rules.Statements.TryGetValue(language, out var statement)) return null;
        string[] names = [.. LeftOff.Select(row => row.Words.GetValueOrDefault(language)).OfType<string>().Distinct()];
        return names.Length == 0 ? null : statement.Replace("#", Listed(names, _rules.And.GetValueOrDefault(language)), StringComparison.Ordinal);
    }

    /// <summary>A panel in words without what is left off, with what is said in its place, once a language.</summary>
    public PanelContent Without(PanelContent content, IReadOnlyList<string> languages) => LeftOff.Count == 0 ? content : content with
    {
        Lines = [.. content.Lines.Where(line => !LeftOff.Any(row => Names.Same(row.Figure, line.Key)))],
        Footnotes = [.. languages.Select(StatementIn).OfType<string>(), .. content.Footnotes],
        Problems = [.. content.Problems, .. languages.Where(language => StatementIn(language) is null).Select(language => new ListProblem($"What is left off the panel has no words in '{language}'", "write them in short-panel.csv of the rule set", null))],
    };

    private static bool IsInsignificant(NutritionPanel panel, InsignificantFigure row)
    {
        PanelLine[] lines = [.. panel.Lines.Where(line => Names.Same(line.Key, row.Of))];
        return lines.Length > 0 && Array.TrueForAll(lines, line => line.Value is { } value && row.Takes(panel.Rules, RoundingTable.ToDecimal(value), line.Rounded is { IsZero: true }));
    }

    private static string Listed(string[] names, string? and) => names.Length == 1 || and is null ? string.Join(", ", names) : $"{string.Join(", ", names[..^1])} {and} {names[^1]}";
}
