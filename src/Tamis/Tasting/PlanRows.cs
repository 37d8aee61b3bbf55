using System.Globalization;
using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>Reads <c>servings.csv</c> against <c>tastings.csv</c>: what was planned.</summary>
internal static class PlanRows
{
    /// <summary>Blind codes have three digits and no leading zero, which a spreadsheet would drop.</summary>
    public const int LowestCode = 100, HighestCode = 999;

    public static (IReadOnlyList<TastingSession> Sessions, IReadOnlyList<Serving> Servings) Read(
        Sheet plan, Sheet? tastings, IReadOnlyList<SensoryAttribute> attributes, Spellings trials, bool mustBeKnown, ICollection<CellProblem> problems)
    {
        IReadOnlyList<TastingSession>? listed = tastings is null ? null : SessionRows.Read(tastings, attributes, trials, mustBeKnown, problems);
        var names = new Spellings(listed?.Select(session => session.Name) ?? []);
        var servings = Servings(plan, listed is null ? null : names, trials, mustBeKnown, problems);
        return (listed ?? [.. servings.Select(serving => serving.Tasting).Distinct().Select(name => new TastingSession(name))], servings);
    }

    private static List<Serving> Servings(Sheet sheet, Spellings? tastings, Spellings trials, bool mustBeKnown, ICollection<CellProblem> problems)
    {
        List<Serving> servings = [];
        if (!sheet.Require(["tasting", "assessor", "code", "trial"], problems)) return servings;
        var tastingNames = tastings ?? new Spellings([]);
        var assessors = new Spellings([]);
        Dictionary<(string, string, string), int> codeRows = [];
        Dictionary<(string, string, int), int> positionRows = [];
        foreach (var row in sheet.Rows)
        {
            if (!Filled(row, "tasting", "the name of the tasting", problems) | !Filled(row, "assessor", "the assessor’s id, such as A01", problems) | !Filled(row, "trial", "the trial on the plate", problems)) continue;
            if (tastings is not null && !tastings.Has(row["tasting"]))
                problems.Add(row.Problem("tasting", tastings.Expected("a tasting of tastings.csv", row["tasting"])));
            if (Code(row, problems) is not { } code) continue;
            Serving serving = new(tastingNames.Of(row["tasting"]), assessors.Of(row["assessor"]), code, trials.Trial(row, "trial", row["trial"], mustBeKnown, problems), row.Origin("trial"))
            {
                Position = Counted(row, "position", "the place in the assessor’s order: 1, 2, 3 …", problems),
                Make = Counted(row, "make", "which make of the trial it was: 1, 2, 3 …", problems),
            };
            if (!codeRows.TryAdd((serving.Tasting, serving.Assessor, code), row.Number))
            {
                problems.Add(row.Problem("code", $"each code once for an assessor in a tasting; row {codeRows[(serving.Tasting, serving.Assessor, code)]} has it already"));
                continue;
            }
            if (serving.Position is { } position && !positionRows.TryAdd((serving.Tasting, serving.Assessor, position), row.Number))
                problems.Add(row.Problem("position", $"each place once for an assessor in a tasting; row {positionRows[(serving.Tasting, serving.Assessor, position)]} has it already"));
            // A serving with a fault in another cell stays, so that its scores are not reported for that fault a second time.
            servings.Add(serving);
        }
        return servings;
    }

    private static string? Code(SheetRow row, ICollection<CellProblem> problems)
    {
        if (int.TryParse(row["code"], NumberStyles.None, CultureInfo.InvariantCulture, out var code) && code is >= LowestCode and <= HighestCode)
            return code.ToString(CultureInfo.InvariantCulture);
        problems.Add(row.Problem("code", $"three digits from {LowestCode} to {HighestCode}"));
        return null;
    }

    private static int? Counted(SheetRow row, string column, string expected, ICollection<CellProblem> problems)
    {
        if (row[column].Length == 0) return null;
        if (int.TryParse(row[column], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0) return number;
        problems.Add(row.Problem(column, $"{expected}, or a blank where it is not known"));
        return null;
    }

    private static bool Filled(SheetRow row, string column, string expected, ICollection<CellProblem> problems)
    {
        if (row[column].Length > 0) return true;
        problems.Add(row.Problem(column, expected));
        return false;
    }
}
