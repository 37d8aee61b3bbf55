using Tamis.Costing;

namespace Tamis.Desserts;

/// <summary>What has to be bought for a number of pieces, in whole packs, and what is left of them.</summary>
/// <param name="Amounts">What is made, with whole eggs and what blades and bowls ask for.</param>
/// <param name="Packs">Every ingredient, in the order of first use.</param>
/// <param name="Currency">The currency.</param>
public sealed record Purchases(DessertAmounts Amounts, IReadOnlyList<PackPurchase> Packs, string Currency)
{
    /// <summary>The purchases for a number of pieces.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many, 1 or more.</param>
    /// <param name="day">The day whose prices count; the last make of the trials sheet where null.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder; null for the usual one.</param>
    /// <exception cref="Tables.TableException">A sheet must be mended first.</exception>
    public static Purchases Of(Dessert dessert, string trial, int pieces, DateOnly? day = null, string? montageSheet = null)
    {
        var amounts = DessertAmounts.Of(dessert, trial, pieces, montageSheet: montageSheet);
        return new(amounts, [.. amounts.Amounts.Ingredients.Select(needed => new PackPurchase(needed.Ingredient, needed.BoughtGrams, dessert.Prices.On(needed.Ingredient.Name, day ?? dessert.Store.AsOf)))],
            dessert.Prices.Currency ?? dessert.Facts.Text("currency") ?? "");
    }

    /// <summary>What is used costs so much, and for which mass a price is known.</summary>
    public Amount Used => Sum(purchase => purchase.UsedCost);

    /// <summary>The whole packs cost so much, and for which mass of what is needed their price is known.</summary>
    public Amount WholePacks => Sum(purchase => purchase.PacksCost);

    private Amount Sum(Func<PackPurchase, double?> cost) => Packs.Aggregate(default(Amount), (sum, purchase) =>
        sum + (cost(purchase) is { } known ? new Amount(known, purchase.NeededGrams, purchase.NeededGrams) : new(0, 0, purchase.NeededGrams)));
}
