namespace Tamis.Views;

/// <summary>The words around a nutrition panel, in the language of the page; the panel itself has the law's words.</summary>
public sealed record PanelWords
{
    /// <summary>The name of the table of figures before and after rounding.</summary>
    public string EveryFigure { get; init; } = "Every figure, before and after rounding";

    /// <summary>The column of nutrients.</summary>
    public string Nutrient { get; init; } = "Nutrient";

    /// <summary>The column of figures before rounding.</summary>
    public string Computed { get; init; } = "computed";

    /// <summary>The column of intervals.</summary>
    public string LikelyBetween { get; init; } = "likely between";

    /// <summary>The column of figures as the rule rounds them.</summary>
    public string Declared { get; init; } = "declared";

    /// <summary>The summary over how a line was worked out.</summary>
    public Template HowItWas { get; init; } = new("How this line was worked out: {term}, {amount}");
}
