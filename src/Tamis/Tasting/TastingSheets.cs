using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>The tasting sheets of a dessert folder, as they were read from their files.</summary>
/// <param name="Attributes"><c>attributes.csv</c>: what was asked.</param>
/// <param name="Servings"><c>servings.csv</c>: the plan.</param>
/// <param name="Scores"><c>scores.csv</c>: what was answered.</param>
public sealed record TastingSheets(Sheet Attributes, Sheet Servings, Sheet Scores)
{
    /// <summary><c>tastings.csv</c>, if there is one; without it every tasting of the plan is one of scores without a control.</summary>
    public Sheet? Tastings { get; init; }

    /// <summary>The names of the dessert's trials, against which the plan is checked; null where they are not known.</summary>
    public IReadOnlyCollection<string>? Trials { get; init; }

    /// <summary>Reads what is needed to plan: the questions, the tastings, and the servings that are planned already; no scores.</summary>
    /// <param name="attributes"><c>attributes.csv</c>.</param>
    /// <param name="tastings"><c>tastings.csv</c>.</param>
    /// <param name="servings"><c>servings.csv</c>; null where nothing is planned yet.</param>
    /// <param name="trialNames">The names of the dessert's trials; null where they are not known.</param>
    /// <param name="problems">What must be mended is added here.</param>
    public static TastingLog ReadPlan(Sheet attributes, Sheet tastings, Sheet? servings, IReadOnlyCollection<string>? trialNames, ICollection<CellProblem> problems)
    {
        var trials = new Spellings(trialNames ?? []);
        var asked = AttributeRows.Read(attributes, problems);
        return servings is null
            ? new() { Attributes = asked, Sessions = SessionRows.Read(tastings, asked, trials, trialNames is not null, problems) }
            : Planned(PlanRows.Read(servings, tastings, asked, trials, trialNames is not null, problems));

        TastingLog Planned((IReadOnlyList<TastingSession> Sessions, IReadOnlyList<Serving> Servings) plan) =>
            new() { Attributes = asked, Sessions = plan.Sessions, Servings = plan.Servings };
    }

    /// <summary>Reads the sheets. Every cell that cannot be read is reported, all at once.</summary>
    /// <param name="problems">What must be mended is added here; a log read with problems lacks what they concern and must not be used.</param>
    public TastingLog Read(ICollection<CellProblem> problems)
    {
        var attributes = AttributeRows.Read(Attributes, problems);
        var trials = new Spellings(Trials ?? []);
        var (sessions, servings) = PlanRows.Read(Servings, Tastings, attributes, trials, mustBeKnown: Trials is not null, problems);
        var log = ScoreRows.Read(Scores, attributes, servings, problems) with { Sessions = sessions };
        // Where the sheet must be mended anyway, what may be wrong is told with what is.
        if (problems.Count > 0)
            foreach (var doubt in log.Doubts) problems.Add(doubt);
        return log;
    }
}

/// <summary>The one spelling of each name: the first that was met.</summary>
internal sealed class Spellings(IEnumerable<string> known)
{
    private readonly Dictionary<string, string> _spellings = known.Distinct(Names.Comparer).ToDictionary(name => name, Names.Comparer);

    public IReadOnlyCollection<string> All => _spellings.Values;

    public bool Has(string name) => _spellings.ContainsKey(name);

    /// <summary>The spelling of a name; a new name is taken as it is.</summary>
    public string Of(string name) => _spellings.TryGetValue(name, out var spelling) ? spelling : _spellings[name] = name;

    /// <summary>A trial as the dessert spells it; an unknown one is a problem where all are known.</summary>
    public string Trial(SheetRow row, string column, string name, bool mustBeKnown, ICollection<CellProblem> problems)
    {
        if (!mustBeKnown || Has(name)) return Of(name);
        problems.Add(new(row.Sheet.File, row.Number, column, name, Expected("a trial of this dessert", name)));
        return name;
    }

    /// <summary>What was expected where a name is not known: the nearest ones, or the first few.</summary>
    public string Expected(string what, string found)
    {
        var near = Names.Nearest(found, All);
        if (near is not []) return $"{what}; the nearest is '{string.Join("' or '", near)}'";
        return All.Count == 0 ? what : $"{what}: {string.Join(", ", All.Take(8))}{(All.Count > 8 ? " …" : "")}";
    }
}
