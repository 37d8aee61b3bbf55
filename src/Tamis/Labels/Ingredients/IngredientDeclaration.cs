namespace Tamis.Labels;

/// <summary>An ingredient as it goes on a list.</summary>
/// <param name="Ingredient">The ingredient.</param>
/// <param name="MassGrams">How much of it was used for what is in the finished food: as weighed in, less what stayed in the bowl, was trimmed and the like.</param>
/// <param name="Brackets">The words of the components that it stands in, outermost first; empty where it stands in the list itself.</param>
/// <param name="Origin">The cell.</param>
public sealed record ListedUse(Formulas.Ingredient Ingredient, double MassGrams, IReadOnlyList<string> Brackets, Source Origin);

/// <summary>What a maker wishes of a list.</summary>
public sealed record ListWishes
{
    /// <summary>Words of the name of the food, or that the pack dwells on: an ingredient whose name holds one has its quantity stated.</summary>
    public IReadOnlyList<string> Emphasised { get; init; } = [];

    /// <summary>What the maker says that the pack dwells on: a word that no ingredient of the list has is a problem, so that no quantity is left off unseen.</summary>
    public IReadOnlyList<string> Dwelt { get; init; } = [];

    /// <summary>Words of the name for which the maker says which ingredients they speak of: <c>citrus</c>.</summary>
    public IReadOnlyList<string> Explained { get; init; } = [];

    /// <summary>Whether compounds stand without their own list where the law lets them.</summary>
    public bool Summarises { get; init; }

    /// <summary>Whether additives are called by number where the law lets them.</summary>
    public bool Numbers { get; init; }

    /// <summary>What may have got in from the workshop, by the kitchen's own words.</summary>
    public IReadOnlyList<string> CrossContact { get; init; } = [];

    /// <summary>The kitchen's own words in other languages: a word and a language to a term, null where there is none.</summary>
    public Func<string, string, string?> Translate { get; init; } = (_, _) => null;
}

/// <summary>A stretch of a printed text.</summary>
/// <param name="Text">The words.</param>
/// <param name="IsEmphasised">Whether they stand out from the rest.</param>
public readonly record struct TextRun(string Text, bool IsEmphasised);

/// <summary>Why something is as it is in a list.</summary>
/// <param name="Words">The reason.</param>
/// <param name="Origin">The rule; null for what a sheet says.</param>
public sealed record ListReason(string Words, RuleOrigin? Origin)
{
    /// <summary>Whether it is for somebody to judge before the list is printed; the others say what was done.</summary>
    public bool IsOpen { get; init; }
}

/// <summary>What keeps a list from being printed.</summary>
/// <param name="What">What is wrong or unknown.</param>
/// <param name="Supply">What to supply.</param>
/// <param name="Origin">The cell or row; null where there is none.</param>
public sealed record ListProblem(string What, string Supply, Source? Origin)
{
    /// <summary>The ingredient whose own list, or whose additives, nobody has stated; null where something else is wrong.</summary>
    public string? ListOf { get; init; }

    /// <summary>What is wrong, what to supply, where.</summary>
    public override string ToString() => $"{What}: {Supply}{(Origin is null ? "" : $" ({Origin})")}.";
}

/// <summary>One item of a list of ingredients.</summary>
public sealed record ListedItem
{
    /// <summary>Its name in the kitchen's language.</summary>
    public required string Name { get; init; }

    /// <summary>Its name as printed, without what stands in brackets behind it.</summary>
    public required string Printed { get; init; }

    /// <summary>The mass by which it is placed, in grams of what was used for <see cref="IngredientDeclaration.FinishedGrams"/>; null within a supplier's list.</summary>
    public double? MassGrams { get; init; }

    /// <summary>The additive class before it, in English and in the singular; null where there is none.</summary>
    public string? Class { get; init; }

    /// <summary>How many additives its name holds; 1 for what is none.</summary>
    public int Count { get; init; } = 1;

    /// <summary>The stated quantity, as printed; null where none is stated.</summary>
    public string? Quantity { get; init; }

    /// <summary>What stands in brackets behind it.</summary>
    public IReadOnlyList<ListedItem> Parts { get; init; } = [];

