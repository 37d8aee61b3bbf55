namespace Tamis.Physics;

/// <summary>A figure that a model is given: what it is, how much, and where it came from.</summary>
/// <param name="Name">What it is, in a cook's words (<c>water</c>, <c>core temperature</c>).</param>
/// <param name="Value">The figure, in <paramref name="Unit"/>; NaN where nobody knows it.</param>
/// <param name="Unit">Its unit, empty for a pure number.</param>
/// <param name="Source">The cell, table or publication that it was read in.</param>
public sealed record Given(string Name, double Value, string Unit, Source Source)
{
    /// <summary>Where the true figure lies, if the data say so; null where they give no spread.</summary>
    public Interval? Range { get; init; }

    /// <summary>Whether somebody knows it.</summary>
    public bool IsKnown => double.IsFinite(Value);

    /// <summary>The figure as a step of a working.</summary>
    public Working Working => new(Name, Value, Unit, Source);
}
