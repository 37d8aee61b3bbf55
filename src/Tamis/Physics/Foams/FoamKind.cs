using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A foam of the pastry kitchen with its usual overrun and what of its air outlives folding.</summary>
/// <param name="Name">Its name.</param>
/// <param name="OverrunPercent">The usual overrun.</param>
/// <param name="AirKeptPercent">The share of its air that outlives folding; null where it is not folded or nobody says.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record FoamKind(string Name, Interval OverrunPercent, Interval? AirKeptPercent, Source Source)
{
    /// <summary>The foams of the kit.</summary>
    public static IReadOnlyList<FoamKind> All { get; } = ReadAll(PhysicsData.Kit.Table("foams.csv"));

    /// <summary>The foam of a name.</summary>
    /// <exception cref="KeyNotFoundException">There is none of this name.</exception>
    public static FoamKind Named(string name) => All.FirstOrDefault(foam => Names.Same(foam.Name, name))
        ?? throw new KeyNotFoundException($"No foam is called '{name}'; known are {string.Join(", ", All.Select(foam => foam.Name))}.");

    /// <summary>The usual overrun, in per cent, with its range.</summary>
    public Given Overrun => new("overrun", OverrunPercent.Middle, "%", Source) { Range = OverrunPercent };

    /// <summary>What of its air outlives folding, in per cent, with its range; unknown where nobody says.</summary>
    public Given AirKept => new("air that outlives folding", AirKeptPercent?.Middle ?? double.NaN, "%", Source) { Range = AirKeptPercent };

    private static IReadOnlyList<FoamKind> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        FoamKind[] foams = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new FoamKind(
            row.Required("foam"), row.RequiredRange("overrun_low_percent", "overrun_high_percent", 0, 2000), row.Range("air_kept_low_percent", "air_kept_high_percent", 0, 100), PhysicsData.SourceOf(row.Row, problems)))];
        return problems is [] ? foams : throw new TableException(problems);
    }
}
