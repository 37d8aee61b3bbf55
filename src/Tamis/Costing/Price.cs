namespace Tamis.Costing;

/// <summary>What a supplier asks for a pack, as a row of the prices sheet has it.</summary>
/// <param name="Ingredient">What is bought.</param>
/// <param name="PackPrice">The price of the pack, zero or more; 0 is a price (own garden, trim); null is not known.</param>
/// <param name="PackGrams">What the pack holds, above zero; null where nobody said, as may be where it costs nothing or nobody knows the price.</param>
/// <param name="Date">From which day on it holds; null for always.</param>
/// <param name="Origin">The cell of the price.</param>
public sealed record Price(string Ingredient, double? PackPrice, double? PackGrams, DateOnly? Date, Source Origin)
{
    /// <summary>Who sells it; empty where nobody wrote it.</summary>
    public string Supplier { get; init; } = "";

    /// <summary>The word for the pack; empty where nobody wrote it.</summary>
    public string Pack { get; init; } = "";

    /// <summary>What a gram as bought costs; null where the price is not known.</summary>
    public double? PerGram => PackPrice is 0 ? 0 : PackPrice / PackGrams;
}

/// <summary>The price that counts on a day.</summary>
/// <param name="Price">The price.</param>
/// <param name="IsLater">Whether none is so early as the day, so that the first one stands in.</param>
public sealed record PriceInUse(Price Price, bool IsLater);
