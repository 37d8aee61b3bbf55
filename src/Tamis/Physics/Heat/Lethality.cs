namespace Tamis.Physics;

/// <summary>What a heat treatment is held against: a temperature, how fast the effect grows, and how long is enough.</summary>
/// <param name="Temperature">The reference temperature, °C.</param>
/// <param name="Z">Degrees for ten times the effect, °C, above 0.</param>
/// <param name="Target">Minutes at the reference temperature that were chosen as enough.</param>
public sealed record LethalityReference(Given Temperature, Given Z, Given Target)
{
    /// <summary>70 °C for 2 minutes, z 7.5 °C: what cook-chill guidance names for six decimal reductions of Listeria monocytogenes.</summary>
    public static LethalityReference CookChill { get; } = new(
        PhysicsData.Kit.Constant("reference temperature of cook-chill"),
        PhysicsData.Kit.Constant("z of cook-chill"),
        PhysicsData.Kit.Constant("minutes at the reference of cook-chill"));
}

/// <summary>A log held against a reference.</summary>
/// <param name="Reference">What it was held against.</param>
/// <param name="Effect">The effect of the log, in minutes at the reference temperature.</param>
public sealed record LethalityVerdict(LethalityReference Reference, Predicted Effect)
{
    /// <summary>Whether the effect reaches the target that was chosen; null where either is unknown. What every verdict is printed with is <see cref="CoolingRule.Deferral"/>.</summary>
    public bool? ReachesTarget => Effect.IsKnown && Reference.Target.IsKnown ? Effect.Value >= Reference.Target.Value : null;
}

/// <summary>The effect of time and temperature on what must not live (Bigelow 1921).</summary>
/// <remarks>Sugar, salt, fat and little water protect microbes: chocolate work is not made safe by 70 °C for two minutes. A figure here is no proof; what counts is the local code and who is licensed to judge by it.</remarks>
public static class Lethality
{
    /// <summary>Minutes at the reference temperature that have the effect of one minute here.</summary>
    public static double Rate(double celsius, double referenceCelsius, double zCelsius) => Math.Pow(10, (celsius - referenceCelsius) / zCelsius);

    /// <summary>Minutes at another temperature with the effect of the target.</summary>
    public static Predicted EquivalentMinutes(LethalityReference reference, Given temperature) => CheckedPrediction.Of("equivalent_time",
        [reference.Target.In("target", "min"), reference.Temperature.In("reference temperature", "°C"), reference.Z.In("z", "°C"), temperature.In("temperature", "°C")], x => x[0] / Rate(x[3], x[1], x[2]), x => WrongZ(x[2]));

    /// <summary>The effect of a log in minutes at the reference temperature; temperature runs straight between readings.</summary>
    public static Predicted Minutes(TemperatureLog log, LethalityReference reference) => OfLog("lethality", log, reference, Exact);

    /// <summary>A log held against a reference and the target that was chosen.</summary>
    public static LethalityVerdict Against(TemperatureLog log, LethalityReference reference) => new(reference, Minutes(log, reference));

    /// <summary>The effect with the lethal rate straight between readings, as tables do it: more where readings are far apart.</summary>
    public static Predicted MinutesByTrapezium(TemperatureLog log, LethalityReference reference) => OfLog("lethality_trapezoid", log, reference,
        (from, to, at, z) => (Rate(from.Celsius, at, z) + Rate(to.Celsius, at, z)) / 2 * (to.Minutes - from.Minutes));

    /// <summary>The effect so far at each reading, in minutes at the reference temperature.</summary>
    /// <exception cref="ArgumentException">The reference is unknown or cannot be.</exception>
    public static IReadOnlyList<(double Minutes, double Celsius, double EffectMinutes)> Course(TemperatureLog log, LethalityReference reference)
    {
        if (!reference.Temperature.IsKnown || WrongZ(reference.Z.Value) is not null) throw new ArgumentException("A reference has a temperature and a z above 0 °C.", nameof(reference));
        var effect = 0.0;
        List<(double, double, double)> course = [(log.Readings[0].Minutes, log.Readings[0].Celsius, 0)];
        for (var i = 1; i < log.Readings.Count; i++)
        {
            effect += Exact(log.Readings[i - 1], log.Readings[i], reference.Temperature.Value, reference.Z.Value);
            course.Add((log.Readings[i].Minutes, log.Readings[i].Celsius, effect));
        }
        return course;
    }

    /// <summary>Decimal reductions: the effect over D.</summary>
    public static Predicted LogReduction(Given effectMinutes, Given dMinutes) => CheckedPrediction.Of("log_reduction",
        [effectMinutes.In("lethality", "min"), dMinutes.In("D", "min")], x => x[0] / x[1], x => x[1] > 0 ? null : $"a D above 0 minutes ({dMinutes.Source})");

    /// <summary>z from two times with the same effect, °C.</summary>
    public static Predicted Z(Given temperature1, Given minutes1, Given temperature2, Given minutes2) => CheckedPrediction.Of("z_value",
        [temperature1.In("first temperature", "°C"), minutes1.In("first time", "min"), temperature2.In("second temperature", "°C"), minutes2.In("second time", "min")], x => (x[0] - x[2]) / Math.Log10(x[3] / x[1]),
        x => x[1] > 0 && x[3] > 0 && (x[0] - x[2]) * (x[3] - x[1]) > 0 ? null : "two times above 0 minutes, the shorter at the hotter temperature");

    /// <summary>D at a temperature from D at another, min.</summary>
    public static Predicted DAt(Given temperature, Given knownD, Given knownTemperature, Given z) => CheckedPrediction.Of("d_value",
        [temperature.In("temperature", "°C"), knownD.In("known D", "min"), knownTemperature.In("temperature of the known D", "°C"), z.In("z", "°C")], x => x[1] / Rate(x[0], x[2], x[3]), x => WrongZ(x[3]));

    /// <summary>D from two counts: minutes over decimal reductions between them.</summary>
    public static Predicted DFromCounts(Given minutes, Given countBefore, Given countAfter) => CheckedPrediction.Of("d_from_counts",
        [minutes.In("time", "min"), countBefore.In("count before", ""), countAfter.In("count after", "")], x => x[0] / Math.Log10(x[1] / x[2]), x => x[2] > 0 && x[1] > x[2] ? null : "a count that falls and stays above 0");

    private static Predicted OfLog(string key, TemperatureLog log, LethalityReference reference, Func<(double Minutes, double Celsius), (double Minutes, double Celsius), double, double, double> piece)
    {
        Given readings = new("readings", log.Readings.Count, "", log.Source);
        return CheckedPrediction.Of(key, [reference.Temperature.In("reference temperature", "°C"), reference.Z.In("z", "°C"), readings], x =>
        {
            var sum = 0.0;
            for (var i = 1; i < log.Readings.Count; i++) sum += piece(log.Readings[i - 1], log.Readings[i], x[0], x[1]);
            return sum;
        }, x => WrongZ(x[1]));
    }

    // The rate is an exponential of time while temperature runs straight; where it stands still the limit is the rate itself.
    private static double Exact((double Minutes, double Celsius) from, (double Minutes, double Celsius) to, double reference, double z)
    {
        var (minutes, rise) = (to.Minutes - from.Minutes, (to.Celsius - from.Celsius) / z * Math.Log(10));
        var rate = Rate(from.Celsius, reference, z);
        return Math.Abs(rise) < 1e-9 ? rate * minutes : rate * (Math.Exp(rise) - 1) / rise * minutes;
    }

    private static string? WrongZ(double z) => z > 0 ? null : "a z above 0 °C";
}
