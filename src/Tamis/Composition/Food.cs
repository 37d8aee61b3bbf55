namespace Tamis.Composition;

/// <summary>Kilocalories to a gram of protein, fat and carbohydrate, as a record's own energy was worked out.</summary>
/// <param name="ProteinKilocaloriesPerGram">Of protein.</param>
/// <param name="FatKilocaloriesPerGram">Of fat.</param>
/// <param name="CarbohydrateKilocaloriesPerGram">Of carbohydrate by difference.</param>
public sealed record EnergyFactors(double ProteinKilocaloriesPerGram, double FatKilocaloriesPerGram, double CarbohydrateKilocaloriesPerGram);

/// <summary>A row of a composition table.</summary>
/// <param name="Id">Dataset and number, <c>SR28 01145</c>: what a sheet points to.</param>
/// <param name="Name">The name that this table calls it by.</param>
/// <param name="Group">The group of foods that it belongs to.</param>
/// <param name="Source">The publication that the record stands in.</param>
public sealed record Food(string Id, string Name, string Group, Source Source)
{
    /// <summary>The name that the publisher gave it; empty where it is the same.</summary>
    public string PublishedName { get; init; } = "";

    /// <summary>Grams of protein to a gram of nitrogen behind its protein figure; null where the record does not say.</summary>
    public double? NitrogenFactor { get; init; }

    /// <summary>The factors behind its energy figure; null where the record does not say.</summary>
    public EnergyFactors? EnergyFactors { get; init; }

    /// <summary>The edible share of the food as bought, in per cent; null where the record does not say.</summary>
    public double? EdiblePercent { get; init; }

    /// <summary>Whether it is a single food or a compound; null where the table does not say, as imported ones do not.</summary>
    public CompoundStatement? Compound { get; init; }

    /// <summary>What a user of the record must know.</summary>
    public string Notes { get; init; } = "";
}

/// <summary>A measure of a food that a household or a shop knows: a piece, a spoon, a cup.</summary>
/// <param name="Food">The food's id.</param>
/// <param name="Measure">The measure in words, <c>tbsp</c> or <c>egg in its shell, size M at 58 g</c>.</param>
/// <param name="Count">How many of the measure the mass is for.</param>
/// <param name="MassGrams">The mass of that many, in grams.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record FoodMeasure(string Food, string Measure, double Count, double MassGrams, Source Source)
{
    /// <summary>The volume of that many in millilitres; null for a piece.</summary>
    public double? VolumeMillilitres { get; init; }

    /// <summary>How many were weighed; null where the data do not say.</summary>
    public int? Samples { get; init; }

    /// <summary>Standard deviation of the weighed masses, in grams; null where the data do not say.</summary>
    public double? StandardDeviationGrams { get; init; }

    /// <summary>The mass of one of it, in grams.</summary>
    public double EachGrams => MassGrams / Count;

    /// <summary>Grams a millilitre, packed as the measure packs it; null for a piece.</summary>
    public double? DensityGramsPerMillilitre => MassGrams / VolumeMillilitres;
}

/// <summary>How heavy a volume of a food is, packed as its measure packs it.</summary>
/// <param name="GramsPerMillilitre">Grams a millilitre.</param>
/// <param name="Range">What the rounding of the grams leaves open.</param>
/// <param name="Measure">The measure that it comes from.</param>
public sealed record FoodDensity(double GramsPerMillilitre, Interval Range, FoodMeasure Measure)
{
    internal static FoodDensity Of(FoodMeasure measure)
    {
        var millilitres = measure.VolumeMillilitres!.Value;
        // Grams are written in whole numbers or tenths: half of the last digit either way.
        var half = measure.MassGrams == Math.Round(measure.MassGrams) ? 0.5 : 0.05;
        return new(measure.MassGrams / millilitres, Interval.Between((measure.MassGrams - half) / millilitres, (measure.MassGrams + half) / millilitres), measure);
    }
}

/// <summary>A composition table was asked for a food that it does not have.</summary>
public sealed class FoodNotFoundException : KeyNotFoundException
{
    /// <summary>Says what was asked for and what is near it.</summary>
    public FoodNotFoundException(string asked, IReadOnlyList<string> nearest)
        : base(nearest.Count == 0
            ? $"No food is called '{asked}', and none is near it; write its dataset and number, such as SR28 01145."
            : $"No food is called '{asked}'; near ones: {string.Join(", ", nearest.Select(name => $"'{name}'"))}.")
        => (Asked, Nearest) = (asked, nearest);

    /// <summary>The text that was asked for.</summary>
    public string Asked { get; }

    /// <summary>Names of foods near it, nearest first.</summary>
    public IReadOnlyList<string> Nearest { get; }
}
