namespace Tamis.Tables;

/// <summary>Rows that are to be written into a sheet.</summary>
/// <param name="Path">The file; a new one is written as the kit ships files.</param>
/// <param name="Keys">The columns that tell one row from another.</param>
/// <param name="Rows">What shall stand in the rows, by column: texts, numbers, dates.</param>
public sealed record SheetChange(string Path, IReadOnlyList<string> Keys, IReadOnlyList<IReadOnlyDictionary<string, object?>> Rows);

/// <summary>Writes rows into a sheet that may be there already, and leaves the rest of it as it was.</summary>
public static class SheetUpdate
{
    /// <summary>Writes into several sheets: all of them or none. A change without rows leaves its file alone.</summary>
    /// <exception cref="TableException">A file cannot be read or written; then all are as they were.</exception>
    public static void WriteTogether(IEnumerable<SheetChange> changes)
    {
        List<(string Path, byte[]? Before)> written = [];
        foreach (var change in changes.Where(change => change.Rows.Count > 0))
        {
            var before = File.Exists(change.Path) ? File.ReadAllBytes(change.Path) : null;
            try
            {
                Write(change.Path, change.Keys, change.Rows);
            }
            catch (TableException)
            {
                foreach (var (path, bytes) in written)
                    if (bytes is null) File.Delete(path);
                    else TextFile.WriteWhole(path, bytes);
                throw;
            }
            written.Add((change.Path, before));
        }
    }

    /// <summary>Writes rows: one whose key stands in the file takes that row's place and keeps its other cells, others come behind.</summary>
    /// <param name="path">The file; a new one is written as the kit ships files.</param>
    /// <param name="keys">The columns that tell one row from another.</param>
    /// <param name="rows">What shall stand in the rows, by column: texts, numbers, dates.</param>
    /// <param name="settings">What is said about the file beforehand.</param>
    /// <remarks>Dialect, column order, extra columns, other rows and notes of the file stay. Blank rows do not.</remarks>
    /// <exception cref="TableException">The file cannot be read or written; then it is as it was.</exception>
    public static void Write(string path, IReadOnlyList<string> keys, IReadOnlyList<IReadOnlyDictionary<string, object?>> rows, SheetSettings? settings = null)
    {
        var old = File.Exists(path) ? SheetFile.Read(path, settings) : null;
        var dialect = old?.Dialect ?? SheetDialect.Shipped;
        string[] columns = [.. (old?.Columns ?? []).Concat(rows.SelectMany(row => row.Keys).Distinct(Names.Comparer).Where(name => old?.Has(name) != true))];
        List<string[]> cells = [.. (old?.Rows ?? []).Select(row => columns.Select(column => column.Length > 0 ? row[column] : "").ToArray())];
        Dictionary<string, int> places = new(StringComparer.Ordinal);
        for (var i = 0; i < cells.Count; i++) places.TryAdd(Key(cells[i]), i);
        foreach (var row in rows)
        {
            var texts = row.ToDictionary(pair => Index(pair.Key), pair => SheetCell.Write(pair.Value, dialect));
            var fresh = new string[columns.Length];
            for (var i = 0; i < fresh.Length; i++) fresh[i] = texts.GetValueOrDefault(i, "");
            if (places.TryAdd(Key(fresh), cells.Count)) cells.Add(fresh);
            else foreach (var (index, text) in texts) cells[places[Key(fresh)]][index] = text;
        }
        SheetWriter.Write(path, dialect, columns, cells);

        int Index(string column) => Array.FindIndex(columns, name => Names.Same(name, column));
        string Key(string[] of) => string.Join('\u001f', keys.Select(key => Index(key) is var i and >= 0 ? Names.Key(of[i]) : ""));
    }
}
