using System.Numerics;
using System.Runtime.InteropServices;

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
        ref var table = ref MemoryMarshal.GetReference(matrix.Per100Grams);
        var stride = matrix.Stride;
        // Column by column of vectors, so that both running sums stay in registers over all lines.
        for (var column = 0; column < stride; column += Vector<double>.Count)
        {
            var sum = Vector<double>.Zero;
            var covered = Vector<double>.Zero;
            for (var line = 0; line < rows.Length; line++)
            {
                var contents = Vector.LoadUnsafe(ref table, (nuint)(rows[line] * stride + column));
                var mass = new Vector<double>(massGrams[line]);
                var isKnown = Vector.Equals(contents, contents);
                sum += Vector.ConditionalSelect(isKnown, mass * contents, Vector<double>.Zero);
                covered += Vector.ConditionalSelect(isKnown, mass, Vector<double>.Zero);
            }
            (sum / new Vector<double>(100)).CopyTo(known[column..]);
            covered.CopyTo(coveredGrams[column..]);
        }
    }
}
