namespace Tamis.Physics;

/// <summary>At what temperature a solution boils, and how strong it is when it boils at one.</summary>
/// <remarks>Two ways: the table of sucrose at sea level, and any solution at any pressure by water activity. They differ by about 1 °C to 80 % sucrose; above 85 % Norrish overstates the rise.</remarks>
public static class Boiling
{
    private const double MillimetresOfMercuryPerKilopascal = 760 / 101.325;

    // The two sets of constants meet from 99 to 101 °C and differ there by some hundredths of a degree: one passes into the other, so that no step is seen.
    private const double BlendFromCelsius = 99;
    private const double BlendCelsius = 2;

    /// <summary>Vapour pressure of water in kPa by Antoine: log10 p(mmHg) = a − b/(c + T).</summary>
    public static double VapourPressureKilopascals(double celsius, double a, double b, double c) => Math.Pow(10, a - b / (c + celsius)) / MillimetresOfMercuryPerKilopascal;

    /// <summary>Temperature in °C at which water has a vapour pressure, by Antoine.</summary>
    public static double SaturationCelsius(double kilopascals, double a, double b, double c) => b / (a - Math.Log10(kilopascals * MillimetresOfMercuryPerKilopascal)) - c;

    /// <summary>Boiling point in °C where water activity times vapour pressure reaches the pressure.</summary>
    /// <param name="waterActivityRatio">Water activity of the solution, above 0 to 1; taken at 25 °C.</param>
    /// <param name="pressureKilopascals">Pressure of the air.</param>
    /// <param name="below">Antoine's constants below 100 °C.</param>
    /// <param name="above">Antoine's constants from 99 °C.</param>
    public static double Celsius(double waterActivityRatio, double pressureKilopascals, in Antoine below, in Antoine above)
    {
        var low = SaturationCelsius(pressureKilopascals / waterActivityRatio, below.A, below.B, below.C);
        if (low <= BlendFromCelsius) return low;
        var high = SaturationCelsius(pressureKilopascals / waterActivityRatio, above.A, above.B, above.C);
        return low + Math.Min(1, (low - BlendFromCelsius) / BlendCelsius) * (high - low);
    }

    /// <summary>Boiling point of sucrose in water at sea level, straight between the rows of the table.</summary>
    public static Predicted OfSucroseByTable(double sucrosePercent, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var table = Table(data);
        return Predicted.From(data.Equation("boiling point table"), [SucroseSolution.Sucrose(sucrosePercent)], given => table.Linear(given[0]));
    }

    /// <summary>Per cent of sucrose in a syrup that boils at a temperature, by the table; the temperature is first taken to sea level.</summary>
    /// <param name="celsius">The temperature that is read.</param>
    /// <param name="altitudeMetres">Where the pan stands.</param>
    /// <param name="data">Equations and tables; the kit's own where null.</param>
    /// <returns>Per cent by mass; NaN outside the table.</returns>
    public static double PercentByTable(double celsius, double altitudeMetres = 0, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var table = Table(data);
        var atSeaLevel = Temperature.Require(celsius, nameof(celsius)) - (altitudeMetres == 0 ? 0 : AirPressure.StageShift(altitudeMetres, data).Value);
        return Roots.Bisect(percent => table.Linear(percent) - atSeaLevel, table.Range.Low, table.Range.High);
    }

    /// <summary>Boiling point of sucrose in water at a pressure, by Norrish's water activity.</summary>
    public static Predicted OfSucrose(double sucrosePercent, double pressureKilopascals = 101.325, PhysicsData? data = null)
    {
        data ??= PhysicsData.Kit;
        var sucrose = Solutes.Kit["sucrose"];
        var (below, above) = (Antoine.Below(data), Antoine.Above(data));
        return Predicted.From(data.Equation("boiling point norrish"), [SucroseSolution.Sucrose(sucrosePercent), Pressure(pressureKilopascals)], given =>
            Celsius(Norrish.WaterActivity((100 - given[0]) / Molar.WaterGramsPerMole, given[0] / sucrose.MolarMassGramsPerMole, sucrose.NorrishConstant), given[1], below, above));
    }

    /// <summary>Per cent of sucrose in a syrup that boils at a temperature and a pressure, by Norrish; NaN under the boiling point of water.</summary>
    public static double PercentByNorrish(double celsius, double pressureKilopascals = 101.325, PhysicsData? data = null)
    {
        Temperature.Require(celsius, nameof(celsius));
        return Roots.Bisect(percent => OfSucrose(percent, pressureKilopascals, data).Value - celsius, 0, 95);
    }

    /// <summary>Boiling point of any solution at a pressure, by Norrish and Pitzer: a sugar cooked with glucose syrup, cream or salt.</summary>
    public static Predicted Of(Solution solution, double pressureKilopascals = 101.325)
    {
        var data = solution.Table.Data;
        var equation = data.Equation("boiling point norrish");
        if (solution.Lacks.Count > 0) return Predicted.Unknown(equation, solution.Lacks);
        var activity = WaterActivityModel.All.First(model => model.Name == "Norrish").Of(solution);
        var (below, above) = (Antoine.Below(data), Antoine.Above(data));
        return Predicted.From(equation, [new("water activity", activity.Value, "", activity.Equation.Source), Pressure(pressureKilopascals), new("dissolved matter", solution.DissolvedPercent, "%", new("balance", Evidence.Computed))],
            given => Celsius(given[0], given[1], below, above)) is var predicted && activity.Outside.Count > 0
            ? predicted with { Outside = [.. predicted.Outside, .. activity.Outside] } : predicted;
    }

    private static ColumnTable Table(PhysicsData data) => ColumnTable.Read(data.Table("sucrose-boiling.csv"), "sucrose_percent", "boiling_c");

    private static Given Pressure(double kilopascals) => kilopascals > 0 && double.IsFinite(kilopascals) ? new("pressure", kilopascals, "kPa", new("as asked", Evidence.Sheet))
        : throw new ArgumentOutOfRangeException(nameof(kilopascals), kilopascals, "A pressure lies above zero.");
}
