namespace Tamis.Physics;

/// <summary>The air over the uppermost layer or under the lowest one, when the piece is not wrapped.</summary>
public sealed record SurroundingAir
{
    private SurroundingAir(double relativeHumidityPercent, double transferMetresPerSecond) =>
        (RelativeHumidityPercent, TransferMetresPerSecond) = (relativeHumidityPercent, transferMetresPerSecond);

    /// <summary>Relative humidity, %, from 0 to below 100.</summary>
    public double RelativeHumidityPercent { get; }

    /// <summary>How well the air carries vapour to the surface, m/s; infinite where the surface takes the air's humidity at once. Still air in a fridge is of the order of 0.003 m/s, a fan of 0.01 m/s (from memory).</summary>
    public double TransferMetresPerSecond { get; }

    /// <summary>Air of some humidity.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The humidity is not from 0 to below 100 %, or the transfer is not above zero.</exception>
    public static SurroundingAir Of(double relativeHumidityPercent, double transferMetresPerSecond)
    {
        if (!(relativeHumidityPercent is >= 0 and < 100)) throw new ArgumentOutOfRangeException(nameof(relativeHumidityPercent), relativeHumidityPercent, "The relative humidity of the air is from 0 to below 100 %.");
        if (!(transferMetresPerSecond > 0)) throw new ArgumentOutOfRangeException(nameof(transferMetresPerSecond), transferMetresPerSecond, "The transfer of vapour to the surface is above 0 m/s.");
        return new(relativeHumidityPercent, transferMetresPerSecond);
    }

    internal double WaterActivity => RelativeHumidityPercent / 100;

    internal double Conductance(double temperatureCelsius) => TransferMetresPerSecond * WaterVapour.SaturationGramsPerCubicMetre(temperatureCelsius) / 1000;
}