    /// <summary>Allergens to name, by the words of <c>allergen-words.csv</c>.</summary>
    public IReadOnlyList<string> Substances { get; init; } = [];

    /// <summary>Allergens that the printed names do not show and that are named in brackets, as printed.</summary>
    public IReadOnlyList<string> NamedSources { get; init; } = [];

    /// <summary>Why it stands where and as it stands.</summary>
    public IReadOnlyList<ListReason> Reasons { get; init; } = [];

    /// <summary>The cells that it came from.</summary>
    public IReadOnlyList<Source> Origins { get; init; } = [];
}

/// <summary>The list of ingredients of a food by one rule set in one language.</summary>
public sealed record IngredientDeclaration
{
    /// <summary>The word that heads it, as printed.</summary>
    public required string Heading { get; init; }

    /// <summary>The language's code.</summary>
    public required string Language { get; init; }

    /// <summary>The finished mass that the masses of the items are for, in grams.</summary>
    public required double FinishedGrams { get; init; }

    /// <summary>The items in lawful order.</summary>
    public required IReadOnlyList<ListedItem> Items { get; init; }

    /// <summary>The list as it is printed.</summary>
    public required IReadOnlyList<TextRun> Runs { get; init; }

    /// <summary>The statement of what the food contains; empty where the law has none beside a list, or there is nothing to state.</summary>
    public required IReadOnlyList<TextRun> ContainsStatement { get; init; }

    /// <summary>The statement of what the food contains where a pack is so small that it bears no list: allergens are told all the same. Empty where <see cref="ContainsStatement"/> says it, or there is nothing to state.</summary>
    public required IReadOnlyList<TextRun> InPlaceOfList { get; init; }

    /// <summary>What keeps <see cref="InPlaceOfList"/> from being printed; none where it may be.</summary>
    public required IReadOnlyList<ListProblem> InPlaceOfListProblems { get; init; }

    /// <summary>The workshop's own words on what may have got in; empty where nothing may.</summary>
    public required IReadOnlyList<TextRun> MayContainStatement { get; init; }

    /// <summary>Allergens in it, in the order of the law.</summary>
    public required IReadOnlyList<AllergenRule> Contains { get; init; }

    /// <summary>Allergens that may have got in and are not in it.</summary>
    public required IReadOnlyList<AllergenRule> MayContain { get; init; }

    /// <summary>Words that the pack dwells on and that no ingredient of the list is called: their quantities would be left off.</summary>
    public required IReadOnlyList<string> Unmet { get; init; }

    /// <summary>What keeps it from being printed; none where it may be.</summary>
    public required IReadOnlyList<ListProblem> Problems { get; init; }

    /// <summary>What a reader should know beside it.</summary>
    public required IReadOnlyList<ListReason> Remarks { get; init; }

    /// <summary>Draws up a list of ingredients.</summary>
    /// <param name="uses">What went into the food.</param>
    /// <param name="finishedGrams">What it weighs in the end, in grams, above 0.</param>
    /// <param name="waterLostGrams">The water that left, in grams.</param>
    /// <param name="rules">The rule set.</param>
    /// <param name="language">The language's code: <c>fr</c>.</param>
    /// <param name="wishes">What the maker wishes.</param>
    /// <exception cref="ArgumentOutOfRangeException">The finished mass is not above 0 g.</exception>
    /// <exception cref="Tables.TableException">A rule file cannot be read.</exception>
    public static IngredientDeclaration Of(IReadOnlyList<ListedUse> uses, double finishedGrams, double waterLostGrams, RuleSet rules, string language, ListWishes? wishes = null) => finishedGrams > 0
        ? new ListBuilder(rules, language, wishes ?? new(), finishedGrams, waterLostGrams).Build(uses)
        : throw new ArgumentOutOfRangeException(nameof(finishedGrams), finishedGrams, "A list of ingredients needs a finished mass above 0 g.");

    /// <summary>Whether it may not yet be printed.</summary>
    public bool IsDraft => Problems.Count > 0;

    /// <summary>The list as plain text.</summary>
    public string Text => string.Concat(Runs.Select(run => run.Text));

    /// <summary>The list as plain text.</summary>
    public override string ToString() => Text;
}
