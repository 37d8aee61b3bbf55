using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Everything that the tasting sheets of a dessert say.</summary>
/// <remarks>
/// A mark that is missing has no <see cref="Score"/>; it is never a zero. A tasting, an assessor, a trial and an attribute are spelt one way
/// throughout the log, whatever spellings the sheets mix; <see cref="TastingSheets"/> sees to that.
/// </remarks>
public sealed record TastingLog
{
    /// <summary>No tasting at all.</summary>
    public static TastingLog Empty { get; } = new();

    /// <summary>The questions, in the order of the sheet.</summary>
    public IReadOnlyList<SensoryAttribute> Attributes { get; init; } = [];

    /// <summary>The tastings, in the order of the sheet, or of the plan where there is no sheet of tastings.</summary>
    public IReadOnlyList<TastingSession> Sessions { get; init; } = [];

    /// <summary>The plan: every serving, tasted or not.</summary>
    public IReadOnlyList<Serving> Servings { get; init; } = [];

    /// <summary>The servings that were tasted: those with a row of scores, even an empty one, in a tasting that somebody has begun to answer.</summary>
    public IReadOnlyList<Serving> Tasted { get; init; } = [];

    /// <summary>The marks on scales.</summary>
    public IReadOnlyList<Score> Scores { get; init; } = [];

    /// <summary>The words ticked.</summary>
    public IReadOnlyList<Ticks> Ticks { get; init; } = [];

    /// <summary>The free words.</summary>
    public IReadOnlyList<Remark> Remarks { get; init; } = [];

    /// <summary>Columns of the scores that are no attribute, as the sheet spells them: kept, and named to the reader.</summary>
    public IReadOnlyList<string> UnknownColumns { get; init; } = [];

    /// <summary>What can be read and may still be wrong, such as two codes that were exchanged: for somebody to look at.</summary>
    public IReadOnlyList<CellProblem> Doubts { get; init; } = [];

    /// <summary>Servings of the plan that nobody tasted.</summary>
    public IEnumerable<Serving> NotTasted => Servings.Except(Tasted);

    /// <summary>The tasting of this name, or null.</summary>
    public TastingSession? Session(string name) => Sessions.FirstOrDefault(session => Names.Same(session.Name, name));

    /// <summary>The attribute of this name, or null.</summary>
    public SensoryAttribute? Attribute(string name) => Attributes.FirstOrDefault(attribute => Names.Same(attribute.Name, name));

    /// <summary>The trials that were tasted in a tasting, in the order of the plan.</summary>
    public IEnumerable<string> TrialsIn(string tasting) =>
        Tasted.Where(serving => Names.Same(serving.Tasting, tasting)).Select(serving => serving.Trial).Distinct(Names.Comparer);

    /// <summary>The answers to an attribute in a tasting, as marks.</summary>
    public IEnumerable<Score> ScoresOf(string tasting, SensoryAttribute attribute) => Scores.Where(score => score.Attribute == attribute && Names.Same(score.Serving.Tasting, tasting));

    /// <summary>Whether an attribute was asked in a tasting: at least one serving has an answer.</summary>
    public bool Asked(string tasting, SensoryAttribute attribute) =>
        ScoresOf(tasting, attribute).Any()
        || Ticks.Any(ticks => ticks.Attribute == attribute && Names.Same(ticks.Serving.Tasting, tasting));

    /// <summary>The makes of a trial that were served and tasted, in one tasting or in all; a make that the plan does not number is left out.</summary>
    public IReadOnlyList<int> MakesOf(string trial, string? tasting = null) =>
        [.. Tasted.Where(serving => Names.Same(serving.Trial, trial) && (tasting is null || Names.Same(serving.Tasting, tasting)))
            .Select(serving => serving.Make).OfType<int>().Distinct().Order()];
}
