namespace Tamis.Tables;

/// <summary>Reads the cells of one row as what they stand for. Each cell that cannot be read becomes a problem, and reading goes on.</summary>
/// <param name="row">The row.</param>
/// <param name="problems">Where problems are gathered, for all rows together.</param>
/// <remarks>A blank cell is unknown and reads as null (or nothing), never as zero. After a problem the answer is as for a blank cell.</remarks>
public sealed class RowReader(SheetRow row, List<CellProblem> problems)
{
    /// <summary>What a cell of yes or no may say.</summary>
    internal static readonly IReadOnlyDictionary<string, bool> YesNo = new Dictionary<string, bool>(Names.Comparer) { ["yes"] = true, ["no"] = false };

    private static readonly string[] Traces = ["tr", "tr.", "trace", "traces"];

    private SheetDialect Dialect => row.Sheet.Dialect;

    /// <summary>The row that is read.</summary>
    public SheetRow Row => row;

    /// <summary>A text that may not be blank; empty after a problem.</summary>
    public string Required(string column)
    {
        var text = row[column];
        if (text.Length == 0) Note(column, $"something: '{column}' may not be blank");
        return text;
    }

    /// <summary>A text, or null where the cell is blank.</summary>
    public string? Text(string column) => row[column] is { Length: > 0 } text ? text : null;

    /// <summary>A number within limits, or null where the cell is blank.</summary>
    public double? Number(string column, double min = double.NegativeInfinity, double max = double.PositiveInfinity) =>
        Text(column) is { } text ? Limited(column, text, min, max) : null;

    /// <summary>A number that may not be blank; NaN after a problem.</summary>
    public double RequiredNumber(string column, double min = double.NegativeInfinity, double max = double.PositiveInfinity)
    {
        if (Text(column) is { } text) return Limited(column, text, min, max) ?? double.NaN;
        Note(column, $"{NumberIn("a number", min, max)}: '{column}' may not be blank");
        return double.NaN;
    }

    /// <summary>A whole number within limits, or null where the cell is blank. <c>3.0</c> is 3.</summary>
    public int? Whole(string column, int min = int.MinValue, int max = int.MaxValue)
    {
        if (Text(column) is not { } text) return null;
        if (NumberText.TryParse(text, Dialect.DecimalMark, out var value, out _) && value == Math.Floor(value) && value >= min && value <= max) return (int)value;
        Note(column, NumberIn("a whole number", min == int.MinValue ? double.NegativeInfinity : min, max == int.MaxValue ? double.PositiveInfinity : max) + Spreadsheet(text));
        return null;
    }

    /// <summary>A percentage, or null where the cell is blank: <c>12</c>, <c>12 %</c> and a spreadsheet's <c>12.00%</c> are all 12.</summary>
    public double? Percent(string column, double min = 0, double max = 100) =>
        Text(column) is { } text ? Limited(column, text.EndsWith('%') ? text[..^1].TrimEnd() : text, min, max, "a percentage") : null;

    /// <summary>A figure as a document states it (<c>12.5</c>, <c>tr</c>, <c>&lt;0.1</c>), zero or more; null where the cell is blank.</summary>
    public StatedNumber? Stated(string column)
    {
        if (Text(column) is not { } text) return null;
        if (Traces.Contains(text, StringComparer.OrdinalIgnoreCase)) return new(StatedKind.Trace, 0);
        var kind = text[0] == '<' ? StatedKind.Below : StatedKind.Number;
        if (NumberText.TryParse(kind == StatedKind.Below ? text[1..] : text, Dialect.DecimalMark, out var value, out var expected) && value >= 0)
            return new StatedNumber(kind, value) { Step = NumberText.Step(text, Dialect.DecimalMark) };
        Note(column, (expected is "" or "a number" ? "a number of 0 or more" : expected) + $", or tr, or <{Written(0.1)}; leave the cell blank if nobody knows" + Spreadsheet(text));
        return null;
    }

    /// <summary>A date, or null where the cell is blank.</summary>
    public DateOnly? Date(string column) => Text(column) is { } text ? OneDate(column, text) : null;

