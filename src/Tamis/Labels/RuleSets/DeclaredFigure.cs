using Tamis.Composition;
using Tamis.Formulas;

namespace Tamis.Labels;

/// <summary>When a line of a nutrition panel is shown.</summary>
public enum LineShown
{
    /// <summary>Always; what mandatory lines are.</summary>
    Always,
    /// <summary>Where it is known well enough.</summary>
    IfKnown,
    /// <summary>Where it is known well enough and not declared as zero, or where what it speaks of was added.</summary>
    IfPresent,
    /// <summary>Only where the panel is asked for it.</summary>
    IfAsked,
}

/// <summary>A line that a nutrition panel has or may have.</summary>
public sealed record DeclaredFigure
{
    /// <summary>The name by which the tables of the rule set call it: <c>saturates</c>.</summary>
    public required string Key { get; init; }

    /// <summary>The words that the law prescribes.</summary>
    public required string Term { get; init; }

    /// <summary>How far the line is set in: 0, 1 or 2.</summary>
    public required int Indent { get; init; }

    /// <summary>The unit of the amount.</summary>
    public required string Unit { get; init; }

    /// <summary>What the amount is summed from: one summand, or for energy one a factor.</summary>
    public required IReadOnlyList<Summand> Summands { get; init; }

    /// <summary>Whether it is the energy, summed by factors.</summary>
    public required bool IsEnergy { get; init; }

    /// <summary>Whether the law asks for the line.</summary>
    public required bool IsMandatory { get; init; }

    /// <summary>When the line is shown.</summary>
    public required LineShown Shown { get; init; }

    /// <summary>Whether only the percentage of its reference value is printed, and not the amount.</summary>
    public bool IsPercentOnly { get; init; }

    /// <summary>The lines that it is the sum of: where all of them are declared as zero, it is. None where it is a figure of its own.</summary>
    public IReadOnlyList<string> Parts { get; init; } = [];

    /// <summary>The lines that must stand where it does, by their keys; none where it stands alone.</summary>
    public IReadOnlyList<string> StandsWith { get; init; } = [];

    /// <summary>A content that stands in brackets behind the amount where some of it was added; null where the law has none.</summary>
    public AddedContent? Added { get; init; }

    /// <summary>Words by which the name or the list of an ingredient says that what the line speaks of was added, where the law then asks for the line; none where it does not.</summary>
    public IReadOnlyList<string> NamedWhereAdded { get; init; } = [];

    /// <summary>Whether an ingredient makes the law ask for the line.</summary>
    public bool IsAddedBy(Ingredient ingredient) => AddedContent.IsNamed(ingredient, NamedWhereAdded);

    /// <summary>Where the line came from.</summary>
    public required RuleOrigin Origin { get; init; }

    /// <summary>When the row is in force.</summary>
    public InForce InForce { get; init; } = InForce.Always;

    /// <summary>The name and the unit.</summary>
    public override string ToString() => $"{Key}, {Unit}";
}

/// <summary>What was added of a figure, in a form that the law names: folic acid beside all folate.</summary>
/// <param name="Words">The words in brackets, # for the number: <c>(# mcg folic acid)</c>.</param>
/// <param name="Formula">Its content in a food, in the unit of the words.</param>
/// <param name="NamedBy">Words by which the name or the list of an ingredient says that it was added.</param>
public sealed record AddedContent(string Words, ContentFormula Formula, IReadOnlyList<string> NamedBy)
{
    /// <summary>Whether an ingredient says that it was added to it.</summary>
    public bool IsNamedBy(Ingredient ingredient) => IsNamed(ingredient, NamedBy);

    internal static bool IsNamed(Ingredient ingredient, IReadOnlyList<string> words) => words.Any(word => new[] { ingredient.Name, ingredient.LabelName, ingredient.SupplierList }.Any(text => text is not null && Names.HoldsBeginning(text, word)));
}

/// <summary>A part of a declared figure: a content of the foods times a factor.</summary>
/// <param name="Word">What is summed: <c>fibre</c>.</param>
/// <param name="Formula">How it follows from the contents of a food.</param>
/// <param name="Factor">What it counts in the unit of the figure: 1, or the energy of a gram.</param>
/// <param name="Origin">Where the factor came from.</param>
public sealed record Summand(string Word, ContentFormula Formula, double Factor, RuleOrigin Origin)
{
    /// <summary>The tag of the content that it is a part of (saturates are a part of the fat): where there is none of the whole there is none of the part. Null where it is no such part.</summary>
    public string? PartOf { get; init; }

    /// <summary>When the factor is in force.</summary>
    public InForce InForce { get; init; } = InForce.Always;

    /// <summary>The terms by which it is worked out for a food; none of them where there is none of the whole that it is a part of; null where it is not known.</summary>
    public IReadOnlyList<FormulaTerm>? WayFor(NutrientProfile profile) => Formula.WayFor(profile) ?? (IsNoneOfTheWhole(profile) ? [] : null);

    private bool IsNoneOfTheWhole(NutrientProfile profile) =>
        PartOf is { } whole && profile[whole] is { IsKnown: true, Per100Grams: 0 } content && content.State != ContentState.Trace;
}
