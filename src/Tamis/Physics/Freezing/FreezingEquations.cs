namespace Tamis.Physics;

/// <summary>The plain equations of freezing point and ice.</summary>
public static class FreezingEquations
{
    /// <summary>Fall of the freezing point in °C by the salts of milk: 2.37 · milk solids not fat / water.</summary>
    public static double MilkSaltsDepression(double milkSolidsGrams, double waterGrams, double factor) => factor * milkSolidsGrams / waterGrams;

    /// <summary>Water activity beside ice: −ln a = p · d + q · d², d degrees below 0 °C (Ferro Fontán &amp; Chirife 1981), to 40 degrees.</summary>
    public static double WaterActivityOfIce(double celsius, double linear, double quadratic) => Math.Exp(celsius * linear - celsius * celsius * quadratic);

    /// <summary>Temperature in °C at which a solution of a water activity is in balance with ice: the same equation, solved.</summary>
    public static double FreezingCelsius(double waterActivityRatio, double linear, double quadratic)
    {
        var logarithm = Math.Log(waterActivityRatio);
        return -(-linear + Math.Sqrt(linear * linear - 4 * quadratic * logarithm)) / (2 * quadratic);
    }

    /// <summary>Share of a food that is ice, by Tchigeov: 1.105 · water / (1 + 0.7138 / ln(Tf − T + 1)); zero from the freezing point up.</summary>
    /// <param name="waterShare">Water in the food, 0 to 1.</param>
    /// <param name="celsius">Its temperature, −45 °C to the freezing point.</param>
    /// <param name="freezingCelsius">Its freezing point.</param>
    public static double IceShareByTchigeov(double waterShare, double celsius, double freezingCelsius) =>
        celsius >= freezingCelsius ? 0 : 1.105 * waterShare / (1 + 0.7138 / Math.Log(freezingCelsius - celsius + 1));
}
