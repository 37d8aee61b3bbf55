namespace Tamis.Physics;

/// <summary>Short rules for ingredients: what follows from a fat content, a cocoa percentage, a degree of inversion.</summary>
public static class IngredientRules
{
    /// <summary>Lactose in milk solids not fat, or in whey solids, in grams.</summary>
    /// <param name="solidsGrams">The solids, zero or more.</param>
    /// <param name="factor">0.545 for milk solids not fat, 0.765 for whey solids.</param>
    public static double LactoseGrams(double solidsGrams, double factor) => solidsGrams * factor;

    /// <summary>Milk solids not fat of a cream, per cent: so much of the part that is not fat.</summary>
    /// <param name="fatPercent">Fat, 0 to 100.</param>
    /// <param name="share">0.09 by common practice.</param>
    public static double MilkSolidsPercentOfCream(double fatPercent, double share) => (100 - fatPercent) * share;

    /// <summary>Fat-free cocoa solids of a chocolate, per cent: cocoa less cocoa butter, which is all fat less milk fat.</summary>
    public static double CocoaSolidsPercent(double cocoaPercent, double totalFatPercent, double milkFatPercent) => cocoaPercent - (totalFatPercent - milkFatPercent);

    /// <summary>How much of a strong one to mix with a weak one for a target (Pearson's square), in grams; NaN where the target does not lie between them.</summary>
    /// <param name="strongPercent">Content of the one whose mass is asked for.</param>
    /// <param name="weakPercent">Content of the other.</param>
    /// <param name="targetPercent">Content that the mixture should have.</param>
    /// <param name="totalGrams">Mass of the mixture.</param>
    public static double PearsonSquareGrams(double strongPercent, double weakPercent, double targetPercent, double totalGrams)
    {
        var share = (targetPercent - weakPercent) / (strongPercent - weakPercent);
        return share is >= 0 and <= 1 ? share * totalGrams : double.NaN;
    }

    /// <summary>Sugar solids after inversion, in grams: each sucrose takes up a water and becomes glucose and fructose.</summary>
    /// <param name="sucroseGrams">Sucrose before.</param>
    /// <param name="inversionPercent">How much of it is inverted, 0 to 100.</param>
    public static double SolidsAfterInversionGrams(double sucroseGrams, double inversionPercent) =>
        sucroseGrams * (1 + inversionPercent / 100 * Molar.WaterGramsPerMole / Molar.DisaccharideGramsPerMole);

    /// <summary>Ethanol in a spirit, per cent by mass, from per cent by volume.</summary>
    /// <param name="volumePercent">Alcohol by volume, 0 to 100.</param>
    /// <param name="spiritDensityGramsPerMillilitre">Density of the spirit, above zero.</param>
    /// <param name="ethanolDensityGramsPerMillilitre">0.7893 at 20 °C.</param>
    public static double EthanolMassPercent(double volumePercent, double spiritDensityGramsPerMillilitre, double ethanolDensityGramsPerMillilitre) =>
        volumePercent * ethanolDensityGramsPerMillilitre / spiritDensityGramsPerMillilitre;
}
