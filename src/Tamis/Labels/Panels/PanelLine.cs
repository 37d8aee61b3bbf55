namespace Tamis.Labels;

/// <summary>One line of a nutrition panel.</summary>
public sealed class PanelLine
{
    internal PanelLine(NutritionPanel panel, DeclaredFigure figure) => (Panel, Figure) = (panel, figure);

    internal NutritionPanel Panel { get; }

    internal DeclaredFigure Figure { get; }

    /// <summary>The name of the figure in the rule set: <c>saturates</c>.</summary>
    public string Key => Figure.Key;

    /// <summary>The words that the law prescribes, with the amount in them where the law puts it there.</summary>
    public string Term => IsAmountInTerm ? Figure.Term.Replace(IsKnownWell ? "#" : "# ", IsKnownWell ? Declared : "") : Figure.Term;

    /// <summary>Whether the amount is printed within <see cref="Term"/> and not beside it.</summary>
    public bool IsAmountInTerm => Figure.Term.Contains('#');

    /// <summary>The words of the law where the amount of each of several columns stands beside them and none within.</summary>
    public string TermWithoutAmount => Figure.Term.Replace("# ", "", StringComparison.Ordinal);

    /// <summary>How far the line is set in: 0, 1 or 2.</summary>
    public int Indent => Figure.Indent;

    /// <summary>The unit of the amount.</summary>
    public string Unit => Figure.Unit;

    /// <summary>The content that it is about, in the word of the composition table: <c>sodium</c>, also where a law speaks of salt.</summary>
    public string Content => Figure.Summands is [var first, ..] && first.Formula.Ways[0] is [var term, ..]
        ? Panel.Mixture.Parts.Select(part => part.Ingredient.Profile?.Nutrients).FirstOrDefault(nutrients => nutrients is not null) is { } known && known.IndexOf(term.Tag) is var column and >= 0 ? known.All[column].Word : Key
        : Key;

    /// <summary>Whether it is a line of the energy.</summary>
    public bool IsEnergy => Figure.IsEnergy;

    /// <summary>Whether the law asks for the line.</summary>
    public bool IsMandatory => Figure.IsMandatory;

    /// <summary>The amount in what the panel speaks of, in <see cref="Unit"/>, not rounded: a lower bound while parts are unknown, never to be shown bare then.</summary>
    public required Amount Amount { get; init; }

    /// <summary>The amount if it is known well enough to be declared, otherwise null.</summary>
    public double? Value => IsKnownWell ? Amount.Known : null;

    /// <summary>Whether the amount is known for as much of the mass as the rule set asks.</summary>
    public required bool IsKnownWell { get; init; }

    /// <summary>The range of the amount, in <see cref="Unit"/>; null where the data give none, or give the spread of less of the amount than the rule set asks for.</summary>
    public Interval? Range => Spread is { } spread && spread.KnownSpreadShare * 100 >= Panel.Rules.KnownSpreadPercent ? spread.Range : null;

    /// <summary>The range of the amount with what it rests on, however little that is; null where no content and no mass has a range.</summary>
    public FigureSpread? Spread => field ??= IsKnownWell ? FigureRange.Of(Panel.Mixture, Figure, Panel.Rules.ProteinFactor, Amount.Known / Panel.BasisGrams * Panel.Mixture.FinishedGrams, Panel.Basis.MassGrams) : null;

    /// <summary>The text for the pack; where the amount is not known well enough, words that say so.</summary>
    public required string Declared { get; init; }

    /// <summary>What was added of it, as the law wants it behind the amount: <c>(70 mcg folic acid)</c>; empty where there is none.</summary>
    public string InBrackets { get; init; } = "";

    /// <summary>The text as its column prints it: the amount, and behind it what was added; empty where the law has only energy and percentages there.</summary>
    public string Printed => Panel.Basis.IsPercentOnly && !IsEnergy ? "" : InBrackets.Length == 0 ? Declared : $"{Declared} {InBrackets}";

    /// <summary>Other texts that are as lawful.</summary>
    public IReadOnlyList<string> Alternatives => Rounded?.Alternatives ?? [];

    /// <summary>How the amount was rounded; null where it is not known well enough.</summary>
    public required RoundedAmount? Rounded { get; init; }

    /// <summary>The reference value of the figure; null where the rule set has none.</summary>
    public required ReferenceValue? Reference { get; init; }

    /// <summary>The percentage of the reference value for the pack; null where there is none to print or the amount is not known well enough.</summary>
    public required RoundedAmount? Percent { get; init; }

    /// <summary>The share of the mass for which the amount is known, in words: <c>known for 83.1 % of the mass</c>.</summary>
    public string CoverageInWords => PanelWords.Coverage(Amount);

    /// <summary>How the figure was worked out: parts, foods, factors, water lost, rounding rule with its article.</summary>
    public Working Explain() => PanelWorking.Of(this);

    /// <summary>The line as text: <c>fat 14 g</c>.</summary>
    public override string ToString() => IsAmountInTerm && IsKnownWell ? Term : $"{Term} {Printed}";
}

/// <summary>A line that the law does not ask for and that is not known well enough.</summary>
/// <param name="Key">The figure.</param>
/// <param name="Term">Its words.</param>
/// <param name="Amount">What is known of it.</param>
/// <param name="Ingredients">What it is not known of.</param>
public sealed record LeftOffLine(string Key, string Term, Amount Amount, IReadOnlyList<UnknownShare> Ingredients)
{
    /// <summary>The sentence that says so.</summary>
    public override string ToString() => $"{Key}: left off, {PanelWords.Coverage(Amount)}; {PanelWords.NotKnownOf(Ingredients)}.";
}

/// <summary>A mandatory figure that is not known well enough.</summary>
/// <param name="Line">The line.</param>
/// <param name="Ingredients">What it is not known of, the largest share first.</param>
public sealed record MissingFigure(PanelLine Line, IReadOnlyList<UnknownShare> Ingredients)
{
    /// <summary>The sentence that says so.</summary>
    public override string ToString() => $"{Line.Key}: {PanelWords.Coverage(Line.Amount)}; {PanelWords.NotKnownOf(Ingredients)}.";
}

/// <summary>An ingredient of which a figure is not known.</summary>
/// <param name="Ingredient">Its name.</param>
/// <param name="SharePercent">Its share of the mass as weighed in, in per cent.</param>
public sealed record UnknownShare(string Ingredient, double SharePercent);
