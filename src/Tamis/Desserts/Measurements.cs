using System.Globalization;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Something that was measured on a make of a trial.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Make">Which time it was made, 1 or more.</param>
/// <param name="Component">The component; null where the whole piece was measured.</param>
/// <param name="What">What was measured: yield, density, Brix, pH, mass …</param>
/// <param name="Value">The figure, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit as written; empty for a pure number.</param>
/// <param name="Origin">Where it stands.</param>
public sealed record Measurement(string Trial, int Make, string? Component, string What, double Value, string Unit, Source Origin)
{
    /// <summary>Day and hour of the reading; null where the sheet gives no hour.</summary>
    public DateTime? At { get; init; }

    /// <summary>Reads <c>measured.csv</c>.</summary>
    public static IReadOnlyList<Measurement> ReadAll(Sheet sheet, List<CellProblem> problems)
    {
        List<Measurement> all = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            var trial = reader.Required("trial");
            var make = reader.Whole("make", 1, 99) ?? 1;
            var what = reader.Required("what");
            // A value still to be filled in is a blank, not a fault.
            var least = row["unit"] == "°C" ? Temperature.AbsoluteZeroCelsius : double.NegativeInfinity;
            if (reader.Number("value", least) is not { } value) continue;
            if (trial is { Length: > 0 } && what is { Length: > 0 })
                all.Add(new(trial, make, reader.Text("component"), what, value, row["unit"], row.Origin("value")) { At = DayAndHour(row, problems) });
        }
        return all;
    }

    // A day alone is no time of a reading; an hour that cannot be read is a fault.
    private static DateTime? DayAndHour(SheetRow row, List<CellProblem> problems)
    {
        var text = row["at"];
        var hour = text.LastIndexOf(' ');
        if (hour < 0 || !text[hour..].Contains(':', StringComparison.Ordinal)) return null;
        if (DateText.TryParse(text[..hour], row.Sheet.Dialect.DateOrder, out var day) && TimeOnly.TryParse(text[hour..], CultureInfo.InvariantCulture, out var time)) return day.ToDateTime(time);
        problems.Add(row.Problem("at", "a day and an hour such as 2026-11-25 14:30"));
        return null;
    }
}
