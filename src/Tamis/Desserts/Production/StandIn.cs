using Tamis.Formulas;
using Tamis.Physics;
using Tamis.Production;

namespace Tamis.Desserts;

/// <summary>A step that is done on something else because what it is written for is down.</summary>
/// <param name="Written">The step as it is written.</param>
/// <param name="Instead">The step as it could be done: on another thing, at what that reaches, for as long as it then takes.</param>
/// <param name="TimesAsLong">How many times as long it takes, 1 or more; null where nobody can tell, and then the written time is planned.</param>
public sealed record StandIn(MethodStep Written, MethodStep Instead, double? TimesAsLong)
{
    /// <summary>Whether the other thing does not reach the written temperature: somebody has to allow that.</summary>
    public bool IsOtherTemperature => Instead.TemperatureCelsius is { } instead && instead != Written.TemperatureCelsius;

    /// <summary>The nearest that the kitchen has of the same kind: what reaches the temperature first, then what comes nearest to it. Null where there is nothing of its kind.</summary>
    /// <param name="step">The step.</param>
    /// <param name="others">What else the kitchen has of the kind.</param>
    /// <param name="freezingCelsius">Where the component begins to freeze; null where nobody knows.</param>
    public static StandIn? For(MethodStep step, IReadOnlyList<Equipment> others, double? freezingCelsius)
    {
        var other = others.Where(each => each.Count > 0).OrderBy(each => step.TemperatureCelsius is { } celsius ? Math.Abs(Reached(each, celsius) - celsius) : 0).FirstOrDefault();
        if (other is null) return null;
        var reached = step.TemperatureCelsius is { } wanted ? Reached(other, wanted) : (double?)null;
        var times = TimesAsLongIn(step, other.Name, reached, freezingCelsius);
        return new(step, step with { Equipment = other.Name, TemperatureCelsius = reached, Minutes = step.Minutes * (times ?? 1) }, times);
    }

    /// <summary>How many times as long freezing takes at most in other air: the term of the surface in Plank's equation, which goes by transfer and by the distance to the freezing point.</summary>
    /// <remarks>Plank 1913 and 1941, as reviewed by López-Leiva and Hallström 2003. Where the middle of the piece holds the heat back, it is less; a colder end than the freezing point is not in it.</remarks>
    /// <param name="transferBefore">Surface heat transfer as written, W/(m² K), above 0.</param>
    /// <param name="airBeforeCelsius">The air as written, below the freezing point.</param>
    /// <param name="transferAfter">Surface heat transfer in the other air, W/(m² K), above 0.</param>
    /// <param name="airAfterCelsius">The other air, below the freezing point.</param>
    /// <param name="freezingCelsius">Where it begins to freeze.</param>
    public static double FreezingTimeRatio(double transferBefore, double airBeforeCelsius, double transferAfter, double airAfterCelsius, double freezingCelsius) =>
        transferBefore > 0 && transferAfter > 0 && airBeforeCelsius < freezingCelsius && airAfterCelsius < freezingCelsius
            ? transferBefore * (freezingCelsius - airBeforeCelsius) / (transferAfter * (freezingCelsius - airAfterCelsius))
            : throw new ArgumentOutOfRangeException(nameof(freezingCelsius), freezingCelsius, "Both airs must be colder than the freezing point, and take heat.");

    /// <summary>How long the model of the piece gives in the other place, in the poorest air of its range; null where no model was asked or it cannot tell.</summary>
    public double? ModelMinutes { get; private init; }

    /// <summary>The same with the time of the model of the piece, where the step is the one that freezes it: the longer of that and the written time counts.</summary>
    internal StandIn ByModel(TrialPhysics physics)
    {
        if (Written != physics.Freezing.Step) return this;
        var course = HeatCourse.Freezing(physics, _ => Instead);
        if ((course.Between.Latest ?? (course.Between.Earliest is null ? null : course.Minutes)) is not { } minutes) return this;
        var longest = Math.Max(Math.Ceiling(minutes), Written.Minutes?.High ?? 0);
        return this with { Instead = Instead with { Minutes = Interval.Between(Math.Min(Math.Max(Written.Minutes?.Low ?? 0, course.Minutes ?? minutes), longest), longest) }, ModelMinutes = minutes };
    }

    private static double? TimesAsLongIn(MethodStep step, string place, double? reached, double? freezing)
    {
        if (step.TemperatureCelsius is not { } written || reached is not { } air || freezing is not { } point || Math.Max(written, air) >= point) return null;
        return TransferIn(step.Equipment!) is { } before && TransferIn(place) is { } after ? Math.Max(1, FreezingTimeRatio(before, written, after, air, point)) : null;
    }

    private static double? TransferIn(string place) => SurfaceTransfer.All.FirstOrDefault(each => Names.Same(each.Name, place))?.Value;

    private static double Reached(Equipment equipment, double celsius) =>
        Math.Min(Math.Max(celsius, equipment.Celsius.Low ?? celsius), equipment.Celsius.High ?? celsius);
}

/// <summary>The plan of work while something is down.</summary>
/// <param name="Down">What breaks.</param>
/// <param name="StandIns">The steps that are done on something else.</param>
/// <param name="Nowhere">The steps for which the kitchen has nothing else of the kind.</param>
/// <param name="Plan">The plan; null where there is nothing to do a step on. Its answer says whether there is time for it, and what would have to give way.</param>
public sealed record Replan(Breakdown Down, IReadOnlyList<StandIn> StandIns, IReadOnlyList<MethodStep> Nowhere, PlanOfWork? Plan);
