namespace Tamis.Labels;

/// <summary>A figure that is computed and not printed.</summary>
/// <param name="Figure">The figure, by its key.</param>
/// <param name="Why">Why it may be left off, in words: <c>total fat below 0.5 g</c>.</param>
/// <param name="Words">What a statement in its place calls it, by language; empty where nothing is said in its place.</param>
/// <param name="Origin">The row that lets it be left off.</param>
public sealed record UnprintedFigure(string Figure, string Why, IReadOnlyDictionary<string, string> Words, RuleOrigin Origin);

/// <summary>What may be left off a nutrition panel, because there is next to nothing of it or because the law asks for no panel, and what is said in its place.</summary>
public sealed class ShortPanel
{
    // What a part is called where the line that it is a part of is not printed.
    private const string Alone = " alone";

    private readonly ShortPanelRules _rules;
    private readonly PanelTerms _terms;
    private readonly IReadOnlyList<string> _alone;

    private ShortPanel(ShortPanelRules rules, NutritionPanel panel, bool isSimplified, LimitedPanel? limit, IReadOnlyList<UnprintedFigure> leftOff)
    {
        (_rules, _terms, IsSimplified, Limit, LeftOff) = (rules, PanelTerms.Of(panel.Rules), isSimplified, limit, leftOff);
        _alone = [.. panel.Lines.Where((line, at) => line.Indent > 0 && !IsLeftOff(line.Key) && panel.Lines.Take(at).LastOrDefault(before => before.Indent < line.Indent) is { } whole && IsLeftOff(whole.Key)).Select(line => line.Key)];
    }

    /// <summary>Whether it is the format of a package that is one serving, in which nothing is said in place of what is left off.</summary>
    public bool IsSingleServing { get; private init; }

    /// <summary>Whether the law's simplified format may be used; otherwise each figure is left off by itself.</summary>
    public bool IsSimplified { get; }

    /// <summary>The panel of few figures that stands, because the law asks for none; null where figures are left off for want of an amount.</summary>
    public LimitedPanel? Limit { get; }

    /// <summary>The figures that may be left off, each with the row that lets it be; none where nothing may.</summary>
    public IReadOnlyList<UnprintedFigure> LeftOff { get; }

    /// <summary>What may be left off a panel: in the simplified format where enough is insignificant, otherwise figure by figure.</summary>
    /// <param name="columns">The panel on every basis that is printed; at least one. A figure is left off where there is next to nothing of it in each of them, and never where it is not known well enough.</param>
    /// <param name="claimed">The figures about which the pack claims something.</param>
    /// <param name="isSingleServing">Whether the package is one serving; a law may have a format of its own for it, which then stands in place of the others.</param>
    public static ShortPanel Of(IReadOnlyList<NutritionPanel> columns, IReadOnlyCollection<string> claimed, bool isSingleServing = false)
    {
        var rules = ShortPanelRules.Of(columns[0].Rules);
        InsignificantFigure[] open = [.. rules.Figures.Where(row => columns.All(panel => IsInsignificant(panel, row)) && !row.UnlessClaimed.Any(figure => claimed.Contains(figure, Names.Comparer)))];
        if (isSingleServing && rules.Figures.Any(row => row.Way == ShortWay.SingleServing))
            return new(rules, columns[0], false, null, Unprinted(columns[0], open.Where(row => row.Way == ShortWay.SingleServing))) { IsSingleServing = true };
        var simplified = open.Where(row => row.Way == ShortWay.Simplified).ToArray();
        var isSimplified = rules.SimplifiedFrom is { } least && simplified.Count(row => row.Role != SimplifiedRole.NotCounted) >= least;
        InsignificantFigure[] leftOff = [.. isSimplified ? simplified.Where(row => row.Role != SimplifiedRole.Kept) : open.Where(row => row.Way == ShortWay.Alone)];
        return new(rules, columns[0], isSimplified, null, Unprinted(columns[0], leftOff));
    }

    private static UnprintedFigure[] Unprinted(NutritionPanel panel, IEnumerable<InsignificantFigure> rows) =>
        [.. rows.Where(row => panel.Lines.Any(line => Names.Same(line.Key, row.Figure))).Select(row => new UnprintedFigure(row.Figure, row.LimitInWords, row.Words, row.Origin))];

