using Tamis.Formulas;

namespace Tamis.Costing;

/// <summary>What has to be bought of an ingredient in whole packs, against what is used of it.</summary>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="NeededGrams">What is needed of it as bought, in grams.</param>
/// <param name="Price">The price that counts; null where there is none.</param>
public sealed record PackPurchase(Ingredient Ingredient, double NeededGrams, PriceInUse? Price)
{
    /// <summary>How many whole packs; null where nobody knows what a pack holds.</summary>
    public int? Packs => Price?.Price.PackGrams is { } grams ? EdibleYield.WholePacks(NeededGrams, grams) : null;

    /// <summary>What the packs hold, in grams; null where nobody knows.</summary>
    public double? BoughtGrams => Packs * Price?.Price.PackGrams;

    /// <summary>What is left in the packs, in grams; null where nobody knows.</summary>
    public double? LeftGrams => BoughtGrams is { } bought ? Math.Max(0, bought - NeededGrams) : null;

    /// <summary>What the packs cost; null where the price is not known. What costs nothing has no need of a pack.</summary>
    public double? PacksCost => Price?.Price.PackPrice is 0 ? 0 : Packs * Price?.Price.PackPrice;

    /// <summary>What the used part of them costs; null where the price is not known.</summary>
    public double? UsedCost => NeededGrams * Price?.Price.PerGram;

    /// <summary>What the part that is left costs; null where the price is not known.</summary>
    public double? LeftCost => PacksCost - UsedCost;
}
