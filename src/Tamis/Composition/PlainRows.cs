using System.Buffers;
using System.Buffers.Text;
using CsvHelper;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>The rows of a chunk of a large file of two names and a number.</summary>
/// <remarks>A file is cut into a chunk for each core and put together in its own order: which core read what does not show in the result.
/// The room is rented: new room of this size costs more than what is read into it. Whoever reads gives it back.</remarks>
internal sealed class PlainRows : IDisposable
{
    private const int LeastChunkBytes = 1 << 18, UsualRowBytes = 16;
    private static readonly double[] Tens = [.. Enumerable.Range(0, 17).Select(power => Math.Pow(10, power))];
    private static readonly CsvReaderOptions Options = new() { MalformedData = CsvMalformedDataHandling.Throw };
    private readonly List<string> _firstNames = [], _secondNames = [];
    private readonly List<CellProblem> _problems = [];
    private PlainRow[] _rows;
    private int _count;

    private PlainRows(int rows) => _rows = ArrayPool<PlainRow>.Shared.Rent(rows);

    /// <summary>The names under the first column, each once, in the order of their first row; none where they are read in runs.</summary>
    public IReadOnlyList<string> FirstNames => _firstNames;

    /// <summary>The runs of rows of one first name; none where they are not read in runs.</summary>
    public RunNames Runs { get; } = new();

    /// <summary>The names under the second column, each once, in the order of their first row.</summary>
    public IReadOnlyList<string> SecondNames => _secondNames;

    /// <summary>The rows in the order of the file.</summary>
    public ReadOnlySpan<PlainRow> Rows => _rows.AsSpan(0, _count);

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file; commas and decimal points.</param>
    /// <param name="columns">The two columns of names and the column of numbers.</param>
    /// <param name="inRuns">Whether rows of one first name lie together, so that a name is only held against the row before.</param>
    /// <param name="threads">On how many cores at most.</param>
    /// <returns>The chunks in the order of the file.</returns>
    /// <exception cref="TableException">A column is missing, or a cell is no number; every one is named with its row.</exception>
    public static IReadOnlyList<PlainRows> Read(string path, string[] columns, bool inRuns, int threads)
    {
        var file = Path.GetFileName(path);
        using var handle = File.OpenHandle(path);
        var length = checked((int)RandomAccess.GetLength(handle));
        var room = ArrayPool<byte>.Shared.Rent(length);
        try
        {
            for (var read = 0; read < length;)
                read += RandomAccess.Read(handle, room.AsSpan(read, length - read), read) is var more and > 0 ? more : throw new EndOfStreamException($"{file} became shorter while it was read.");
            return Read(file, room.AsMemory(0, length), columns, inRuns, threads);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(room);
        }
    }

    /// <summary>Gives the room back.</summary>
    public void Dispose()
    {
        ArrayPool<PlainRow>.Shared.Return(_rows);
        (_rows, _count) = ([], 0);
    }

    private static PlainRows[] Read(string file, ReadOnlyMemory<byte> bytes, string[] columns, bool inRuns, int threads)
    {
        var chunks = Chunks(bytes, threads);
        var at = ColumnsOf(file, chunks.Count > 1 ? bytes[..(bytes.Span.IndexOf((byte)'\n') + 1)] : bytes, columns);
        // Bare tasks: there are only as many chunks as cores, and heavier machinery takes longer to start than a chunk to read.
        Task<PlainRows>[] others = [.. chunks.Skip(1).Select(chunk => Task.Run(() => Parsed(new(file, bytes, chunk), columns, at, inRuns)))];
        var first = Parsed(new(file, bytes, chunks[0]), columns, at, inRuns);
        PlainRows[] read = [first, .. Task.WhenAll(others).GetAwaiter().GetResult()];
        CellProblem[] problems = [.. read.SelectMany(rows => rows._problems)];
        return problems.Length == 0 ? read : throw new TableException(problems);
    }

    private void Add(PlainRow row)
    {
        if (_count == _rows.Length) Widen();
        _rows[_count++] = row;
    }

