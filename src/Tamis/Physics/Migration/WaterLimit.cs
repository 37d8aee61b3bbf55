namespace Tamis.Physics;

/// <summary>Which side of a water activity spoils a layer.</summary>
public enum LimitSide
{
    /// <summary>The layer goes soft above it.</summary>
    SoftAbove,
    /// <summary>The layer goes dry below it.</summary>
    DryBelow,
}

/// <summary>The water activity at which a layer stops being what it should be.</summary>
/// <param name="Figure">The water activity, with its range and source.</param>
/// <param name="Side">Which side of it spoils the layer.</param>
public sealed record WaterLimit(Given Figure, LimitSide Side)
{
    /// <summary>Whether a water activity lies on the wrong side of a limit, which is <see cref="Figure"/> or an end of its range.</summary>
    public bool IsPassed(double waterActivity, double limit) => Side == LimitSide.SoftAbove ? waterActivity >= limit : waterActivity <= limit;

    /// <summary>The end of the range that is passed first.</summary>
    public double First => Figure.Range is { } range ? Side == LimitSide.SoftAbove ? range.Low : range.High : Figure.Value;

    /// <summary>The end of the range that is passed last.</summary>
    public double Last => Figure.Range is { } range ? Side == LimitSide.SoftAbove ? range.High : range.Low : Figure.Value;
}
