using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A water activity below which a group of microbes does not grow, or at which a trade aims.</summary>
/// <param name="WaterActivityRatio">The water activity, 0 to 1.</param>
/// <param name="Group">What grows above it, or what the target is for.</param>
/// <param name="IsGrowth">Whether it is a limit of growth and not a target.</param>
/// <param name="Notes">How firm the figure is.</param>
/// <param name="Source">Who says so.</param>
public sealed record MicrobialLimit(double WaterActivityRatio, string Group, bool IsGrowth, string Notes, Source Source)
{
    /// <summary>The group in a few words, for a picture; the whole name where the sheet gives none.</summary>
    public string Short { get; init; } = Group;

    /// <summary>What must stand beside every prediction.</summary>
    public const string Caution = "A predicted water activity is not a shelf-life study: measure it, and let acidity, heat, hygiene and storage be judged under local codes by somebody licensed to do so.";

    private static readonly Lazy<IReadOnlyList<MicrobialLimit>> Shipped = new(() => ReadAll(PhysicsData.Kit));

    /// <summary>The kit's own ladder, from the highest down: <c>water-activity-limits.csv</c>.</summary>
    public static IReadOnlyList<MicrobialLimit> Kit => Shipped.Value;

    /// <summary>Reads the ladder of a physics folder.</summary>
    /// <exception cref="TableException">Something in it must be mended.</exception>
    public static IReadOnlyList<MicrobialLimit> ReadAll(PhysicsData data)
    {
        List<CellProblem> problems = [];
        List<MicrobialLimit> limits = [];
        foreach (var row in data.Table("water-activity-limits.csv").Rows)
        {
            var reader = new RowReader(row, problems);
            MicrobialLimit limit = new(reader.RequiredNumber("water_activity", 0, 1), reader.Required("group"), !Names.Same(reader.Required("kind"), "target"), row["notes"], PhysicsData.SourceOf(row, problems));
            limits.Add(reader.Text("short") is { } name ? limit with { Short = name } : limit);
        }
        return problems.Count == 0 ? [.. limits.OrderByDescending(limit => limit.WaterActivityRatio)] : throw new TableException(problems);
    }
}
