using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The facts of <c>dessert.csv</c>: keys and values, some for one trial only; a key may come again.</summary>
public sealed class DessertFacts
{
    private const string File = "dessert.csv";

    // By how much of itself a net mass may differ from that of its volume: density and both are rounded.
    private const double Agreement = 0.01;

    private readonly IReadOnlyList<(string Key, string Value, string? Trial, SheetRow Row)> _rows;

    private DessertFacts(IReadOnlyList<(string, string, string?, SheetRow)> rows) => _rows = rows;

    // Any other key takes one value for a trial.
    private static readonly string[] Repeated = ["claim", "cross_contact", "declare", "emphasis", "exemption", "face", "fortified_with", "market", "other_amount", "retention"];

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
        DessertFacts facts = new(rows);
        problems.AddRange(facts.Twice());
        problems.AddRange(facts.OtherQuantities());
        return facts;

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

    // A row for all gives way to one that names the trial; two rows for the same trial, or two for all, cannot both count.
    private IEnumerable<CellProblem> Twice() =>
        from ofKey in _rows.GroupBy(row => row.Key, Names.Comparer)
        where ofKey.Count() > 1 && !Repeated.Contains(ofKey.Key, Names.Comparer) && DessertKeys.All.Contains(ofKey.Key, Names.Comparer)
        from row in ofKey
        let others = ofKey.Where(other => other.Row != row.Row && IsForSame(row.Trial, other.Trial)).ToArray()
        where others.Length > 0
        select row.Row.Problem("value", $"one row {row.Key} for {(row.Trial is null ? "all trials" : row.Trial)}; {string.Join(", ", others.Select(other => $"row {other.Row.Number} says '{other.Value}'"))}: take out all but one, or name under trial what each is for");

    // What the pack holds by mass and by volume is one quantity, so that the density must make one of the other.
    private IEnumerable<CellProblem> OtherQuantities()
    {
        List<(SheetRow Row, string Expected)> found = [];
        foreach (var trial in (string?[])[null, .. _rows.Where(row => row.Trial is not null).SelectMany(row => Parted(row.Trial!)).Distinct(Names.Comparer)])
        {
            if (RowOf("net_g", trial) is not { } mass || RowOf("net_ml", trial) is not { } volume || NumberIn(mass.Row, mass.Value) is not { } grams || NumberIn(volume.Row, volume.Value) is not { } millilitres) continue;
            var density = Number("density_g_ml", trial);
            if (density is { } known && Math.Abs(millilitres * known - grams) <= Agreement * grams) continue;
            var said = density is { } per ? FormattableString.Invariant($"{millilitres:0.###} ml of {per:0.###} g each are {millilitres * per:0.#} g, and net_g says {grams:0.#} g: mend one of them or density_g_ml, or take one row out")
                : "one of net_g and net_ml, or density_g_ml, what 1 ml weighs in grams, beside both: without it nobody can tell that they agree";
            found.AddRange([(mass.Row, $"{said} (net_ml in row {volume.Row.Number})"), (volume.Row, $"{said} (net_g in row {mass.Row.Number})")]);
        }
        return found.DistinctBy(each => each.Row).Select(each => each.Row.Problem("value", each.Expected));

        (string Value, SheetRow Row)? RowOf(string key, string? trial) => Holding(key, trial).OrderBy(row => row.Trial is null).Select(row => ((string, SheetRow)?)(row.Value, row.Row)).FirstOrDefault();
    }

    private static bool IsForSame(string? trials, string? others) =>
        trials is null || others is null ? trials is null && others is null : Parted(trials).Intersect(Parted(others), Names.Comparer).Any();

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
