using System.Globalization;

namespace Tamis.Physics;

/// <summary>How heat is marched through a piece.</summary>
public sealed record MarchSettings
{
    /// <summary>The step, s; null for one that suits the way of marching.</summary>
    public double? StepSeconds { get; init; }

    /// <summary>The instants whose whole temperature field is kept, minutes from the start.</summary>
    public IReadOnlyList<double> FieldsAtMinutes { get; init; } = [];

    /// <summary>How far apart the readings of core, surface and mean stand, s.</summary>
    public double ReadingsEverySeconds { get; init; } = 30;
}

/// <summary>Marches heat through columns of layers.</summary>
public static class HeatMarch
{
    private const double ShareOfLongestStep = 0.9;
    private const double ImplicitStepSeconds = 1;

    /// <summary>The explicit march: exact bookkeeping in small steps.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is longer than the march bears, or there is no stage.</exception>
    public static TemperatureHistory Explicit(HeatColumn column, IReadOnlyList<HeatStage> stages, MarchSettings? settings = null) =>
        Run(new ExplicitColumn(column), FieldAxes.Of(column), stages, settings ?? new(), double.PositiveInfinity) with { Steps = Steps(column, stages) };

    /// <summary>The implicit march: long steps of a second or so, for the same answer within hundredths of a degree.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero, or there is no stage.</exception>
    public static TemperatureHistory Implicit(HeatColumn column, IReadOnlyList<HeatStage> stages, MarchSettings? settings = null) =>
        Run(new ImplicitColumn(column), FieldAxes.Of(column), stages, settings ?? new(), ImplicitStepSeconds) with { Steps = Steps(column, stages) };

    internal static TemperatureHistory Run(IHeatStepper stepper, FieldAxes axes, IReadOnlyList<HeatStage> stages, MarchSettings settings, double usualStepSeconds)
    {
        if (stages.Count == 0) throw new ArgumentException("Say at least one surroundings and for how long.", nameof(stages));
        if (!(settings.ReadingsEverySeconds > 0)) throw new ArgumentOutOfRangeException(nameof(settings), settings.ReadingsEverySeconds, "Readings stand more than 0 s apart.");
        var readings = new HistoryKeeper(stepper, axes);
        double[] fields = [.. settings.FieldsAtMinutes.Where(minutes => minutes >= 0).Distinct().Order()];
        var begin = 0.0;
        readings.Read(begin, fields.Contains(begin));
        foreach (var stage in stages)
        {
            var step = Step(stepper.LongestStepSeconds(stage), settings.StepSeconds, usualStepSeconds);
            var end = begin + stage.Minutes * 60;
            foreach (var until in fields.Select(minutes => minutes * 60).Where(at => at > begin && at < end).Append(end).ToArray())
            {
                Stretch(stepper, readings, stage, (begin, until), step, settings.ReadingsEverySeconds);
                readings.Read(until, fields.Contains(until / 60));
                begin = until;
            }
        }
        return readings.History();
    }

    private static Func<IReadOnlyList<Working>> Steps(HeatColumn column, IReadOnlyList<HeatStage> stages) =>
        () => MarchSteps.Of(column.ToString(), column.Layers.Select(layer => layer.Material), stages);

    // From one kept instant to the next in whole steps of one length, with readings in between.
    private static void Stretch(IHeatStepper stepper, HistoryKeeper readings, HeatStage stage, (double From, double Until) time, double longest, double readingsEvery)
    {
        var seconds = time.Until - time.From;
        // A length that is a whole number of steps up to rounding stays that number.
        var steps = Math.Max(1, (int)Math.Ceiling(seconds / longest - 1e-9));
        var step = seconds / steps;
        var between = Math.Max(1, (int)(readingsEvery / step + 1e-9));
        for (var done = 0; done < steps; done += between)
        {
            if (done > 0) readings.Read(time.From + done * step, keepField: false);
            stepper.Advance(stage, step, Math.Min(between, steps - done));
        }
    }

    private static double Step(double longest, double? wanted, double usual) => wanted is not { } step
        ? Math.Min(usual, longest * ShareOfLongestStep)
        : step > 0 && step <= longest ? step
        : throw new ArgumentOutOfRangeException(nameof(wanted), step, string.Create(CultureInfo.InvariantCulture, $"This march bears steps above 0 s and up to {longest:G3} s in these cells; found {step:G3} s."));
}
