using Tamis.Tables;

namespace Tamis.Tasting;

/// <summary>What the kitchen expected before anybody tasted: the trials of a tasting in the order of one question.</summary>
/// <param name="Attribute">The question: a scale, steps about just right, or a ranking.</param>
/// <param name="Trials">Every trial of the tasting, from the lowest marks to the highest; in a ranking from the first place to the last.</param>
public sealed record ExpectedOrder(string Attribute, IReadOnlyList<string> Trials)
{
    internal const string Column = "expected_order";

    /// <summary>Reads the column <c>expected_order</c>: <c>sweetness: T1; T3; T2</c>, several questions parted by <c>|</c>; the name may be left out where one question only is a ranking.</summary>
    internal static IReadOnlyList<ExpectedOrder> Read(SheetRow row, TastingSession session, IReadOnlyList<SensoryAttribute> attributes, ICollection<CellProblem> problems)
    {
        if (row[Column].Length == 0) return [];
        if (session.IsBench || session.Test is not null)
        {
            problems.Add(row.Problem(Column, $"a blank: {(session.IsBench ? "at the bench there are words only" : $"a {session.Test!.Word} test has picks and no marks")}, so nothing can be put in order"));
            return [];
        }
        if (session.Trials.Count == 0)
        {
            problems.Add(row.Problem(Column, "a blank until the column trials says what is served"));
            return [];
        }
        List<ExpectedOrder> orders = [];
        foreach (var part in row[Column].Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (QuestionOf(row, part, attributes, problems) is not { } attribute) continue;
            var trials = TrialsOf(row, part[(part.IndexOf(':') + 1)..], session, problems);
            if (orders.Exists(order => Names.Same(order.Attribute, attribute.Name))) Add(row, part, $"each question once; {attribute.Name} has an order already", problems);
            else if (trials is not null) orders.Add(new(attribute.Name, trials));
        }
        return orders;
    }

    private static bool HasMarks(SensoryAttribute attribute) => attribute.IsScale || attribute.Kind is AttributeKind.JustRight or AttributeKind.Ranking;

    private static SensoryAttribute? QuestionOf(SheetRow row, string part, IReadOnlyList<SensoryAttribute> attributes, ICollection<CellProblem> problems)
    {
        SensoryAttribute[] asked = [.. attributes.Where(HasMarks)];
        if (part.IndexOf(':') is var colon and >= 0)
        {
            var name = part[..colon].Trim();
            if (Array.Find(asked, attribute => Names.Same(attribute.Name, name)) is { } found) return found;
            Add(row, name, new Spellings(asked.Select(attribute => attribute.Name)).Expected("a question of attributes.csv that is answered with marks or places", name), problems);
            return null;
        }
        if (asked.Where(attribute => attribute.Kind == AttributeKind.Ranking).ToArray() is [var ranking]) return ranking;
        Add(row, part, $"the question before the trials, such as '{(asked.Length > 0 ? asked[0].Name : "sweetness")}: {part}'", problems);
        return null;
    }

    // Null where a trial is strange, missing or named twice: half an order is none.
    private static string[]? TrialsOf(SheetRow row, string cell, TastingSession session, ICollection<CellProblem> problems)
    {
        string[] found = [.. cell.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
        var served = new Spellings(session.Trials);
        string[] strange = [.. found.Where(trial => !served.Has(trial)).Distinct(Names.Comparer)], twice = [.. found.GroupBy(trial => trial, Names.Comparer).Where(same => same.Count() > 1).Select(same => same.Key)];
        string[] missing = [.. session.Trials.Where(trial => !found.Contains(trial, Names.Comparer))];
        foreach (var trial in strange) Add(row, trial, served.Expected($"a trial that {session.Name} serves", trial), problems);
        foreach (var trial in twice) Add(row, trial, "each trial once in an expected order", problems);
        if (missing.Length > 0) Add(row, cell.Trim(), $"every trial that {session.Name} serves, from least to most; {string.Join(", ", missing)} {(missing.Length == 1 ? "is" : "are")} missing", problems);
        return strange.Length + twice.Length + missing.Length == 0 ? [.. found.Select(served.Of)] : null;
    }

    private static void Add(SheetRow row, string found, string expected, ICollection<CellProblem> problems) => problems.Add(new(row.Sheet.File, row.Number, Column, found, expected));
}
