namespace Tamis.Labels;

/// <summary>A food as it is packed, for the serving that a law makes of it.</summary>
public sealed record PackedFood
{
    /// <summary>The kind of food, a category of the law's reference amounts; null where nobody chose one.</summary>
    public string? Category { get; init; }

    /// <summary>What is in the package, in grams; null where nobody says.</summary>
    public double? NetGrams { get; init; }

    /// <summary>The mass of one unit (a slice, a cookie, a whole cake), in grams; null where it has none.</summary>
    public double? UnitGrams { get; init; }

    /// <summary>The word for a unit: <c>slice</c>; null where nobody says, and then a law that wants a household measure is given <c>piece</c>.</summary>
    public string? UnitWord { get; init; }

    /// <summary>The serving that the maker states, in grams; it counts where the law leaves the serving to the maker.</summary>
    public double? StatedGrams { get; init; }

    /// <summary>The household measure of <see cref="StatedGrams"/> as the maker states it: <c>1 slice</c>; null where it follows from the unit.</summary>
    public string? StatedHousehold { get; init; }

    /// <summary>How many servings the maker says are in the package; it counts where <see cref="NetGrams"/> is not known.</summary>
    public double? StatedCount { get; init; }

    /// <summary>The law's reference amount in grams, as the maker looked it up; it counts where the rule set has no table of them. Null where nobody says.</summary>
    public double? ReferenceGrams { get; init; }

    /// <summary>Whether it is sold by volume: its serving is then said in millilitres.</summary>
    public bool IsLiquid { get; init; }

    /// <summary>The density of the food as sold, in g/ml; null where nobody says.</summary>
    public double? DensityGramsPerMillilitre { get; init; }
}

/// <summary>The serving of a package, as the law makes it.</summary>
public sealed record Serving
{
    /// <summary>What the panel speaks of: its mass, and its household measure in words.</summary>
    public required PanelBasis Basis { get; init; }

    /// <summary>Its mass, in grams, before it is rounded for print.</summary>
    public required double Grams { get; init; }

    /// <summary>The household measure: <c>2 slices</c>; empty where there is none.</summary>
    public required string Household { get; init; }

    /// <summary>How many servings are in the package; null where neither the net content nor the count is known.</summary>
    public double? PerContainer { get; init; }

    /// <summary>What is in the package, in grams; null where nobody says.</summary>
    public double? ContainerGrams { get; init; }

    /// <summary>The lines that the panel prints about it, in the order of the law.</summary>
    public IReadOnlyList<string> Lines { get; init; } = [];

    /// <summary>Whether the law asks for, or lets a maker add, a second column for the whole package.</summary>
    public RuleOrigin? SecondColumn { get; init; }

    /// <summary>Whether the law asks for a second column for one unit of several in the package.</summary>
    public RuleOrigin? UnitColumn { get; init; }

    /// <summary>One unit of several, in grams; null where the package holds one, or nobody says.</summary>
    public double? UnitGrams { get; init; }

    /// <summary>What a reader should know of it: that the law would take it from the kind of food, which nobody chose. Empty where there is nothing to say.</summary>
    public string Remark { get; init; } = "";

    /// <summary>How it was worked out.</summary>
    public required Working Working { get; init; }
}
