namespace Tamis.Labels;

/// <summary>When a percentage of a reference value is printed.</summary>
public enum PercentShown
{
    /// <summary>Always.</summary>
    Yes,
    /// <summary>Where the maker wishes it.</summary>
    Optional,
    /// <summary>Never.</summary>
    No,
}

/// <summary>What a percentage of a reference value is worked out from.</summary>
public enum PercentFrom
{
    /// <summary>The amount before rounding.</summary>
    Unrounded,
    /// <summary>The amount as the label declares it.</summary>
    Declared,
    /// <summary>The amount before rounding; from the declared one it is as lawful.</summary>
    Either,
}

/// <summary>How much of something a day's intake is reckoned at.</summary>
public sealed record ReferenceValue
{
    /// <summary>The figure, by its key.</summary>
    public required string Key { get; init; }

    /// <summary>The unit of the value.</summary>
    public required string Unit { get; init; }

    /// <summary>The amount, in <see cref="Unit"/>, above 0.</summary>
    public required double Value { get; init; }

    /// <summary>The upper end, in <see cref="Unit"/>, where the law gives a range and leaves the choice to an authority; null where it gives one value.</summary>
    public double? UpTo { get; init; }

    /// <summary>What the percentage is worked out from.</summary>
    public PercentFrom PercentFrom { get; init; }

    /// <summary>The key of the rounding bands of its percentage.</summary>
    public required string PercentRounding { get; init; }

    /// <summary>When the percentage is printed.</summary>
    public required PercentShown Shown { get; init; }

    /// <summary>The group of contents that it belongs to, where rules hold for a group: <c>vitamins and minerals</c>; may be empty.</summary>
    public string Group { get; init; } = "";

    /// <summary>Where the value came from.</summary>
    public required RuleOrigin Origin { get; init; }

    /// <summary>When the row is in force.</summary>
    public InForce InForce { get; init; } = InForce.Always;
}

/// <summary>The reference amount of a kind of food, from which a serving is worked out.</summary>
/// <param name="Category">The kind of food.</param>
/// <param name="Quantity">The amount as the law has it (<c>80</c>, <c>2/3</c>); empty where it gives none.</param>
/// <param name="Unit">The unit of the amount.</param>
/// <param name="Household">The household measure to name.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record ServingSize(string Category, string Quantity, string Unit, string Household, RuleOrigin Origin);
