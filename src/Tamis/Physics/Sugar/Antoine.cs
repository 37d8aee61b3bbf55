namespace Tamis.Physics;

/// <summary>Antoine's constants of water, for pressures in mmHg and temperatures in °C.</summary>
/// <param name="A">The constant term.</param>
/// <param name="B">The numerator, in kelvin.</param>
/// <param name="C">What is added to the temperature, in kelvin.</param>
public readonly record struct Antoine(double A, double B, double C)
{
    /// <summary>From 1 to 100 °C.</summary>
    public static Antoine Below(PhysicsData data) => Read(data, "below 100 °C");

    /// <summary>From 99 to 374 °C.</summary>
    public static Antoine Above(PhysicsData data) => Read(data, "from 99 °C");

    private static Antoine Read(PhysicsData data, string where) => new(data.Constant($"antoine a {where}").Value, data.Constant($"antoine b {where}").Value, data.Constant($"antoine c {where}").Value);
}
