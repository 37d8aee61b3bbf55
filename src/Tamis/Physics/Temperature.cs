namespace Tamis.Physics;

/// <summary>Temperatures in degrees Celsius.</summary>
public static class Temperature
{
    /// <summary>Zero kelvin.</summary>
    public const double AbsoluteZeroCelsius = -273.15;

    /// <summary>Refuses what is no temperature.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not a number, or lies below absolute zero.</exception>
    public static double Require(double celsius, string name) => celsius >= AbsoluteZeroCelsius && double.IsFinite(celsius) ? celsius
        : throw new ArgumentOutOfRangeException(name, celsius, FormattableString.Invariant($"A temperature lies above absolute zero, {AbsoluteZeroCelsius} °C."));

    /// <summary>A temperature as an input of an equation, by the name <c>temperature</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not a number, or lies below absolute zero.</exception>
    public static Given Given(double celsius) => new("temperature", Require(celsius, nameof(celsius)), "°C", new("as asked", Evidence.Sheet));
}
