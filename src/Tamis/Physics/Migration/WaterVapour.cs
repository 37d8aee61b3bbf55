namespace Tamis.Physics;

/// <summary>Water vapour over water.</summary>
public static class WaterVapour
{
    /// <summary>The pressure of saturated vapour over water, Pa, from −30 to 50 °C. Source: equations-migration.csv, <c>saturation pressure</c>.</summary>
    public static double SaturationPascals(double temperatureCelsius) =>
        611.21 * Math.Exp((18.678 - temperatureCelsius / 234.5) * temperatureCelsius / (257.14 + temperatureCelsius));

    /// <summary>The mass of vapour in saturated air, g per m³, from the gas law.</summary>
    public static double SaturationGramsPerCubicMetre(double temperatureCelsius) =>
        SaturationPascals(temperatureCelsius) * MolarGrams / (GasConstant * (temperatureCelsius - AbsoluteZeroCelsius));

    private const double MolarGrams = 18.015, GasConstant = 8.314462618, AbsoluteZeroCelsius = -273.15;

    /// <summary>By how much diffusion is faster than at the temperature where it was measured (Arrhenius).</summary>
    /// <param name="temperatureCelsius">The temperature asked for.</param>
    /// <param name="measuredCelsius">The temperature of the measurement.</param>
    /// <param name="activationKilojoulesPerMole">The activation energy, kJ/mol.</param>
    public static double DiffusionRatio(double temperatureCelsius, double measuredCelsius, double activationKilojoulesPerMole) =>
        Math.Exp(activationKilojoulesPerMole * 1000 / GasConstant * (1 / (measuredCelsius - AbsoluteZeroCelsius) - 1 / (temperatureCelsius - AbsoluteZeroCelsius)));
}
