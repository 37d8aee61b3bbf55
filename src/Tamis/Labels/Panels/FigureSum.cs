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
    public static double Of(IReadOnlyList<FormulaTerm> way, NutrientProfile profile, double? proteinFactor)
    {
        var sum = 0.0;
        foreach (var term in way)
        {
            if (profile[term.Tag] is { IsKnown: true } content) sum += term.Coefficient * ProteinConversion(term, profile, proteinFactor) * content.Per100Grams;
        }
        return sum;
    }

    /// <summary>From protein as a table publishes it to protein by the law's own nitrogen factor; 1 for other contents, and where the table does not say its factor.</summary>
    public static double ProteinConversion(FormulaTerm term, NutrientProfile profile, double? proteinFactor) =>
        term.Tag == "PROCNT" && proteinFactor is { } asked && profile.NitrogenFactor is { } used and > 0 ? asked / used : 1;
}
