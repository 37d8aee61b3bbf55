namespace Tamis.Tables;

/// <summary>How a sheet states a figure.</summary>
public enum StatedKind
{
    /// <summary>A number, zero included.</summary>
    Number,
    /// <summary>There, but too little for a figure: <c>tr</c>, <c>trace</c>.</summary>
    Trace,
    /// <summary>Between zero and a limit: <c>&lt;0.1</c>.</summary>
    Below,
}

/// <summary>A figure as a supplier's document states it.</summary>
/// <param name="Kind">What kind of statement it is.</param>
/// <param name="Value">The number, or the limit; 0 for a trace. In the unit of the column.</param>
public readonly record struct StatedNumber(StatedKind Kind, double Value)
{
    /// <summary>The place of the last digit that was written, 0.1 for <c>3.4</c>: what the figure was rounded to; 0 where the writing does not tell.</summary>
    public double Step { get; init; }
}
