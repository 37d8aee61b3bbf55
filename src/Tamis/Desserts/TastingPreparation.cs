using Tamis.Tables;
using Tamis.Tasting;

namespace Tamis.Desserts;

/// <summary>A tasting made ready: its plan, what is asked, what assessors must know first, and what to look at before it is served.</summary>
public sealed record TastingPreparation
{
    private static readonly string[] KeyColumns = ["tasting", "assessor", "code"];

    /// <summary>The dessert that is tasted.</summary>
    public required Dessert Dessert { get; init; }

    /// <summary>Who gets what in which order.</summary>
    public required TastingPlan Plan { get; init; }

    /// <summary>Whether the plan stood in <c>servings.csv</c> already; then it is taken as it stands.</summary>
    public required bool WasPlanned { get; init; }

    /// <summary>What the ballots ask.</summary>
    public required IReadOnlyList<SensoryAttribute> Asked { get; init; }

    /// <summary>What it contains.</summary>
    public required AllergenNotice Allergens { get; init; }

    /// <summary>What to look at before anybody tastes.</summary>
    public required IReadOnlyList<PlanRemark> Remarks { get; init; }

    /// <summary>The row of <c>tastings.csv</c>.</summary>
    public TastingSession Session => Plan.Session;

    /// <summary>Makes a tasting ready: the plan of <c>servings.csv</c>, or a new one from the row of <c>tastings.csv</c>.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="tasting">The name of the tasting.</param>
    /// <exception cref="TableException">There is no such row, it lacks something, or another cell must be mended.</exception>
    public static TastingPreparation Of(Dessert dessert, string tasting)
    {
        var known = dessert.PlannedTastings;
        var session = known.Session(tasting) ?? throw new TableException([new("tastings.csv", 0, "tasting", tasting,
            $"a row '{tasting}'; there are {string.Join(", ", known.Sessions.Select(each => each.Name))}")]);
        Serving[] planned = [.. known.Servings.Where(serving => Names.Same(serving.Tasting, session.Name))];
        var plan = planned.Length > 0 ? new TastingPlan(session, planned) : Planned(dessert, session, known);
        SensoryAttribute[] asked = [.. known.Attributes.Where(attribute => attribute.IsAskedIn(session))];
        return new()
        {
            Dessert = dessert,
            Plan = plan,
            WasPlanned = planned.Length > 0,
            Asked = asked,
            Allergens = AllergenNotice.Of(dessert, plan.Servings.Select(serving => serving.Trial).Distinct(Names.Comparer)),
            Remarks = PlanRemark.Of(plan, asked, known, TastingPolicy.Kit),
        };
    }

    /// <summary>Writes the plan to <c>servings.csv</c> and the rows to fill to <c>scores.csv</c>: both or neither; what stands there stays.</summary>
    /// <returns>How many rows were added to each.</returns>
    /// <exception cref="TableException">A file is open in a spreadsheet or may not be written; both are as they were.</exception>
    public (int Servings, int Scores) Write()
    {
        var (servings, scores) = (Path.Combine(Dessert.Folder, "servings.csv"), Path.Combine(Dessert.Folder, "scores.csv"));
        var sheet = File.Exists(scores) ? SheetFile.Read(scores) : null;
        var there = sheet?.Rows.Select(row => Key(row["tasting"], row["assessor"], row["code"])).ToHashSet() ?? [];
        // A row that stands there gets the columns that the sheet lacks, and nothing else is touched.
        var fresh = Plan.ScoreRowsToFill(Asked).Select(row => !there.Contains(Key((string)row["tasting"]!, (string)row["assessor"]!, (string)row["code"]!)) ? row
            : row.Where(cell => KeyColumns.Contains(cell.Key) || !sheet!.Has(cell.Key)).ToDictionary()).Where(row => row.Count > KeyColumns.Length).ToArray();
        SheetUpdate.WriteTogether([new(servings, KeyColumns, WasPlanned ? [] : Plan.ServingRows), new(scores, KeyColumns, fresh)]);
        return (WasPlanned ? 0 : Plan.ServingRows.Count, fresh.Count(row => !there.Contains(Key((string)row["tasting"]!, (string)row["assessor"]!, (string)row["code"]!))));

        static string Key(string tasting, string assessor, string code) => string.Join('\u001f', Names.Key(tasting), Names.Key(assessor), code);
    }

    private static TastingPlan Planned(Dessert dessert, TastingSession session, TastingLog known)
    {
        List<CellProblem> problems = [];
        var plan = PlanMaker.Make(session, known.Servings.Select(serving => serving.Code), trial => MakeOn(dessert, trial, session.Date), problems);
        return plan ?? throw new TableException(problems);
    }

    // The last make on or before the day; the last of all where the day is open.
    private static int? MakeOn(Dessert dessert, string trial, DateOnly? day) =>
        dessert.Log?.Find(trial)?.MadeOn.Count(made => day is null || made <= day) is { } makes and > 0 ? makes : null;
}
