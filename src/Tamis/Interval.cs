using System.Globalization;

namespace Tamis;

/// <summary>A closed range of numbers in the unit of whatever it belongs to; <c>default</c> is the single point 0.</summary>
public readonly record struct Interval
{
    private Interval(double low, double high) => (Low, High) = (low, high);

    /// <summary>The lower end.</summary>
    public double Low { get; }

    /// <summary>The upper end, at least <see cref="Low"/>.</summary>
    public double High { get; }

    /// <summary>The middle of the range.</summary>
    public double Middle => Low + (High - Low) / 2;

    /// <summary>From one end to the other.</summary>
    public double Width => High - Low;

    /// <summary>Whether the range is a single point.</summary>
    public bool IsPoint => Low == High;

    /// <summary>Makes a range from its ends.</summary>
    /// <exception cref="ArgumentException">An end is not finite, or they stand the wrong way round.</exception>
    public static Interval Between(double low, double high) => double.IsFinite(low) && double.IsFinite(high) && low <= high
        ? new(low, high)
        : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"An interval runs from its lower to its upper end; found {low} to {high}."));

    /// <summary>The range that is one point.</summary>
    public static Interval At(double value) => Between(value, value);

    /// <summary>Whether a value lies in the range, ends included.</summary>
    public bool Contains(double value) => value >= Low && value <= High;

    /// <summary>The range of the sum of two independent ranges' values, end to end.</summary>
    public static Interval operator +(Interval left, Interval right) => Between(left.Low + right.Low, left.High + right.High);

    /// <summary>The range scaled by a factor of zero or more.</summary>
    public static Interval operator *(Interval range, double factor) => Between(range.Low * factor, range.High * factor);
}
