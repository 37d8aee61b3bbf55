using System.Globalization;
using Tamis.Tables;

namespace Tamis.Verification;

/// <summary>One published figure to be recomputed.</summary>
/// <param name="File">The check file's name.</param>
/// <param name="RowNumber">Its row there, as the spreadsheet counts.</param>
/// <param name="Topic">What it is about.</param>
/// <param name="Quantity">The name of the quantity, as a room of the kit lends it.</param>
/// <param name="Inputs">The inputs as written, <c>name=value;name=value</c>.</param>
/// <param name="Expected">The figure or text; alternatives parted by <c> | </c>.</param>
/// <param name="Unit">The unit of the figure.</param>
/// <param name="Tolerance">The difference that is allowed, absolute, in the unit; null where texts are compared exactly.</param>
/// <param name="Source">Where the figure was published, or how it was worked out.</param>
/// <param name="Checked">How the figure was checked: text, computed, from memory.</param>
/// <param name="Folder">The folder of the check file, beside which its data stand.</param>
public sealed record CheckRow(string File, int RowNumber, string Topic, string Quantity, string Inputs, string Expected, string Unit, double? Tolerance, string Source, string Checked, string Folder);

/// <summary>Reads files of published figures: <c>topic,quantity,inputs,expected,unit,tolerance,source,checked</c>.</summary>
public static class CheckFile
{
    private const string Exact = "exact";

    /// <summary>The figures that the kit ships, file by file.</summary>
    /// <exception cref="TableException">A file is not as it should be.</exception>
    public static IReadOnlyList<CheckRow> Published() =>
        [.. Directory.EnumerateFiles(KitFolder.Data("published"), "*.csv").Order(StringComparer.Ordinal).SelectMany(Read)];

    /// <summary>The figures of one file.</summary>
    /// <exception cref="TableException">The file or some of its cells cannot be read.</exception>
    public static IReadOnlyList<CheckRow> Read(string path)
    {
        // Check files are written for machines too: their numbers have a point, whatever the machine.
        var sheet = SheetFile.Read(path, new SheetSettings('.', DateOrder.YearMonthDay));
        List<CellProblem> problems = [];
        if (!sheet.Require(["quantity", "inputs", "expected", "tolerance"], problems)) throw new TableException(problems);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? "";
        List<CheckRow> rows = [.. sheet.Rows.Select(row => Row(new(row, problems), folder))];
        return problems is [] ? rows : throw new TableException(problems);
    }

    private static CheckRow Row(RowReader cells, string folder) => new(
        cells.Row.Sheet.File, cells.Row.Number, cells.Row["topic"], cells.Required("quantity"), cells.Row["inputs"], cells.Required("expected"),
        cells.Row["unit"], Tolerance(cells), cells.Row["source"], cells.Row["checked"], folder);

    private static double? Tolerance(RowReader cells)
    {
        var text = cells.Row["tolerance"];
        if (text.Length == 0 || Names.Same(text, Exact)) return null;
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var tolerance) && tolerance >= 0) return tolerance;
        cells.Note("tolerance", "a number of 0 or more, or exact");
        return null;
    }
}
