using Tamis.Composition;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>A composition table held against the published checks: what to look up first, what was looked up, and what each check had to go by.</summary>
    /// <param name="table">Any composition table.</param>
    /// <param name="rules">The rules; null for those that the kit ships.</param>
    public static Html Audit(CompositionTable table, AuditRules? rules = null) => Audit(TableAudit.Of(table, rules));

    /// <summary>An audit that was made already.</summary>
    public static Html Audit(TableAudit audit)
    {
        AuditFinding[] open = [.. audit.Unexplained];
        AuditFinding[] explained = [.. audit.Findings.Where(finding => finding.IsExplained)];
        var counts = string.Join(", ", Enum.GetValues<AuditSeverity>().Reverse().Select(severity => (severity, Number: open.Count(finding => finding.Rule.Severity == severity)))
            .Where(count => count.Number > 0).Select(count => $"{Figures.English.Count(count.Number).Text} {InWords(count.severity)}"));
        var lead = Notes.Lead(open.Length == 0
            ? Html.Of($"<strong>No finding is open.</strong> {Figures.English.Count(audit.Table.Foods.Count).Text} foods were held against {audit.Tested.Count} checks; {explained.Length} findings were looked up and stand as they are.")
            : Html.Of($"<strong>{Figures.English.Count(open.Length).Text} {(open.Length == 1 ? "figure" : "figures")} to look up:</strong> {counts}. {Figures.English.Count(audit.Table.Foods.Count).Text} foods were held against {audit.Tested.Count} checks."));
        var parts = audit.Table.Remarks.Count == 0 ? lead : lead + Notes.LookAt(Html.Of($"{string.Join("; ", audit.Table.Remarks)}."));
        if (open.Length > 0) parts += FindingsTable("Figures to look up", open, isExplained: false);
        if (explained.Length > 0) parts += Notes.Folded($"{explained.Length} findings that were looked up", FindingsTable("Findings that were looked up", explained, isExplained: true));
        // The kit's explanations speak of the kit's foods: in another table they are neither needed nor wrong.
        AuditExplanation[] unneeded = [.. audit.Unneeded.Where(why => audit.Table.Seek(why.Food) is not null)];
        if (unneeded.Length > 0)
            parts += Notes.LookAt(Html.Of($"Explanations that no finding needs (the table was mended, or a name is mistyped): {string.Join("; ", unneeded.Select(why => $"{why.Food}, {why.Rule}"))}."));
        return parts + Notes.Folded("The checks, and what each had to go by", ChecksTable(audit));
    }

    private static Html FindingsTable(string name, IReadOnlyList<AuditFinding> findings, bool isExplained) => new DataTable(name,
        [Column.Words("Food"), Column.Words("Figure"), Column.Numbers("Found"), Column.Words("Expected"), Column.Words("Check"), Column.Words(isExplained ? "What was found" : "How it weighs")],
        [.. findings.Select(finding => new Row(
            ((Cell)finding.Food.Name) with { From = finding.Food.Id },
            Capital(finding.Figure),
            Figures.English.AsStated(finding.Value, finding.Unit),
            ExpectedOf(finding),
            finding.Rule.Name,
            finding.Explanation ?? InWords(finding.Rule.Severity)))])
    { IsWide = true, IsLong = true, LeastRem = 52 }.ToHtml();

    private static Html ExpectedOf(AuditFinding finding)
    {
        var figures = Figures.English;
        // Nothing is there in less than no amount: such a lower limit says nothing.
        var expected = (finding.Low is > 0 ? finding.Low : null, finding.High) switch
        {
            ({ } low, { } high) => $"{figures.AsStated(low).Text} to {figures.AsStated(high, finding.Unit).Text}",
            ({ } low, null) => $"{figures.AsStated(low, finding.Unit).Text} or more",
            (_, var high) => $"at most {figures.AsStated(high, finding.Unit).Text}",
        };
        return finding.Against.Length == 0 ? Html.Text(expected) : Html.Of($"{expected}{Marks.From(finding.Against)}");
    }

    private static Html ChecksTable(TableAudit audit) => new DataTable("The checks of the audit",
        [Column.Words("Check"), Column.Words("What it says"), Column.Numbers("Figures tested"), Column.Numbers("Findings"), Column.Words("Where it comes from")],
        [.. audit.Tested.Select(tested => new Row(
            Capital(tested.Rule.Name),
            tested.Rule.Meaning,
            tested.Figures == 0 ? "none: the table has no such figures" : (Cell)Figures.English.Count(tested.Figures),
            Figures.English.Count(audit.Findings.Count(finding => Names.Same(finding.Rule.Name, tested.Rule.Name))),
            Sources.InWords(tested.Rule.Source)))])
    { IsWide = true, IsLong = true, LeastRem = 48 }.ToHtml();

    private static string InWords(AuditSeverity severity) => severity switch { AuditSeverity.Wrong => "cannot be so", AuditSeverity.Doubtful => "doubtful", _ => "worth a look" };
}