    private void Widen()
    {
        var wider = ArrayPool<PlainRow>.Shared.Rent(2 * _count);
        Rows.CopyTo(wider);
        ArrayPool<PlainRow>.Shared.Return(_rows);
        _rows = wider;
    }

    private readonly record struct Part(string File, ReadOnlyMemory<byte> All, Range Range)
    {
        public bool IsFirst => Range.Start.Value == 0;

        // Lines are counted only where something is wrong: to count them on the way costs as much as to cut the cells.
        public int LineAt(long offset) => 1 + All.Span[..(int)Math.Min(All.Length, Range.Start.Value + offset)].Count((byte)'\n');
    }

    // Cut behind line ends. A quoted cell may hold a line end, and UTF-16 or carriage returns may end lines in other ways: such a file is one chunk.
    private static List<Range> Chunks(ReadOnlyMemory<byte> bytes, int threads)
    {
        var span = bytes.Span;
        var count = Math.Clamp(bytes.Length / LeastChunkBytes, 1, Math.Max(1, threads));
        if (count == 1 || span.ContainsAny((byte)'"', (byte)0) || span.Contains((byte)'\r') && span.Count((byte)'\r') != span.Count("\r\n"u8)) return [Range.All];
        List<Range> chunks = [];
        for (var (chunk, start) = (1, 0); chunk <= count && start < bytes.Length; chunk++)
        {
            var wanted = Math.Max(start, (int)((long)bytes.Length * chunk / count));
            var end = chunk == count ? -1 : span[wanted..].IndexOf((byte)'\n');
            var stop = end < 0 ? bytes.Length : wanted + end + 1;
            chunks.Add(start..stop);
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
        catch (CsvFormatException)
        {
            throw new TableException([Quoted(file, 1)]);
        }
        var headers = reader.Headers.ToArray();
        int[] at = [.. columns.Select(column => Array.FindIndex(headers, header => Names.Same(header, column)))];
        return at.Contains(-1) ? throw new TableException([.. columns.Where((_, index) => at[index] < 0).Select(column => new CellProblem(file, 0, column, "", "the sheet needs a column of this name"))]) : at;
    }

    private static PlainRows Parsed(Part part, string[] columns, int[] at, bool inRuns)
    {
        var bytes = part.All[part.Range];
        PlainRows rows = new(bytes.Length / UsualRowBytes + 1);
        KeyCache firstKeys = new(name => Added(rows._firstNames, name)), secondKeys = new(name => Added(rows._secondNames, name));
        using var reader = CsvReader.Create(bytes, part.IsFirst ? Options : Options with { HasHeader = false });
        var last = at.Max();
        try
        {
            if (part.IsFirst) reader.ReadHeader();
            while (reader.Read())
            {
                if (reader.FieldCount <= last || Number(reader.GetSpan(at[2])) is not { } number)
                {
                    rows._problems.Add(new(part.File, part.LineAt(reader.ByteOffset), columns[2], reader.FieldCount > at[2] ? reader.GetString(at[2]) : "", "a number such as 1.5"));
                    continue;
                }
                rows.Add(new(inRuns ? rows.Runs.IndexOf(reader.GetSpan(at[0])) : firstKeys.IndexOf(reader.GetSpan(at[0])), secondKeys.IndexOf(reader.GetSpan(at[1])), number));
            }
        }
        catch (CsvFormatException)
        {
            rows._problems.Add(Quoted(part.File, part.LineAt(reader.ByteOffset)));
        }
        return rows;
    }

    private static CellProblem Quoted(string file, int line) => new(file, line, "", "\"", "a quote only around a whole cell, closed in the same row");

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

/// <summary>A row of a large file of two names and a number.</summary>
/// <param name="First">The first name, as its place in <see cref="PlainRows.FirstNames"/>, or its run.</param>
/// <param name="Second">The second name, as its place in <see cref="PlainRows.SecondNames"/>.</param>
/// <param name="Number">The number; NaN where the cell is blank.</param>
internal readonly record struct PlainRow(int First, int Second, double Number);
