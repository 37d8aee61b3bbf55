using System.Globalization;

namespace Tamis.Physics;

/// <summary>A range of one input in which an equation was tested or is defined.</summary>
/// <param name="Of">The input, by its name.</param>
/// <param name="Range">The range, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit of the input, empty for a pure number.</param>
public sealed record ValidRange(string Of, Interval Range, string Unit)
{
    /// <summary>A sentence for a value outside the range; null for one inside.</summary>
    public string? Outside(double value) => Range.Contains(value) ? null : string.Create(CultureInfo.InvariantCulture,
        $"{Of} is {value:G4} {Unit}, the equation holds from {Range.Low:G4} to {Range.High:G4} {Unit}").Replace("  ", " ", StringComparison.Ordinal).Replace(" ,", ",", StringComparison.Ordinal).TrimEnd();
}

/// <summary>An equation of the kitchen: what it gives, in what unit, for what inputs, and who published it.</summary>
/// <param name="Key">Its key in <c>data/physics/equations*.csv</c>.</param>
/// <param name="Name">What it gives, in a cook's words.</param>
/// <param name="Unit">The unit of its figure, empty for a pure number.</param>
/// <param name="Source">The publication.</param>
public sealed record Equation(string Key, string Name, string Unit, Source Source)
{
    /// <summary>Where it was tested, input by input.</summary>
    public IReadOnlyList<ValidRange> Valid { get; init; } = [];

    /// <summary>Whether a value of an input lies where the equation was tested; true where nothing is said of that input.</summary>
    public bool Holds(string input, double value) => Valid.All(range => !Names.Same(range.Of, input) || range.Range.Contains(value));
}
