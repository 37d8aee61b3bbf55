namespace Tamis.Physics;

/// <summary>Driving water off a syrup until it is as strong as it should be.</summary>
public static class CookingDown
{
    /// <summary>Water that a mass of solids keeps at a concentration, in grams.</summary>
    /// <param name="solidsGrams">Sugar and other solids that stay, zero or more.</param>
    /// <param name="solidsPercent">Solids in the finished syrup, per cent by mass, above 0 to 100.</param>
    public static double WaterLeftGrams(double solidsGrams, double solidsPercent) => solidsGrams * (100 - solidsPercent) / solidsPercent;

    /// <summary>Water to drive off, in grams; below zero where the syrup is too strong already and water must be added.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A mass is negative, or the concentration does not lie above 0 and at most at 100 %.</exception>
    public static double WaterToDriveOffGrams(double solidsGrams, double waterGrams, double solidsPercent)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(solidsGrams);
        ArgumentOutOfRangeException.ThrowIfNegative(waterGrams);
        if (!(solidsPercent > 0 && solidsPercent <= 100)) throw new ArgumentOutOfRangeException(nameof(solidsPercent), solidsPercent, "A concentration lies above 0 and at most at 100 per cent.");
        return waterGrams - WaterLeftGrams(solidsGrams, solidsPercent);
    }

    /// <summary>Minutes in which a burner of a useful power drives off water that already boils.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The power is not above zero, or the mass negative.</exception>
    public static double Minutes(double waterGrams, double usefulWatts, PhysicsData? data = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(waterGrams);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(usefulWatts);
        return waterGrams * (data ?? PhysicsData.Kit).Constant("heat of evaporation of water").Value / usefulWatts / 60;
    }
}