    /// <summary>Dates parted by semicolons, in the order of the cell.</summary>
    public IReadOnlyList<DateOnly> Dates(string column) => [.. Words(column).Select(text => OneDate(column, text)).OfType<DateOnly>()];

    /// <summary>Words parted by semicolons; none where the cell is blank.</summary>
    public IReadOnlyList<string> Words(string column) => row[column].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>One of a few choices, or null where the cell is blank. A miss names the choices, the nearest first.</summary>
    public T? Choice<T>(string column, IReadOnlyDictionary<string, T> choices) where T : struct =>
        Text(column) is { } text && Chosen(column, text, choices, out var chosen) ? chosen : null;

    /// <summary><c>yes</c> or <c>no</c>, or null where the cell is blank.</summary>
    public bool? YesOrNo(string column) => Choice(column, YesNo);

    /// <summary>One of many named things, or null where the cell is blank. A miss names the nearest names.</summary>
    public T? Named<T>(string column, IReadOnlyDictionary<string, T> known) where T : class =>
        Text(column) is { } text && Chosen(column, text, known, out var chosen) ? chosen : null;

    /// <summary>Notes a problem with a cell of this row.</summary>
    public void Note(string column, string expected) => problems.Add(row.Problem(column, expected));

    private double? Limited(string column, string text, double min, double max, string what = "a number")
    {
        if (NumberText.TryParse(text, Dialect.DecimalMark, out var value, out var expected) && value >= min && value <= max) return value;
        Note(column, (expected is "" or "a number" ? NumberIn(what, min, max) : expected) + Spreadsheet(text));
        return null;
    }

    private string NumberIn(string what, double min, double max) => (double.IsFinite(min), double.IsFinite(max)) switch
    {
        (true, false) when min == double.Epsilon => $"{what} above 0",
        (true, true) when min == double.Epsilon => $"{what} above 0 and at most {Written(max)}",
        (true, true) => $"{what} from {Written(min)} to {Written(max)}",
        (true, false) => $"{what} of {Written(min)} or more",
        (false, true) => $"{what} of {Written(max)} at most",
        _ => $"{what} such as {Written(12.5)}",
    };

    private string Written(double value) => NumberText.Write(value, Dialect.DecimalMark);

    private static string Spreadsheet(string text) => DateText.LooksLikeDate(text)
        ? "; the spreadsheet made a date of it: format the cell as text and write it again"
        : "";

    private DateOnly? OneDate(string column, string text)
    {
        if (DateText.TryParse(text, Dialect.DateOrder, out var date) && (Dialect.DateOrderDoubt is null || DateText.TellingOrder(text) == DateEvidence.None)) return date;
        if (Dialect.DateOrderDoubt is { } doubt && DateText.TellingOrder(text) != DateEvidence.None)
        {
            // Asked once for the file, however many dates stand in it.
            CellProblem question = new(row.Sheet.File, 0, "", "", doubt);
            if (!problems.Contains(question)) problems.Add(question);
            return null;
        }
        // A date in another order was not mistyped: what is read is decided elsewhere.
        var isOther = Enum.GetValues<DateOrder>().Any(order => DateText.TryParse(text, order, out _));
        Note(column, "a date such as 2026-11-25"
            + (isOther ? $"; other dates of this file, or date_order in dessert.csv, say that dates stand {Dialect.DateOrderInWords}" : "")
            + (NumberText.TryParse(text, '.', out _, out _) ? "; the spreadsheet shows the date as a number: format the cell as a date" : ""));
        return null;
    }

    private bool Chosen<T>(string column, string text, IReadOnlyDictionary<string, T> choices, out T chosen)
    {
        foreach (var (name, value) in choices)
        {
            if (!Names.Same(name, text)) continue;
            chosen = value;
            return true;
        }
        chosen = default!;
        var near = Names.Nearest(text, choices.Keys);
        Note(column, choices.Count <= 8 ? $"one of: {string.Join(", ", near.Concat(choices.Keys.Except(near)))}"
            : near is [] ? "a known name" : $"a known name, perhaps {string.Join(" or ", near)}");
        return false;
    }
}
