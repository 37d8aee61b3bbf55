using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>A temperature log of one component of one make.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Make">Which time it was made.</param>
/// <param name="Component">The component; null where the whole piece was measured.</param>
/// <param name="What">What was measured, such as <c>core temperature</c>.</param>
/// <param name="Log">The readings.</param>
public sealed record MeasuredLog(string Trial, int Make, string? Component, string What, TemperatureLog Log);

/// <summary>Finds the temperature logs among what was measured.</summary>
public static class TemperatureLogs
{
    private const string Unit = "°C";

    /// <summary>The logs: two readings in °C or more, with day and hour, of one thing on one make. Two readings of one minute are no log.</summary>
    public static IReadOnlyList<MeasuredLog> In(IEnumerable<Measurement> measurements) =>
    [
        .. from measurement in measurements
           where measurement.At is not null && measurement.Unit == Unit
           group measurement by (Names.Key(measurement.Trial), measurement.Make, Names.Key(measurement.Component ?? ""), Names.Key(measurement.What)) into readings
           where readings.Select(reading => reading.At).Distinct().Count() == readings.Count() && readings.Count() > 1
           let first = readings.First()
           select new MeasuredLog(first.Trial, first.Make, first.Component, first.What,
               TemperatureLog.Of(readings.Select(reading => (reading.At.GetValueOrDefault(), reading.Value)), new(first.Origin.Key, Evidence.Sheet, $"{first.What}, {first.Trial}, make {first.Make}"))),
    ];
}
