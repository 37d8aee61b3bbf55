using System.Globalization;
using Tamis.Tables;

namespace Tamis.Production;

/// <summary>A row of <c>equipment.csv</c>: something that works, or the time at which it is or is not to be had.</summary>
/// <param name="Name">Its name, as the steps call it.</param>
/// <param name="Kind">The word for its kind.</param>
/// <param name="Count">How many; 0 where it is not to be had in the row's time.</param>
/// <param name="Capacity">What one holds, in <paramref name="Unit"/>; null where nobody said.</param>
/// <param name="Unit">The unit of capacity and smallest: g, trays, rings, litre, pan.</param>
/// <param name="Smallest">The least that it works with, in the same unit; for a scale the step that it reads. Null where nobody said.</param>
/// <param name="Celsius">The temperatures that it reaches; an end is null where nobody said.</param>
/// <param name="From">From when the row holds; null for always.</param>
/// <param name="To">Until when.</param>
/// <param name="Origin">The row.</param>
public sealed record Equipment(string Name, string Kind, int Count, double? Capacity, string Unit, double? Smallest, (double? Low, double? High) Celsius, DateTime? From, DateTime? To, Source Origin)
{
    /// <summary>Whether it can hold a temperature, as far as the row says.</summary>
    public bool Reaches(double celsius) => !(celsius < Celsius.Low - 1e-9) && !(celsius > Celsius.High + 1e-9);
}

/// <summary>What a kitchen works with: people, ovens, cold, mixers, scales.</summary>
public sealed class EquipmentList
{
    private const string PersonKind = "person", ScaleKind = "scale", Grams = "g";
    private readonly IReadOnlyList<Equipment> _rows;

    private EquipmentList(IReadOnlyList<Equipment> rows) => _rows = rows;

    /// <summary>A kitchen of which nothing is written.</summary>
    public static EquipmentList None { get; } = new([]);

    /// <summary>All rows in the order of the sheet.</summary>
    public IReadOnlyList<Equipment> Rows => _rows;

    /// <summary>The names of the people, in the order of the sheet.</summary>
    public IReadOnlyList<string> People => NamesOf(isPerson: true);

    /// <summary>The names of what they work with, in the order of the sheet.</summary>
    public IReadOnlyList<string> Machines => NamesOf(isPerson: false);

    /// <summary>The scales, the finest first: up to which mass each weighs, and in which steps, both in grams.</summary>
    public IReadOnlyList<(double MostGrams, double StepGrams)> Scales =>
        [.. from row in _rows
            where Names.Same(row.Kind, ScaleKind) && Names.Same(row.Unit, Grams) && row is { Count: > 0, Capacity: not null, Smallest: not null }
            orderby row.Smallest
            select (row.Capacity!.Value, row.Smallest!.Value)];

    /// <summary>Reads <c>equipment.csv</c>.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="problems">Receives every cell that must be mended.</param>
    public static EquipmentList Read(Sheet sheet, List<CellProblem> problems)
    {
        List<Equipment> rows = [];
        if (!sheet.Require(["name", "kind"], problems)) return None;
        foreach (var row in sheet.Rows)
        {
            var before = problems.Count;
            var reader = new RowReader(row, problems);
            var (name, kind) = (reader.Required("name"), reader.Required("kind"));
            var count = reader.Whole("count", 0, 1000) ?? 1;
            var (capacity, smallest) = (reader.Number("capacity", 1e-6, 1e9), reader.Number("smallest", 1e-6, 1e9));
            var (low, high) = (reader.Number("min_c", -200, 1000), reader.Number("max_c", -200, 1000));
            var (from, to) = (DayAndHour(row, "from", problems), DayAndHour(row, "to", problems));
            if (low > high) problems.Add(row.Problem("max_c", "a temperature that is not below min_c"));
            if (from >= to) problems.Add(row.Problem("to", "a time after that under from"));
            if (row["from"].Length > 0 != row["to"].Length > 0) problems.Add(row.Problem(row["from"].Length > 0 ? "to" : "from", "both from and to, or neither"));
            if (capacity is not null && row["unit"].Length == 0) problems.Add(row.Problem("unit", "the unit of the capacity, such as g or trays"));
            if (rows.FirstOrDefault(other => Names.Same(other.Name, name)) is { } first && !Names.Same(first.Kind, kind))
                problems.Add(row.Problem("kind", $"{first.Kind}, as in the other rows of {name}"));
            if (problems.Count == before) rows.Add(new(name, kind, count, capacity, row["unit"], smallest, (low, high), from, to, row.Origin("name")));
        }
        return new(rows);
    }

    /// <summary>The row that says what a thing is, without a time of its own where there is one; null where the kitchen does not have it.</summary>
    public Equipment? Find(string name) =>
        _rows.Where(row => Names.Same(row.Name, name)).OrderBy(row => row.From is not null).ThenBy(row => row.Count == 0).FirstOrDefault();

    /// <summary>When a person works, in the order of time.</summary>
    public IReadOnlyList<(DateTime From, DateTime To)> ShiftsOf(string person) => Times(person, row => row.Count > 0);

    /// <summary>When a thing is not to be had, in the order of time.</summary>
    public IReadOnlyList<(DateTime From, DateTime To)> AwayOf(string name) => Times(name, row => row.Count == 0);

    /// <summary>The same kitchen while something is down for the whole time.</summary>
    /// <exception cref="KeyNotFoundException">The kitchen does not have it; near names are given.</exception>
    public EquipmentList Without(string name) => _rows.Any(row => Names.Same(row.Name, name))
        ? new([.. _rows.Where(row => !Names.Same(row.Name, name))])
        : throw new KeyNotFoundException($"There is no '{name}' in equipment.csv; there are: {string.Join(", ", People.Concat(Machines))}.");

    private string[] NamesOf(bool isPerson) => [.. _rows.Where(row => Names.Same(row.Kind, PersonKind) == isPerson).Select(row => row.Name).Distinct(Names.Comparer)];

    private (DateTime From, DateTime To)[] Times(string name, Func<Equipment, bool> which) =>
        [.. from row in _rows
            where Names.Same(row.Name, name) && which(row) && row is { From: not null, To: not null }
            orderby row.From
            select (row.From!.Value, row.To!.Value)];

    private static DateTime? DayAndHour(SheetRow row, string column, List<CellProblem> problems)
    {
        if (row[column].Length == 0) return null;
        if (DayAndHourText.TryParse(row[column], row.Sheet.Dialect.DateOrder, out var at)) return at;
        problems.Add(row.Problem(column, "a day and an hour such as 2026-11-28 06:00"));
        return null;
    }
}

/// <summary>A day and an hour as a sheet writes them: <c>2026-11-28 06:00</c>.</summary>
public static class DayAndHourText
{
    /// <summary>Reads it; the day stands in the order of the file's dates.</summary>
    public static bool TryParse(string text, DateOrder order, out DateTime at)
    {
        at = default;
        var gap = text.Trim().LastIndexOfAny([' ', 'T']);
        if (gap < 0 || !DateText.TryParse(text.Trim()[..gap], order, out var day) || !TimeOnly.TryParse(text.Trim()[(gap + 1)..], CultureInfo.InvariantCulture, out var time)) return false;
        at = day.ToDateTime(time);
        return true;
    }
}
