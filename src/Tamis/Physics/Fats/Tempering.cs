using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>The temperatures by which a chocolate is tempered.</summary>
/// <param name="Chocolate">The kind: dark, milk, white, or a cocoa butter seed.</param>
/// <param name="MeltCelsius">Melted, with no crystal left; null where it does not apply.</param>
/// <param name="CoolCelsius">Cooled, so that crystals form; null where it does not apply.</param>
/// <param name="WorkCelsius">Worked, with form V alone.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record Tempering(string Chocolate, Interval? MeltCelsius, Interval? CoolCelsius, Interval WorkCelsius, Source Source)
{
    /// <summary>All statements of the kit; sources differ, so a kind may stand more than once.</summary>
    public static IReadOnlyList<Tempering> All { get; } = ReadAll(PhysicsData.Kit.Table("tempering.csv"));

    /// <summary>What the sources say of a kind, one statement a source.</summary>
    public static IReadOnlyList<Tempering> Of(string chocolate) => [.. All.Where(each => Names.Same(each.Chocolate, chocolate))];

    /// <summary>The working temperature with milk fat in the fat, in °C, from that of dark chocolate.</summary>
    /// <param name="darkCelsius">The working temperature without milk fat.</param>
    /// <param name="milkFatOfFatPercent">Milk fat in per cent of all fat, 0 to 30.</param>
    /// <param name="percentPerKelvin">Milk fat in the fat that lowers it by a degree.</param>
    public static double WithMilkFatCelsius(double darkCelsius, double milkFatOfFatPercent, double percentPerKelvin) => darkCelsius - milkFatOfFatPercent / percentPerKelvin;

    /// <summary>The working temperature with milk fat in the fat, in °C, with its range.</summary>
    public static Predicted Working(Given milkFatOfFat)
    {
        var dark = Of("dark")[0];
        return Predicted.From(PhysicsData.Kit.Equation("working temperature with milk fat"),
            [new Given("working temperature of dark chocolate", dark.WorkCelsius.Middle, "°C", dark.Source) { Range = dark.WorkCelsius }, milkFatOfFat with { Name = "milk fat of the fat" }, PhysicsData.Kit.Constant("milk fat that lowers the working temperature by a degree")],
            at => WithMilkFatCelsius(at[0], at[1], at[2]));
    }

    private static IReadOnlyList<Tempering> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Tempering[] all = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(row => new Tempering(
            row.Required("chocolate"), row.Range("melt_low_c", "melt_high_c", 20, 80), row.Range("cool_low_c", "cool_high_c", 10, 60), row.RequiredRange("work_low_c", "work_high_c", 10, 60), PhysicsData.SourceOf(row.Row, problems)))];
        return problems is [] ? all : throw new TableException(problems);
    }
}
