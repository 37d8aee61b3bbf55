using Tamis.Composition;

namespace Tamis.Labels;

/// <summary>What one content of one line gives to a figure.</summary>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="Weighed">The cell in which the line stands.</param>
/// <param name="MassGrams">Its mass as weighed in, less what stayed behind.</param>
/// <param name="Content">The content, in words; with what is to be known of it where it is not measured.</param>
/// <param name="Per100Grams">How much of it 100 g of the ingredient hold; null where nobody states it.</param>
/// <param name="Unit">The unit of the content.</param>
/// <param name="Source">Where the content came from; null where nobody states it.</param>
/// <param name="Factor">What a unit of it counts in the figure: 1, an energy factor, salt from sodium, a law's nitrogen factor over the table's.</param>
/// <param name="FactorSource">The rule that the factor stands in.</param>
/// <param name="Gives">What the line gives to the figure, in the figure's unit, in the whole mixture; null where it is not known.</param>
public sealed record LedgerLine(string Ingredient, Source Weighed, double MassGrams, string Content, double? Per100Grams, string Unit, Source? Source, double Factor, RuleOrigin FactorSource, double? Gives);

/// <summary>The working of a figure as an auditor reads it: a line for each content of each ingredient, whose sum is the figure in the whole mixture.</summary>
/// <param name="Line">The figure.</param>
/// <param name="Lines">The lines, in the order of the formula.</param>
public sealed record FigureLedger(PanelLine Line, IReadOnlyList<LedgerLine> Lines)
{
    /// <summary>The sum of what the lines give: the figure in the whole mixture, in its unit; a lower bound where a line is not known.</summary>
    public double InWhole => Lines.Sum(line => line.Gives ?? 0);

    /// <summary>Draws up the ledger of a figure, through the same contents and factors as the panel.</summary>
    public static FigureLedger Of(PanelLine line)
    {
        var rules = line.Panel.Rules;
        return new(line, [.. line.Panel.Mixture.Parts.SelectMany(part => line.Figure.Summands.SelectMany(summand => LinesOf(part, summand)))]);

        IEnumerable<LedgerLine> LinesOf(Losses.MixturePart part, Summand summand)
        {
            if (part.Ingredient.Profile is not { } profile) return [new(part.Ingredient.Name, part.Origin, part.MassGrams, $"{summand.Word}: neither a food nor a document gives figures", null, "", null, summand.Factor, summand.Origin, null)];
            return summand.WayFor(profile) switch
            {
                null => summand.Formula.Ways[0].Where(term => !term.CountsAsNone && !profile[term.Tag].IsKnown).Select(term => new LedgerLine(part.Ingredient.Name, part.Origin, part.MassGrams, $"{Word(term.Tag)}: not stated", null, UnitOf(term.Tag), null, summand.Factor * term.Coefficient, summand.Origin, null)),
                { Count: 0 } => [new(part.Ingredient.Name, part.Origin, part.MassGrams, $"no {Word(summand.PartOf!)}, so none of this part of it", 0, UnitOf(summand.PartOf!), profile[summand.PartOf!].Source, summand.Factor, summand.Origin, 0)],
                var way => [.. way.Where(term => profile[term.Tag].IsKnown).Select(term =>
                {
                    var content = profile[term.Tag];
                    var factor = summand.Factor * term.Coefficient * FigureSum.ProteinConversion(term, profile, rules.ProteinFactor);
                    return new LedgerLine(part.Ingredient.Name, part.Origin, part.MassGrams, Word(term.Tag) + StateOf(content), content.Per100Grams, UnitOf(term.Tag), content.Source, factor, summand.Origin, part.MassGrams * content.Per100Grams / 100 * factor);
                }), .. Held(way)],
            };

            // What was taken away beyond what there is comes back, so that the lines add up to the figure.
            IEnumerable<LedgerLine> Held(IReadOnlyList<FormulaTerm> way) => FigureSum.IsHeld(way, profile, rules.ProteinFactor, out var sum)
                ? [new(part.Ingredient.Name, part.Origin, part.MassGrams, $"{summand.Word}: more is taken away than there is, held at 0", -sum, "g", null, summand.Factor, summand.Origin, part.MassGrams * -sum / 100 * summand.Factor)] : [];

            string Word(string tag) => PanelAssumptions.WordFor(tag, rules.Declaration.SelectMany(figure => figure.Summands), profile);
            string UnitOf(string tag) => profile.Nutrients.IndexOf(tag) is var column and >= 0 ? profile.Nutrients.All[column].Unit : "g";
        }
    }

    private static string StateOf(Content content) => content.State switch
    {
        ContentState.AssumedZero => ", taken as zero by the nature of the food",
        ContentState.Estimated => ", an estimate",
        ContentState.BelowLimit => ", below a limit, taken as half of it",
        ContentState.Trace => ", a trace",
        _ => "",
    };
}
