namespace Tamis.Tasting;

/// <summary>One session in which assessors tasted trials under codes.</summary>
/// <param name="Name">The tasting as the sheets name it.</param>
public sealed record TastingSession(string Name)
{
    /// <summary>The day, null where the sheets do not say.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>What kind of tasting it was: <c>scores</c>, <c>bench</c> or another word of the kitchen's.</summary>
    public string Kind { get; init; } = "scores";

    /// <summary>The trial that links this tasting to others that served it too, null where there is none.</summary>
    public string? Control { get; init; }

    /// <summary>The trials that are to be served, in the order of the sheet; none where the sheet does not say.</summary>
    public IReadOnlyList<string> Trials { get; init; } = [];

    /// <summary>The ids of those who are to taste; none where the sheet does not say.</summary>
    public IReadOnlyList<string> Assessors { get; init; } = [];

    /// <summary>Whether the assessors are trained; null where the sheet does not say.</summary>
    public bool? AreTrained { get; init; }

    /// <summary>How many servings each assessor gets, 1 or more; null where the sheet does not say.</summary>
    public int? ServingsEach { get; init; }

    /// <summary>What is on a plate, in grams, more than 0; null where the sheet does not say.</summary>
    public double? PortionGrams { get; init; }

    /// <summary>The temperature at which it is served, in degrees Celsius; null where the sheet does not say.</summary>
    public double? ServedCelsius { get; init; }

    /// <summary>How long it stands out of the cold before it is served, in minutes; null where the sheet does not say.</summary>
    public double? OutOfColdMinutes { get; init; }

    /// <summary>How servings are put in order, in the kitchen's words; may be empty.</summary>
    public string Design { get; init; } = "";

    /// <summary>The seed of all that is left to chance, so that the plan can be made again; null where the sheet does not say.</summary>
    public int? Seed { get; init; }

    /// <summary>In which order the kitchen expected the trials, question by question; none where the sheet states no expectation.</summary>
    public IReadOnlyList<ExpectedOrder> ExpectedOrders { get; init; } = [];

    /// <summary>What was noted about it.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Its row of <c>tastings.csv</c>, as the spreadsheet counts; 0 where no sheet lists it.</summary>
    public int Row { get; init; }

    /// <summary>Whether a few people tasted at the bench, for words: notes, not evidence.</summary>
    public bool IsBench => Names.Same(Kind, "bench");

    /// <summary>The test of same or different that it is; null for a tasting with scores or words.</summary>
    public DifferenceTest? Test => DifferenceTest.Of(Kind);
}

/// <summary>One plate set before one assessor.</summary>
/// <param name="Tasting">The tasting.</param>
/// <param name="Assessor">The assessor's id; never a name, and never for a page.</param>
/// <param name="Code">The three digits that hid the trial.</param>
/// <param name="Trial">The trial that was on it.</param>
/// <param name="Origin">The row of the plan.</param>
public sealed record Serving(string Tasting, string Assessor, string Code, string Trial, Source Origin)
{
    /// <summary>The place in the assessor's order, from 1; null where the plan does not say.</summary>
    public int? Position { get; init; }

    /// <summary>Which make of the trial it was cut from, from 1; null where the plan does not say.</summary>
    public int? Make { get; init; }
}

/// <summary>One assessor's mark on one scale for one serving.</summary>
/// <param name="Serving">What was tasted.</param>
/// <param name="Attribute">What was asked.</param>
/// <param name="Points">The mark, within the attribute's scale.</param>
/// <param name="Origin">The cell that it was read from.</param>
public sealed record Score(Serving Serving, SensoryAttribute Attribute, double Points, Source Origin);

/// <summary>The words that an assessor ticked for one serving; none where nothing fitted.</summary>
/// <param name="Serving">What was tasted.</param>
/// <param name="Attribute">The list that was asked.</param>
/// <param name="Words">The words as the attribute spells them.</param>
/// <param name="Origin">The cell that they were read from.</param>
public sealed record Ticks(Serving Serving, SensoryAttribute Attribute, IReadOnlyList<string> Words, Source Origin);

/// <summary>What an assessor wrote about one serving in free words.</summary>
/// <param name="Serving">What was tasted.</param>
/// <param name="Text">The words. They may identify a person: count or code them, do not print them beside an id.</param>
public sealed record Remark(Serving Serving, string Text);
