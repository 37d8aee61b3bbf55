using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Tamis.Composition;

/// <summary>Sums the contents of many mixtures over all nutrients at once, with what is known of each.</summary>
/// <remarks>The same sums as <see cref="Amount.Sum"/>, nutrient by nutrient, but one pass over each food's row serves all of them.
/// Nothing is allocated: the caller gives the room for the results. Rows are fetched a mixture ahead, because they lie all over the table
/// and would be waited for, and where all rows of a mixture are known from end to end what is known is not counted nutrient by nutrient.</remarks>
public static class MixtureSums
{
    /// <summary>Sums one mixture.</summary>
    /// <param name="matrix">What is in 100 g of each food.</param>
    /// <param name="rows">The food of each line, as a row of the matrix.</param>
    /// <param name="massGrams">The mass of each line as weighed in, in grams.</param>
    /// <param name="known">Room for <see cref="ContentMatrix.Stride"/> sums: the amount in the whole mixture over the lines with a known content.</param>
    /// <param name="coveredGrams">Room for as many: the mass of the lines with a known content.</param>
    /// <returns>The mass of all lines, in grams.</returns>
    /// <exception cref="ArgumentException">The lists of lines differ in length, or the room is too small.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A line names a row that the matrix does not have.</exception>
    public static double Sum(ContentMatrix matrix, ReadOnlySpan<int> rows, ReadOnlySpan<double> massGrams, Span<double> known, Span<double> coveredGrams) =>
        Sum(matrix, rows, rows, massGrams, known, coveredGrams);

    /// <summary>Sums many mixtures that lie one after another.</summary>
    /// <param name="matrix">What is in 100 g of each food.</param>
    /// <param name="starts">Where the lines of each mixture start; one more entry closes the last.</param>
    /// <param name="rows">The food of each line of all mixtures.</param>
    /// <param name="massGrams">The mass of each line of all mixtures, in grams.</param>
    /// <param name="known">Room for <see cref="ContentMatrix.Stride"/> sums a mixture.</param>
    /// <param name="coveredGrams">Room for as many.</param>
    /// <param name="totalGrams">Room for one mass a mixture.</param>
    /// <exception cref="ArgumentException">The lists do not fit each other.</exception>
    public static void SumMany(
        ContentMatrix matrix, ReadOnlySpan<int> starts, ReadOnlySpan<int> rows, ReadOnlySpan<double> massGrams,
        Span<double> known, Span<double> coveredGrams, Span<double> totalGrams)
    {
        if (starts.Length != totalGrams.Length + 1)
            throw new ArgumentException($"{totalGrams.Length} mixtures need {totalGrams.Length + 1} starts, not {starts.Length}.", nameof(starts));
        var stride = matrix.Stride;
        for (var mixture = 0; mixture < totalGrams.Length; mixture++)
        {
            var (start, count) = (starts[mixture], starts[mixture + 1] - starts[mixture]);
            var own = rows.Slice(start, count);
            var ahead = rows.Length - start - count < count ? own : rows.Slice(start + count, count);
            totalGrams[mixture] = Sum(matrix, own, ahead, massGrams.Slice(start, count), known.Slice(mixture * stride, stride), coveredGrams.Slice(mixture * stride, stride));
        }
    }

    // The rows ahead are those that are wanted next: as many as there are lines.
    private static double Sum(ContentMatrix matrix, ReadOnlySpan<int> rows, ReadOnlySpan<int> ahead, ReadOnlySpan<double> massGrams, Span<double> known, Span<double> coveredGrams)
    {
        if (rows.Length != massGrams.Length)
            throw new ArgumentException($"{rows.Length} foods but {massGrams.Length} masses; give one mass a line.", nameof(massGrams));
        if (known.Length < matrix.Stride || coveredGrams.Length < matrix.Stride)
            throw new ArgumentException($"The sums need room for {matrix.Stride} numbers.", nameof(known));
        var isKnown = matrix.Whole is { } wholes ? wholes.AreKnown : default;
        var (areKnown, total, count) = (true, 0.0, matrix.Rows);
        for (var line = 0; line < rows.Length; line++)
        {
            var row = rows[line];
            if ((uint)row >= (uint)count) throw new ArgumentOutOfRangeException(nameof(rows), row, $"The matrix has rows 0 to {count - 1}.");
            areKnown &= (uint)row < (uint)isKnown.Length && isKnown[row];
            total += massGrams[line];
        }
        MixtureLines lines = new(rows, ahead, massGrams, total);
        if (matrix.Whole is not { } whole) Sum<double, PlainSums>(matrix.Per100Grams, matrix.Per100Grams, matrix.Stride, lines, known, coveredGrams);
        else if (areKnown) Sum<uint, KnownWholeSums>(whole.Counts, whole.UnitIn1Gram, matrix.Stride, lines, known, coveredGrams);
        else Sum<uint, WholeSums>(whole.Counts, whole.UnitIn1Gram, matrix.Stride, lines, known, coveredGrams);
        return total;
    }

    // As many columns at a time as have room for their running sums in registers, so that each mass is fetched once for all of them.
    private static void Sum<TContent, TSums>(
        ReadOnlySpan<TContent> contents, ReadOnlySpan<double> units, int columns, MixtureLines lines, Span<double> known, Span<double> coveredGrams)
        where TSums : struct, IRunningSums<TContent>
    {
        var column = 0;
        for (; column + 4 * ContentGrid.Pitch <= columns; column += 4 * ContentGrid.Pitch)
            Pass<TContent, SideBySide<TContent, SideBySide<TContent, TSums>>>(contents, units, column, columns, lines, known, coveredGrams);
        for (; column + 2 * ContentGrid.Pitch <= columns; column += 2 * ContentGrid.Pitch)
            Pass<TContent, SideBySide<TContent, TSums>>(contents, units, column, columns, lines, known, coveredGrams);
        for (; column < columns; column += ContentGrid.Pitch)
            Pass<TContent, TSums>(contents, units, column, columns, lines, known, coveredGrams);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static unsafe void Pass<TContent, TSums>(
        ReadOnlySpan<TContent> contents, ReadOnlySpan<double> units, int column, int columns, MixtureLines lines, Span<double> known, Span<double> coveredGrams)
        where TSums : struct, IRunningSums<TContent>
    {
        ref var first = ref Unsafe.Add(ref MemoryMarshal.GetReference(contents), column);
        // An address and no reference: nothing is read there, and the row ahead may yet be refused.
        var firstAddress = (nint)Unsafe.AsPointer(ref first);
        TSums sums = default;
        for (var line = 0; line < lines.Rows.Length; line++)
        {
            var ahead = firstAddress + (nint)lines.Ahead[line] * columns * Unsafe.SizeOf<TContent>();
            sums.Add(ref Unsafe.Add(ref first, (nint)lines.Rows[line] * columns), ahead, Vector512.Create(lines.MassGrams[line]));
        }
        sums.Store(Vector512.Create(lines.TotalGrams),
            ref Unsafe.Add(ref MemoryMarshal.GetReference(units), column), ref Unsafe.Add(ref MemoryMarshal.GetReference(known), column), ref Unsafe.Add(ref MemoryMarshal.GetReference(coveredGrams), column));
    }

    private readonly ref struct MixtureLines(ReadOnlySpan<int> rows, ReadOnlySpan<int> ahead, ReadOnlySpan<double> massGrams, double totalGrams)
    {
        public readonly ReadOnlySpan<int> Rows = rows, Ahead = ahead;
        public readonly ReadOnlySpan<double> MassGrams = massGrams;
        public readonly double TotalGrams = totalGrams;
    }
}
