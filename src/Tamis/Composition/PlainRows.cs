using System.Buffers.Text;
using CsvHelper;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>The rows of a large file of two names and a number, a chunk of the file on each core, put together in the order of the file.</summary>
internal sealed class PlainRows
{
    private const int LeastChunkBytes = 1 << 18;
    private static readonly double[] Tens = [.. Enumerable.Range(0, 17).Select(power => Math.Pow(10, power))];
    private readonly List<string> _firstNames = [], _secondNames = [];
    private readonly List<int> _first, _second;
    private readonly List<double> _numbers;
    private readonly List<CellProblem> _problems = [];
    private readonly KeyCache _firstKeys, _secondKeys;

    private PlainRows(int rows)
    {
        (_first, _second, _numbers) = (new(rows), new(rows), new(rows));
        (_firstKeys, _secondKeys) = (new(name => Added(_firstNames, name)), new(name => Added(_secondNames, name)));
    }

    /// <summary>The names under the first column, each once, in the order of their first row.</summary>
    public IReadOnlyList<string> FirstNames => _firstNames;

    /// <summary>The names under the second column, each once, in the order of their first row.</summary>
    public IReadOnlyList<string> SecondNames => _secondNames;

    /// <summary>The first name of each row, as its place in <see cref="FirstNames"/>.</summary>
    public ReadOnlySpan<int> First => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_first);

    /// <summary>The second name of each row, as its place in <see cref="SecondNames"/>.</summary>
    public ReadOnlySpan<int> Second => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_second);

    /// <summary>The number of each row; NaN where the cell is blank.</summary>
    public ReadOnlySpan<double> Numbers => System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_numbers);

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file; commas and decimal points.</param>
    /// <param name="columns">The two columns of names and the column of numbers.</param>
    /// <param name="threads">On how many cores; the result does not depend on it.</param>
    /// <exception cref="TableException">A column is missing, or a cell is no number; every one is named with its row.</exception>
    public static PlainRows Read(string path, string[] columns, int threads)
    {
        var file = Path.GetFileName(path);
        ReadOnlyMemory<byte> bytes = File.ReadAllBytes(path);
        var chunks = Chunks(bytes, threads);
        var at = ColumnsOf(file, chunks.Count > 1 ? bytes[..(bytes.Span.IndexOf((byte)'\n') + 1)] : bytes, columns);
        var read = chunks.AsParallel().AsOrdered().WithDegreeOfParallelism(Math.Max(1, threads)).Select((chunk, number) => Parsed(file, chunk.Bytes, chunk.LinesBefore, isFirst: number == 0, columns, at)).ToArray();
        var whole = read[0];
        foreach (var next in read.Skip(1)) whole.Append(next);
        return whole._problems.Count == 0 ? whole : throw new TableException(whole._problems);
    }

    // Cut behind line ends. A quoted cell may hold a line end, and UTF-16 or lone carriage returns end lines in other ways: such a file is one chunk.
    private static List<(ReadOnlyMemory<byte> Bytes, int LinesBefore)> Chunks(ReadOnlyMemory<byte> bytes, int threads)
    {
        var span = bytes.Span;
        var count = Math.Clamp(bytes.Length / LeastChunkBytes, 1, Math.Max(1, threads));
        if (count == 1 || span.ContainsAny((byte)'"', (byte)0) || span.Count((byte)'\r') != span.Count("\r\n"u8)) return [(bytes, 0)];
        List<(ReadOnlyMemory<byte>, int)> chunks = [];
        var (start, lines) = (0, 0);
        for (var chunk = 1; chunk <= count && start < bytes.Length; chunk++)
        {
            var wanted = Math.Max(start, (int)((long)bytes.Length * chunk / count));
            var end = chunk == count ? -1 : span[wanted..].IndexOf((byte)'\n');
            var stop = end < 0 ? bytes.Length : wanted + end + 1;
            chunks.Add((bytes[start..stop], lines));
            lines += span[start..stop].Count((byte)'\n');
            start = stop;
        }
        return chunks;
    }

    private static int[] ColumnsOf(string file, ReadOnlyMemory<byte> head, string[] columns)
    {
        using var reader = CsvReader.Create(head, Options);
        try
        {
            reader.ReadHeader();
        }
        catch (CsvFormatException error)
        {
            throw new TableException([Quoted(file, error)]);
        }
        var headers = reader.Headers.ToArray();
        int[] at = [.. columns.Select(column => Array.FindIndex(headers, header => Names.Same(header, column)))];
        return at.Contains(-1) ? throw new TableException([.. columns.Where((_, index) => at[index] < 0).Select(column => new CellProblem(file, 0, column, "", "the sheet needs a column of this name"))]) : at;
    }

    private static PlainRows Parsed(string file, ReadOnlyMemory<byte> bytes, int linesBefore, bool isFirst, string[] columns, int[] at)
    {
        PlainRows rows = new(bytes.Length / 12);
        using var reader = CsvReader.Create(bytes, isFirst ? Options : Options with { HasHeader = false });
        var last = at.Max();
        try
        {
            if (isFirst) reader.ReadHeader();
            while (reader.Read())
            {
                if (reader.FieldCount <= last || Number(reader.GetSpan(at[2])) is not { } number)
                {
                    rows._problems.Add(new(file, linesBefore + (int)reader.LineNumber, columns[2], reader.FieldCount > at[2] ? reader.GetString(at[2]) : "", "a number such as 1.5"));
                    continue;
                }
                rows._first.Add(rows._firstKeys.IndexOf(reader.GetSpan(at[0])));
                rows._second.Add(rows._secondKeys.IndexOf(reader.GetSpan(at[1])));
                rows._numbers.Add(number);
            }
        }
        catch (CsvFormatException error)
        {
            rows._problems.Add(Quoted(file, error));
        }
        return rows;
    }

    private void Append(PlainRows next)
    {
        _problems.AddRange(next._problems);
        Add(_first, _firstKeys, next._firstNames, next.First);
        Add(_second, _secondKeys, next._secondNames, next.Second);
        _numbers.AddRange(next.Numbers);

        static void Add(List<int> own, KeyCache keys, List<string> names, ReadOnlySpan<int> theirs)
        {
            int[] places = [.. names.Select(name => keys.IndexOf(name))];
            own.EnsureCapacity(own.Count + theirs.Length);
            foreach (var place in theirs) own.Add(places[place]);
        }
    }

    private static CsvReaderOptions Options { get; } = new() { MalformedData = CsvMalformedDataHandling.Throw, TrackLineNumbers = true };

    private static CellProblem Quoted(string file, CsvFormatException error) => new(file, (int)error.LineNumber, "", "\"", "a quote only around a whole cell, closed in the same row");

    // A blank is unknown. Most numbers are few digits and a point: those are exact as a whole number over a power of ten (Clinger 1990).
    private static double? Number(ReadOnlySpan<byte> text)
    {
        if (text.IsEmpty) return double.NaN;
        var (digits, behind, isPlain) = (0L, -1, text.Length <= 16);
        for (var i = 0; isPlain && i < text.Length; i++)
        {
            if (text[i] is >= (byte)'0' and <= (byte)'9') digits = digits * 10 + text[i] - '0';
            else if (text[i] == '.' && behind < 0 && text.Length > 1) behind = text.Length - 1 - i;
            else isPlain = false;
        }
        if (isPlain && digits < 1L << 53) return behind <= 0 ? digits : digits / Tens[behind];
        return Utf8Parser.TryParse(text, out double value, out var read) && read == text.Length && double.IsFinite(value) ? value : null;
    }

    private static int Added(List<string> names, string name)
    {
        names.Add(name);
        return names.Count - 1;
    }
}
