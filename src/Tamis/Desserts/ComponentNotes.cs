using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What <c>components.csv</c> says of a component.</summary>
/// <param name="Component">Its name.</param>
/// <param name="Family">The family of the trade that it belongs to; null where none was given.</param>
/// <param name="Use">What it is used for within the family; null where none was given.</param>
/// <param name="Base">The lines that ratios stand against; empty where none was given.</param>
/// <param name="Trial">The trial that the row is for; null for all.</param>
/// <param name="Notes">The kitchen's own remark.</param>
public sealed record ComponentNote(string Component, string? Family, string? Use, IReadOnlyList<string> Base, string? Trial, string Notes)
{
    /// <summary>Density before it is baked or set, in grams a millilitre; null where nobody weighed or estimated it.</summary>
    public double? RawDensityGramsPerMillilitre { get; init; }

    /// <summary>Density as it stands in the piece, in grams a millilitre; null where nobody weighed or estimated it.</summary>
    public double? DensityGramsPerMillilitre { get; init; }

    /// <summary>How long it may be kept, in hours, at <see cref="HoldCelsius"/>; null where nobody said.</summary>
    public double? HoldHours { get; init; }

    /// <summary>At what temperature it is kept, in °C.</summary>
    public double? HoldCelsius { get; init; }

    /// <summary>The words under which it stands on a label with its own bracket; null where its lines merge into the list.</summary>
    public string? OnLabel { get; init; }

    /// <summary>The row.</summary>
    public Source? Origin { get; init; }
}

/// <summary>The notes on all components.</summary>
public sealed class ComponentNotes
{
    private readonly IReadOnlyList<ComponentNote> _notes;

    private ComponentNotes(IReadOnlyList<ComponentNote> notes) => _notes = notes;

    /// <summary>A dessert whose components nobody described.</summary>
    public static ComponentNotes None { get; } = new([]);

    /// <summary>Reads the sheet.</summary>
    public static ComponentNotes Read(Sheet sheet, List<CellProblem> problems)
    {
        List<ComponentNote> notes = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            if (reader.Required("component") is not { Length: > 0 } component) continue;
            string[] lines = [.. row["base"].Split('+', ';').Select(each => each.Trim()).Where(each => each.Length > 0)];
            notes.Add(new(component, reader.Text("family"), reader.Text("use"), lines, reader.Text("trial"), row["notes"])
            {
                RawDensityGramsPerMillilitre = reader.Number("raw_density_g_ml", 0.01, 25),
                DensityGramsPerMillilitre = reader.Number("density_g_ml", 0.01, 25),
                HoldHours = reader.Number("hold_hours", 0, 100_000),
                HoldCelsius = reader.Number("hold_c", -60, 100),
                OnLabel = reader.Text("on_label"),
                Origin = row.Origin("component"),
            });
        }
        return new(notes);
    }

    /// <summary>The note on a component in a trial: a row that names the trial, or one that it comes from, counts first.</summary>
    public ComponentNote? Of(string component, IEnumerable<string> trialLine)
    {
        string?[] nearest = [.. trialLine, null];
        return nearest.Select(trial => _notes.FirstOrDefault(note => Names.Same(note.Component, component) && Names.Same(note.Trial, trial)))
            .FirstOrDefault(note => note is not null);
    }
}
