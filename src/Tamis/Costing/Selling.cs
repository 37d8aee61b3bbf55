namespace Tamis.Costing;

/// <summary>A selling price and what remains of it.</summary>
/// <param name="WithTax">What the guest pays, zero or more.</param>
/// <param name="TaxPercent">The tax on it, in per cent of the price without tax, zero or more.</param>
public sealed record Selling(double WithTax, double TaxPercent)
{
    /// <summary>The price without tax.</summary>
    public double WithoutTax => PriceWithoutTax(WithTax, TaxPercent);

    /// <summary>What the ingredients take of it, in per cent; null where their cost is not known whole or nothing is asked.</summary>
    public double? FoodCostPercent(Amount cost) => cost.Whole is { } whole && WithoutTax > 0 ? PercentOf(whole, WithoutTax) : null;

    /// <summary>What remains of it after a cost; null where the cost is not known.</summary>
    public double? Margin(double? cost) => WithoutTax - cost;

    /// <summary>A price without the tax that is in it.</summary>
    /// <param name="priceWithTax">The price, zero or more.</param>
    /// <param name="taxPercent">The tax, in per cent of the price without it, zero or more.</param>
    public static double PriceWithoutTax(double priceWithTax, double taxPercent) => priceWithTax / (1 + taxPercent / 100);

    /// <summary>One cost as per cent of a price.</summary>
    public static double PercentOf(double cost, double price) => cost / price * 100;
}
