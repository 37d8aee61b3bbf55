namespace Tamis.Tables;

/// <summary>How dates stand in a file.</summary>
public enum DateOrder
{
    /// <summary>2026-11-25.</summary>
    YearMonthDay,
    /// <summary>25/11/2026.</summary>
    DayMonthYear,
    /// <summary>11/25/2026.</summary>
    MonthDayYear,
}

/// <summary>How a spreadsheet wrote a file, so that it can be written back the same way.</summary>
/// <param name="Separator">What parts the fields: comma, semicolon or tab.</param>
/// <param name="DecimalMark">Point or comma, decided from the file's own numbers.</param>
/// <param name="DateOrder">How dates stand.</param>
/// <param name="HasByteOrderMark">Whether the file begins with a byte order mark.</param>
/// <param name="NewLine">The line ending.</param>
public sealed record SheetDialect(char Separator, char DecimalMark, DateOrder DateOrder, bool HasByteOrderMark, string NewLine)
{
    /// <summary>The dialect of the files that the kit ships: comma, point, year first, byte order mark, LF.</summary>
    public static SheetDialect Shipped { get; } = new(',', '.', DateOrder.YearMonthDay, true, "\n");

    /// <summary>How the text is stored as bytes.</summary>
    public SheetEncoding Encoding { get; init; } = SheetEncoding.Utf8;

    /// <summary>Whether a line <c>sep=;</c> stands before the header.</summary>
    public bool HasSeparatorLine { get; init; }

    /// <summary>The question that the dates of the file leave open, as a sentence; null where they leave none.</summary>
    public string? DateOrderDoubt { get; init; }

    internal string DateOrderInWords => DateOrder switch { DateOrder.DayMonthYear => "day first", DateOrder.MonthDayYear => "month first", _ => "year first" };

    /// <summary>How the file was read, in words: <c>semicolons, decimal comma, dates day first</c>.</summary>
    public string InWords()
    {
        var separator = Separator switch { ';' => "semicolons", '\t' => "tabs", _ => "commas" };
        var old = Encoding == SheetEncoding.Windows1252 ? ", letters of Windows-1252 (not UTF-8)" : "";
        return $"{separator}, decimal {(DecimalMark == ',' ? "comma" : "point")}, dates {DateOrderInWords}{old}";
    }
}

/// <summary>A CSV file as a spreadsheet shows it: columns by name, rows by number, cells as text.</summary>
public sealed class Sheet
{
    private readonly Dictionary<string, int> _index = new(Names.Comparer);
    // Most lookups spell the column as the file does; they need no comparing as a kitchen does.
    private readonly Dictionary<string, int> _spelt = new(StringComparer.Ordinal);

    /// <summary>Makes a sheet from its header and the texts of its rows.</summary>
    public Sheet(string file, SheetDialect dialect, IReadOnlyList<string> columns, IEnumerable<(int Number, IReadOnlyList<string> Cells)> rows)
    {
        File = file;
        Dialect = dialect;
        Columns = columns;
        for (var i = 0; i < columns.Count; i++)
        {
            _index.TryAdd(columns[i], i);
            _spelt.TryAdd(columns[i], i);
        }
        Rows = [.. rows.Select(row => new SheetRow(this, row.Number, row.Cells))];
    }

    /// <summary>The file's name, without its folder.</summary>
    public string File { get; }

    /// <summary>How the file was written.</summary>
    public SheetDialect Dialect { get; }

    /// <summary>The columns in the order of the file, as their headers are spelt there.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>The rows that hold anything, in the order of the file.</summary>
    public IReadOnlyList<SheetRow> Rows { get; }

    /// <summary>Whether a spreadsheet still had the file open when it was read: what was not saved there is not in the sheet.</summary>
    public bool IsOpenElsewhere { get; init; }

    /// <summary>The cells that the spreadsheet itself could not compute or show, by row: a sheet that has any is only read on to name what else is wrong with it.</summary>
    internal ILookup<int, CellProblem> BadCells { get; init; } = Array.Empty<CellProblem>().ToLookup(bad => bad.Row);

    /// <summary>The sheet with a column more, or with other texts in one that it has.</summary>
    /// <param name="column">The column.</param>
    /// <param name="text">Its text in a row, by the row and its place among <see cref="Rows"/>.</param>
    internal Sheet With(string column, Func<SheetRow, int, string> text)
    {
        var at = IndexOf(column) is var index and >= 0 ? index : Columns.Count;
        IReadOnlyList<string> columns = at < Columns.Count ? Columns : [.. Columns, column];
        return new(File, Dialect, columns, Rows.Select((row, place) => (row.Number, (IReadOnlyList<string>)[.. columns.Select((name, i) => i == at ? text(row, place) : row[name])]))) { IsOpenElsewhere = IsOpenElsewhere };
    }

    /// <summary>The columns that a reader of the sheet does not know, in the order of the file: kept, and to be named.</summary>
    public IReadOnlyList<string> Besides(IEnumerable<string> known)
    {
        var names = known.ToHashSet(Names.Comparer);
        return [.. Columns.Where(column => column.Length > 0 && !names.Contains(column))];
    }

    /// <summary>Notes a problem for each column that the sheet must have and has not; true where it has all.</summary>
    public bool Require(IEnumerable<string> columns, ICollection<CellProblem> problems)
    {
        var whole = true;
        foreach (var column in columns.Where(column => !Has(column)))
        {
            var near = Names.Nearest(column, Columns);
            var hint = near is [] ? "" : $"; is it the one called '{near[0]}'?";
            problems.Add(new(File, 0, column, "", $"the sheet needs a column of this name{hint}"));
            whole = false;
        }
        return whole;
    }

    /// <summary>Whether the sheet has a column of this name; case and blanks do not count.</summary>
    public bool Has(string column) => _index.ContainsKey(column);

    internal int IndexOf(string column) => _spelt.TryGetValue(column, out var spelt) ? spelt : _index.TryGetValue(column, out var index) ? index : -1;
}

/// <summary>One row of a sheet.</summary>
public sealed class SheetRow
{
    private readonly IReadOnlyList<string> _cells;

    internal SheetRow(Sheet sheet, int number, IReadOnlyList<string> cells) => (Sheet, Number, _cells) = (sheet, number, cells);

    /// <summary>The sheet that it stands in.</summary>
    public Sheet Sheet { get; }

    /// <summary>The row's number as the spreadsheet counts (the header is 1).</summary>
    public int Number { get; }

    /// <summary>The text of a cell without blanks at its ends; empty where the cell is blank or the sheet has no such column.</summary>
    public string this[string column] => Sheet.IndexOf(column) is var i and >= 0 && i < _cells.Count ? _cells[i].Trim() : "";

    /// <summary>Where a cell stands, as the source of the figure that was read from it.</summary>
    public Source Origin(string column) => new(Sheet.File, Evidence.Sheet, $"row {Number}, column {column}");

    /// <summary>A problem with a cell of this row; for a cell that holds an error of the spreadsheet, always that error.</summary>
    public CellProblem Problem(string column, string expected) =>
        Sheet.BadCells[Number].FirstOrDefault(bad => Names.Same(bad.Column, column)) ?? new(Sheet.File, Number, column, this[column], expected);
}
