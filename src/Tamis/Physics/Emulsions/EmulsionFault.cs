using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A fault that an emulsion of chocolate is likely to show, by one of its figures.</summary>
/// <param name="Figure">The figure: <c>fat to water</c>, <c>sugar of the water phase</c>, <c>cocoa butter</c>, <c>water</c>.</param>
/// <param name="From">From here on, in <paramref name="Unit"/>; null where the fault lies below.</param>
/// <param name="To">Up to here; null where the fault lies above.</param>
/// <param name="Unit">The unit of both.</param>
/// <param name="Fault">What it is called: broken, too firm, too soft, grainy.</param>
/// <param name="Seen">What one sees or feels.</param>
/// <param name="Cure">What saves it.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record EmulsionFault(string Figure, double? From, double? To, string Unit, string Fault, string Seen, string Cure, Source Source)
{
    /// <summary>The faults of the kit.</summary>
    public static IReadOnlyList<EmulsionFault> All { get; } = ReadAll(PhysicsData.Kit.Table("emulsion-faults.csv"));

    /// <summary>Whether a figure falls in the range of the fault.</summary>
    public bool Holds(double value) => (From is null || value > From) && (To is null || value < To);

    /// <summary>The faults that an emulsion is likely to show, from its phases alone.</summary>
    /// <remarks>These are the ends beyond which no use helps; a family's own windows are narrower.</remarks>
    public static IReadOnlyList<EmulsionFault> Of(EmulsionPhases phases) => [.. All.Where(fault => fault.Holds(Value(fault.Figure, phases)))];

    private static double Value(string figure, EmulsionPhases phases) => Names.Key(figure) switch
    {
        "fat to water" => phases.FatToWaterRatio,
        "sugar of the water phase" => phases.SugarOfWaterPhasePercent,
        "cocoa butter" => 100 * phases.CocoaButterGrams / phases.TotalGrams,
        "water" => phases.WaterPercent,
        "fat" => phases.FatPercent,
        _ => throw new KeyNotFoundException($"No figure of an emulsion is called '{figure}'."),
    };

    private static IReadOnlyList<EmulsionFault> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Dictionary<string, string> figures = new(Names.Comparer) { ["fat to water"] = "", ["sugar of the water phase"] = "", ["cocoa butter"] = "", ["water"] = "", ["fat"] = "" };
        EmulsionFault[] faults = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row =>
        {
            row.Named("figure", figures);
            return new EmulsionFault(row.Required("figure"), row.Number("above", 0), row.Number("below", 0), row.Row["unit"],
                row.Required("fault"), row.Required("seen"), row.Required("cure"), PhysicsData.SourceOf(row.Row, problems));
        })];
        return problems is [] ? faults : throw new TableException(problems);
    }
}
