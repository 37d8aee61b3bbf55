using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>The least time at a temperature that a text asked for a product. Teaching matter: rows may be historical, and the local code in force decides.</summary>
/// <param name="Product">The product.</param>
/// <param name="Jurisdiction">Where.</param>
/// <param name="Celsius">The temperature, °C.</param>
/// <param name="Minutes">The time, minutes.</param>
/// <param name="Printed">Both as the text prints them.</param>
/// <param name="Status">Whether the text is still in force, as far as known; empty where nothing is said.</param>
/// <param name="Source">The text.</param>
public sealed record PasteurisationMinimum(string Product, string Jurisdiction, double Celsius, double Minutes, string Printed, string Status, Source Source)
{
    private const double FreezingFahrenheit = 32, FahrenheitPerCelsius = 1.8, SecondsPerMinute = 60;
    private static readonly Dictionary<string, bool> IsFahrenheit = new(Names.Comparer) { ["°C"] = false, ["°F"] = true };
    private static readonly Dictionary<string, double> TimeUnits = new(Names.Comparer) { ["min"] = 1, ["s"] = 1 / SecondsPerMinute };
    private static readonly Lazy<IReadOnlyList<PasteurisationMinimum>> Shipped = new(() => ReadAll(PhysicsData.Kit.Table("pasteurisation.csv")));

    /// <summary>What the kit ships.</summary>
    public static IReadOnlyList<PasteurisationMinimum> All => Shipped.Value;

    /// <summary>The row of a product, place and temperature; null if there is none.</summary>
    public static PasteurisationMinimum? Find(string product, string jurisdiction, double celsius) => All.FirstOrDefault(each =>
        Names.Same(each.Product, product) && Names.Same(each.Jurisdiction, jurisdiction) && Math.Abs(each.Celsius - celsius) < 0.01);

    /// <summary>Degrees Fahrenheit as Celsius.</summary>
    public static double FromFahrenheit(double fahrenheit) => (fahrenheit - FreezingFahrenheit) / FahrenheitPerCelsius;

    /// <summary>Reads minima.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static IReadOnlyList<PasteurisationMinimum> ReadAll(Sheet sheet)
    {
        List<CellProblem> problems = [];
        PasteurisationMinimum[] all = [.. sheet.Rows.Select(row => Of(row, problems))];
        return problems.Count == 0 ? all : throw new TableException(problems);
    }

    private static PasteurisationMinimum Of(SheetRow row, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        var (temperature, time) = (reader.RequiredNumber("temperature"), reader.RequiredNumber("time", 0));
        var celsius = reader.Choice("temperature_unit", IsFahrenheit) is true ? FromFahrenheit(temperature) : temperature;
        return new(reader.Required("product"), reader.Required("jurisdiction"), celsius, time * (reader.Choice("time_unit", TimeUnits) ?? double.NaN),
            $"{row["temperature"]} {row["temperature_unit"]}, {row["time"]} {row["time_unit"]}", row["status"], PhysicsData.SourceOf(row, problems));
    }
}
