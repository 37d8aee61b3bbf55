namespace Tamis.Physics;

/// <summary>The two phases of a ganache, a crémeux or a cream, in grams.</summary>
/// <param name="WaterGrams">Water.</param>
/// <param name="SugarsGrams">Sugars, all in the water phase.</param>
/// <param name="CocoaButterGrams">Cocoa butter.</param>
/// <param name="MilkFatGrams">Milk fat.</param>
/// <param name="OtherFatGrams">Nut oil and other fat, yolk fat included.</param>
/// <param name="EmulsifyingSolidsGrams">What holds the drops apart: milk solids without fat, fat-free cocoa solids, egg solids without fat.</param>
/// <param name="TotalGrams">The whole mixture.</param>
public readonly record struct EmulsionPhases(double WaterGrams, double SugarsGrams, double CocoaButterGrams, double MilkFatGrams, double OtherFatGrams, double EmulsifyingSolidsGrams, double TotalGrams)
{
    /// <summary>The phases of a balance; null where its water, sugars or fats are not wholly known.</summary>
    public static EmulsionPhases? Of(Balance balance) => balance[BalancePart.Water].Whole is { } water && balance.Sugars.Whole is { } sugars && balance.Fat.Whole is { } fat && water > 0
        ? new(water, sugars, balance[BalancePart.CocoaButter].Known, balance[BalancePart.MilkFat].Known, fat - balance[BalancePart.CocoaButter].Known - balance[BalancePart.MilkFat].Known,
            balance.Together(BalancePart.MilkSolids, BalancePart.CocoaSolids, BalancePart.EggYolkSolids, BalancePart.EggWhiteSolids).Known, balance.FinishedGrams)
        : null;

    /// <summary>All fat, in grams.</summary>
    public double FatGrams => CocoaButterGrams + MilkFatGrams + OtherFatGrams;

    /// <summary>Fat to water by mass. About 0.9 to 2.3 holds as drops of fat in water.</summary>
    public double FatToWaterRatio => FatGrams / WaterGrams;

    /// <summary>Sugars in per cent of sugars and water together.</summary>
    public double SugarOfWaterPhasePercent => Emulsion.SugarOfWaterPhasePercent(SugarsGrams, WaterGrams);

    /// <summary>Water in per cent of the whole.</summary>
    public double WaterPercent => 100 * WaterGrams / TotalGrams;

    /// <summary>Fat in per cent of the whole.</summary>
    public double FatPercent => 100 * FatGrams / TotalGrams;

    /// <summary>The fats that decide firmness.</summary>
    public FatPhase Fat => new(CocoaButterGrams, MilkFatGrams, OtherFatGrams);
}

/// <summary>Sums over mixtures that are emulsions.</summary>
public static class Emulsion
{
    /// <summary>A content of a mixture in per cent, from masses and contents in per cent.</summary>
    /// <exception cref="ArgumentException">The two lists differ in length.</exception>
    public static double PercentOfMixture(ReadOnlySpan<double> massGrams, ReadOnlySpan<double> contentPercent)
    {
        if (massGrams.Length != contentPercent.Length) throw new ArgumentException($"{massGrams.Length} masses but {contentPercent.Length} contents; give one content a mass.", nameof(contentPercent));
        double grams = 0, content = 0;
        for (var i = 0; i < massGrams.Length; i++) (grams, content) = (grams + massGrams[i], content + massGrams[i] * contentPercent[i]);
        return content / grams;
    }

    /// <summary>Sugars in per cent of sugars and water together.</summary>
    public static double SugarOfWaterPhasePercent(double sugarsGrams, double waterGrams) => 100 * sugarsGrams / (sugarsGrams + waterGrams);

    /// <summary>The mass of another chocolate that brings the same cocoa butter, in grams.</summary>
    /// <param name="chocolateGrams">The chocolate of the recipe.</param>
    /// <param name="cocoaButterPercent">Its cocoa butter.</param>
    /// <param name="otherCocoaButterPercent">The other's cocoa butter.</param>
    public static double ChocolateOfSameCocoaButterGrams(double chocolateGrams, double cocoaButterPercent, double otherCocoaButterPercent) => chocolateGrams * cocoaButterPercent / otherCocoaButterPercent;

    /// <summary>Fat to water by mass.</summary>
    public static Predicted FatToWater(Given fat, Given water) => Predicted.From(PhysicsData.Kit.Equation("fat to water"), [fat, water], at => at[0] / at[1]);

    /// <summary>The chocolate that takes another's place, by its cocoa butter, in grams.</summary>
    public static Predicted SwapChocolate(Given chocolate, Given cocoaButter, Given otherCocoaButter) =>
        Predicted.From(PhysicsData.Kit.Equation("chocolate of the same cocoa butter"), [chocolate, cocoaButter, otherCocoaButter], at => ChocolateOfSameCocoaButterGrams(at[0], at[1], at[2]));
}
