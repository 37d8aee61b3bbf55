using Tamis.Costing;

namespace Tamis.Verification;

/// <summary>Purchase, yield and selling price, as check files ask for them. Masses and prices are in any unit that a row keeps to.</summary>
public static class CostQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["as_bought_mass"] = inputs => CheckValue.Of(EdibleYield.BoughtGrams(inputs.Number("edible"), inputs.Number("edible_percent"))),
        ["edible_portion_cost"] = inputs => CheckValue.Of(EdibleYield.EdiblePricePerGram(inputs.Number("price"), inputs.Number("edible_percent"))),
        ["whole_packs"] = inputs => CheckValue.Of(EdibleYield.WholePacks(inputs.Number("needed"), inputs.Number("pack"))),
        ["price_without_tax"] = inputs => CheckValue.Of(Selling.PriceWithoutTax(inputs.Number("price"), inputs.Number("tax_percent"))),
        ["food_cost_percent"] = inputs => CheckValue.Of(Selling.PercentOf(inputs.Number("cost"), inputs.Number("price"))),
    };
}
