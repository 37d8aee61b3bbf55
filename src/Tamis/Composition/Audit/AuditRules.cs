using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>The checks of an audit, the kinds of its food groups, and the findings that somebody has looked up already.</summary>
/// <remarks>All three are sheets: <c>audit-rules.csv</c>, <c>audit-groups.csv</c>, <c>audit-explained.csv</c>.</remarks>
public sealed class AuditRules
{
    private static readonly Dictionary<string, AuditKind> Kinds = new()
    {
        ["between"] = AuditKind.Between, ["within"] = AuditKind.Within, ["at least"] = AuditKind.AtLeast, ["near"] = AuditKind.Near, ["own factors"] = AuditKind.OwnFactors,
        ["outlier"] = AuditKind.Outlier, ["tens"] = AuditKind.Tens, ["samples"] = AuditKind.Samples,
    };

    private static readonly Dictionary<string, AuditSeverity> Severities = new()
    {
        ["look"] = AuditSeverity.Look, ["doubtful"] = AuditSeverity.Doubtful, ["wrong"] = AuditSeverity.Wrong,
    };

    private static readonly Dictionary<string, Evidence> Strengths = new()
    {
        ["law"] = Evidence.Law, ["guidance"] = Evidence.Guidance, ["published"] = Evidence.Published, ["practice"] = Evidence.Practice, ["memory"] = Evidence.Memory,
    };

    private readonly Dictionary<string, IReadOnlyList<string>> _kindsOfGroups;

    private AuditRules(IReadOnlyList<AuditRule> all, Dictionary<string, IReadOnlyList<string>> kindsOfGroups, IReadOnlyList<AuditExplanation> explained) =>
        (All, _kindsOfGroups, Explained) = (all, kindsOfGroups, explained);

    /// <summary>The sheet of the findings that somebody has looked up, beside a table.</summary>
    public const string ExplainedFile = "audit-explained.csv";

    /// <summary>The rules in the order of their sheet.</summary>
    public IReadOnlyList<AuditRule> All { get; }

    /// <summary>The findings that somebody has looked up, with what was found.</summary>
    public IReadOnlyList<AuditExplanation> Explained { get; }

    /// <summary>The rules that the kit ships.</summary>
    /// <exception cref="TableException">Something in their sheets must be mended.</exception>
    public static AuditRules Shipped => Load(KitFolder.Data("composition"));

    /// <summary>Reads the rules of a folder.</summary>
    /// <exception cref="TableException">Something in its sheets must be mended.</exception>
    public static AuditRules Load(string folder)
    {
        List<CellProblem> problems = [];
        var rules = Rules(SheetFile.Read(Path.Combine(folder, "audit-rules.csv")), problems);
        var groups = Groups(SheetFile.Read(Path.Combine(folder, "audit-groups.csv")), problems);
        var explained = Path.Combine(folder, ExplainedFile) is var path && File.Exists(path) ? Explanations(SheetFile.Read(path), problems) : [];
        return problems is [] ? new(rules, groups, explained) : throw new TableException(problems);
    }

    /// <summary>The same rules with the explanations of another sheet in place of the kit's: those for a table of one's own.</summary>
    /// <param name="path">A sheet with the columns food, rule, tag and why; where it is missing, nothing is explained yet.</param>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public AuditRules ExplainedBy(string path)
    {
        List<CellProblem> problems = [];
        var explained = File.Exists(path) ? Explanations(SheetFile.Read(path), problems) : [];
        return problems is [] ? new(All, _kindsOfGroups, explained) : throw new TableException(problems);
    }

    /// <summary>Whether a rule is for a food: always where the rule names no kind, never where nobody said what kind the food's group is of.</summary>
    public bool IsFor(AuditRule rule, Food food) =>
        rule.Foods.Length == 0 || _kindsOfGroups.TryGetValue(food.Group, out var kinds) && kinds.Contains(rule.Foods, Names.Comparer);

    private static List<AuditRule> Rules(Sheet sheet, List<CellProblem> problems)
    {
        List<AuditRule> rules = [];
        if (!sheet.Require(["rule", "kind", "left", "severity", "source", "strength"], problems)) return rules;
        foreach (var row in sheet.Rows.Select(row => new RowReader(row, problems)))
        {
            var kind = row.Choice("kind", Kinds);
            if (Sum(row, "left", isNeeded: true) is not { } left || kind is null) continue;
            var right = Sum(row, "right", isNeeded: kind is AuditKind.Within or AuditKind.AtLeast or AuditKind.Near);
            rules.Add(new(row.Required("rule"), kind.Value, left, row.Choice("severity", Severities) ?? AuditSeverity.Look,
                new(row.Required("source") is { Length: > 0 } source ? source : sheet.File, row.Choice("strength", Strengths) ?? Evidence.Memory))
            {
                Right = right,
                Low = row.Number("low") ?? double.NegativeInfinity,
                High = row.Number("high") ?? double.PositiveInfinity,
                Margin = row.Number("margin", 0) ?? 0,
                MarginPercent = row.Percent("margin_percent") ?? 0,
                Least = row.Number("least") ?? double.NegativeInfinity,
                Foods = row.Text("foods") ?? "",
                Meaning = row.Text("meaning") ?? "",
            });
        }
        return rules;
    }

    private static AuditSum? Sum(RowReader row, string column, bool isNeeded)
    {
        if ((isNeeded ? row.Required(column) : row.Text(column)) is not { Length: > 0 } text) return null;
        var sum = AuditSum.Parse(text);
        if (sum is null) row.Note(column, "a sum of tags, such as WATER + PROCNT + [ALC] or 4 PROCNT + 9 FAT");
        return sum;
    }

    private static Dictionary<string, IReadOnlyList<string>> Groups(Sheet sheet, List<CellProblem> problems)
    {
        Dictionary<string, IReadOnlyList<string>> groups = new(Names.Comparer);
        if (!sheet.Require(["group", "kinds"], problems)) return groups;
        foreach (var row in sheet.Rows.Select(row => new RowReader(row, problems)))
            if (!groups.TryAdd(row.Required("group"), row.Words("kinds"))) row.Note("group", "each group once");
        return groups;
    }

    private static List<AuditExplanation> Explanations(Sheet sheet, List<CellProblem> problems) => sheet.Require(["food", "rule", "why"], problems)
        ? [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new AuditExplanation(row.Required("food"), row.Required("rule"), row.Text("tag") ?? "", row.Required("why")))]
        : [];
}

/// <summary>Why a finding may stand as it is: somebody has looked it up.</summary>
/// <param name="Food">The food's id or name.</param>
/// <param name="Rule">The rule's name.</param>
/// <param name="Tag">The nutrient where the rule tests several; empty for any.</param>
/// <param name="Why">What was found in the record, in a sentence.</param>
public sealed record AuditExplanation(string Food, string Rule, string Tag, string Why);
