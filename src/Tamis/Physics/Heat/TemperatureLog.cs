using System.Globalization;
using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>A temperature that was recorded or planned: readings in the order of time.</summary>
public sealed class TemperatureLog
{
    private TemperatureLog(IReadOnlyList<(double Minutes, double Celsius)> readings, Source source) => (Readings, Source) = (readings, source);

    /// <summary>Minutes from the first reading's clock and temperature, times rising.</summary>
    public IReadOnlyList<(double Minutes, double Celsius)> Readings { get; }

    /// <summary>Where it was recorded.</summary>
    public Source Source { get; }

    /// <summary>A log from readings.</summary>
    /// <exception cref="ArgumentException">Fewer than two readings, times that do not rise, or a temperature below absolute zero; each is named.</exception>
    public static TemperatureLog Of(IReadOnlyList<(double Minutes, double Celsius)> readings, Source source)
    {
        string[] problems = [.. Problems(readings)];
        return problems.Length == 0 ? new(readings, source) : throw new ArgumentException($"{source}: {string.Join(" ", problems)}");
    }

    /// <summary>A log from readings with day and hour, in any order; minutes count from the earliest.</summary>
    public static TemperatureLog Of(IEnumerable<(DateTime At, double Celsius)> readings, Source source)
    {
        (DateTime At, double Celsius)[] sorted = [.. readings.OrderBy(reading => reading.At)];
        return Of([.. sorted.Select(reading => ((reading.At - sorted[0].At).TotalMinutes, reading.Celsius))], source);
    }

    /// <summary>A planned or recorded curve from a sheet with the columns <c>minutes</c> and <c>celsius</c>.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static TemperatureLog Read(Sheet sheet)
    {
        List<CellProblem> problems = [];
        List<(double Minutes, double Celsius)> readings = [];
        if (sheet.Require(["minutes", "celsius"], problems))
            foreach (var row in sheet.Rows)
            {
                var reader = new RowReader(row, problems);
                var minutes = reader.RequiredNumber("minutes", 0);
                readings.Add((minutes, reader.RequiredNumber("celsius", Temperature.AbsoluteZeroCelsius)));
                if (readings is [.., var before, var last] && last.Minutes <= before.Minutes) problems.Add(row.Problem("minutes", "a time after that of the row above"));
            }
        if (problems.Count == 0 && readings.Count < 2) problems.Add(new(sheet.File, 0, "", "", "a curve needs two readings or more"));
        return problems.Count == 0 ? new(readings, new(sheet.File, Evidence.Sheet)) : throw new TableException(problems);
    }

    /// <summary>The time of the first reading at or below a temperature after one above it, straight between readings; null if there is none.</summary>
    /// <param name="celsius">The temperature.</param>
    /// <param name="after">Where to begin looking, minutes.</param>
    public double? FallsTo(double celsius, double after = double.NegativeInfinity) => Passes(celsius, after, falling: true);

    /// <summary>The same for a rise to at or above a temperature.</summary>
    public double? RisesTo(double celsius, double after = double.NegativeInfinity) => Passes(celsius, after, falling: false);

    private double? Passes(double celsius, double after, bool falling)
    {
        var sign = falling ? 1 : -1;
        for (var i = 1; i < Readings.Count; i++)
        {
            var (from, to) = (Readings[i - 1], Readings[i]);
            if (!((from.Celsius - celsius) * sign > 0 && (to.Celsius - celsius) * sign <= 0)) continue;
            var at = from.Minutes + (to.Minutes - from.Minutes) * (from.Celsius - celsius) / (from.Celsius - to.Celsius);
            if (at >= after) return at;
        }
        return null;
    }

    private static IEnumerable<string> Problems(IReadOnlyList<(double Minutes, double Celsius)> readings)
    {
        if (readings.Count < 2) yield return "A curve needs two readings or more.";
        for (var i = 0; i < readings.Count; i++)
        {
            var (minutes, celsius) = readings[i];
            if (!(celsius >= Temperature.AbsoluteZeroCelsius && double.IsFinite(celsius))) yield return string.Create(CultureInfo.InvariantCulture, $"Reading {i + 1} is {celsius} °C; there is no temperature below absolute zero, {Temperature.AbsoluteZeroCelsius} °C.");
            if (!double.IsFinite(minutes) || i > 0 && !(minutes > readings[i - 1].Minutes)) yield return string.Create(CultureInfo.InvariantCulture, $"Reading {i + 1} is at {minutes} minutes; times rise from reading to reading.");
        }
    }
}
