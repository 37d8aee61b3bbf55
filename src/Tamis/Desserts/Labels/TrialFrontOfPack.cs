using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>What the published schemes of a government give a trial for the front of its pack.</summary>
public static class TrialFrontOfPack
{
    /// <summary>Every scheme that the rule set has; none where it has none. Fruit, vegetables and nuts are <c>fruit_percent</c> of <c>dessert.csv</c>.</summary>
    /// <exception cref="Tables.TableException">The masses of the trial are not all known, or a rule file cannot be read.</exception>
    public static IReadOnlyList<FrontOfPackScheme> Of(Dessert dessert, string trial, string rules) =>
        FrontOfPack.Of(DessertClaims.FoodOf(dessert, trial, rules), dessert.Facts.Number("fruit_percent", dessert.Trial(trial).Trial));
}
