namespace Tamis.Composition;

/// <summary>A row of <c>contents.csv</c>: one nutrient of one food as a file states it.</summary>
/// <param name="State">What kind of statement it is.</param>
/// <param name="Value">The figure in 100 g, in the nutrient's unit; NaN where the state needs none.</param>
/// <param name="Source">The key of the publication, as <c>sources.csv</c> has it.</param>
/// <param name="Method">How the figure came about, in words.</param>
public readonly record struct ContentRow(ContentState State, double Value, string Source, string Method)
{
    /// <summary>The lowest sample or bound; NaN where the data do not say.</summary>
    public double Low { get; init; } = double.NaN;

    /// <summary>The highest sample or bound; NaN where the data do not say.</summary>
    public double High { get; init; } = double.NaN;

    /// <summary>How many samples were analysed; 0 where the data do not say.</summary>
    public int Samples { get; init; }

    /// <summary>The standard deviation of the samples; NaN where the data do not say.</summary>
    public double StandardDeviation { get; init; } = double.NaN;

    /// <summary>The lowest and the highest that the statement allows, without regard to samples.</summary>
    internal (double Low, double High) Bounds => State switch
    {
        ContentState.BelowLimit => (0, High),
        ContentState.Estimated when High > Low => (Low, High),
        ContentState.Trace => (0, 0),
        _ => (Value, Value),
    };
}
