namespace Tamis.Desserts;

/// <summary>What a piece would have cost on a day.</summary>
/// <param name="Day">The day of a price.</param>
/// <param name="Cost">The cost of a piece by the prices of that day.</param>
/// <param name="PricedLater">Ingredients whose first price is later: they are counted at it.</param>
public sealed record CostOnDay(DateOnly Day, Amount Cost, IReadOnlyList<string> PricedLater);

/// <summary>The cost of a piece over the days of the prices sheet, the formula as it is.</summary>
/// <param name="Costs">The costs of today's page.</param>
/// <param name="Days">Every day on which a price was written, earliest first.</param>
public sealed record CostHistory(DessertCosts Costs, IReadOnlyList<CostOnDay> Days)
{
    /// <summary>The cost of a piece of a trial day by day.</summary>
    public static CostHistory Of(Dessert dessert, string trial) => new(DessertCosts.Of(dessert, trial),
        [.. dessert.Prices.Days.Select(day => DessertCosts.Of(dessert, trial, day)).Select(costs => new CostOnDay(costs.Day!.Value, costs.PieceCost, costs.PricedLater))]);

    /// <summary>What the lowest and the highest price that was written of each ingredient make of a piece, the widest first; those of one price are left out.</summary>
    public IReadOnlyList<(IngredientShare Ingredient, Interval PieceCost)> Swings =>
        [.. from share in Costs.Ingredients
            let each = Costs.Dessert.Prices.Of(share.Name).Select(price => price.PerGram).OfType<double>().ToArray()
            where each.Length > 1 && share.Cost is not null && share.Line.Price!.Price.PerGram is not null
            // As bought: what a gram more of the edible part takes of the pack is in both.
            let bought = share.Grams * 100 / share.Line.Ingredient!.EdiblePercent
            let range = Interval.Between(each.Min() * bought, each.Max() * bought)
            where range.Width > 0
            orderby range.Width descending
            select (share, range)];
}
