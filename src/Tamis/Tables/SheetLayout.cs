namespace Tamis.Tables;

/// <summary>From rows of text to a sheet: header, columns, rows, dialect.</summary>
internal static class SheetLayout
{
    private static readonly HashSet<string> FormulaErrors = new(StringComparer.OrdinalIgnoreCase) { "#REF!", "#DIV/0!", "#NAME?", "#VALUE!", "#N/A", "#NUM!", "#NULL!", "#SPILL!" };

    /// <summary>Makes a sheet; null with problems where there is no header.</summary>
    public static Sheet? Read(string file, DecodedText decoded, SheetSettings settings, bool isOpenElsewhere, List<CellProblem> problems)
    {
        var grid = SheetGrid.Read(file, decoded.Text, problems);
        // Where a quote does not close, and where a row is longer than the header, cells stand in the wrong columns: nothing more can be said of such a row.
        var askew = problems.Select(problem => problem.Row).ToHashSet();
        List<GridRow> filled = [.. grid.Rows.Where(row => !row.IsBlank)];
        if (filled is not [var header, .. var rows])
        {
            problems.Add(new(file, 0, "", "", "the file is empty; its first row must name the columns"));
            return null;
        }
        string[] columns = [.. Trimmed(header.Cells)];
        if (columns.All(name => name.Length == 0 || char.IsAsciiDigit(name[0])))
        {
            problems.Add(new(file, header.Number, "", string.Join("; ", columns), "the names of the columns: the first row holds figures only"));
            return null;
        }
        if (columns.Count(name => name.Length > 0) == 1 && rows.Count > 0 && rows.All(row => row.Cells.Count(cell => !string.IsNullOrWhiteSpace(cell)) > 1))
        {
            problems.Add(new(file, header.Number, "", columns.First(name => name.Length > 0), "the names of the columns: a title belongs in no CSV file, take this row out"));
            return null;
        }
        CheckNames(file, header, columns, rows, problems);
        CheckWidths(file, columns, rows, grid.Separator, problems, askew);
        CellProblem[] bad = [.. Errors(file, columns, rows)];
        problems.AddRange(bad);
        var evidence = DialectEvidence.Gather(settings is { DecimalMark: not null, DateOrder: not null } ? [] : rows.SelectMany(row => row.Cells));
        return new Sheet(file, Dialect(decoded, grid, settings, evidence), columns, rows.Where(row => !askew.Contains(row.Number)).Select(row => (row.Number, Fit(row.Cells, columns.Length)))) { IsOpenElsewhere = isOpenElsewhere, BadCells = bad.ToLookup(each => each.Row) };
    }

    private static SheetDialect Dialect(DecodedText decoded, SheetGrid grid, SheetSettings settings, DialectEvidence evidence) =>
        new(grid.Separator, settings.DecimalMark ?? evidence.DecimalMark(grid.Separator), settings.DateOrder ?? evidence.DateOrder, decoded.HasByteOrderMark, grid.NewLine)
        {
            Encoding = decoded.Encoding,
            HasSeparatorLine = grid.HasSeparatorLine,
            DateOrderDoubt = settings.DateOrder is null ? evidence.DateOrderDoubt : null,
        };

    private static void CheckNames(string file, GridRow header, string[] columns, List<GridRow> rows, List<CellProblem> problems)
    {
        foreach (var same in columns.Where(name => name.Length > 0).GroupBy(name => name, Names.Comparer).Where(group => group.Count() > 1))
            problems.Add(new(file, header.Number, same.Key, string.Join("; ", same), "each column once: give one of them another name"));
        for (var i = 0; i < columns.Length; i++)
        {
            if (columns[i].Length > 0) continue;
            var nameless = rows.FirstOrDefault(row => i < row.Cells.Length && !string.IsNullOrWhiteSpace(row.Cells[i]));
            if (nameless.Cells is not null)
                problems.Add(new(file, nameless.Number, "", nameless.Cells[i].Trim(), $"a name over it in row {header.Number}: column {Letters(i)} has none"));
        }
    }

    private static void CheckWidths(string file, string[] columns, List<GridRow> rows, char separator, List<CellProblem> problems, HashSet<int> askew)
    {
        var mark = separator switch { ';' => "semicolon", '\t' => "tab", _ => "comma" };
        foreach (var (number, cells) in rows)
        {
            var beyond = cells.Skip(columns.Length).FirstOrDefault(cell => !string.IsNullOrWhiteSpace(cell));
            if (beyond is null) continue;
            problems.Add(new(file, number, "", beyond.Trim(), $"nothing beyond the {columns.Length} columns of the header: a cell that holds a {mark} needs quotes around it"));
            askew.Add(number);
        }
    }

    /// <summary>Whether a text is what a spreadsheet shows in place of a value that it could not compute.</summary>
    internal static bool IsFormulaError(string text) => FormulaErrors.Contains(text) || text.StartsWith("Err:", StringComparison.Ordinal);

    // A cell that a spreadsheet could not compute or not show is saved as such, in whatever column it stands.
    private static IEnumerable<CellProblem> Errors(string file, string[] columns, List<GridRow> rows)
    {
        foreach (var (number, cells) in rows)
        {
            for (var i = 0; i < cells.Length && i < columns.Length; i++)
            {
                if (cells[i] is not (['#', ..] or ['E', 'r', 'r', ':', ..])) continue;
                var text = cells[i].Trim();
                if (IsFormulaError(text))
                    yield return new(file, number, columns[i], text, "a value: this is an error of the spreadsheet, mend the formula there and save again");
                else if (text.Length > 1 && text.All(character => character == '#'))
                    yield return new(file, number, columns[i], text, "a value: the column was too narrow to show it, widen it in the spreadsheet and save again");
            }
        }
    }

    /// <summary>The column as a spreadsheet letters it: A for 0, AA for 26.</summary>
    private static string Letters(int index) => (index >= 26 ? Letters(index / 26 - 1) : "") + (char)('A' + index % 26);

    private static IEnumerable<string> Trimmed(string[] cells)
    {
        var last = Array.FindLastIndex(cells, cell => !string.IsNullOrWhiteSpace(cell));
        return cells.Take(last + 1).Select(cell => cell.Trim());
    }

    private static IReadOnlyList<string> Fit(string[] cells, int count)
    {
        if (cells.Length == count) return cells;
        var fitted = new string[count];
        for (var i = 0; i < count; i++) fitted[i] = i < cells.Length ? cells[i] : "";
        return fitted;
    }
}
