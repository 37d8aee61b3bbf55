namespace Tamis.Tasting;

/// <summary>The choices behind a verdict that are not arithmetic.</summary>
public sealed record TastingPolicy
{
    /// <summary>The kit's own choices.</summary>
    public static TastingPolicy Kit { get; } = new();

    /// <summary>With fewer assessors of either trial there are notes, not evidence: 6, common practice, no source.</summary>
    public int FewestAssessors { get; init; } = 6;

    /// <summary>The share of such intervals that hold the true figure: 0.95.</summary>
    public double ConfidenceShare { get; init; } = 0.95;

    /// <summary>The step in which points are printed; an interval is judged as printed. One tenth of a point.</summary>
    public double PrintedStepPoints { get; init; } = 0.1;
}
