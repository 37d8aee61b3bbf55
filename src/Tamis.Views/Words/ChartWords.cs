namespace Tamis.Views;

/// <summary>The words of charts and of the tables behind them, in one language.</summary>
public sealed record ChartWords
{
    /// <summary>The name of the table of means against changes.</summary>
    public string Scores { get; init; } = "Scores against changes";

    /// <summary>The column of attributes.</summary>
    public string Attribute { get; init; } = "Attribute";

    /// <summary>The column of tastings.</summary>
    public string Tasting { get; init; } = "tasting";

    /// <summary>The column of trials.</summary>
    public string Trial { get; init; } = "trial";

    /// <summary>The column of what changed.</summary>
    public string Changed { get; init; } = "what changed";

    /// <summary>The column of means.</summary>
    public string Mean { get; init; } = "mean";

    /// <summary>The column of intervals.</summary>
    public string Interval { get; init; } = "interval";

    /// <summary>The column of how many people there were.</summary>
    public string People { get; init; } = "assessors";

    /// <summary>The column of components.</summary>
    public string Component { get; init; } = "Component";

    /// <summary>The column of masses.</summary>
    public string Mass { get; init; } = "mass";

    /// <summary>The table of what components are made of.</summary>
    public string MadeOf { get; init; } = "What each component is made of";

    /// <summary>The column of the names of points on a map.</summary>
    public string Name { get; init; } = "Name";

    /// <summary>What is read out of a picture of dots with intervals.</summary>
    public string DotsDescription { get; init; } = "Dots with their intervals; the figures are in the table under the chart.";

    /// <summary>What is read out of stacked bars.</summary>
    public string BarsDescription { get; init; } = "Stacked bars; the figures are in the table under the chart.";
}
