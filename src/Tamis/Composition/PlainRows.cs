using System.Buffers;
using System.Buffers.Text;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using CsvHelper;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>The rows of a part of a large file of two names and a number.</summary>
/// <remarks>A file is cut into a part for each core and put together in its own order: which core read what does not show in the result.
/// The room is rented: new room of this size costs more than what is read into it. Whoever reads gives it back.</remarks>
internal sealed class PlainRows : IDisposable
{
    private const int LeastPartBytes = 1 << 18, UsualRowBytes = 16;
    private static readonly CsvReaderOptions Options = new() { MalformedData = CsvMalformedDataHandling.Throw };
    private readonly List<string> _firstNames = [], _secondNames = [];
    private readonly List<CellProblem> _problems = [];
    private byte[] _room;
    private int _count;

    // Bytes, because the pool of bytes is there already: one of rows would first have to be compiled.
    private PlainRows(int rows) => _room = ArrayPool<byte>.Shared.Rent(rows * Unsafe.SizeOf<PlainRow>());

    /// <summary>The names under the first column, each once, in the order of their first row; none where they are read in runs.</summary>
    public IReadOnlyList<string> FirstNames => _firstNames;

    /// <summary>The runs of rows of one first name; none where they are not read in runs.</summary>
    public RunNames Runs { get; } = new();

    /// <summary>The names under the second column, each once, in the order of their first row.</summary>
    public IReadOnlyList<string> SecondNames => _secondNames;

    /// <summary>The rows in the order of the file.</summary>
    public ReadOnlySpan<PlainRow> Rows => Room[.._count];

    private Span<PlainRow> Room => MemoryMarshal.Cast<byte, PlainRow>(_room.AsSpan());

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file; commas and decimal points.</param>
    /// <param name="columns">The two columns of names and the column of numbers.</param>
    /// <param name="inRuns">Whether rows of one first name lie together, so that a name is only held against the row before.</param>
    /// <param name="threads">On how many cores at most.</param>
    /// <returns>The parts in the order of the file.</returns>
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
        ArrayPool<byte>.Shared.Return(_room);
        (_room, _count) = ([], 0);
    }

    private static PlainRows[] Read(string file, ReadOnlyMemory<byte> bytes, string[] columns, bool inRuns, int threads)
    {
        var parts = Parts(file, bytes, threads);
        var at = ColumnsOf(file, parts.Count > 1 ? bytes[..(bytes.Span.IndexOf((byte)'\n') + 1)] : bytes, columns);
        // Bare tasks: there are only as many parts as cores, and heavier machinery takes longer to start than a part to read.
        Task<PlainRows>[] others = [.. parts.Skip(1).Select(part => Task.Run(() => Parsed(part, columns, at, inRuns)))];
        var first = Parsed(parts[0], columns, at, inRuns);
        PlainRows[] read = [first, .. Task.WhenAll(others).GetAwaiter().GetResult()];
        CellProblem[] problems = [.. read.SelectMany(rows => rows._problems)];
        return problems.Length == 0 ? read : throw new TableException(problems);
    }

    private Span<PlainRow> Widened()
    {
        var wider = ArrayPool<byte>.Shared.Rent(2 * _room.Length);
        _room.CopyTo(wider, 0);
        ArrayPool<byte>.Shared.Return(_room);
        _room = wider;
        return Room;
    }

    private sealed record Part(string File, ReadOnlyMemory<byte> All, int Start, int End)
    {
        public bool IsFirst => Start == 0;

        public ReadOnlyMemory<byte> Bytes => All[Start..End];

        // Lines are counted only where something is wrong: to count them on the way costs as much as to cut the cells.
        public int LineAt(long offset) => 1 + All.Span[..(int)Math.Min(All.Length, Start + offset)].Count((byte)'\n');
    }

    // Cut behind line ends. A quoted cell may hold a line end, and UTF-16 or carriage returns may end lines in other ways: such a file is one part.
    private static List<Part> Parts(string file, ReadOnlyMemory<byte> bytes, int threads)
    {
        var span = bytes.Span;
        var count = Math.Clamp(bytes.Length / LeastPartBytes, 1, Math.Max(1, threads));
        if (count == 1 || span.ContainsAny((byte)'"', (byte)0) || span.Contains((byte)'\r') && span.Count((byte)'\r') != span.Count("\r\n"u8)) return [new(file, bytes, 0, bytes.Length)];
        List<Part> parts = [];
        for (var (part, start) = (1, 0); part <= count && start < bytes.Length; part++)
        {
            var wanted = Math.Max(start, (int)((long)bytes.Length * part / count));
            var end = part == count ? -1 : span[wanted..].IndexOf((byte)'\n');
            var stop = end < 0 ? bytes.Length : wanted + end + 1;
            parts.Add(new(file, bytes, start, stop));
            start = stop;
        }
        return parts;
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
        List<CellProblem> missing = [];
        var at = new int[columns.Length];
        for (var column = 0; column < at.Length; column++)
        {
            at[column] = Array.FindIndex(headers, header => Names.Same(header, columns[column]));
            if (at[column] < 0) missing.Add(new(file, 0, columns[column], "", "the sheet needs a column of this name"));
        }
        return missing.Count == 0 ? at : throw new TableException([.. missing]);
    }

    private static PlainRows Parsed(Part part, string[] columns, int[] at, bool inRuns)
    {
        var bytes = part.Bytes;
        PlainRows rows = new(bytes.Length / UsualRowBytes + 1);
        KeyCache firstKeys = new(name => Added(rows._firstNames, name)), secondKeys = new(name => Added(rows._secondNames, name));
        using var reader = CsvReader.Create(bytes, part.IsFirst ? Options : Options with { HasHeader = false });
        var last = Math.Max(at[0], Math.Max(at[1], at[2]));
        var around = bytes.Span;
        var room = rows.Room;
        var count = 0;
        try
        {
            if (part.IsFirst) reader.ReadHeader();
            while (reader.Read())
            {
                if (reader.FieldCount <= last || Number(reader.GetSpan(at[2]), around) is not { } number)
                {
                    rows._problems.Add(new(part.File, part.LineAt(reader.ByteOffset), columns[2], reader.FieldCount > at[2] ? reader.GetString(at[2]) : "", "a number such as 1.5"));
                    continue;
                }
                if (count == room.Length) room = rows.Widened();
                room[count++] = new(inRuns ? rows.Runs.IndexOf(reader.GetSpan(at[0])) : firstKeys.IndexOf(reader.GetSpan(at[0])), secondKeys.IndexOf(reader.GetSpan(at[1])), number);
            }
        }
        catch (CsvFormatException)
        {
            rows._problems.Add(Quoted(part.File, part.LineAt(reader.ByteOffset)));
        }
        rows._count = count;
        return rows;
    }

    private static CellProblem Quoted(string file, int line) => new(file, line, "", "\"", "a quote only around a whole cell, closed in the same row");

    // A blank is unknown. Inlined, because a first call of it by itself would be compiled in the slow way.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double? Number(ReadOnlySpan<byte> text, ReadOnlySpan<byte> around)
    {
        if (text.IsEmpty) return double.NaN;
        if (PlainDecimal.TryParse(text, around, out var plain)) return plain;
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
