using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Tamis.Composition;

/// <summary>The contents of a matrix as whole numbers of a decimal unit, one unit a column: half the bytes of the same contents as doubles, and exactly those.</summary>
/// <remarks>Published contents are decimals of a few digits, so a column of them is counted in tenths, hundredths, … of its unit.
/// Sums over many mixtures wait for rows on their way from the cache, and half the bytes are half the wait.</remarks>
internal sealed class WholeContents
{
    // Up to this power of ten a quotient rounded once gives back the very decimal (Clinger 1990), and no content is stated finer.
    private const double MostUnitsIn1 = 1e15;

    private const int CacheLineBytes = 64;

    // Counts start where a cache line starts, so that sixteen columns are one line and not parts of two.
    private readonly byte[] _room;
    private readonly int _start;
    private readonly double[] _unitIn1Gram;
    private readonly bool[] _haveUnknowns;
    private bool _areAllKnown;

    private WholeContents(int rows, double[] unitIn1Gram)
    {
        _room = GC.AllocateUninitializedArray<byte>(rows * unitIn1Gram.Length * sizeof(uint) + CacheLineBytes, pinned: true);
        _start = (int)(-Marshal.UnsafeAddrOfPinnedArrayElement(_room, 0) & (CacheLineBytes - 1));
        (_unitIn1Gram, _haveUnknowns) = (unitIn1Gram, new bool[rows]);
    }

    /// <summary>How many units are in 100 g and one more, row after row as in the matrix; 0 where that is unknown, and 1 behind the last column.</summary>
    public ReadOnlySpan<uint> Counts => Room;

    private Span<uint> Room => MemoryMarshal.Cast<byte, uint>(_room.AsSpan(_start))[..(_haveUnknowns.Length * _unitIn1Gram.Length)];

    /// <summary>What a unit in 100 g makes in 1 g, a column each.</summary>
    public ReadOnlySpan<double> UnitIn1Gram => _unitIn1Gram;

    /// <summary>Whether all contents of some rows are known.</summary>
    public bool AreAllKnown(ReadOnlySpan<int> rows)
    {
        if (_areAllKnown) return true;
        var haveUnknowns = _haveUnknowns;
        var any = false;
        foreach (var row in rows) any |= haveUnknowns[row];
        return !any;
    }

    /// <summary>The contents of a matrix as whole numbers.</summary>
    /// <param name="per100Grams">The contents in 100 g, row after row, NaN where unknown.</param>
    /// <param name="stride">From the start of one row to the next, a multiple of <see cref="ContentGrid.Pitch"/>.</param>
    /// <param name="columns">How many columns have contents.</param>
    /// <param name="threads">On how many cores.</param>
    /// <returns>Null where there is no column, a content is below zero or a column needs more digits than fit.</returns>
    public static WholeContents? Of(double[] per100Grams, int stride, int columns, int threads)
    {
        if (stride == 0) return null;
        WholeContents whole = new(per100Grams.Length / stride, new double[stride]);
        var areWhole = true;
        // Whole lines of the cache, so that no two cores write to one.
        Cores.Each(stride / ContentGrid.Pitch, threads, block =>
        {
            for (var column = block * ContentGrid.Pitch; column < (block + 1) * ContentGrid.Pitch && areWhole; column += ContentGrid.Lane)
                if (!whole.Count(per100Grams, stride, column, columns)) areWhole = false;
        });
        whole._areAllKnown = !whole._haveUnknowns.Contains(true);
        return areWhole ? whole : null;
    }

    // Counts eight columns, of which those behind the last have nothing; false where they cannot be counted.
    private bool Count(ReadOnlySpan<double> per100Grams, int stride, int column, int columns)
    {
        if (UnitsIn1(per100Grams, stride, column) is not { } units) return false;
        (Vector512.Create(0.01) / units).CopyTo(_unitIn1Gram, column);
        var counts = Room;
        var unknown = Vector512.ConditionalSelect(Vector512.LessThan(Vector512<double>.Indices + Vector512.Create((double)column), Vector512.Create((double)columns)), Vector512<double>.Zero, Vector512<double>.One);
        for (var (row, at) = (0, column); at < per100Grams.Length; row++, at += stride)
        {
            var contents = Vector512.Create(per100Grams[at..]);
            var isKnown = Vector512.Equals(contents, contents);
            var counted = Vector512.ConvertToUInt64(Vector512.ConditionalSelect(isKnown, Vector512.Round(contents * units) + Vector512<double>.One, unknown));
            Vector512.Narrow(counted, counted).GetLower().CopyTo(counts[at..]);
            if (Vector512.EqualsAny(counted, Vector512<ulong>.Zero)) _haveUnknowns[row] = true;
        }
        return true;
    }

    /// <summary>Sixteen counts as doubles.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector512<double> Left, Vector512<double> Right) Widened(ref uint counts) =>
        (Widened(Vector256.LoadUnsafe(ref counts)), Widened(Vector256.LoadUnsafe(ref counts, ContentGrid.Lane)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Widened(Vector256<uint> counts)
    {
        if (Avx512F.IsSupported) return Avx512F.ConvertToVector512Double(counts);
        var (lower, upper) = Vector256.Widen(counts);
        return Vector512.ConvertToDouble(Vector512.Create(lower, upper));
    }

    // How many units make 1, for eight columns: the fewest, as a power of ten, of which every content is a whole number.
    private static Vector512<double>? UnitsIn1(ReadOnlySpan<double> per100Grams, int stride, int column)
    {
        var (units, most) = (Vector512<double>.One, Vector512<double>.Zero);
        for (var at = column; at < per100Grams.Length; at += stride)
        {
            var contents = Vector512.Create(per100Grams[at..]);
            contents = Vector512.ConditionalSelect(Vector512.Equals(contents, contents), contents, Vector512<double>.Zero);
            if (Vector512.LessThanAny(contents, Vector512<double>.Zero)) return null;
            // Rows before this one are as exact in a finer unit, so that none need be looked at twice.
            while (Vector512.Round(contents * units) / units is var counted && !Vector512.EqualsAll(counted, contents))
            {
                units = Vector512.ConditionalSelect(Vector512.Equals(counted, contents), units, units * 10);
                if (Vector512.GreaterThanAny(units, Vector512.Create(MostUnitsIn1))) return null;
            }
            most = Vector512.Max(most, contents);
        }
        return Vector512.LessThanOrEqualAll(most * units, Vector512.Create(uint.MaxValue - 2.0)) ? units : null;
    }
}
