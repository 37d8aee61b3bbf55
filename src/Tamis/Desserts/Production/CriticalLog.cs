using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The sheet in which the records of critical steps are written: the columns of <c>measured.csv</c>, with step and limit.</summary>
public static class CriticalLog
{
    /// <summary>The name of the sheet in the dessert folder.</summary>
    public const string File = "critical-log.csv";

    private const string Unit = "°C";
    private static readonly string[] Columns = ["trial", "make", "component", "step", "what", "limit", "value", "unit", "at", "notes"];

    /// <summary>The empty sheet of a trial as bytes: a row a critical step, value and time blank; more readings are more rows.</summary>
    public static byte[] Empty(Dessert dessert, string trial, int make = 1) => SheetWriter.Bytes(SheetDialect.Shipped, Columns, CriticalStep.Of(dessert, trial).Select(step => (IReadOnlyList<string>)
        [trial, FormattableString.Invariant($"{make}"), step.Component, step.Step is { } own ? FormattableString.Invariant($"{own.Step}") : "", step.What, step.Limit, "", Unit, "", ""]));

    /// <summary>Writes the empty sheet into the dessert folder; what was filled in is never written over.</summary>
    /// <exception cref="TableException">There is one already.</exception>
    public static void WriteEmpty(Dessert dessert, string trial, int make = 1)
    {
        var path = Path.Combine(dessert.Folder, File);
        if (System.IO.File.Exists(path)) throw new TableException([new(File, 0, "", "", "no such sheet yet: it may hold records; put it away under another name first")]);
        TextFile.WriteWhole(path, Empty(dessert, trial, make));
    }

    /// <summary>What was recorded for a critical step of a trial: rows of the log that name it, and readings of <c>measured.csv</c> of the same component and thing.</summary>
    /// <exception cref="TableException">A cell must be mended.</exception>
    public static IReadOnlyList<Measurement> Of(Dessert dessert, string trial, CriticalStep step)
    {
        List<CellProblem> problems = [];
        var logged = System.IO.File.Exists(Path.Combine(dessert.Folder, File)) ? Rows(dessert.SheetNamed(File), problems) : [];
        if (problems.Count > 0) throw new TableException(problems);
        return [.. logged.Where(row => row.Step is null == step.Step is null && (row.Step is null || row.Step == step.Step?.Step)).Select(row => row.Reading).Concat(step.Step is null ? [] : dessert.Measured)
            .Where(reading => Names.Same(reading.Trial, trial) && Names.Same(reading.Component, step.Component) && reading.Unit == Unit && Names.Same(reading.What, step.What))];
    }

    private static List<(int? Step, Measurement Reading)> Rows(Sheet sheet, List<CellProblem> problems)
    {
        if (!sheet.Require(["trial", "component", "step", "what", "value", "unit", "at"], problems)) return [];
        List<(int?, Measurement)> rows = [];
        var readings = Measurement.ReadAll(sheet, problems);
        foreach (var row in sheet.Rows)
        {
            var step = new RowReader(row, problems).Whole("step", 1, 999);
            if (readings.FirstOrDefault(reading => reading.Origin == row.Origin("value")) is { } reading) rows.Add((step, reading));
        }
        return rows;
    }
}
