using CsvHelper;

namespace Tamis.Tables;

/// <summary>One row of a file as text, with its number in the spreadsheet.</summary>
internal readonly record struct GridRow(int Number, string[] Cells)
{
    public bool IsBlank => Array.TrueForAll(Cells, string.IsNullOrWhiteSpace);
}

/// <summary>The rows of a CSV text; the only place that names the CSV library for reading.</summary>
internal sealed record SheetGrid(char Separator, bool HasSeparatorLine, string NewLine, IReadOnlyList<GridRow> Rows)
{
    private static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>Parts a text into rows and cells. A quote that does not close is a problem; a stray one inside a cell is text.</summary>
    public static SheetGrid Read(string file, string text, List<CellProblem> problems)
    {
        var newLine = NewLineOf(text);
        var named = SeparatorLine(text, out var body);
        var separator = named ?? Detect(body);
        List<CsvMalformedRecord> malformed = [];
        var options = CsvReaderOptions.Default with
        {
            Separator = separator,
            HasHeader = false,
            SkipEmptyLines = false,
            TrackLineNumbers = true,
            MalformedData = CsvMalformedDataHandling.Recover,
            FieldCountMismatch = CsvFieldCountHandling.Allow,
            OnMalformedRecord = malformed.Add,
        };
        List<GridRow> rows = [];
        using var reader = CsvReader.FromText(body, options);
        for (var number = 1; reader.Read(); number++)
        {
            var cells = new string[reader.FieldCount];
            for (var i = 0; i < cells.Length; i++) cells[i] = FormulaGuard.Off(reader.GetString(i));
            rows.Add(new(number, cells));
        }
        foreach (var record in malformed)
            if (Sentence(record) is { } sentence)
                problems.Add(new(file, (int)record.RecordNumber, "", Shortened(record.RawRecord), sentence));
        return new(separator, named is not null, newLine, rows);
    }

    private static string? Sentence(CsvMalformedRecord record) => record.Reason switch
    {
        CsvMalformedReason.UnterminatedQuote => $"a closing quote: a cell of line {record.LineNumber} opens with \" and never closes, so it swallows all that follows",
        CsvMalformedReason.TextAfterClosingQuote => $"a separator behind the closing quote in line {record.LineNumber}: write a quote inside a cell twice (\"\"), or look for one that was never closed",
        _ => null,
    };

    private static string Shortened(string? record)
    {
        var line = (record ?? "").Split('\r', '\n')[0];
        return line.Length <= 60 ? line : string.Concat(line.AsSpan(0, 57), "...");
    }

    private static string NewLineOf(string text) => text.AsSpan().IndexOfAny('\r', '\n') switch
    {
        -1 => "\n",
        var i when text[i] == '\n' => "\n",
        var i when i + 1 < text.Length && text[i + 1] == '\n' => "\r\n",
        _ => "\r",
    };

    // `sep=;` is a spreadsheet's own hint and no row: the spreadsheet numbers its rows behind it.
    private static char? SeparatorLine(string text, out string body)
    {
        body = text;
        var end = text.AsSpan().IndexOfAny('\r', '\n');
        var first = (end < 0 ? text : text[..end]).Trim(' ', '"');
        if (first.Length != 5 || !first.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) || !Separators.Contains(first[4])) return null;
        var next = end < 0 ? text.Length : end + (text.AsSpan(end).StartsWith("\r\n") ? 2 : 1);
        body = text[next..];
        return first[4];
    }

    // The header decides: its names hold no separator unless quoted, which the cells below may.
    private static char Detect(string text)
    {
        Span<int> counts = stackalloc int[Separators.Length];
        var quoted = false;
        foreach (var character in text.AsSpan().TrimStart("\r\n"))
        {
            if (character == '"') quoted = !quoted;
            if (quoted) continue;
            if (character is '\r' or '\n') break;
            if (Array.IndexOf(Separators, character) is var i and >= 0) counts[i]++;
        }
        var best = 0;
        for (var i = 1; i < counts.Length; i++)
            if (counts[i] > counts[best]) best = i;
        return Separators[best];
    }
}
