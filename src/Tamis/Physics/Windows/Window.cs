namespace Tamis.Physics;

/// <summary>Where a figure of a family usually lies, for one use and on one base. It says 'usually works', never 'safe' or 'keeps'.</summary>
/// <param name="Family">The family: ganache, tart shell.</param>
/// <param name="Use">What it is used for within the family.</param>
/// <param name="On">What the figure is counted on.</param>
/// <param name="Figure">The figure's name.</param>
/// <param name="Range">Where it usually lies, ends included, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit, empty for a pure number.</param>
/// <param name="Source">Where the range comes from.</param>
public sealed record Window(string Family, string Use, WindowBase On, string Figure, Interval Range, string Unit, Source Source)
{
    /// <summary>What is seen or felt under it; empty where nothing is.</summary>
    public string WhyLow { get; init; } = "";

    /// <summary>What is seen or felt over it; empty where nothing is.</summary>
    public string WhyHigh { get; init; } = "";

    /// <summary>What to try under it.</summary>
    public string TryLow { get; init; } = "";

    /// <summary>What to try over it.</summary>
    public string TryHigh { get; init; } = "";

    /// <summary>Whether another window is about the same figure of the same use on the same base.</summary>
    public bool IsOfSameFigure(Window other) => NameWords.Same(Family, other.Family) && NameWords.Same(Use, other.Use) && On == other.On && Names.Same(Figure, other.Figure);
}
