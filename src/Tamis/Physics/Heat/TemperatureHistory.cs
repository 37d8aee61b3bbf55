using System.Globalization;

namespace Tamis.Physics;

/// <summary>Where the cells of a temperature field lie: edges along the radius and the height, mm.</summary>
/// <param name="RadiusMillimetres">The edges from the middle outwards; empty for a flat slab.</param>
/// <param name="HeightMillimetres">The edges from the bottom up; empty for a roll or ball.</param>
public sealed record FieldAxes(IReadOnlyList<double> RadiusMillimetres, IReadOnlyList<double> HeightMillimetres)
{
    /// <summary>How many cells stand along the radius.</summary>
    public int Rings => Math.Max(1, RadiusMillimetres.Count - 1);

    /// <summary>How many cells stand along the height.</summary>
    public int Floors => Math.Max(1, HeightMillimetres.Count - 1);

    internal static FieldAxes Of(HeatColumn column)
    {
        double[] edges = [.. column.EdgeMetres.Select(metres => metres * 1000)];
        return column.Shape == ConductionShape.Slab ? new([], edges) : new(edges, []);
    }
}

/// <summary>All temperatures of a piece at one instant.</summary>
/// <param name="Minutes">When, from the start.</param>
/// <param name="Axes">Where the cells lie.</param>
/// <param name="Celsius">Cell by cell, ring after ring on each floor, floors from the bottom up; NaN where nothing stands.</param>
public sealed record TemperatureField(double Minutes, FieldAxes Axes, IReadOnlyList<double> Celsius)
{
    /// <summary>The temperature of a cell.</summary>
    /// <param name="ring">Counted from the middle, 0 first.</param>
    /// <param name="floor">Counted from the bottom, 0 first.</param>
    public double At(int ring, int floor) => Celsius[floor * Axes.Rings + ring];
}

/// <summary>What a thermometer in several places would have read.</summary>
/// <param name="Minutes">When, from the start.</param>
/// <param name="WarmestCelsius">The warmest cell: the core while the piece cools.</param>
/// <param name="ColdestCelsius">The coldest cell: the core while the piece warms.</param>
/// <param name="MeanCelsius">The mean by mass.</param>
/// <param name="CentreCelsius">The middle of the piece.</param>
public readonly record struct TemperatureReading(double Minutes, double WarmestCelsius, double ColdestCelsius, double MeanCelsius, double CentreCelsius);

/// <summary>What a march found: readings all along, whole fields at the instants that were asked for, and the heat that moved.</summary>
public sealed record TemperatureHistory
{
    /// <summary>Readings from the start to the end.</summary>
    public required IReadOnlyList<TemperatureReading> Readings { get; init; }

    /// <summary>Whole fields at the instants asked for, earliest first.</summary>
    public required IReadOnlyList<TemperatureField> Fields { get; init; }

    /// <summary>All temperatures at the end.</summary>
    public required TemperatureField End { get; init; }

    /// <summary>Heat content of each cell at the end, J/kg.</summary>
    public required IReadOnlyList<double> EndEnthalpyJPerKg { get; init; }

    /// <summary>Heat that came in through the faces, J; below 0 where the piece cooled. Per square metre of a slab, per metre of a roll.</summary>
    public required double HeatInJoules { get; init; }

    /// <summary>What the cells gained, J.</summary>
    public required double HeatGainedJoules { get; init; }

    /// <summary>What was marched through what, as the steps of a working; built when asked.</summary>
    internal Func<IReadOnlyList<Working>> Steps { get; init; } = () => [];

    /// <summary>How far both differ, as a share of the heat that moved: the march's own fault.</summary>
    public double EnergyMissShare => Math.Abs(HeatInJoules - HeatGainedJoules) / Math.Max(Math.Abs(HeatInJoules), double.Epsilon);

    /// <summary>Minutes until the warmest cell has come down to a temperature; null if it has not by the end.</summary>
    /// <param name="celsius">The temperature.</param>
    /// <param name="afterMinutes">Where to begin: the start of the stage that is asked about. The minutes count from there.</param>
    public double? MinutesUntilAllBelow(double celsius, double afterMinutes = 0) => Crossing(reading => celsius - reading.WarmestCelsius, afterMinutes);

    /// <summary>Minutes until the coldest cell has come up to a temperature; null if it has not by the end.</summary>
    /// <param name="celsius">The temperature.</param>
    /// <param name="afterMinutes">Where to begin: the start of the stage that is asked about. The minutes count from there.</param>
    public double? MinutesUntilAllAbove(double celsius, double afterMinutes = 0) => Crossing(reading => reading.ColdestCelsius - celsius, afterMinutes);

    /// <summary>Minutes until the whole piece has come down to a temperature, with range and working.</summary>
    /// <param name="celsius">The temperature.</param>
    /// <param name="afterMinutes">Where to begin to count.</param>
    public Predicted TimeUntilAllBelow(double celsius, double afterMinutes = 0) => Time(MinutesUntilAllBelow(celsius, afterMinutes), "a longer time: at the end the warmest place is at", Readings[^1].WarmestCelsius);

    /// <summary>Minutes until the whole piece has come up to a temperature, with range and working.</summary>
    /// <param name="celsius">The temperature.</param>
    /// <param name="afterMinutes">Where to begin to count.</param>
    public Predicted TimeUntilAllAbove(double celsius, double afterMinutes = 0) => Time(MinutesUntilAllAbove(celsius, afterMinutes), "a longer time: at the end the coldest place is at", Readings[^1].ColdestCelsius);

    /// <summary>The readings of the middle as a log, to hold against a rule or a lethality.</summary>
    public TemperatureLog CentreLog(string name = "the middle, predicted") =>
        TemperatureLog.Of([.. Readings.Select(reading => (reading.Minutes, reading.CentreCelsius))], new(name, Evidence.Computed));

    private Predicted Time(double? minutes, string stillAt, double endCelsius)
    {
        var equation = PhysicsData.Kit.Equation("march_time");
        if (minutes is not { } time) return Predicted.Unknown(equation, string.Create(CultureInfo.InvariantCulture, $"{stillAt} {endCelsius:0.0} °C"));
        double[] extremes = [Readings.Min(reading => reading.ColdestCelsius), Readings.Max(reading => reading.WarmestCelsius)];
        return Predicted.Computed(equation, time, Steps) with { Outside = [.. equation.Valid.SelectMany(range => extremes.Select(range.Outside)).OfType<string>()] };
    }

    // The first time at which a measure is reached, straight between readings.
    private double? Crossing(Func<TemperatureReading, double> above, double afterMinutes)
    {
        for (var i = 0; i < Readings.Count; i++)
        {
            var now = above(Readings[i]);
            if (now < 0 || Readings[i].Minutes < afterMinutes) continue;
            if (i == 0) return 0;
            var before = above(Readings[i - 1]);
            var at = before >= 0 ? Readings[i].Minutes : Readings[i - 1].Minutes + (Readings[i].Minutes - Readings[i - 1].Minutes) * (-before / (now - before));
            return Math.Max(0, at - afterMinutes);
        }
        return null;
    }
}
