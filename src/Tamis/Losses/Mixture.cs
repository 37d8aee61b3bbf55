using Tamis.Composition;
using Tamis.Formulas;

namespace Tamis.Losses;

/// <summary>A share of an ingredient that is in a mixture.</summary>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="MassGrams">Its mass as weighed in (edible), less what left with bowl, trim and the like; its water still counted.</param>
/// <param name="WaterLostGrams">The water that left from this very part (toasting, boiling down), 0 to <paramref name="MassGrams"/>.</param>
/// <param name="Origin">The cell that it was written in, for the working.</param>
public sealed record MixturePart(Ingredient Ingredient, double MassGrams, double WaterLostGrams, Source Origin)
{
    /// <summary>The range of <see cref="MassGrams"/> where the quantity was written as a range or a count of pieces; null where it was weighed.</summary>
    public Interval? MassRangeGrams { get; init; }
}

/// <summary>What a finished mass is made of: parts as weighed in, less the water that left.</summary>
/// <remarks>The finished mass is the sum of the parts less all water lost; mass is conserved by construction.</remarks>
public sealed record Mixture
{
    /// <summary>The parts. The same ingredient may stand in several.</summary>
    public IReadOnlyList<MixturePart> Parts { get; init; } = [];

    /// <summary>Water that left from the whole, not from one part, in grams.</summary>
    public double EvaporatedGrams { get; init; }

    /// <summary>The parts as weighed in, together.</summary>
    public double WeighedInGrams => Parts.Sum(part => part.MassGrams);

    /// <summary>All water that left, in grams.</summary>
    public double WaterLostGrams => EvaporatedGrams + Parts.Sum(part => part.WaterLostGrams);

    /// <summary>What is on the bench in the end, in grams.</summary>
    public double FinishedGrams => WeighedInGrams - WaterLostGrams;

    /// <summary>More or less of the same.</summary>
    public Mixture Scaled(double factor) => new()
    {
        Parts = [.. Parts.Select(part => part with
        {
            MassGrams = part.MassGrams * factor,
            WaterLostGrams = part.WaterLostGrams * factor,
            MassRangeGrams = part.MassRangeGrams * factor,
        })],
        EvaporatedGrams = EvaporatedGrams * factor,
    };

    /// <summary>Several mixtures put together.</summary>
    public static Mixture Of(IEnumerable<Mixture> mixtures)
    {
        Mixture[] all = [.. mixtures];
        return new() { Parts = [.. all.SelectMany(mixture => mixture.Parts)], EvaporatedGrams = all.Sum(mixture => mixture.EvaporatedGrams) };
    }

    /// <summary>How much of a nutrient is in the whole finished mass, in the nutrient's unit, with its coverage.</summary>
    /// <remarks>Coverage is the mass of the parts with a known content over the mass of all parts, both as weighed in.
    /// What leaves as water takes nothing but water along: <c>WATER</c> falls by it, every other content stays.</remarks>
    public Amount Amount(string tag)
    {
        double known = 0, covered = 0, total = 0;
        foreach (var part in Parts)
        {
            total += part.MassGrams;
            if (part.Ingredient.Profile?[tag] is not { IsKnown: true } content) continue;
            covered += part.MassGrams;
            known += part.MassGrams * content.Per100Grams / 100;
        }
        return new(tag == "WATER" ? known - WaterLostGrams : known, covered, total);
    }

    /// <summary>The content in 100 g of finished mass if every part is known, else null.</summary>
    public double? Per100Grams(string tag) => FinishedGrams > 0 && Amount(tag).Whole is { } whole ? whole / FinishedGrams * 100 : null;
}
