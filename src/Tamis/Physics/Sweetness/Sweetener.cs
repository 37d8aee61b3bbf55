using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>How sweet a part of a balance is, by mass of dry matter.</summary>
/// <param name="Part">The part.</param>
/// <param name="Relative">Sweetness over that of as much sucrose, with the lowest and highest figure of the texts.</param>
public sealed record Sweetener(BalancePart Part, Given Relative)
{
    private static readonly Lazy<IReadOnlyList<Sweetener>> Shipped = new(() => ReadAll(PhysicsData.Kit));

    /// <summary>The kit's own: <c>sweeteners.csv</c>.</summary>
    public static IReadOnlyList<Sweetener> Kit => Shipped.Value;

    /// <summary>Reads the sweeteners of a physics folder.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static IReadOnlyList<Sweetener> ReadAll(PhysicsData data)
    {
        List<CellProblem> problems = [];
        List<Sweetener> all = [];
        foreach (var row in data.Table("sweeteners.csv").Rows)
        {
            var reader = new RowReader(row, problems);
            var (relative, low, high) = (reader.RequiredNumber("relative_sweetness", 0), reader.RequiredNumber("low", 0), reader.RequiredNumber("high", 0));
            if (!(low <= relative && relative <= high)) reader.Note("relative_sweetness", "a number from low to high");
            else if (!BalanceParts.ByWord.TryGetValue(row["part"], out var part)) reader.Note("part", "a part of a balance");
            else all.Add(new(part, new($"sweetness of {row["part"]}", relative, "", PhysicsData.SourceOf(row, problems)) { Range = Interval.Between(low, high) }));
        }
        return problems.Count == 0 ? all : throw new TableException(problems);
    }
}
