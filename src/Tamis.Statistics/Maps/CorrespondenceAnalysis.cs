using MathNet.Numerics.LinearAlgebra;

namespace Tamis.Statistics.Maps;

/// <summary>Correspondence analysis of a table of counts: rows and columns that go together more often than by chance lie in the same direction.</summary>
/// <remarks>The singular values of (p − r c)/√(r c), with p the shares, r and c their margins (Benzécri 1973; Greenacre 1984). Coordinates are principal ones: distances between rows, and between columns, are χ² distances.
/// The sign of a dimension is free; here the row of largest size is positive. Rows and columns without a count are left where the map has its middle.</remarks>
public sealed record CorrespondenceAnalysis
{
    private CorrespondenceAnalysis(double[] inertias, double[][] rows, double[][] columns, double total) => (Inertias, Rows, Columns, TotalCount) = (inertias, rows, columns, total);

    /// <summary>The inertia of each dimension, falling; their sum is χ² over the number of counts.</summary>
    public IReadOnlyList<double> Inertias { get; }

    /// <summary>For each row its place along each dimension.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Rows { get; }

    /// <summary>For each column its place along each dimension.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Columns { get; }

    /// <summary>All counts together.</summary>
    public double TotalCount { get; }

    /// <summary>Pearson's χ² of the table.</summary>
    public double ChiSquare => Inertias.Sum() * TotalCount;

    /// <summary>The share of all inertia that lies along a dimension, 0 to 1.</summary>
    public double Share(int dimension) => Inertias[dimension] / Inertias.Sum();

    /// <summary>Analyses a table; null where nothing goes together, or fewer than two rows or columns have a count.</summary>
    /// <param name="counts">At least one row of counts of 0 or more, of equal length.</param>
    /// <exception cref="ArgumentException">Rows of unequal length, or a number that is below zero or not finite.</exception>
    public static CorrespondenceAnalysis? Of(IReadOnlyList<double[]> counts)
    {
        if (counts.Count == 0 || counts.Any(row => row.Length != counts[0].Length || !row.All(count => double.IsFinite(count) && count >= 0)))
            throw new ArgumentException("A table of counts needs rows of equal length with numbers of 0 or more.", nameof(counts));
        var total = counts.Sum(row => row.Sum());
        double[] rowShares = [.. counts.Select(row => row.Sum() / total)], columnShares = [.. Enumerable.Range(0, counts[0].Length).Select(column => counts.Sum(row => row[column]) / total)];
        var dimensions = Math.Min(rowShares.Count(share => share > 0), columnShares.Count(share => share > 0)) - 1;
        if (!(total > 0) || dimensions < 1) return null;
        var svd = Matrix<double>.Build.Dense(counts.Count, columnShares.Length, (i, j) => rowShares[i] * columnShares[j] is var expected and > 0 ? (counts[i][j] / total - expected) / Math.Sqrt(expected) : 0).Svd();
        double[] inertias = [.. svd.S.Take(dimensions).Select(value => value * value)];
        if (!(inertias.Sum() > 1e-14)) return null;
        double[][] rows = [.. rowShares.Select((share, i) => Enumerable.Range(0, dimensions).Select(k => share > 0 ? svd.U[i, k] * svd.S[k] / Math.Sqrt(share) : 0).ToArray())];
        double[][] columns = [.. columnShares.Select((share, j) => Enumerable.Range(0, dimensions).Select(k => share > 0 ? svd.VT[k, j] * svd.S[k] / Math.Sqrt(share) : 0).ToArray())];
        for (var k = 0; k < dimensions; k++)
        {
            if (rows.MaxBy(row => Math.Abs(row[k]))![k] >= 0) continue;
            foreach (var row in rows) row[k] = -row[k];
            foreach (var column in columns) column[k] = -column[k];
        }
        return new(inertias, rows, columns, total);
    }
}
