namespace Tamis.Composition;

/// <summary>A composition table held against the published checks of such tables: what does not fit, food by food.</summary>
public sealed class TableAudit
{
    private TableAudit(CompositionTable table, IReadOnlyList<AuditFinding> findings, IReadOnlyList<AuditTested> tested, IReadOnlyList<AuditExplanation> unneeded) =>
        (Table, Findings, Tested, Unneeded) = (table, findings, tested, unneeded);

    /// <summary>The table.</summary>
    public CompositionTable Table { get; }

    /// <summary>Everything that does not fit, the gravest first, then in the order of the foods.</summary>
    public IReadOnlyList<AuditFinding> Findings { get; }

    /// <summary>The findings that nobody has looked up yet.</summary>
    public IEnumerable<AuditFinding> Unexplained => Findings.Where(finding => !finding.IsExplained);

    /// <summary>For each rule how many foods it could test: a rule that finds nothing because nothing is known says so.</summary>
    public IReadOnlyList<AuditTested> Tested { get; }

    /// <summary>Explanations that no finding needs: the table was mended, or a name is mistyped.</summary>
    public IReadOnlyList<AuditExplanation> Unneeded { get; }

    /// <summary>Holds a table against rules.</summary>
    /// <param name="table">Any table: the kit's, an imported one, one with a kitchen's own foods.</param>
    /// <param name="rules">The rules; null for those that the kit ships.</param>
    public static TableAudit Of(CompositionTable table, AuditRules? rules = null)
    {
        rules ??= AuditRules.Shipped;
        AuditRun run = new(table, rules);
        List<AuditFinding> findings = [];
        Dictionary<string, int> tested = new(Names.Comparer);
        foreach (var rule in rules.All)
            tested[rule.Name] = Math.Max(tested.GetValueOrDefault(rule.Name), run.Test(rule, findings));
        // Two limits of one check: the graver finding says all that the lighter one does.
        List<AuditFinding> gravest = [.. findings
            .GroupBy(finding => (finding.Food.Id, Rule: Names.Key(finding.Rule.Name), Tag: finding.Rule.IsPerNutrient ? finding.Tag : ""))
            .Select(group => group.MaxBy(finding => finding.Rule.Severity)!)
            .Select(finding => finding with { Explanation = rules.Explained.FirstOrDefault(why => IsOf(why, finding))?.Why })
            .OrderByDescending(finding => finding.Rule.Severity)];
        return new(table, gravest,
            [.. rules.All.DistinctBy(rule => Names.Key(rule.Name)).Select(rule => new AuditTested(rule, tested[rule.Name]))],
            [.. rules.Explained.Where(why => !gravest.Any(finding => IsOf(why, finding)))]);
    }

    private static bool IsOf(AuditExplanation why, AuditFinding finding) =>
        Names.Same(why.Rule, finding.Rule.Name)
        && (Names.Same(why.Food, finding.Food.Id) || Names.Same(why.Food, finding.Food.Name))
        && (why.Tag.Length == 0 || why.Tag.Equals(finding.Tag, StringComparison.OrdinalIgnoreCase));
}

/// <summary>How much a rule had to go by.</summary>
/// <param name="Rule">The rule; the first row of its name.</param>
/// <param name="Figures">How many figures it could test: foods, or foods times nutrients where it tests several.</param>
public sealed record AuditTested(AuditRule Rule, int Figures);
