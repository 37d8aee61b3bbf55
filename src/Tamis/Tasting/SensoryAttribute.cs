namespace Tamis.Tasting;

/// <summary>What an attribute asks of an assessor.</summary>
public enum AttributeKind
{
    /// <summary>How much it is liked, on a scale.</summary>
    Liking,
    /// <summary>How strong it is, on a scale.</summary>
    Intensity,
    /// <summary>Too little, just right or too much, in whole steps about the middle of the scale.</summary>
    JustRight,
    /// <summary>Which words of a list fit.</summary>
    Words,
}

/// <summary>One question of a ballot.</summary>
/// <param name="Name">The attribute as the sheets name it.</param>
/// <param name="Kind">What it asks.</param>
public sealed record SensoryAttribute(string Name, AttributeKind Kind)
{
    /// <summary>The lowest point of the scale; 0 for words.</summary>
    public double LowPoints { get; init; }

    /// <summary>The highest point of the scale; 0 for words.</summary>
    public double HighPoints { get; init; }

    /// <summary>What the lowest point means, empty where the sheet does not say.</summary>
    public string LowWord { get; init; } = "";

    /// <summary>What the highest point means, empty where the sheet does not say.</summary>
    public string HighWord { get; init; } = "";

    /// <summary>The question as the assessor reads it, empty where the sheet has none.</summary>
    public string Question { get; init; } = "";

    /// <summary>The list to tick, in the order of the sheet; empty for a scale.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Whether its points can be averaged and compared: liking and intensity.</summary>
    public bool IsScale => Kind is AttributeKind.Liking or AttributeKind.Intensity;
}
