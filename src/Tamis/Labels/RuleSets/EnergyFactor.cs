namespace Tamis.Labels;

/// <summary>What a gram of something counts in the energy.</summary>
public sealed record EnergyFactor
{
    /// <summary>Its name in the rule set.</summary>
    public required string Key { get; init; }

    /// <summary>The word that a page says.</summary>
    public required string Word { get; init; }

    /// <summary>How it follows from the contents of a food; null where no food table has it, and it is not summed.</summary>
    public required ContentFormula? Formula { get; init; }

    /// <summary>The tag of the content that it is a part of; null where it is no such part.</summary>
    public string? PartOf { get; init; }

    /// <summary>Kilojoules a gram; null where the rule set has none.</summary>
    public required double? KilojoulesPerGram { get; init; }

    /// <summary>Kilocalories a gram; null where the rule set has none.</summary>
    public required double? KilocaloriesPerGram { get; init; }

    /// <summary>Where the factor came from.</summary>
    public required RuleOrigin Origin { get; init; }

    /// <summary>When the row is in force.</summary>
    public InForce InForce { get; init; } = InForce.Always;
}
