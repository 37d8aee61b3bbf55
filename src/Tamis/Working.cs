namespace Tamis;

/// <summary>One step of how a figure was worked out, with the steps that it used.</summary>
/// <param name="Step">What was done or read, in words.</param>
/// <param name="Value">The figure of this step; NaN where the step found none.</param>
/// <param name="Unit">The unit of the figure, empty for a pure number.</param>
/// <param name="Source">Where the figure or the rule came from.</param>
public sealed record Working(string Step, double Value, string Unit, Source Source)
{
    /// <summary>The steps that this one used, in the order of use.</summary>
    public IReadOnlyList<Working> From { get; init; } = [];

    /// <summary>This step and all that it rests on, outermost first, with the depth of each.</summary>
    public IEnumerable<(int Depth, Working Step)> Walk(int depth = 0) =>
        [(depth, this), .. From.SelectMany(step => step.Walk(depth + 1))];
}
