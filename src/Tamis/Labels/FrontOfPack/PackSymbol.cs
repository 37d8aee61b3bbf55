using System.Globalization;
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
    /// <summary>The room that it takes on this panel, in the first format that is not wider than the panel; null where the rules do not give its size.</summary>
    public SymbolSpace? Space { get; private init; }

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
            PlaceOf(holding, shape).Value,
            words.SelectMany(row => row.Words.Keys).Distinct().ToDictionary(language => language, language => (IReadOnlyList<string>)[.. words.Select(row => row.Words[language])]),
            string.Join("; ", holding.Where(row => row.Rule == SymbolRules.Art).Select(row => row.Value)), figure.Origin)
        {
            Space = SpaceOn(panel, holding, shape),
        };
    }

    private static SymbolSpace? SpaceOn(PackShape panel, SymbolRule[] holding, string shape)
    {
        var half = SymbolRules.HalfOf(PlaceOf(holding, shape).Value) ?? PanelHalf.Upper;
        foreach (var format in holding.Where(row => row.Rule == SymbolRules.Format).SelectMany(row => row.Names))
        {
            SymbolRule? Row(string rule) => Array.Find(holding, row => row.Rule == rule && row.Names.Contains(format, Names.Comparer));
            // A format of unknown size may be the one that the law wants first: no other takes its place.
            if (Row(SymbolRules.Size) is not { } size || Row(SymbolRules.Buffer) is not { } buffer || SymbolRules.SidesOf(size.Value) is not var (width, height) || SymbolRules.SidesOf($"{buffer.Value} x {buffer.Value}") is not var (around, _)) return null;
            if (width <= panel.FaceWidthMillimetres) return new(format, width, height, around, half, size.Origin);
        }
        return null;
    }

    private static SymbolRule PlaceOf(SymbolRule[] holding, string shape) =>
        Array.Find(holding, row => row.Rule == SymbolRules.Place && row.Names.Contains(shape, Names.Comparer)) ?? holding.First(row => row.Rule == SymbolRules.Place && row.Names.Count == 0);
}

/// <summary>The rows of <c>front-of-pack-symbol.csv</c>.</summary>
internal sealed record SymbolRules(IReadOnlyList<SymbolRule> Rows)
{
    public const string Figure = "figure", Format = "format", Place = "place", Word = "word", Art = "artwork", Size = "size", Buffer = "buffer", Title = "title", Foot = "foot", Wide = "wider than high";

    private const string File = "front-of-pack-symbol.csv";

    private static readonly Dictionary<string, PanelHalf> Halves = new(StringComparer.Ordinal) { ["the right half"] = PanelHalf.Right, ["the upper half"] = PanelHalf.Upper };

    /// <summary>The half that a place begins with; null where it begins with none.</summary>
    public static PanelHalf? HalfOf(string place) => Halves.Where(half => place.StartsWith(half.Key, StringComparison.Ordinal)).Select(half => half.Value).Cast<PanelHalf?>().FirstOrDefault();

    /// <summary>Two sides in mm, as a cell writes them; null where it holds something else.</summary>
    public static (double Width, double Height)? SidesOf(string text) =>
        text.Split('x', StringSplitOptions.TrimEntries) is [var first, var second]
        && double.TryParse(first, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var width) && double.TryParse(second, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var height) && width > 0 && height > 0
            ? (width, height) : null;

    public static SymbolRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        string[] kinds = [Figure, Format, Place, Word, Art];
        string[] measures = [Size, Buffer];
        string[] columns = ["rule", "value", "names", "where"];
        List<SymbolRule> rows = [];
        foreach (var row in folder.RowsIfAny(File, columns, problems))
        {
            var rule = row.Cells.Required("rule");
            if (rule.Length > 0 && !kinds.Contains(rule) && !measures.Contains(rule)) row.Cells.Note("rule", $"one of: {string.Join(", ", kinds.Concat(measures))}");
            var value = row.Cells.Text("value") ?? "";
            if (rule == Size && SidesOf(value) is null) row.Cells.Note("value", "width x height in mm, such as 28 x 14.2");
            if (rule == Buffer && SidesOf($"{value} x {value}") is null) row.Cells.Note("value", "how far around nothing stands, in mm, such as 1.1");
            if (rule == Place && value.Length > 0 && HalfOf(value) is null) row.Cells.Note("value", $"words that begin with one of: {string.Join(", ", Halves.Keys)}");
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
