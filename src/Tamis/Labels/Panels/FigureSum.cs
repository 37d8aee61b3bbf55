using Tamis.Composition;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>Sums a declared figure over the parts of a mixture.</summary>
internal static class FigureSum
{
    /// <summary>The figure of the whole mixture, in the figure's unit, with its coverage.</summary>
    /// <remarks>A part is covered when every summand is known of its ingredient; what is known of the summands of another part counts in the lower bound.</remarks>
    public static Amount Of(Mixture mixture, DeclaredFigure figure, double? proteinFactor)
    {
        double known = 0, covered = 0, total = 0;
        foreach (var part in mixture.Parts)
        {
            total += part.MassGrams;
            var (per100Grams, isKnown) = Per100Grams(figure, part.Ingredient.Profile, proteinFactor);
            if (isKnown) covered += part.MassGrams;
            known += part.MassGrams * per100Grams / 100;
        }
        return new(known, covered, total);
    }

    /// <summary>What is known of the figure in 100 g of an ingredient, and whether that is all of it.</summary>
    public static (double Per100Grams, bool IsKnown) Per100Grams(DeclaredFigure figure, NutrientProfile? profile, double? proteinFactor)
    {
        if (profile is null) return (0, false);
        var sum = 0.0;
        var isKnown = figure.Summands.Count > 0;
        foreach (var summand in figure.Summands)
        {
            if (summand.WayFor(profile) is { } way) sum += summand.Factor * Of(way, profile, proteinFactor);
            else isKnown = false;
        }
        return (sum, isKnown);
    }

    /// <summary>What one way of a formula gives in 100 g; contents that count as none where unknown add nothing.</summary>
    /// <remarks>A rest is never below nothing: where the parts that are taken away are estimated or rounded to more than the whole, it is held at 0.</remarks>
    public static double Of(IReadOnlyList<FormulaTerm> way, NutrientProfile profile, double? proteinFactor) => IsHeld(way, profile, proteinFactor, out var sum) ? 0 : sum;

    /// <summary>Whether more would be taken away than there is, so that the rest is held at 0.</summary>
    /// <param name="way">The terms.</param>
    /// <param name="profile">The contents.</param>
    /// <param name="proteinFactor">The law's nitrogen factor; null where it has none.</param>
    /// <param name="sum">What would be left by the figures as they are.</param>
    public static bool IsHeld(IReadOnlyList<FormulaTerm> way, NutrientProfile profile, double? proteinFactor, out double sum)
    {
        sum = 0;
        var isRest = false;
        foreach (var term in way)
        {
            isRest |= term.Coefficient < 0;
            if (profile[term.Tag] is { IsKnown: true } content) sum += term.Coefficient * ProteinConversion(term, profile, proteinFactor) * content.Per100Grams;
        }
        return isRest && sum < 0;
    }

    /// <summary>The terms of a summand whose contents move it: none where it is not known or is held at 0.</summary>
    public static IReadOnlyList<FormulaTerm> Moving(Summand summand, NutrientProfile profile, double? proteinFactor) =>
        summand.WayFor(profile) is { } way && !IsHeld(way, profile, proteinFactor, out _) ? way : [];

    /// <summary>From protein as a table publishes it to protein by the law's own nitrogen factor; 1 for other contents, and where the table does not say its factor.</summary>
    public static double ProteinConversion(FormulaTerm term, NutrientProfile profile, double? proteinFactor) =>
        term.Tag == "PROCNT" && proteinFactor is { } asked && profile.NitrogenFactor is { } used and > 0 ? asked / used : 1;
}
