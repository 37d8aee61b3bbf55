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
    public static double Sum(ContentMatrix matrix, ReadOnlySpan<int> rows, ReadOnlySpan<double> massGrams, Span<double> known, Span<double> coveredGrams)
    {
        var totalGrams = 0.0;
        SumMany(matrix, [0, rows.Length], rows, massGrams, known, coveredGrams, new(ref totalGrams));
        return totalGrams;
    }

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
        Check(matrix, starts, rows, massGrams, known, coveredGrams, totalGrams);
        if (matrix.Whole is { } whole)
        {
            Mixtures<uint> mixtures = new(whole.Counts, whole.UnitIn1Gram, matrix.Stride, rows, massGrams, known, coveredGrams);
            for (var mixture = 0; mixture < totalGrams.Length; mixture++)
                totalGrams[mixture] = whole.AreAllKnown(rows[starts[mixture]..starts[mixture + 1]])
                    ? Sum<uint, KnownWholeSums>(mixtures, mixture, starts[mixture]..starts[mixture + 1])
                    : Sum<uint, WholeSums>(mixtures, mixture, starts[mixture]..starts[mixture + 1]);
        }
        else
        {
            Mixtures<double> mixtures = new(matrix.Per100Grams, matrix.Per100Grams, matrix.Stride, rows, massGrams, known, coveredGrams);
            for (var mixture = 0; mixture < totalGrams.Length; mixture++)
                totalGrams[mixture] = Sum<double, PlainSums>(mixtures, mixture, starts[mixture]..starts[mixture + 1]);
        }
    }

    // All at once and before anything is written, because in the passes nothing is checked.
    private static void Check(
        ContentMatrix matrix, ReadOnlySpan<int> starts, ReadOnlySpan<int> rows, ReadOnlySpan<double> massGrams,
        ReadOnlySpan<double> known, ReadOnlySpan<double> coveredGrams, ReadOnlySpan<double> totalGrams)
    {
        if (starts.Length != totalGrams.Length + 1)
            throw new ArgumentException($"{totalGrams.Length} mixtures need {totalGrams.Length + 1} starts, not {starts.Length}.", nameof(starts));
        if (rows.Length != massGrams.Length)
            throw new ArgumentException($"{rows.Length} foods but {massGrams.Length} masses; give one mass a line.", nameof(massGrams));
        if (Math.Min(known.Length, coveredGrams.Length) < (long)totalGrams.Length * matrix.Stride)
            throw new ArgumentException($"The sums need room for {(long)totalGrams.Length * matrix.Stride} numbers.", nameof(known));
        for (var mixture = 1; mixture < starts.Length; mixture++)
            if (starts[mixture] < starts[mixture - 1]) throw new ArgumentException($"Mixture {mixture} starts at line {starts[mixture]}, before the one in front of it at {starts[mixture - 1]}.", nameof(starts));
        if (starts[0] < 0 || starts[^1] > rows.Length)
            throw new ArgumentException($"The mixtures have the lines {starts[0]} to {starts[^1]} of {rows.Length}.", nameof(starts));
        var own = rows[starts[0]..starts[^1]];
        if (own.IndexOfAnyExceptInRange(0, matrix.Rows - 1) is var strange and >= 0)
            throw new ArgumentOutOfRangeException(nameof(rows), own[strange], $"The matrix has rows 0 to {matrix.Rows - 1}.");
    }

    // As many columns at a time as have room for their running sums in registers, so that each mass is fetched once for all of them.
    private static double Sum<TContent, TSums>(in Mixtures<TContent> mixtures, int mixture, Range lines)
        where TSums : struct, IRunningSums<TContent>
    {
        var total = 0.0;
        if (mixtures.Columns == 0)
            foreach (var massGrams in mixtures.MassGrams[lines]) total += massGrams;
        for (var column = 0; column < mixtures.Columns; column += 5 * ContentGrid.Pitch)
            total = ((mixtures.Columns - column) / ContentGrid.Pitch) switch
            {
                1 => Pass<TContent, TSums, One>(mixtures, mixture, lines, column),
                2 => Pass<TContent, TSums, Two>(mixtures, mixture, lines, column),
                3 => Pass<TContent, TSums, Three>(mixtures, mixture, lines, column),
                4 => Pass<TContent, TSums, Four>(mixtures, mixture, lines, column),
                _ => Pass<TContent, TSums, Five>(mixtures, mixture, lines, column),
            };
        return total;
    }

    // Locals and no array of sums: the compiler keeps those in registers, and this in memory. What a width does not have is left out as it is compiled.
    private static unsafe double Pass<TContent, TSums, TWidth>(in Mixtures<TContent> mixtures, int mixture, Range lines, int column)
        where TSums : struct, IRunningSums<TContent>
        where TWidth : struct, IWidth
    {
        ref var start = ref Unsafe.Add(ref MemoryMarshal.GetReference(mixtures.Contents), column);
        // An address and no reference: nothing is read there, and what lies behind the last mixture is nobody's to check.
        var address = (nint)Unsafe.AsPointer(ref start);
        var (columns, bytes) = (mixtures.Columns, ContentGrid.Pitch * Unsafe.SizeOf<TContent>());
        var rows = mixtures.Rows[lines];
        // As many rows as there are lines, from the next mixture on; its own again where there are not so many.
        var rowsAhead = mixtures.Rows[lines.End.Value..] is var behind && behind.Length >= rows.Length ? behind : rows;
        var masses = mixtures.MassGrams[lines];
        TSums first = default, second = default, third = default, fourth = default, fifth = default;
        var total = Vector512<double>.Zero;
        for (var line = 0; line < rows.Length; line++)
        {
            var ahead = address + (nint)rowsAhead[line] * columns * Unsafe.SizeOf<TContent>();
            ref var row = ref Unsafe.Add(ref start, (nint)rows[line] * columns);
            var massGrams = Vector512.Create(masses[line]);
            total += massGrams;
            first.Add(ref row, ahead, massGrams);
            if (TWidth.Blocks > 1) second.Add(ref Unsafe.Add(ref row, ContentGrid.Pitch), ahead + bytes, massGrams);
            if (TWidth.Blocks > 2) third.Add(ref Unsafe.Add(ref row, 2 * ContentGrid.Pitch), ahead + 2 * bytes, massGrams);
            if (TWidth.Blocks > 3) fourth.Add(ref Unsafe.Add(ref row, 3 * ContentGrid.Pitch), ahead + 3 * bytes, massGrams);
            if (TWidth.Blocks > 4) fifth.Add(ref Unsafe.Add(ref row, 4 * ContentGrid.Pitch), ahead + 4 * bytes, massGrams);
        }
        var units = mixtures.Units[column..];
        Span<double> known = mixtures.Known[(mixture * columns + column)..], covered = mixtures.CoveredGrams[(mixture * columns + column)..];
        first.Store(total, units, known, covered, 0);
        if (TWidth.Blocks > 1) second.Store(total, units, known, covered, ContentGrid.Pitch);
        if (TWidth.Blocks > 2) third.Store(total, units, known, covered, 2 * ContentGrid.Pitch);
        if (TWidth.Blocks > 3) fourth.Store(total, units, known, covered, 3 * ContentGrid.Pitch);
        if (TWidth.Blocks > 4) fifth.Store(total, units, known, covered, 4 * ContentGrid.Pitch);
        return total.ToScalar();
    }

    // Blocks of sixteen columns that a pass takes, known to the compiler.
    private interface IWidth
    {
        static abstract int Blocks { get; }
    }

    private readonly struct One : IWidth
    {
        public static int Blocks => 1;
    }

    private readonly struct Two : IWidth
    {
        public static int Blocks => 2;
    }

    private readonly struct Three : IWidth
    {
        public static int Blocks => 3;
    }

    private readonly struct Four : IWidth
    {
        public static int Blocks => 4;
    }

    private readonly struct Five : IWidth
    {
        public static int Blocks => 5;
    }

    private readonly ref struct Mixtures<TContent>(
        ReadOnlySpan<TContent> contents, ReadOnlySpan<double> units, int columns, ReadOnlySpan<int> rows, ReadOnlySpan<double> massGrams, Span<double> known, Span<double> coveredGrams)
    {
        public readonly ReadOnlySpan<TContent> Contents = contents;
        public readonly ReadOnlySpan<double> Units = units, MassGrams = massGrams;
        public readonly ReadOnlySpan<int> Rows = rows;
        public readonly Span<double> Known = known, CoveredGrams = coveredGrams;
        public readonly int Columns = columns;
    }
}
