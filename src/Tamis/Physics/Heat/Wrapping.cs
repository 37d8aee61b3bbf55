using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>Something between a face and the air: a film, a ring, a mould, a box.</summary>
/// <param name="Name">What it is.</param>
/// <param name="ThicknessMillimetres">How thick it usually is.</param>
/// <param name="ConductivityWPerMK">How well it conducts.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record Wrapping(string Name, double ThicknessMillimetres, double ConductivityWPerMK, Source Source)
{
    private static readonly Lazy<IReadOnlyList<Wrapping>> Shipped = new(() => ReadAll(PhysicsData.Kit.Table("wrappings.csv")));

    /// <summary>What the kit ships.</summary>
    public static IReadOnlyList<Wrapping> All => Shipped.Value;

    /// <summary>What it adds to the way of heat, m²·K/W.</summary>
    public double ResistanceM2KPerW => ThicknessMillimetres / 1000 / ConductivityWPerMK;

    /// <summary>A wrapping by its name.</summary>
    /// <exception cref="KeyNotFoundException">There is none; the known ones are named.</exception>
    public static Wrapping Named(string name) => All.FirstOrDefault(each => Names.Same(each.Name, name))
        ?? throw new KeyNotFoundException($"No row tells how '{name}' conducts; there are: {string.Join(", ", All.Select(each => each.Name))}.");

    /// <summary>Reads wrappings.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static IReadOnlyList<Wrapping> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Wrapping[] all = [.. sheet.Rows.Select(row => (row, reader: new RowReader(row, problems))).Select(each => new Wrapping(each.reader.Required("wrapping"),
            each.reader.RequiredNumber("thickness_mm", 0.001, 100), each.reader.RequiredNumber("conductivity_w_m_k", 0.001, 500), PhysicsData.SourceOf(each.row, problems)))];
        return problems.Count == 0 ? all : throw new TableException(problems);
    }
}
