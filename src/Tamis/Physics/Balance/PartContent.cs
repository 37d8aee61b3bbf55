namespace Tamis.Physics;

/// <summary>How much of a part is in 100 g of an ingredient, and how that is known.</summary>
/// <param name="Per100Grams">Grams in 100 g; NaN where nobody knows.</param>
/// <param name="How">In words: as stated, by difference, none by its nature.</param>
/// <param name="Source">Where it comes from.</param>
public readonly record struct PartContent(double Per100Grams, string How, Source? Source)
{
    /// <summary>Not known.</summary>
    public static PartContent Unknown { get; } = new(double.NaN, "not known", null);

    /// <summary>Whether there is a figure.</summary>
    public bool IsKnown => !double.IsNaN(Per100Grams);
}
