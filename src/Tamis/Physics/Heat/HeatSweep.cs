namespace Tamis.Physics;

/// <summary>One case of a sweep.</summary>
/// <param name="ThicknessMillimetres">The thickness of the piece.</param>
/// <param name="AirCelsius">The air.</param>
/// <param name="Minutes">The time that was asked for; null where it was not reached.</param>
public readonly record struct SweepPoint(double ThicknessMillimetres, double AirCelsius, double? Minutes);

/// <summary>The same question for every thickness in every air, on all cores.</summary>
public static class HeatSweep
{
    /// <summary>Asks for a time in every case. Cases know nothing of each other, so the answers do not depend on how many run at once.</summary>
    /// <param name="thicknessesMillimetres">The thicknesses.</param>
    /// <param name="airsCelsius">The temperatures of the air.</param>
    /// <param name="minutes">The time of a thickness (mm) in an air (°C); null where it is not reached.</param>
    /// <param name="atOnce">How many cases run at once; null for as many as there are cores.</param>
    /// <returns>All cases, thickness after thickness.</returns>
    public static IReadOnlyList<SweepPoint> Over(IReadOnlyList<double> thicknessesMillimetres, IReadOnlyList<double> airsCelsius, Func<double, double, double?> minutes, int? atOnce = null)
    {
        var points = new SweepPoint[thicknessesMillimetres.Count * airsCelsius.Count];
        // The thickest cases last longest: begun first, they leave no core idle at the end.
        int[] order = [.. Enumerable.Range(0, points.Length).OrderByDescending(i => thicknessesMillimetres[i / airsCelsius.Count])];
        Parallel.ForEach(order, new ParallelOptions { MaxDegreeOfParallelism = atOnce ?? Environment.ProcessorCount }, i =>
        {
            var (thickness, air) = (thicknessesMillimetres[i / airsCelsius.Count], airsCelsius[i % airsCelsius.Count]);
            points[i] = new(thickness, air, minutes(thickness, air));
        });
        return points;
    }
}
