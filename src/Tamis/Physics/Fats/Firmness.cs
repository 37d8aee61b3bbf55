using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>How a filling feels, by its solid fat.</summary>
/// <param name="SolidFatPercent">The range of solid fat, in per cent of the whole.</param>
/// <param name="Word">What a cook would say of it.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record Firmness(Interval SolidFatPercent, string Word, Source Source)
{
    /// <summary>The steps of the kit, softest first.</summary>
    public static IReadOnlyList<Firmness> All { get; } = ReadAll(PhysicsData.Kit.Table("firmness.csv"));

    /// <summary>The step that a figure of solid fat falls in.</summary>
    /// <param name="solidFatPercent">Solid fat of the whole, 0 to 100 %.</param>
    public static Firmness Of(double solidFatPercent) => All.LastOrDefault(step => step.SolidFatPercent.Contains(solidFatPercent))
        ?? throw new ArgumentOutOfRangeException(nameof(solidFatPercent), solidFatPercent, "Solid fat is a share of the whole, 0 to 100 %.");

    private static IReadOnlyList<Firmness> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Firmness[] steps = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new Firmness(
            row.RequiredRange("solid_fat_low_percent", "solid_fat_high_percent", 0, 100), row.Required("feels"), PhysicsData.SourceOf(row.Row, problems))).OrderBy(step => step.SolidFatPercent.Low)];
        return problems is [] ? steps : throw new TableException(problems);
    }
}
