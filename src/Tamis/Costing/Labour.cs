using Tamis.Formulas;

namespace Tamis.Costing;

/// <summary>The time of hands that a component or the putting together takes, as the method sheet has it.</summary>
/// <param name="Component">The component, or the word for putting together.</param>
/// <param name="HandsMinutes">The minutes of hands in the steps of which the time is known.</param>
/// <param name="WithoutTime">Steps of which nobody wrote the time; they are not counted as none.</param>
/// <param name="Origin">Where the first step stands.</param>
public sealed record Labour(string Component, Interval HandsMinutes, IReadOnlyList<int> WithoutTime, Source Origin)
{
    /// <summary>The time of hands of some steps; null where there is no step.</summary>
    public static Labour? Of(string component, IReadOnlyList<MethodStep> steps)
    {
        if (steps.Count == 0) return null;
        var known = default(Interval);
        List<int> without = [];
        foreach (var step in steps)
        {
            // A blank says that hands are needed for all of it.
            if ((step.HandsMinutes is { } hands ? Interval.At(hands) : step.Minutes) is { } minutes) known += minutes;
            else without.Add(step.Step);
        }
        return new(component, known, without, steps[0].Origin);
    }

    /// <summary>What the known time costs.</summary>
    /// <param name="ratePerHour">What an hour of hands costs, zero or more.</param>
    public Interval Cost(double ratePerHour) => HandsMinutes * (ratePerHour / 60);
}
