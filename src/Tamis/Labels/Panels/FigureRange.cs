using Tamis.Composition;
using Tamis.Losses;

namespace Tamis.Labels;

/// <summary>How far a figure may lie from its value.</summary>
/// <param name="Range">From the lower to the upper end, in the unit of the figure.</param>
/// <param name="KnownSpreadShare">The part of the amount, 0 to 1, that comes from contents whose spread is known; the rest is taken as certain.</param>
public sealed record FigureSpread(Interval Range, double KnownSpreadShare)
{
    /// <summary>What the range rests on, in words.</summary>
    public string InWords => KnownSpreadShare switch
    {
        0 => "from the masses; no spread of a content is known",
        >= 0.9995 => "the spread of all contents is known",
        _ => $"the spread of contents is known for {PanelWords.Share(Math.Floor(KnownSpreadShare * 1000) / 10)} of the amount",
    };
}

/// <summary>How far a figure may lie from its value, from the ranges of contents and of masses.</summary>
/// <remarks>First-order propagation (JCGM 100:2008, 5.1.2): each range is carried by its sensitivity, and independent ranges are added in quadrature,
/// the lower sides apart from the upper ones. Lines of one ingredient move together, so that writing a line as two changes nothing;
/// different ingredients, and different contents of one food, are taken as independent. What has no range is taken as certain.</remarks>
internal static class FigureRange
{
    /// <summary>The range of a figure in so much of the mixture; null where no content and no mass has a range.</summary>
    /// <param name="mixture">The mixture.</param>
    /// <param name="figure">The figure.</param>
    /// <param name="proteinFactor">The law's nitrogen factor, or null.</param>
    /// <param name="known">The figure in the whole mixture.</param>
    /// <param name="basisGrams">The mass that the panel speaks of; null for the whole, whose mass moves with its parts.</param>
    public static FigureSpread? Of(Mixture mixture, DeclaredFigure figure, double? proteinFactor, double known, double? basisGrams)
    {
        var scale = basisGrams is { } grams ? grams / mixture.FinishedGrams : 1;
        // A part that is heavier brings its content and dilutes all others.
        var dilutionPerGram = basisGrams is null ? 0 : known / mixture.FinishedGrams;
        double below = 0, above = 0, spread = 0, all = 0;
        foreach (var lines in mixture.Parts.GroupBy(part => part.Ingredient.Name, Names.Comparer))
        {
            var massGrams = lines.Sum(part => part.MassGrams);
            foreach (var (sensitivity, content) in lines.First().Ingredient.Profile is { } profile ? Sensitivities(figure, profile, proteinFactor) : [])
            {
                all += Math.Abs(sensitivity * massGrams * content.Per100Grams);
                if (content.Range is not { } range) continue;
                spread += Math.Abs(sensitivity * massGrams * content.Per100Grams);
                Add(sensitivity * massGrams / 100 * scale, content.Per100Grams - range.Low, range.High - content.Per100Grams);
            }
            double down = 0, up = 0;
            foreach (var part in lines)
            {
                if (part.MassRangeGrams is not { } range) continue;
                var perGram = (FigureSum.Per100Grams(figure, part.Ingredient.Profile, proteinFactor).Per100Grams / 100 - dilutionPerGram) * scale;
                down += perGram >= 0 ? perGram * (part.MassGrams - range.Low) : -perGram * (range.High - part.MassGrams);
                up += perGram >= 0 ? perGram * (range.High - part.MassGrams) : -perGram * (part.MassGrams - range.Low);
            }
            (below, above) = (below + down * down, above + up * up);
        }
        var value = known * scale;
        var (lower, upper) = (Math.Sqrt(below), Math.Sqrt(above));
        // Where a mixture is all of one thing its mass moves no content; what is left of that in the last digits is no range.
        if (lower + upper <= 1e-9 * Math.Abs(value)) return null;
        return new(Interval.Between(Math.Max(Math.Min(0, value), value - lower), value + upper), all > 0 ? spread / all : 0);

        void Add(double sensitivity, double down, double up)
        {
            if (sensitivity < 0) (sensitivity, down, up) = (-sensitivity, up, down);
            (below, above) = (below + Square(sensitivity * down), above + Square(sensitivity * up));
        }
    }

    private static double Square(double number) => number * number;

    // A rest that is held at 0 is moved by none of its contents; a content may stand in several summands (polyols leave the carbohydrate and count by themselves): what it moves is the sum.
    private static IEnumerable<(double PerUnit, Content Content)> Sensitivities(DeclaredFigure figure, NutrientProfile profile, double? proteinFactor) =>
        figure.Summands
            .SelectMany(summand => FigureSum.Moving(summand, profile, proteinFactor).Select(term => (term.Tag, PerUnit: summand.Factor * term.Coefficient * FigureSum.ProteinConversion(term, profile, proteinFactor))))
            .GroupBy(term => term.Tag)
            .Select(terms => (terms.Sum(term => term.PerUnit), profile[terms.Key]))
            .Where(term => term.Item2.IsKnown);
}
