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
            if (reader.Number("value") is not { } value) continue;
            if (trial is { Length: > 0 } && what is { Length: > 0 })
                all.Add(new(trial, make, reader.Text("component"), what, value, row["unit"], row.Origin("value")));
        }
        return all;
    }
}
