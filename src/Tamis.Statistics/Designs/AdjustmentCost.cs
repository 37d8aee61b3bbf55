using MathNet.Numerics.LinearAlgebra;

namespace Tamis.Statistics.Designs;

/// <summary>What evening out something more costs the differences of treatments in a design of blocks, before anything is measured.</summary>
/// <param name="VarianceRatio">By what factor the mean variance of a difference grows, within blocks and at equal error.</param>
/// <param name="Degrees">Degrees of freedom of the error before.</param>
/// <param name="AdjustedDegrees">Degrees of freedom of the error after.</param>
public readonly record struct AdjustmentCost(double VarianceRatio, int Degrees, int AdjustedDegrees)
{
    // Counts of a design are whole numbers: what is left below this share of the largest is rounding.
    private const double Held = 1e-9;

    /// <summary>By what factor an interval grows by Student's t, at equal error; infinite where no degree of freedom is left.</summary>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    public double WidthRatio(double confidence) => AdjustedDegrees < 1 ? double.PositiveInfinity
        : Math.Sqrt(VarianceRatio) * Tails.StudentTwoSided(confidence, AdjustedDegrees) / Tails.StudentTwoSided(confidence, Degrees);

    /// <summary>The cost; null where the treatments could be compared before and cannot be any more, or could not be compared at all.</summary>
    /// <param name="rows">The design, a row a measurement.</param>
    public static AdjustmentCost? Of(IReadOnlyList<DesignRow> rows)
    {
        string[] treatments = [.. rows.Select(row => row.Treatment).Distinct(StringComparer.Ordinal)];
        if (treatments.Length < 2) return null;
        var x = Centred(rows, row => [.. treatments.Select(treatment => treatment == row.Treatment ? 1.0 : 0)]);
        var (kept, all) = (Centred(rows, row => row.Kept), Centred(rows, row => [.. row.Kept, .. row.Added]));
        var (before, after) = (Told(x, kept), Told(x, all));
        if (before.Rank == 0 || after.Rank < before.Rank) return null;
        var left = rows.Count - rows.Select(row => row.Block).Distinct(StringComparer.Ordinal).Count();
        return new(after.Variance / before.Variance, left - before.Rank - Rank(kept), left - after.Rank - Rank(all));
    }

    // Deviations from the mean of the own block: blocks are taken out whole.
    private static Matrix<double> Centred(IReadOnlyList<DesignRow> rows, Func<DesignRow, IReadOnlyList<double>> valuesOf)
    {
        double[][] values = [.. rows.Select(row => valuesOf(row).ToArray())];
        foreach (var block in Enumerable.Range(0, rows.Count).GroupBy(at => rows[at].Block))
            for (var column = 0; column < values[0].Length; column++)
            {
                var mean = block.Average(at => values[at][column]);
                foreach (var at in block) values[at][column] -= mean;
            }
        return values[0].Length == 0 ? Matrix<double>.Build.Dense(rows.Count, 1) : Matrix<double>.Build.DenseOfRowArrays(values);
    }

    private static (int Rank, double Variance) Told(Matrix<double> x, Matrix<double> z)
    {
        var across = z.TransposeThisAndMultiply(x);
        var (values, vectors) = Split(z.TransposeThisAndMultiply(z));
        var turned = vectors.TransposeThisAndMultiply(across);
        var information = x.TransposeThisAndMultiply(x);
        for (var at = 0; at < values.Length; at++)
            if (values[at] > 0) information -= turned.Row(at).OuterProduct(turned.Row(at)) / values[at];
        var (own, _) = Split(information, x.TransposeThisAndMultiply(x).Trace());
        double[] told = [.. own.Where(value => value > 0)];
        return (told.Length, told.Sum(value => 1 / value));
    }

    private static int Rank(Matrix<double> z) => Split(z.TransposeThisAndMultiply(z)).Values.Count(value => value > 0);

    // Eigenvalues, those of rounding as 0.
    private static (double[] Values, Matrix<double> Vectors) Split(Matrix<double> symmetric, double? scale = null)
    {
        var split = ((symmetric + symmetric.Transpose()) / 2).Evd(Symmetricity.Symmetric);
        double[] values = [.. split.EigenValues.Select(value => value.Real)];
        var least = Held * (scale ?? values.Select(Math.Abs).Max());
        return ([.. values.Select(value => value > least ? value : 0)], split.EigenVectors);
    }
}

/// <summary>One measurement of a design of blocks.</summary>
/// <param name="Block">The block.</param>
/// <param name="Treatment">The treatment.</param>
/// <param name="Kept">What is evened out before.</param>
/// <param name="Added">What is evened out in addition.</param>
public sealed record DesignRow(string Block, string Treatment, IReadOnlyList<double> Kept, IReadOnlyList<double> Added);
