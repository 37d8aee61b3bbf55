using Tamis.Composition;

namespace Tamis.Labels;

/// <summary>What the ingredients of which a figure is not known could make of it.</summary>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="SharePercent">Its share of the mass as weighed in, in per cent.</param>
/// <param name="HighestPer100Grams">The most that 100 g of it can hold, in the unit of the figure; null where nothing bounds it.</param>
/// <param name="Highest">What the panel would print if it held the most and the other unknown ones nothing; null where nothing bounds it.</param>
public sealed record UnknownReach(string Ingredient, double SharePercent, double? HighestPer100Grams, string? Highest)
{
    private static readonly string[] Proximates = ["WATER", "PROCNT", "FAT", "CHOCDF", "ASH", "ALC"];

    /// <summary>The reach of every ingredient that a figure is not known of, the largest share first.</summary>
    /// <remarks>A content can be no more than the whole that it is a part of, where that is known (saturates in fat), nor more than the other constituents leave of 100 g. Milligrams are bounded by nothing of the kind.</remarks>
    /// <param name="panel">The panel.</param>
    /// <param name="figure">The figure, by its key.</param>
    /// <exception cref="KeyNotFoundException">The rule set has no such figure.</exception>
    public static IReadOnlyList<UnknownReach> Of(NutritionPanel panel, string figure)
    {
        var declared = panel.Rules.Figure(figure);
        var scale = panel.BasisGrams / panel.Mixture.FinishedGrams;
        var known = (FigureSum.Of(panel.Mixture, declared, panel.Rules.ProteinFactor) * scale).Known;
        return [.. from parts in panel.Mixture.Parts.Where(part => !FigureSum.Per100Grams(declared, part.Ingredient.Profile, panel.Rules.ProteinFactor).IsKnown).GroupBy(part => part.Ingredient.Name, Names.Comparer)
                   let grams = parts.Sum(part => part.MassGrams)
                   let most = MostOf(declared, parts.First().Ingredient.Profile)
                   orderby grams descending
                   select new UnknownReach(parts.Key, grams / panel.Mixture.WeighedInGrams * 100, most,
                       most is { } bound ? Printed(panel.Rules, declared, Math.Max(0, known + grams * bound / 100 * scale)) : null)];
    }

    /// <summary>The reach in a sentence.</summary>
    public override string ToString() => Highest is { } highest ? $"{Ingredient} could carry it to {highest}" : $"what {Ingredient} could add has no bound";

    // Of some figures a law prints the percentage alone.
    private static string Printed(RuleSet rules, DeclaredFigure figure, double amount) => figure.IsPercentOnly && rules.Reference(figure.Key, figure.Unit) is { } reference
        ? rules.Percent(reference, amount).Text : rules.Rounding.Round(figure.Key, figure.Unit, RoundingTable.ToDecimal(amount)).Text;

    private static double? MostOf(DeclaredFigure figure, NutrientProfile? profile)
    {
        if (figure.Unit != "g" || figure.Summands is not [{ Factor: 1 } only]) return null;
        if (profile is null) return 100;
        if (only.PartOf is { } whole && profile[whole] is { IsKnown: true } content) return content.Per100Grams;
        string[] own = [.. only.Formula.Ways.SelectMany(way => way).Select(term => term.Tag), .. only.PartOf is null ? Array.Empty<string>() : [only.PartOf]];
        return Math.Max(0, 100 - Proximates.Except(own).Where(tag => profile[tag].IsKnown).Sum(tag => profile[tag].Per100Grams));
    }
}
