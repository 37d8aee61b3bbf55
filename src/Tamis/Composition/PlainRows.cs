using System.Buffers;
using System.Buffers.Text;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using CsvHelper;
using Microsoft.Win32.SafeHandles;
using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>The rows of a part of a large file of two names and a number.</summary>
/// <remarks>A file is cut into a part for each core and put together in its own order: which core read what does not show in the result.
/// The room is rented: new room of this size costs more than what is read into it. Whoever reads gives it back.</remarks>
internal sealed class PlainRows : IDisposable
{
    private const int BlockBytes = 1 << 18, LeastPartBytes = 1 << 18, UsualRowBytes = 16;
    private static readonly CsvReaderOptions Options = new() { Separator = ',', MalformedData = CsvMalformedDataHandling.Throw };
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
            Part whole = new(file, room.AsMemory(0, length), 0, length);
            var read = HeadOf(handle, length) is { } head ? ReadParts(handle, whole, LineStarts(handle, length, threads), Task.Run(() => ColumnsOf(file, head, columns)), columns[2], inRuns) : null;
            return read ?? ReadWhole(handle, whole, columns, inRuns);
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

    // Each core reads and parses its own part, and does not wait for the others; null where a part is not plain, so that nobody can tell where a row starts.
    private static PlainRows[]? ReadParts(SafeFileHandle handle, Part whole, int[] starts, Task<int[]> columnsAt, string numberColumn, bool inRuns)
    {
        var read = new PlainRows?[starts.Length];
        Cores.Each(starts.Length, starts.Length, place =>
        {
            Part part = new(whole.File, whole.All, starts[place], place + 1 < starts.Length ? starts[place + 1] : whole.End);
            if (part.FillIfPlain(handle)) read[place] = Parsed(part, columnsAt, numberColumn, inRuns);
        });
        if (!read.Contains(null)) return WithoutProblems(whole, starts, read!);
        foreach (var rows in read) rows?.Dispose();
        return null;
    }

    private static PlainRows[] ReadWhole(SafeFileHandle handle, Part whole, string[] columns, bool inRuns)
    {
        whole.FillIfPlain(handle);
        return WithoutProblems(whole, [0], [Parsed(whole, Task.FromResult(ColumnsOf(whole.File, whole.Bytes, columns)), columns[2], inRuns)]);
    }

    // Lines before a part are counted only where something is wrong: to count them on the way costs as much as to cut the cells.
    private static PlainRows[] WithoutProblems(Part whole, int[] starts, PlainRows[] read)
    {
        CellProblem[] problems = [.. read.SelectMany((rows, part) => rows._problems.Select(problem => problem with { Row = problem.Row + (whole with { End = starts[part] }).Lines }))];
        return problems.Length == 0 ? read : throw new TableException(problems);
    }

    // The first line with its end, where that is the first row for sure: a blank line is none, in a quoted cell a line may end, and in UTF-16 a line end is two bytes.
    private static byte[]? HeadOf(SafeFileHandle handle, int length)
    {
        var head = new byte[LineStartAfter(handle, 0, length)];
        return RandomAccess.Read(handle, head, 0) == head.Length && head is [.., (byte)'\n'] && head.AsSpan().ContainsAnyExcept(" \t\r\n"u8) && !head.AsSpan().ContainsAny((byte)'"', (byte)0) ? head : null;
    }

    // A part for each core, from one line's start to another's.
    private static int[] LineStarts(SafeFileHandle handle, int length, int threads)
    {
        var count = Math.Clamp(length / LeastPartBytes, 1, threads);
        List<int> starts = [0];
        for (var part = 1; part < count; part++)
            if (LineStartAfter(handle, Math.Max(starts[^1], (int)((long)length * part / count)), length) is var start && start < length && start > starts[^1]) starts.Add(start);
        return [.. starts];
    }

    // Behind the next line end; the end of the file where there is none.
    private static int LineStartAfter(SafeFileHandle handle, int offset, int length)
    {
        Span<byte> some = stackalloc byte[256];
        for (var read = 0; offset < length && (read = RandomAccess.Read(handle, some, offset)) > 0; offset += read)
            if (some[..read].IndexOf((byte)'\n') is var end and >= 0) return offset + end + 1;
        return length;
    }

    private Span<PlainRow> Widened()
    {
        var wider = ArrayPool<byte>.Shared.Rent(2 * _room.Length);
        _room.CopyTo(wider, 0);
        ArrayPool<byte>.Shared.Return(_room);
        _room = wider;
        return Room;
    }

    private sealed record Part(string File, Memory<byte> All, int Start, int End)
    {
        public bool IsFirst => Start == 0;

        public ReadOnlyMemory<byte> Bytes => All[Start..End];

        public int Lines => Bytes.Span.Count((byte)'\n');

        public int LineAt(long offset) => 1 + (this with { End = (int)Math.Min(End, Start + offset) }).Lines;

        // Reads the part; false where it is not plain: a quoted cell may hold a line end, and UTF-16 or carriage returns may end lines in other ways.
        // Each block is looked through while it is still near.
        public bool FillIfPlain(SafeFileHandle handle)
        {
            var isPlain = true;
            for (var at = Start; at < End;)
            {
                var block = All.Span[at..Math.Min(End, at + BlockBytes)];
                var read = RandomAccess.Read(handle, block, at);
                if (read == 0) throw new EndOfStreamException($"{File} became shorter while it was read.");
                isPlain = isPlain && !block[..read].ContainsAny((byte)'"', (byte)0, (byte)'\r');
                at += read;
            }
            var bytes = Bytes.Span;
            return isPlain || !bytes.ContainsAny((byte)'"', (byte)0) && bytes.Count((byte)'\r') == bytes.Count("\r\n"u8);
        }
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

    private static PlainRows Parsed(Part part, Task<int[]> columnsAt, string numberColumn, bool inRuns)
    {
        var bytes = part.Bytes;
        PlainRows rows = new(bytes.Length / UsualRowBytes + 1);
        KeyCache firstKeys = new(name => Added(rows._firstNames, name)), secondKeys = new(name => Added(rows._secondNames, name));
        using var reader = CsvReader.Create(bytes, part.IsFirst ? Options : Options with { HasHeader = false });
        var around = bytes.Span;
        var room = rows.Room;
        var count = 0;
        try
        {
            if (part.IsFirst) reader.ReadHeader();
            // The columns may still be looked up while the first rows are cut.
            var isRow = reader.Read();
            var (first, second, third) = columnsAt.GetAwaiter().GetResult() is [var a, var b, var c] ? (a, b, c) : default;
            var last = Math.Max(first, Math.Max(second, third));
            for (; isRow; isRow = reader.Read())
            {
                if (reader.FieldCount <= last || Number(reader.GetSpan(third), around) is not { } number)
                {
                    rows._problems.Add(new(part.File, part.LineAt(reader.ByteOffset), numberColumn, reader.FieldCount > third ? reader.GetString(third) : "", "a number such as 1.5"));
                    continue;
                }
                if (count == room.Length) room = rows.Widened();
                room[count++] = new(inRuns ? rows.Runs.IndexOf(reader.GetSpan(first)) : firstKeys.IndexOf(reader.GetSpan(first)), secondKeys.IndexOf(reader.GetSpan(second)), number);
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
