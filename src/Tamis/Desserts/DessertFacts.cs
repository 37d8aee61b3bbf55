using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The facts of <c>dessert.csv</c>: keys and values, some for one trial only; a key may come again.</summary>
public sealed class DessertFacts
{
    private const string File = "dessert.csv";

    private readonly IReadOnlyList<(string Key, string Value, string? Trial, SheetRow Row)> _rows;

    private DessertFacts(IReadOnlyList<(string, string, string?, SheetRow)> rows) => _rows = rows;

    private static readonly string[] DateOrders = ["year-month-day", "day-month-year", "month-day-year"];

    /// <summary>A dessert of which nothing is said.</summary>
    public static DessertFacts None { get; } = new([]);

    /// <summary>Reads the sheet.</summary>
    public static DessertFacts Read(Sheet sheet, List<CellProblem> problems)
    {
        List<(string, string, string?, SheetRow)> rows = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            if (reader.Required("key") is { Length: > 0 } key && reader.Required("value") is { Length: > 0 } value)
                rows.Add((key, value, reader.Text("trial"), row));
        }
        Check(["pieces", "portions", "portion_g", "net_g", "net_ml", "density_g_ml"], (row, value) => NumberIn(row, value) is > 0, "a number above zero");
        Check(["price", "tax_percent", "labour_per_hour", "energy_kwh", "energy_per_kwh", "reserve_percent"], (row, value) => NumberIn(row, value) is >= 0, "a number of zero or more");
        Check(["decimal_mark"], (_, value) => Names.Same(value, "point") || Names.Same(value, "comma"), "point or comma");
        Check(["date_order"], (_, value) => DateOrders.Contains(value, Names.Comparer), string.Join(" or ", DateOrders));
        return new(rows);

        void Check(string[] keys, Func<SheetRow, string, bool> isRight, string expected)
        {
            foreach (var (_, value, _, row) in rows.Where(row => keys.Contains(row.Item1, Names.Comparer)))
                if (!isRight(row, value)) problems.Add(row.Problem("value", expected));
        }
    }

    /// <summary>The keys that have a row, in the order of the sheet.</summary>
    public IReadOnlyList<string> Keys => [.. _rows.Select(row => row.Key).Distinct(Names.Comparer)];

    /// <summary>The values of a key for a trial: rows that name it, or else the rows for all.</summary>
    public IReadOnlyList<string> All(string key, string? trial = null)
    {
        string[] own = [.. Of(key, row => trial is not null && row is not null && Parted(row).Contains(trial, Names.Comparer))];
        return own.Length > 0 ? own : [.. Of(key, row => row is null)];
    }

    /// <summary>The rows of a key that hold for a trial, with their values: those for all and those that name it, in the order of the sheet.</summary>
    public IEnumerable<(string Value, SheetRow Row)> RowsOf(string key, string? trial = null) => Holding(key, trial).Select(row => (row.Value, row.Row));

    /// <summary>The words of a key that hold for a trial, parted by semicolons within a row: those for all and those for the trial.</summary>
    public IEnumerable<string> WordsOf(string key, string? trial = null) => Holding(key, trial).SelectMany(row => Parted(row.Value));

    /// <summary>The value of a key for a trial, or null where nobody wrote it.</summary>
    public string? Text(string key, string? trial = null) => All(key, trial).FirstOrDefault();

    /// <summary>The number of a key for a trial, or null where nobody wrote it.</summary>
    public double? Number(string key, string? trial = null) =>
        Holding(key, trial).OrderBy(row => row.Trial is null).Select(row => NumberIn(row.Row, row.Value)).FirstOrDefault();

    /// <summary>The cell of a key's value for a trial, or null where nobody wrote it.</summary>
    public Source? OriginOf(string key, string? trial = null) =>
        Holding(key, trial).OrderBy(row => row.Trial is null).Select(row => row.Row.Origin("value")).FirstOrDefault();

    /// <summary>What is wrong with a key's value for a trial, at its cell; where nobody wrote it, a row that is missing.</summary>
    public CellProblem Problem(string key, string trial, string expected) =>
        Holding(key, trial).OrderBy(row => row.Trial is null).Select(row => row.Row).FirstOrDefault() is { } row
            ? row.Problem("value", expected)
            : InNoRow("key", $"a row {key}, {expected}");

    /// <summary>What is wrong with the sheet and stands in no row of it: a row is missing, or several rows together are wrong.</summary>
    /// <param name="key">The column, or the key that is concerned.</param>
    /// <param name="expected">What was expected.</param>
    public static CellProblem InNoRow(string key, string expected) => new(File, 0, key, "", expected);

    private IEnumerable<(string Key, string Value, string? Trial, SheetRow Row)> Holding(string key, string? trial) =>
        _rows.Where(row => Names.Same(row.Key, key) && (row.Trial is null || trial is not null && Parted(row.Trial).Contains(trial, Names.Comparer)));

    private IEnumerable<string> Of(string key, Func<string?, bool> trial) =>
        _rows.Where(row => Names.Same(row.Key, key) && trial(row.Trial)).Select(row => row.Value);

    private static string[] Parted(string cell) => cell.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static double? NumberIn(SheetRow row, string text)
    {
        var style = System.Globalization.CultureInfo.InvariantCulture;
        var plain = row.Sheet.Dialect.DecimalMark == ',' ? text.Replace(',', '.') : text;
        return double.TryParse(plain, System.Globalization.NumberStyles.AllowDecimalPoint, style, out var number) ? number : null;
    }
}
