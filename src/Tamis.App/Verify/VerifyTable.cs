using System.Globalization;
using System.Text;
using Spectre.Console;
using Tamis.Tables;
using Tamis.Verification;

namespace Tamis.App.Verify;

/// <summary>Published figures beside the kit's own, for a terminal and for a file.</summary>
internal static class VerifyTable
{
    private static readonly string[] Columns = ["quantity", "inputs", "expected", "computed", "difference", "tolerance", "source", "verdict"];

    /// <summary>The table as a terminal shows it; misses say why.</summary>
    public static Table Table(IReadOnlyList<CheckOutcome> outcomes)
    {
        var table = new Table { Border = TableBorder.Simple, ShowRowSeparators = false };
        foreach (var column in Columns) table.AddColumn(column);
        foreach (var outcome in outcomes) table.AddRow([.. Cells(outcome).Select(cell => new Text(cell))]);
        return table;
    }

    /// <summary>The table as CSV that a spreadsheet opens as text.</summary>
    public static string Csv(IReadOnlyList<CheckOutcome> outcomes) =>
        Encoding.UTF8.GetString(SheetWriter.Bytes(SheetDialect.Shipped, Columns, outcomes.Select(Cells)));

    private static string[] Cells(CheckOutcome outcome) =>
    [
        outcome.Row.Quantity, outcome.Row.Inputs, WithUnit(outcome.Row.Expected, outcome.Row.Unit), WithUnit(outcome.Computed, outcome.Row.Unit),
        outcome.Difference?.ToString("G4", CultureInfo.InvariantCulture) ?? "", outcome.ToleranceText, outcome.Row.Source,
        outcome.Verdict == CheckVerdict.Agrees ? "agrees" : $"misses: {outcome.Reason}",
    ];

    private static string WithUnit(string figure, string unit) => figure.Length == 0 || unit.Length == 0 ? figure : $"{figure} {unit}";
}
