namespace Tamis.Physics;

/// <summary>Freezing times by closed equations, on bare numbers in SI units; <see cref="FreezingCase"/> gives them with range and working.</summary>
public static class FreezingTimes
{
    /// <summary>Plank: the time of the phase change alone, s. Neglects the cooling before and after, usually 20 to 40 % low.</summary>
    /// <param name="shape">Slab (cooled on both faces), roll or ball.</param>
    /// <param name="thicknessMetres">The whole thickness or the diameter.</param>
    /// <param name="densityKgPerM3">Density.</param>
    /// <param name="latentHeatJPerKg">Latent heat of the food, about its water times that of ice.</param>
    /// <param name="freezingPointCelsius">Where it freezes; above the air.</param>
    /// <param name="airCelsius">The air.</param>
    /// <param name="transferWPerM2K">Heat transfer coefficient.</param>
    /// <param name="frozenConductivityWPerMK">Conductivity when frozen.</param>
    public static double PlankSeconds(ConductionShape shape, double thicknessMetres, double densityKgPerM3, double latentHeatJPerKg, double freezingPointCelsius, double airCelsius, double transferWPerM2K, double frozenConductivityWPerMK)
    {
        var faces = Dimensions(shape);
        return densityKgPerM3 * latentHeatJPerKg / (freezingPointCelsius - airCelsius)
            * (thicknessMetres / (2 * faces * transferWPerM2K) + thicknessMetres * thicknessMetres / (8 * faces * frozenConductivityWPerMK));
    }

    /// <summary>Pham's mean freezing temperature, °C.</summary>
    public static double PhamMeanFreezingCelsius(double finalCentreCelsius, double airCelsius) => 1.8 + 0.263 * finalCentreCelsius + 0.105 * airCelsius;

    /// <summary>Pham's simplified equation: from the start to the final temperature of the centre, s.</summary>
    /// <param name="shape">Slab (cooled on both faces), roll or ball.</param>
    /// <param name="lengthMetres">Half thickness or radius.</param>
    /// <param name="transferWPerM2K">Heat transfer coefficient.</param>
    /// <param name="frozenConductivityWPerMK">Conductivity when frozen.</param>
    /// <param name="unfrozenJPerM3K">Density times specific heat before freezing.</param>
    /// <param name="frozenDensityKgPerM3">Density when frozen.</param>
    /// <param name="frozenSpecificHeatJPerKgK">Specific heat when frozen.</param>
    /// <param name="latentHeatJPerKg">Latent heat of the food.</param>
    /// <param name="initialCelsius">Temperature at the start.</param>
    /// <param name="finalCentreCelsius">Temperature of the centre at the end.</param>
    /// <param name="airCelsius">The air.</param>
    public static double PhamSeconds(ConductionShape shape, double lengthMetres, double transferWPerM2K, double frozenConductivityWPerMK, double unfrozenJPerM3K, double frozenDensityKgPerM3, double frozenSpecificHeatJPerKgK, double latentHeatJPerKg, double initialCelsius, double finalCentreCelsius, double airCelsius)
    {
        var mean = PhamMeanFreezingCelsius(finalCentreCelsius, airCelsius);
        var before = unfrozenJPerM3K * (initialCelsius - mean) / ((initialCelsius + mean) / 2 - airCelsius);
        var after = frozenDensityKgPerM3 * (latentHeatJPerKg + frozenSpecificHeatJPerKgK * (mean - finalCentreCelsius)) / (mean - airCelsius);
        return lengthMetres / (Dimensions(shape) * transferWPerM2K) * (before + after) * (1 + transferWPerM2K * lengthMetres / frozenConductivityWPerMK / 2);
    }

    private static int Dimensions(ConductionShape shape) => shape switch { ConductionShape.Slab => 1, ConductionShape.Cylinder => 2, _ => 3 };
}
