using Tamis.Tables;

namespace Tamis.Montage;

/// <summary>A mould of the kitchen.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">The word for its shape.</param>
/// <param name="Shape">What comes out of one place of it, as it stands on the plate.</param>
/// <param name="Places">How many places one mould has.</param>
/// <param name="Owned">How many moulds there are; null where nobody counted.</param>
/// <param name="MeasuredMillilitres">The water that a place holds, weighed; it counts before the geometry. Null where nobody weighed.</param>
/// <param name="Origin">Its row.</param>
public sealed record Mould(string Name, ShapeKind Kind, Shape Shape, int Places, int? Owned, double? MeasuredMillilitres, Source Origin)
{
    /// <summary>What one place holds, in millilitres.</summary>
    public double PlaceMillilitres => MeasuredMillilitres ?? Shape.VolumeMillilitres;

    /// <summary>All places that the kitchen has at once; null where nobody counted the moulds.</summary>
    public int? PlacesOwned => Owned * Places;

    /// <summary>Reads <c>moulds.csv</c>.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="problems">Receives every cell that must be mended.</param>
    public static IReadOnlyList<Mould> ReadAll(Sheet sheet, List<CellProblem> problems)
    {
        List<Mould> moulds = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            if (reader.Required("mould") is not { Length: > 0 } name) continue;
            if (moulds.Any(mould => Names.Same(mould.Name, name))) problems.Add(row.Problem("mould", "a name that no other row has"));
            else if (Read(row, name, reader, problems) is { } mould) moulds.Add(mould);
        }
        return moulds;
    }

    private static Mould? Read(SheetRow row, string name, RowReader reader, List<CellProblem> problems)
    {
        var known = ShapeKind.All.ToDictionary(kind => kind.Name, Names.Comparer);
        if (reader.Named("shape", known) is not { } kind)
        {
            if (row["shape"].Length == 0) problems.Add(row.Problem("shape", $"one of {string.Join(", ", known.Keys)}"));
            return null;
        }
        var before = problems.Count;
        var given = new Dimensions(Length("diameter_mm"), Length("top_diameter_mm"), Length("length_mm"), Length("width_mm"), Length("height_mm"), reader.Number("measured_ml", 0.01, 100_000));
        foreach (var column in kind.Needs.Where(column => row[column].Length == 0)) problems.Add(row.Problem(column, $"a number above 0: a {kind.Name} needs it"));
        var (places, owned) = (reader.Whole("places", 1, 10_000) ?? 1, reader.Whole("count", 0, 100_000));
        if (problems.Count > before) return null;
        return new(name, kind, kind.Make(given), places, owned, given.MeasuredMillilitres, row.Origin("mould"));

        double? Length(string column) => reader.Number(column, 0.01, 10_000);
    }
}
