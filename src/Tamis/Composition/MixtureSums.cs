using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Tamis.Composition;

/// <summary>Sums the contents of many mixtures over all nutrients at once, with what is known of each.</summary>
/// <remarks>The same sums as <see cref="Amount.Sum"/>, nutrient by nutrient, but one pass over each food's row serves all of them.
/// Nothing is allocated: the caller gives the room for the results.</remarks>
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
        if (rows.Length != massGrams.Length)
            throw new ArgumentException($"{rows.Length} foods but {massGrams.Length} masses; give one mass a line.", nameof(massGrams));
        if (known.Length < matrix.Stride || coveredGrams.Length < matrix.Stride)
            throw new ArgumentException($"The sums need room for {matrix.Stride} numbers.", nameof(known));
        foreach (var row in rows)
            if ((uint)row >= (uint)matrix.Rows) throw new ArgumentOutOfRangeException(nameof(rows), row, $"The matrix has rows 0 to {matrix.Rows - 1}.");
        var total = 0.0;
        foreach (var mass in massGrams) total += mass;
        SumChecked(matrix, rows, massGrams, known, coveredGrams);
        return total;
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
        if (starts.Length != totalGrams.Length + 1)
            throw new ArgumentException($"{totalGrams.Length} mixtures need {totalGrams.Length + 1} starts, not {starts.Length}.", nameof(starts));
        for (var mixture = 0; mixture < totalGrams.Length; mixture++)
        {
            var lines = starts[mixture]..starts[mixture + 1];
            totalGrams[mixture] = Sum(matrix, rows[lines], massGrams[lines],
                known.Slice(mixture * matrix.Stride, matrix.Stride), coveredGrams.Slice(mixture * matrix.Stride, matrix.Stride));
        }
    }

    private static void SumChecked(ContentMatrix matrix, ReadOnlySpan<int> rows, ReadOnlySpan<double> massGrams, Span<double> known, Span<double> coveredGrams)
    {
        if (matrix.Whole is { } whole) Sum(new WholeVectors(whole), matrix.Stride, rows, massGrams, known, coveredGrams);
        else Sum(new PlainVectors(matrix.Per100Grams), matrix.Stride, rows, massGrams, known, coveredGrams);
    }

    private static void Sum<TVectors>(TVectors contents, int columns, ReadOnlySpan<int> rows, ReadOnlySpan<double> massGrams, Span<double> known, Span<double> coveredGrams)
        where TVectors : IContentVectors, allows ref struct
    {
        ref var knownAt = ref MemoryMarshal.GetReference(known);
        ref var coveredAt = ref MemoryMarshal.GetReference(coveredGrams);
        var stride = (nuint)columns;
        var column = (nuint)0;
        // Two vectors of columns at a time, so that the running sums stay in registers over all lines and each mass is fetched once for both.
        for (; column + 2 * ContentGrid.Lane <= stride; column += 2 * ContentGrid.Lane)
        {
            Vector512<double> firstSum = default, secondSum = default, firstCovered = default, secondCovered = default;
            for (var line = 0; line < rows.Length; line++)
            {
                var at = (nuint)rows[line] * stride + column;
                var mass = Vector512.Create(massGrams[line]);
                contents.Add(at, mass, ref firstSum, ref firstCovered);
                contents.Add(at + ContentGrid.Lane, mass, ref secondSum, ref secondCovered);
            }
            contents.Known(column, firstSum, firstCovered).StoreUnsafe(ref knownAt, column);
            contents.Known(column + ContentGrid.Lane, secondSum, secondCovered).StoreUnsafe(ref knownAt, column + ContentGrid.Lane);
            firstCovered.StoreUnsafe(ref coveredAt, column);
            secondCovered.StoreUnsafe(ref coveredAt, column + ContentGrid.Lane);
        }
        if (column == stride) return;
        Vector512<double> sum = default, covered = default;
        for (var line = 0; line < rows.Length; line++) contents.Add((nuint)rows[line] * stride + column, Vector512.Create(massGrams[line]), ref sum, ref covered);
        contents.Known(column, sum, covered).StoreUnsafe(ref knownAt, column);
        covered.StoreUnsafe(ref coveredAt, column);
    }

    // What a form of the contents does with eight columns of a line, and with their sums in the end.
    private interface IContentVectors
    {
        void Add(nuint at, Vector512<double> mass, ref Vector512<double> sum, ref Vector512<double> covered);

        Vector512<double> Known(nuint column, Vector512<double> sum, Vector512<double> covered);
    }

    // Counts are one too many, so that 0 is left for what is unknown: it adds nothing to the sum, and each known line adds its own mass too often.
    private readonly ref struct WholeVectors(WholeContents contents) : IContentVectors
    {
        private readonly ref uint _counts = ref MemoryMarshal.GetReference(contents.Counts);
        private readonly ref double _units = ref MemoryMarshal.GetReference(contents.UnitIn1Gram);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Add(nuint at, Vector512<double> mass, ref Vector512<double> sum, ref Vector512<double> covered)
        {
            var contents = WholeContents.Widened(Vector256.LoadUnsafe(ref _counts, at));
            sum = Vector512.FusedMultiplyAdd(mass, contents, sum);
            covered = Vector512.ConditionalSelect(Vector512.Equals(contents, Vector512<double>.Zero), covered, covered + mass);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public Vector512<double> Known(nuint column, Vector512<double> sum, Vector512<double> covered) => (sum - covered) * Vector512.LoadUnsafe(ref _units, column);
    }

    // NaN is not equal to itself: what is not known adds nothing, neither to the sum nor to what it covers.
    private readonly ref struct PlainVectors(ReadOnlySpan<double> per100Grams) : IContentVectors
    {
        private readonly ref double _per100Grams = ref MemoryMarshal.GetReference(per100Grams);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Add(nuint at, Vector512<double> mass, ref Vector512<double> sum, ref Vector512<double> covered)
        {
            var contents = Vector512.LoadUnsafe(ref _per100Grams, at);
            var isKnown = Vector512.Equals(contents, contents);
            sum = Vector512.ConditionalSelect(isKnown, Vector512.FusedMultiplyAdd(mass, contents, sum), sum);
            covered = Vector512.ConditionalSelect(isKnown, covered + mass, covered);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public Vector512<double> Known(nuint column, Vector512<double> sum, Vector512<double> covered) => sum * Vector512.Create(0.01);
    }
}
