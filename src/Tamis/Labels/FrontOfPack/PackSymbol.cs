using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Which symbol the front of a pack must carry, in which format and where: what a law says of it in words and numbers. Its artwork is the authority's.</summary>
/// <param name="Figure">The law's number for it.</param>
/// <param name="Formats">The formats that it may have, in the order in which they are to be tried.</param>
/// <param name="Place">The part of the panel on which it stands.</param>
/// <param name="Words">The words in it, language by language.</param>
/// <param name="Artwork">What else the law asks of it.</param>
/// <param name="Origin">The rule that the number stands in.</param>
public sealed record PackSymbol(string Figure, IReadOnlyList<string> Formats, string Place, IReadOnlyDictionary<string, IReadOnlyList<string>> Words, string Artwork, RuleOrigin Origin)
{
    /// <summary>The symbol in words.</summary>
    public override string ToString() =>
        $"symbol {Figure}, {string.Join(", or ", Formats)}, on {Place}: {string.Join(" / ", Words.Values.Select(words => $"“{string.Join(", ", words)}”"))}; {Artwork}";

    /// <summary>The symbol that a rule set asks for.</summary>
    /// <param name="rules">The rule set.</param>
    /// <param name="named">The figures that it names, in words: <c>sugars</c>.</param>
    /// <param name="panel">The pack, with the face that a buyer sees first to print.</param>
    /// <returns>Null where the rule set has none that names just these.</returns>
    /// <exception cref="TableException">A cell of <c>front-of-pack-symbol.csv</c> cannot be read.</exception>
    public static PackSymbol? Of(RuleSet rules, IReadOnlyCollection<string> named, PackShape panel)
    {
        var rows = rules.Folder.Table(SymbolRules.Read).Rows;
        var shape = panel.FaceWidthMillimetres > panel.FaceHeightMillimetres ? SymbolRules.Wide : "";
        var holding = rows.Where(row => row.Conditions.All(condition => condition.Holds(panel, null))).ToArray();
        if (Array.Find(holding, row => row.Rule == SymbolRules.Figure && row.Names.Count == named.Count && named.All(name => row.Names.Contains(name, Names.Comparer))) is not { } figure) return null;
        var words = holding.Where(row => row.Rule == SymbolRules.Word && (named.Contains(row.Value, Names.Comparer) || row.Value is SymbolRules.Title or SymbolRules.Foot)).ToArray();
        return new(figure.Value, [.. holding.Where(row => row.Rule == SymbolRules.Format).Select(row => row.Value)],
            (Array.Find(holding, row => row.Rule == SymbolRules.Place && row.Names.Contains(shape, Names.Comparer)) ?? holding.First(row => row.Rule == SymbolRules.Place && row.Names.Count == 0)).Value,
            words.SelectMany(row => row.Words.Keys).Distinct().ToDictionary(language => language, language => (IReadOnlyList<string>)[.. words.Select(row => row.Words[language])]),
            string.Join("; ", holding.Where(row => row.Rule == SymbolRules.Art).Select(row => row.Value)), figure.Origin);
    }
}

/// <summary>The rows of <c>front-of-pack-symbol.csv</c>.</summary>
internal sealed record SymbolRules(IReadOnlyList<SymbolRule> Rows)
{
    public const string Figure = "figure", Format = "format", Place = "place", Word = "word", Art = "artwork", Title = "title", Foot = "foot", Wide = "wider than high";

    private const string File = "front-of-pack-symbol.csv";

    public static SymbolRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        string[] kinds = [Figure, Format, Place, Word, Art];
        string[] columns = ["rule", "value", "names", "where"];
        List<SymbolRule> rows = [];
        foreach (var row in folder.RowsIfAny(File, columns, problems))
        {
            var rule = row.Cells.Required("rule");
            if (rule.Length > 0 && !kinds.Contains(rule)) row.Cells.Note("rule", $"one of: {string.Join(", ", kinds)}");
            // The shape of the panel is no measure of the pack: it hangs on how the panel lies.
            var where = row.Cells.Text("where") ?? "";
            var isShape = Names.Same(where, Wide);
            var conditions = isShape ? [] : LayoutCondition.ParseAll(where);
            if (conditions is null) row.Cells.Note("where", $"{LayoutCondition.Expected}; or '{Wide}'");
            rows.Add(new(rule, row.Cells.Required("value"), isShape ? [Wide] : row.Cells.Words("names"), conditions ?? [], row.ByLanguage(columns), row.Origin()));
        }
        foreach (var kind in kinds.Where(kind => problems is [] && rows.Count > 0 && !rows.Exists(row => row.Rule == kind))) problems.Add(new(File, 0, "rule", "", $"a row '{kind}'"));
        if (problems is [] && rows.Count > 0 && !rows.Exists(row => row.Rule == Place && row.Names.Count == 0)) problems.Add(new(File, 0, "where", "", "a row 'place' with a blank, for what no other row is for"));
        return new(rows);
    }
}

/// <summary>One row of <c>front-of-pack-symbol.csv</c>.</summary>
internal sealed record SymbolRule(string Rule, string Value, IReadOnlyList<string> Names, IReadOnlyList<LayoutCondition> Conditions, IReadOnlyDictionary<string, string> Words, RuleOrigin Origin);