    /// <summary>All that a panel of few figures leaves off, whatever there is of it; nothing is said in its place.</summary>
    /// <param name="columns">The panel on every basis that is printed; at least one.</param>
    /// <param name="limit">The panel of few figures.</param>
    public static ShortPanel Of(IReadOnlyList<NutritionPanel> columns, LimitedPanel limit) => new(ShortPanelRules.Of(columns[0].Rules), columns[0], false, limit,
        [.. columns[0].Lines.Select(line => line.Key).Distinct(Names.Comparer).Where(key => !limit.Has(key)).Select(key => new UnprintedFigure(key, $"the panel is {limit.Form}", new Dictionary<string, string>(), limit.Origin))]);

    /// <summary>The languages in which the rule set has words for what is left off.</summary>
    public IReadOnlyCollection<string> Languages => [.. _rules.Statements.Keys];

    /// <summary>Whether a figure is left off.</summary>
    /// <param name="figure">The figure, by its key.</param>
    public bool IsLeftOff(string figure) => LeftOff.Any(row => Names.Same(row.Figure, figure));

    /// <summary>What is said in place of the figures; null where nothing is left off, nothing need be said, or the rule set has no words in the language.</summary>
    public string? StatementIn(string language)
    {
        if (!_rules.Statements.TryGetValue(language, out var statement)) return null;
        string[] names = [.. LeftOff.Select(row => row.Words.GetValueOrDefault(language)).OfType<string>().Distinct()];
        return names.Length == 0 ? null : statement.Replace("#", Listed(names, _rules.And.GetValueOrDefault(language)), StringComparison.Ordinal);
    }

    /// <summary>Words that are lacking in languages of the pack.</summary>
    public IReadOnlyList<ListProblem> ProblemsIn(IReadOnlyList<string> languages) => LeftOff.Count == 0 ? [] :
    [
        .. languages.Where(language => Limit is null && !IsSingleServing && StatementIn(language) is null).Select(language => new ListProblem($"What is left off the panel has no words in '{language}'", "write them in short-panel.csv of the rule set", null)),
        .. _alone.Where(key => _terms.Has(key + Alone)).SelectMany(key => languages.Where(language => _terms.In(key + Alone, language) is null)
            .Select(language => new ListProblem($"The word '{key + Alone}' has no term in '{language}'", "write it in panel-words.csv of the rule set", null))),
    ];

    /// <summary>A panel in words without what is left off, with what is said in its place, once a language.</summary>
    public PanelContent Without(PanelContent content, IReadOnlyList<string> languages)
    {
        if (LeftOff.Count == 0) return content;
        string[] statements = [.. languages.Select(StatementIn).OfType<string>()];
        return content with
        {
            Lines = [.. content.Lines.Where(line => !IsLeftOff(line.Key)).Select(line => StandingAlone(line, languages))],
            Footnotes = [.. statements, .. content.Footnotes],
            FootStatements = statements,
            Problems = [.. content.Problems, .. ProblemsIn(languages)],
        };
    }

    // 'Of which sugars' says nothing under a line that is not a whole of sugars.
    private PanelContentLine StandingAlone(PanelContentLine line, IReadOnlyList<string> languages)
    {
        if (!_alone.Contains(line.Key, Names.Comparer) || !_terms.Has(line.Key + Alone)) return line;
        return line with { Indent = 0, Term = string.Join(PanelContent.BetweenLanguages, languages.Select(language => _terms.In(line.Key + Alone, language) ?? line.Key).Distinct()) };
    }

    private static bool IsInsignificant(NutritionPanel panel, InsignificantFigure row)
    {
        PanelLine[] lines = [.. panel.Lines.Where(line => row.Held.Contains(line.Key, Names.Comparer))];
        return lines.Length > 0 && (row.IsWithoutLimit || Array.TrueForAll(lines, line => line.Value is { } value && row.Takes(panel.Rules, RoundingTable.ToDecimal(value), line.Rounded is { IsZero: true })));
    }

    private static string Listed(string[] names, string? and) => names.Length == 1 || and is null ? string.Join(", ", names) : $"{string.Join(", ", names[..^1])} {and} {names[^1]}";
}
