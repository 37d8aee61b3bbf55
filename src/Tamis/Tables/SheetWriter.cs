using System.Text;
using CsvHelper;

namespace Tamis.Tables;

/// <summary>Writes sheets whole or not at all, in a given dialect; no cell can become a formula.</summary>
public static class SheetWriter
{
    /// <summary>Writes a sheet to a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="dialect">How it is written; for a file that was read, its own dialect.</param>
    /// <param name="columns">The columns in order.</param>
    /// <param name="rows">The cells of each row, one a column.</param>
    /// <exception cref="ArgumentException">A row has another number of cells than there are columns.</exception>
    /// <exception cref="TableException">The file is open in a spreadsheet or may not be written; what it held is untouched.</exception>
    public static void Write(string path, SheetDialect dialect, IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        var bytes = Bytes(dialect, columns, rows);
        var file = Path.GetFileName(path);
        if (SpreadsheetLock.IsHeld(path))
            throw new TableException([new(file, 0, "", "", "the file is still open in the spreadsheet; close it there, so that neither overwrites the other, and run again")]);
        try
        {
            TextFile.WriteWhole(path, bytes);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new TableException([new(file, 0, "", "", "the file could not be written and is as it was; close it in the spreadsheet, or give yourself the right to write it")]);
        }
    }

    /// <summary>The bytes of a sheet.</summary>
    /// <param name="dialect">How it is written.</param>
    /// <param name="columns">The columns in order.</param>
    /// <param name="rows">The cells of each row, one a column.</param>
    /// <exception cref="ArgumentException">A row has another number of cells than there are columns.</exception>
    public static byte[] Bytes(SheetDialect dialect, IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        var text = (dialect.HasSeparatorLine ? $"sep={dialect.Separator}{dialect.NewLine}" : "") + Text(dialect, columns, rows);
        try
        {
            return Encoded(SheetText.EncodingFor(dialect.Encoding), text, dialect.HasByteOrderMark);
        }
        catch (EncoderFallbackException)
        {
            // A letter that the old code page lacks: no letter may be lost, so the file becomes UTF-8 with its mark.
            return Encoded(Encoding.UTF8, text, hasMark: true);
        }
    }

    private static byte[] Encoded(Encoding encoding, string text, bool hasMark)
    {
        var mark = encoding is UTF8Encoding ? Encoding.UTF8.GetPreamble() : encoding.GetPreamble();
        return hasMark ? [.. mark, .. encoding.GetBytes(text)] : encoding.GetBytes(text);
    }

    private static string Text(SheetDialect dialect, IReadOnlyList<string> columns, IEnumerable<IReadOnlyList<string>> rows)
    {
        using var text = new StringWriter();
        var options = CsvWriterOptions.Default with { Separator = dialect.Separator, NewLine = dialect.NewLine };
        using (var writer = CsvWriter.Create(text, options))
        {
            Record(writer, columns);
            foreach (var row in rows)
            {
                if (row.Count != columns.Count)
                    throw new ArgumentException($"{columns.Count} columns but {row.Count} cells; give one cell a column.", nameof(rows));
                Record(writer, row);
            }
        }
        return text.ToString();
    }

    private static void Record(CsvWriter writer, IReadOnlyList<string> cells)
    {
        foreach (var cell in cells) writer.WriteField(FormulaGuard.On(cell));
        writer.EndRecord();
    }
}
