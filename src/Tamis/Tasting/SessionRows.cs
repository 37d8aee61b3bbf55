using System.Globalization;
using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Reads <c>tastings.csv</c>: who tastes what, when and how.</summary>
internal static class SessionRows
{
    private const int MostAssessors = 500, MostServings = 60;

    /// <summary>Every tasting of the sheet, in its order; faults are added to the problems.</summary>
    public static IReadOnlyList<TastingSession> Read(Sheet sheet, IReadOnlyList<SensoryAttribute> attributes, Spellings trials, bool mustBeKnown, ICollection<CellProblem> problems)
    {
        List<TastingSession> sessions = [];
        if (!sheet.Require(["tasting"], problems)) return sessions;
        Dictionary<string, int> rows = new(Names.Comparer);
        foreach (var row in sheet.Rows)
        {
            if (row["tasting"].Length == 0)
                problems.Add(row.Problem("tasting", "the name of the tasting, such as S1"));
            else if (!rows.TryAdd(row["tasting"], row.Number))
                problems.Add(row.Problem("tasting", $"each tasting once; row {rows[row["tasting"]]} has it already"));
            else
                sessions.Add(Session(row, attributes, trials, mustBeKnown, problems));
        }
        return sessions;
    }

    private static TastingSession Session(SheetRow row, IReadOnlyList<SensoryAttribute> attributes, Spellings trials, bool mustBeKnown, ICollection<CellProblem> problems)
    {
        List<CellProblem> own = [];
        RowReader reader = new(row, own);
        TastingSession session = new(row["tasting"])
        {
            Date = Date(row, problems),
            Kind = row["kind"].Length == 0 ? "scores" : row["kind"],
            Trials = [.. reader.Words("trials").Select(trial => trials.Trial(row, "trials", trial, mustBeKnown, problems))],
            Control = row["control"].Length == 0 ? null : trials.Trial(row, "control", row["control"], mustBeKnown, problems),
            Assessors = Assessors(row, problems),
            AreTrained = reader.YesOrNo("trained"),
            ServingsEach = reader.Whole("servings_each", 1, MostServings),
            PortionGrams = reader.Number("portion_g", 0.1, 2000),
            ServedCelsius = reader.Number("served_c", -40, 95),
            OutOfColdMinutes = reader.Number("minutes_out", 0, 1440),
            Design = row["design"],
            Seed = reader.Whole("seed", 0),
            Notes = row["notes"],
            Row = row.Number,
        };
        foreach (var problem in own) problems.Add(problem);
        return session with { ExpectedOrders = ExpectedOrder.Read(row, session, attributes, problems) };
    }

    // How many there are (then they are called A01, A02 …), or their ids.
    private static IReadOnlyList<string> Assessors(SheetRow row, ICollection<CellProblem> problems)
    {
        var cell = row["assessors"];
        if (cell.Length == 0) return [];
        if (int.TryParse(cell, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= MostAssessors)
            return [.. Enumerable.Range(1, count).Select(number => $"A{number.ToString(count > 99 ? "D3" : "D2", CultureInfo.InvariantCulture)}")];
        string[] ids = [.. cell.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
        if (ids is [var only] && !only.Any(char.IsLetter))
            problems.Add(row.Problem("assessors", $"how many there are, from 1 to {MostAssessors}, or their ids parted by '; '"));
        foreach (var twice in ids.GroupBy(id => id, Names.Comparer).Where(same => same.Count() > 1))
            problems.Add(row.Problem("assessors", $"each assessor once; '{twice.Key}' comes {twice.Count()} times"));
        return [.. ids.Distinct(Names.Comparer)];
    }

    private static DateOnly? Date(SheetRow row, ICollection<CellProblem> problems)
    {
        if (row["date"].Length == 0) return null;
        if (DateText.TryParse(row["date"], row.Sheet.Dialect.DateOrder, out var date)) return date;
        problems.Add(row.Problem("date", $"a date, such as {DateText.Write(new(2026, 11, 28), row.Sheet.Dialect.DateOrder)}"));
        return null;
    }
}
