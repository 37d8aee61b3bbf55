namespace Tamis.Desserts;

/// <summary>A figure of a panel as data.</summary>
public sealed record ExportedFigure
{
    /// <summary>The product.</summary>
    public required string Product { get; init; }

    /// <summary>The trial.</summary>
    public required string Trial { get; init; }

    /// <summary>The rule set.</summary>
    public required string Rules { get; init; }

    /// <summary>The day that the rules are of; null for the rules that have no end.</summary>
    public required DateOnly? RulesDay { get; init; }

    /// <summary>How much the figure speaks of.</summary>
    public required string Basis { get; init; }

    /// <summary>The figure, by its key.</summary>
    public required string Figure { get; init; }

    /// <summary>The words of the law.</summary>
    public required string Term { get; init; }

    /// <summary>The unit of the amounts.</summary>
    public required string Unit { get; init; }

    /// <summary>The amount before rounding; a lower bound where it is not known for all of the mass.</summary>
    public required double Amount { get; init; }

    /// <summary>For how much of the mass it is known.</summary>
    public required double KnownPercent { get; init; }

    /// <summary>The lower end of its range; null where the data give none.</summary>
    public required double? Low { get; init; }

    /// <summary>The upper end.</summary>
    public required double? High { get; init; }

    /// <summary>What is printed.</summary>
    public required string Declared { get; init; }

    /// <summary>The printed number; null where words are printed.</summary>
    public required decimal? Rounded { get; init; }

    /// <summary>Other texts that are as lawful.</summary>
    public required IReadOnlyList<string> AlsoLawful { get; init; }

    /// <summary>The reference value; null where there is none.</summary>
    public required double? ReferenceValue { get; init; }

    /// <summary>The share of it before rounding.</summary>
    public required double? ReferencePercent { get; init; }

    /// <summary>The percentage as printed; empty where there is none.</summary>
    public required string Percent { get; init; }

    /// <summary>The article of the reference value.</summary>
    public required string ReferenceSource { get; init; }

    /// <summary>The rounding rule in words.</summary>
    public required string Rounding { get; init; }

    /// <summary>The article of the rule.</summary>
    public required string Source { get; init; }

    /// <summary>What stands behind it: law, guidance, convention.</summary>
    public required string Strength { get; init; }

    /// <summary>The lowest amount that the authority accepts; null where it sets no limit below.</summary>
    public required double? AcceptedLow { get; init; }

    /// <summary>The highest amount that the authority accepts.</summary>
    public required double? AcceptedHigh { get; init; }

    /// <summary>The chance that the analysis of one pack falls outside; null where no tolerance is listed, or the spread of too much of the amount is not known.</summary>
    public required double? OutsidePercent { get; init; }

    /// <summary>The same for the sample that the authority takes, where it takes several packs.</summary>
    public required double? SampleOutsidePercent { get; init; }

    /// <summary>Where the tolerance stands.</summary>
    public required string ToleranceSource { get; init; }

    /// <summary>What has most of the variance; empty where no spread is known.</summary>
    public required string AnalyseFirst { get; init; }

    /// <summary>Whether the short panel, or one of few figures, leaves it off, where <c>panel_form</c> asks for that: it is computed and not printed.</summary>
    public required bool IsLeftOff { get; init; }

    /// <summary>What is printed in place of all that is left off, in every language that the rules have words in; empty where the figure is printed, or nothing need stand there.</summary>
    public required string InItsPlace { get; init; }

    /// <summary>The article that lets it be left off; empty where the figure is printed.</summary>
    public required string LeftOffSource { get; init; }

    /// <summary>Whether the panel may not yet go on a pack.</summary>
    public required bool IsDraft { get; init; }

    /// <summary>What the panel says of the serving and of how many the package holds, in its lines; empty where the law has none, or no serving is known.</summary>
    public required IReadOnlyList<string> Serving { get; init; }
}

/// <summary>What one content of one line gives to a figure, as data.</summary>
/// <param name="Product">The product.</param>
/// <param name="Trial">The trial.</param>
/// <param name="Rules">The rule set.</param>
/// <param name="RulesDay">The day that the rules are of; null for the rules that have no end.</param>
/// <param name="Figure">The figure, by its key.</param>
/// <param name="Unit">The unit of the figure.</param>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="Cell">The cell in which the line stands.</param>
/// <param name="MassG">Its mass, in grams.</param>
/// <param name="Content">The content.</param>
/// <param name="Per100G">How much of it 100 g hold; null where nobody states it.</param>
/// <param name="ContentUnit">Its unit.</param>
/// <param name="ContentSource">Where it came from.</param>
/// <param name="Factor">What a unit of it counts in the figure.</param>
/// <param name="FactorSource">The rule of the factor.</param>
/// <param name="Gives">What the line gives to the figure in the whole mixture; null where it is not known.</param>
/// <param name="FinishedG">The finished mass of the whole mixture, in grams.</param>
/// <param name="BasisG">The mass that the panel speaks of, in grams.</param>
public sealed record ExportedWorking(string Product, string Trial, string Rules, DateOnly? RulesDay, string Figure, string Unit, string Ingredient, string Cell, double MassG, string Content, double? Per100G, string ContentUnit, string ContentSource,
    double Factor, string FactorSource, double? Gives, double FinishedG, double BasisG);
