namespace Tamis.Views;

/// <summary>The words around how a figure was worked out, in one language.</summary>
public sealed record WorkingWords
{
    /// <summary>The summary over the steps; <c>{figure}</c> is the figure in words and with its number.</summary>
    public Template HowItWas { get; init; } = new("How this was worked out: {figure}");

    /// <summary>The summary over the steps that one step used.</summary>
    public Plural Used { get; init; } = new("from one figure", "from {count} figures");
}
