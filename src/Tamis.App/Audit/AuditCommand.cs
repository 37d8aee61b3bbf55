using System.CommandLine;
using System.Globalization;
using Tamis.Composition;
using Tamis.Tables;
using Tamis.Views;

namespace Tamis.App.Audit;

/// <summary>The command <c>audit</c>: a composition table held against the published checks.</summary>
internal static class AuditCommand
{
    private const string PageName = "audit.html";

    // The page has them all; a screen is for the worst.
    private const int MostLines = 20;

    /// <summary>The command with its arguments.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = $"The folder of a composition table in the kit’s layout, as import writes it. Its {AuditRules.ExplainedFile} says which findings were looked up." };
        var output = new Option<string?>("--out") { Description = $"Write the page to this file. Default: {PageName}, in the folder.", HelpName = "FILE" };
        var command = new Command("audit", "Hold a composition table against the published checks of such data: name every figure to look up, and write a page of them.") { folder, output };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), arguments.GetValue(output), Console.Out)));
        return command;
    }

    /// <summary>Audits a table; 1 if a finding is open or the table cannot be read, 0 if not.</summary>
    /// <param name="folder">The folder of the table.</param>
    /// <param name="output">The page to write; in the folder where null.</param>
    /// <param name="writer">Where to say what was found: a sentence a line.</param>
    public static int Run(string folder, string? output, TextWriter writer) => CommandEnding.Guarded(writer, () =>
    {
        if (!Directory.Exists(folder)) throw new UserProblem($"There is no folder '{folder}'; name the one of a composition table, as import writes it.");
        var audit = TableAudit.Of(CompositionTable.Load(folder), AuditRules.Shipped.ExplainedBy(Path.Combine(folder, AuditRules.ExplainedFile)));
        AuditFinding[] open = [.. audit.Unexplained.OrderByDescending(finding => finding.Rule.Severity)];
        var page = Path.GetFullPath(output ?? Path.Combine(folder, PageName));
        TextFile.WriteWhole(page, PageShell.Render(new("Audit of a composition table", Html.Of($"<h1>Audit of a composition table</h1>\n") + Show.Audit(audit))
        {
            Description = "Which figures of a composition table to look up, and why.",
            Foot = Html.Of($"From the files of the table. A finding is a question: look the figure up in its record before you mend it."),
        }));
        foreach (var finding in open.Take(MostLines)) writer.WriteLine($"{finding}.");
        if (open.Length > MostLines) writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"And {open.Length - MostLines:N0} more on the page."));
        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{audit.Table.Foods.Count:N0} foods, {audit.Tested.Count} checks: {(open.Length == 0 ? "no finding is open" : $"{open.Length:N0} to look up")}. What was looked up is a row of {AuditRules.ExplainedFile} beside the table. Open"));
        writer.WriteLine($"  {page}");
        return open.Length == 0 ? 0 : 1;
    });
}
