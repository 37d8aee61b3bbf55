using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>How well the air of a place takes heat from a face: the sheet <c>surface-heat-transfer.csv</c>.</summary>
public static class SurfaceTransfer
{
    private static readonly Lazy<IReadOnlyList<Given>> Shipped = new(() => ReadAll(PhysicsData.Kit.Table("surface-heat-transfer.csv")));

    /// <summary>The places with the middle of their range, W/(m²·K), and the range.</summary>
    public static IReadOnlyList<Given> All => Shipped.Value;

    /// <summary>The figure of a place.</summary>
    /// <exception cref="KeyNotFoundException">There is no such place; the known ones are named.</exception>
    public static Given In(string place) => All.FirstOrDefault(each => Names.Same(each.Name, place))
        ?? throw new KeyNotFoundException($"No row tells how well '{place}' takes heat; there are: {string.Join(", ", All.Select(each => each.Name))}.");

    /// <summary>Reads places.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static IReadOnlyList<Given> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        List<Given> all = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            var range = reader.RequiredRange("low_w_m2_k", "high_w_m2_k", 0);
            all.Add(new(reader.Required("place"), range.Middle, "W/(m²·K)", PhysicsData.SourceOf(row, problems)) { Range = range });
        }
        return problems.Count == 0 ? all : throw new TableException(problems);
    }
}
