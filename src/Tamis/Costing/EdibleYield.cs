namespace Tamis.Costing;

/// <summary>From what is weighed to what is bought: shell, peel and stone are paid for too.</summary>
/// <remarks>As-purchased mass is edible mass over the edible share; the cost of the edible part rises by the same factor.
/// Source: USDA Food and Nutrition Service, Food Buying Guide for Child Nutrition Programs, appendix B.</remarks>
public static class EdibleYield
{
    private const double Slack = 1e-9;

    /// <summary>What has to be bought for an edible mass, in grams.</summary>
    /// <param name="edibleGrams">What is weighed, zero or more.</param>
    /// <param name="ediblePercent">The share of the bought mass that is used, above 0 to 100.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no such mass or share.</exception>
    public static double BoughtGrams(double edibleGrams, double ediblePercent)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(edibleGrams);
        if (!(ediblePercent > 0 && ediblePercent <= 100)) throw new ArgumentOutOfRangeException(nameof(ediblePercent), ediblePercent, "An edible share lies above 0 and at most at 100 %.");
        return edibleGrams * 100 / ediblePercent;
    }

    /// <summary>What a gram of the edible part costs where a gram as bought costs so much.</summary>
    /// <param name="boughtPricePerGram">The price of a gram as bought.</param>
    /// <param name="ediblePercent">The share of the bought mass that is used, above 0 to 100.</param>
    public static double EdiblePricePerGram(double boughtPricePerGram, double ediblePercent) => boughtPricePerGram * BoughtGrams(1, ediblePercent);

    /// <summary>How many whole packs hold a mass; 0 for none.</summary>
    /// <param name="boughtGrams">What has to be bought, zero or more.</param>
    /// <param name="packGrams">What a pack holds, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no such mass or pack.</exception>
    public static int WholePacks(double boughtGrams, double packGrams)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(boughtGrams);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(packGrams);
        // Sums of the same masses in another order differ in the last digits; that buys no further pack.
        return (int)Math.Ceiling(boughtGrams / packGrams * (1 - Slack));
    }
}
