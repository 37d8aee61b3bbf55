using System.Globalization;

namespace Tamis.App.Pages;

/// <summary>A cell, row, column or sheet that differs from the last run.</summary>
/// <param name="Sheet">The sheet's file name.</param>
/// <param name="Place">Where in it, in words: row, then column; empty for a whole sheet.</param>
/// <param name="Was">What stood there; null where nothing stood.</param>
/// <param name="Now">What stands there; null where nothing stands any more.</param>
internal sealed record CellChange(string Sheet, string Place, string? Was, string? Now);

/// <summary>A figure that differs from the last run.</summary>
/// <param name="Page">The name of the page that shows it.</param>
/// <param name="Name">What it is.</param>
/// <param name="Was">What it was; null where it is new.</param>
/// <param name="Now">What it is; null where it is gone.</param>
internal sealed record FigureChange(string Page, string Name, string? Was, string? Now);

/// <summary>What changed since the last run.</summary>
/// <param name="Cells">In the sheets.</param>
/// <param name="Figures">On the pages.</param>
internal sealed record RunChanges(IReadOnlyList<CellChange> Cells, IReadOnlyList<FigureChange> Figures)
{
    /// <summary>Whether nothing changed.</summary>
    public bool IsNothing => Cells is [] && Figures is [];

    /// <summary>Compares a run with the one before it.</summary>
    public static RunChanges Between(LastRun before, LastRun now) =>
        new([.. SheetChanges(before.Sheets, now.Sheets)], [.. FigureChanges(before.Figures, now.Figures)]);

    private static IEnumerable<CellChange> SheetChanges(IReadOnlyList<SheetCells> before, IReadOnlyList<SheetCells> now)
    {
        // A sheet's name is enough unless sheets of several desserts were read.
        var severalFolders = now.Concat(before).GroupBy(sheet => sheet.File).Any(group => group.Select(sheet => sheet.Folder).Distinct().Count() > 1);
        foreach (var sheet in now)
        {
            var whose = severalFolders ? $"{sheet.Folder}: " : "";
            var old = before.FirstOrDefault(other => (other.Folder, other.File) == (sheet.Folder, sheet.File));
            if (old is null) yield return new(sheet.File, whose.TrimEnd(' ', ':'), null, Count(sheet.Rows.Count, "row"));
            else
                foreach (var change in CellChanges(old, sheet))
                    yield return change with { Place = whose + change.Place };
        }
        foreach (var old in before.Where(old => !now.Any(sheet => (sheet.Folder, sheet.File) == (old.Folder, old.File))))
            yield return new(old.File, severalFolders ? old.Folder : "", Count(old.Rows.Count, "row"), null);
    }

    private static IEnumerable<CellChange> CellChanges(SheetCells before, SheetCells now)
    {
        // A new trial is one change, not one for each of its cells.
        var newColumns = now.Columns.Except(before.Columns, Names.Comparer).ToHashSet(Names.Comparer);
        var goneColumns = before.Columns.Except(now.Columns, Names.Comparer).ToHashSet(Names.Comparer);
        foreach (var column in newColumns) yield return new(now.File, $"column {column}", null, Filled(now, column));
        foreach (var column in goneColumns) yield return new(now.File, $"column {column}", Filled(before, column), null);

        var old = before.Rows.ToDictionary(row => row.Words, Names.Comparer);
        foreach (var row in now.Rows)
        {
            if (!old.Remove(row.Words, out var was))
            {
                yield return new(now.File, row.Words, null, InShort(row));
                continue;
            }
            foreach (var column in now.Columns.Except(newColumns, Names.Comparer))
            {
                var (from, to) = (Cell(was, column), Cell(row, column));
                if (from != to) yield return new(now.File, $"{row.Words}, {column}", from, to);
            }
        }
        foreach (var gone in before.Rows.Where(row => old.ContainsKey(row.Words))) yield return new(now.File, gone.Words, InShort(gone), null);
    }

    private static IEnumerable<FigureChange> FigureChanges(
        IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> before, IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> now)
    {
        foreach (var (page, figures) in now)
        {
            // A page that is new as a whole is in the list of pages; its figures are no news one by one.
            if (!before.TryGetValue(page, out var old)) continue;
            foreach (var (name, text) in figures)
                if (old.GetValueOrDefault(name) is var was && was != text)
                    yield return new(page, name, was, text);
            foreach (var (name, text) in old.Where(figure => !figures.ContainsKey(figure.Key)))
                yield return new(page, name, text, null);
        }
    }

    private static string? Cell(RowCells row, string column) =>
        row.Cells.Where(cell => Names.Same(cell.Key, column)).Select(cell => cell.Value).FirstOrDefault();

    private static string Filled(SheetCells sheet, string column) => Count(sheet.Rows.Count(row => Cell(row, column) is not null), "cell");

    private static string InShort(RowCells row)
    {
        var cells = row.Cells.Select(cell => $"{cell.Key} {cell.Value}").ToArray();
        return cells.Length switch { 0 => "a row", <= 3 => string.Join(", ", cells), _ => $"{string.Join(", ", cells.Take(3))} …" };
    }

    private static string Count(int count, string word) => string.Create(CultureInfo.InvariantCulture, $"{count} {word}{(count == 1 ? "" : "s")}");
}
