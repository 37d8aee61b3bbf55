using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Tamis.Composition;

/// <summary>The running sums of some columns of a mixture side by side, held in registers while the lines go by.</summary>
/// <typeparam name="TContent">How a content is written down.</typeparam>
internal interface IRunningSums<TContent>
{
    /// <summary>Adds a line.</summary>
    /// <param name="contents">The first of its contents.</param>
    /// <param name="ahead">Where the contents of a line lie that will be added soon.</param>
    /// <param name="massGrams">Its mass.</param>
    void Add(ref TContent contents, nint ahead, Vector512<double> massGrams);

    /// <summary>Writes the sums down.</summary>
    /// <param name="totalGrams">The mass of all lines.</param>
    /// <param name="units">What a unit of the contents makes in 1 g, a column each.</param>
    /// <param name="known">Where the amount in all lines with a known content goes, a column each.</param>
    /// <param name="coveredGrams">Where the mass of these lines goes, a column each.</param>
    /// <param name="column">The first of the columns that were summed.</param>
    void Store(Vector512<double> totalGrams, ReadOnlySpan<double> units, Span<double> known, Span<double> coveredGrams, int column);
}

/// <summary>Sums of whole numbers where some are unknown.</summary>
/// <remarks>Counts are one too many, so that 0 is left for what is unknown: it adds nothing to the sum, and each known line adds its own mass too often.</remarks>
internal struct WholeSums : IRunningSums<uint>
{
    private Vector512<double> _left, _right, _leftCovered, _rightCovered;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(ref uint contents, nint ahead, Vector512<double> massGrams)
    {
        Cache.Fetch(ahead);
        var (left, right) = WholeContents.Widened(ref contents);
        _left = Vector512.FusedMultiplyAdd(massGrams, left, _left);
        _right = Vector512.FusedMultiplyAdd(massGrams, right, _right);
        _leftCovered = Vector512.ConditionalSelect(Vector512.Equals(left, Vector512<double>.Zero), _leftCovered, _leftCovered + massGrams);
        _rightCovered = Vector512.ConditionalSelect(Vector512.Equals(right, Vector512<double>.Zero), _rightCovered, _rightCovered + massGrams);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Store(Vector512<double> totalGrams, ReadOnlySpan<double> units, Span<double> known, Span<double> coveredGrams, int column)
    {
        SixteenColumns.Store((_left - _leftCovered) * Vector512.Create(units[column..]), (_right - _rightCovered) * Vector512.Create(units[(column + ContentGrid.Lane)..]), known[column..]);
        SixteenColumns.Store(_leftCovered, _rightCovered, coveredGrams[column..]);
    }
}

/// <summary>Sums of whole numbers that are all known: what they cover is the mass of all lines.</summary>
internal struct KnownWholeSums : IRunningSums<uint>
{
    private Vector512<double> _left, _right;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(ref uint contents, nint ahead, Vector512<double> massGrams)
    {
        Cache.Fetch(ahead);
        var (left, right) = WholeContents.Widened(ref contents);
        _left = Vector512.FusedMultiplyAdd(massGrams, left, _left);
        _right = Vector512.FusedMultiplyAdd(massGrams, right, _right);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Store(Vector512<double> totalGrams, ReadOnlySpan<double> units, Span<double> known, Span<double> coveredGrams, int column)
    {
        SixteenColumns.Store((_left - totalGrams) * Vector512.Create(units[column..]), (_right - totalGrams) * Vector512.Create(units[(column + ContentGrid.Lane)..]), known[column..]);
        SixteenColumns.Store(totalGrams, totalGrams, coveredGrams[column..]);
    }
}

/// <summary>Sums of contents as they are, in 100 g.</summary>
/// <remarks>NaN is not equal to itself: what is not known adds nothing, neither to the sum nor to what it covers.</remarks>
internal struct PlainSums : IRunningSums<double>
{
    private Vector512<double> _left, _right, _leftCovered, _rightCovered;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(ref double contents, nint ahead, Vector512<double> massGrams)
    {
        Cache.Fetch(ahead);
        Cache.Fetch(ahead + ContentGrid.Lane * sizeof(double));
        Add(Vector512.LoadUnsafe(ref contents), massGrams, ref _left, ref _leftCovered);
        Add(Vector512.LoadUnsafe(ref contents, ContentGrid.Lane), massGrams, ref _right, ref _rightCovered);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Store(Vector512<double> totalGrams, ReadOnlySpan<double> units, Span<double> known, Span<double> coveredGrams, int column)
    {
        SixteenColumns.Store(_left * 0.01, _right * 0.01, known[column..]);
        SixteenColumns.Store(_leftCovered, _rightCovered, coveredGrams[column..]);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(Vector512<double> contents, Vector512<double> massGrams, ref Vector512<double> sum, ref Vector512<double> covered)
    {
        var isKnown = Vector512.Equals(contents, contents);
        sum = Vector512.ConditionalSelect(isKnown, Vector512.FusedMultiplyAdd(massGrams, contents, sum), sum);
        covered = Vector512.ConditionalSelect(isKnown, covered + massGrams, covered);
    }
}

/// <summary>The columns of a cache line of contents, as two vectors of doubles.</summary>
internal static class SixteenColumns
{
    /// <summary>Writes both down, one behind the other.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Vector512<double> left, Vector512<double> right, Span<double> room)
    {
        left.CopyTo(room);
        right.CopyTo(room[ContentGrid.Lane..]);
    }
}

/// <summary>What is near the processor.</summary>
internal static class Cache
{
    /// <summary>Has the 64 bytes at an address brought near, where the processor knows how; whatever the address, nothing is read.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static unsafe void Fetch(nint address)
    {
        if (Sse.IsSupported) Sse.Prefetch0((void*)address);
    }
}
