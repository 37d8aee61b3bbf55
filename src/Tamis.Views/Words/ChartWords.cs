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

    /// <summary>What is read out of curves.</summary>
    public string CurvesDescription { get; init; } = "Curves; the figures are in the table under the chart.";

    /// <summary>The column of the pictures of a chart.</summary>
    public string Picture { get; init; } = "Picture";

    /// <summary>The column of places on the axis.</summary>
    public string Where { get; init; } = "at";

    /// <summary>The column of figures.</summary>
    public string Value { get; init; } = "figure";

    /// <summary>After the lowest temperature of the warmest tint.</summary>
    public string AndMore { get; init; } = "and more";

    /// <summary>The column of the parts of a piece.</summary>
    public string Part { get; init; } = "Part";

    /// <summary>Under the table of temperatures of parts.</summary>
    public string MeanByVolume { get; init; } = "Means by volume over each part.";

    /// <summary>The title of the ladder of water activity.</summary>
    public string LadderTitle { get; init; } = "Water activity against the limits of growth";

    /// <summary>What is read out of the ladder.</summary>
    public string LadderDescription { get; init; } = "Components on the ladder of water activity beside the limits of microbial growth; the figures are in the table under the chart.";

    /// <summary>Over the limits of growth.</summary>
    public string NoGrowthUnder { get; init; } = "no growth under";

    /// <summary>Over the components of the ladder.</summary>
    public string WaterActivity { get; init; } = "water activity";

    /// <summary>The column of what a model says.</summary>
    public string Predicted { get; init; } = "predicted";

    /// <summary>The column of how far models differ.</summary>
    public string ModelSpread { get; init; } = "models differ";

    /// <summary>The column of what was measured.</summary>
    public string Measured { get; init; } = "measured";

    /// <summary>Before the components for which no model speaks.</summary>
    public string NoModel { get; init; } = "No model of solutions speaks for";
}
