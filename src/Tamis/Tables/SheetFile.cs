namespace Tamis.Tables;

/// <summary>Reads the CSV files that a spreadsheet writes.</summary>
/// <remarks>Comma, semicolon or tab, with or without a <c>sep=</c> line; any line ending; UTF-8 with or without mark, UTF-16 with mark,
/// Windows-1252. Blank rows count in the row numbers and are left out; short rows are filled up; unknown columns are kept.
/// Decimal mark and date order are decided from the file's own cells (<see cref="SheetSettings"/> decides otherwise).</remarks>
public static class SheetFile
{
    /// <summary>Reads a sheet from a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="settings">What is said about it beforehand.</param>
    /// <exception cref="TableException">The file is missing, held by another program, no CSV, or its rows do not fit its header.</exception>
    public static Sheet Read(string path, SheetSettings? settings = null) =>
        Parse(Path.GetFileName(path), Bytes(path), settings, SpreadsheetLock.IsHeld(path));

    /// <summary>Reads a sheet from the bytes of a file.</summary>
    /// <param name="file">The name by which problems call it.</param>
    /// <param name="bytes">What the file holds.</param>
    /// <param name="settings">What is said about it beforehand.</param>
    /// <exception cref="TableException">It is no CSV, or its rows do not fit its header.</exception>
    public static Sheet Parse(string file, ReadOnlyMemory<byte> bytes, SheetSettings? settings = null) => Parse(file, bytes, settings, isOpenElsewhere: false);

    /// <summary>Reads a sheet as far as it can be read, to name what else is wrong with it; null where nothing of it can.</summary>
    /// <param name="read">Reads it.</param>
    /// <param name="problems">Receives what keeps it from being read whole.</param>
    internal static Sheet? ReadOn(Func<Sheet> read, List<CellProblem> problems)
    {
        try
        {
            return read();
        }
        catch (TableException error)
        {
            problems.AddRange(error.Problems);
            return error.Readable;
        }
    }

    private static Sheet Parse(string file, ReadOnlyMemory<byte> bytes, SheetSettings? settings, bool isOpenElsewhere)
    {
        List<CellProblem> problems = [];
        var sheet = SheetText.Decode(file, bytes.Span, problems) is { } text ? SheetLayout.Read(file, text, settings ?? new(), isOpenElsewhere, problems) : null;
        if (sheet is not null && problems is []) return sheet;
        if (isOpenElsewhere) problems.Add(new(file, 0, "", "", "the file is still open in the spreadsheet, which may not have saved it yet; save it there and run again"));
        throw new TableException(problems) { Readable = sheet };
    }

    /// <summary>What a file holds now; a missing or withheld file in words that say what to do.</summary>
    internal static byte[] Bytes(string path)
    {
        try
        {
            // A spreadsheet that has the file open may go on writing to it; only an exclusive hold keeps us out.
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var memory = new MemoryStream();
            stream.CopyTo(memory);
            return memory.ToArray();
        }
        catch (Exception error) when (error is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Whole(path, $"there is no such file in the folder '{Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(path)))}'");
        }
        catch (UnauthorizedAccessException)
        {
            throw Whole(path, Directory.Exists(path) ? "this is a folder, a CSV file was expected" : "the file may not be read; give yourself the right to read it");
        }
        catch (IOException) when (File.Exists(path))
        {
            throw Whole(path, "the file is still open in another program, probably the spreadsheet; close it there and run again");
        }
    }

    private static TableException Whole(string path, string sentence) => new([new(Path.GetFileName(path), 0, "", "", sentence)]);
}
