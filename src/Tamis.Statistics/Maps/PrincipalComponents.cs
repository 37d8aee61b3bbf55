using MathNet.Numerics.LinearAlgebra;

namespace Tamis.Statistics.Maps;

/// <summary>Principal components of a table whose columns are centred and, if wanted, brought to standard deviation 1.</summary>
/// <remarks>The sign of a component is free; here the loading of largest size is positive. Columns without spread weigh nothing.</remarks>
public sealed class PrincipalComponents
{
    private readonly double[] _means;
    private readonly double[] _scales;

    private PrincipalComponents(double[] means, double[] scales, double[] variances, double[][] loadings, double[][] scores) =>
        (_means, _scales, Variances, Loadings, Scores) = (means, scales, variances, loadings, scores);

    /// <summary>The variance along each component, falling; divisor rows − 1.</summary>
    public IReadOnlyList<double> Variances { get; }

    /// <summary>For each component the weight of each column; squares add up to 1.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Loadings { get; }

    /// <summary>For each row its place along each component.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Scores { get; }

    /// <summary>The share of all spread that lies along a component, 0 to 1.</summary>
    public double Share(int component) => Variances[component] / Variances.Sum();

    /// <summary>The components of a table, or null where no column has spread.</summary>
    /// <param name="rows">At least two rows of finite numbers of equal length.</param>
    /// <param name="scaled">Whether every column weighs the same, whatever its spread.</param>
    /// <exception cref="ArgumentException">There are fewer than two rows, rows of unequal length, or a number is missing.</exception>
    public static PrincipalComponents? Of(IReadOnlyList<double[]> rows, bool scaled)
    {
        if (rows.Count < 2 || rows.Any(row => row.Length != rows[0].Length || !row.All(double.IsFinite)))
            throw new ArgumentException("Principal components need at least two rows of finite numbers of equal length.", nameof(rows));
        var samples = Enumerable.Range(0, rows[0].Length).Select(j => SampleSummary.Of([.. rows.Select(row => row[j])])).ToArray();
        double[] means = [.. samples.Select(sample => sample.Mean)];
        double[] scales = [.. samples.Select(sample => scaled && sample.StandardDeviation > 0 ? sample.StandardDeviation : 1)];
        var svd = Matrix<double>.Build.Dense(rows.Count, means.Length, (i, j) => (rows[i][j] - means[j]) / scales[j]).Svd();
        var count = Math.Min(rows.Count - 1, means.Length);
        double[] variances = [.. svd.S.Take(count).Select(value => value * value / (rows.Count - 1))];
        if (!(variances.Sum() > 0)) return null;
        double[][] loadings = [.. Enumerable.Range(0, count).Select(k => Turned(svd.VT.Row(k).ToArray()))];
        PrincipalComponents result = new(means, scales, variances, loadings, []);
        return new(means, scales, variances, loadings, [.. rows.Select(row => result.Place(row))]);
    }

    /// <summary>Where a further row lies along the components.</summary>
    public double[] Place(IReadOnlyList<double> row) =>
        [.. Loadings.Select(loading => Enumerable.Range(0, _means.Length).Sum(j => loading[j] * (row[j] - _means[j]) / _scales[j]))];

    private static double[] Turned(double[] loading) => loading.MaxBy(Math.Abs) < 0 ? [.. loading.Select(weight => -weight)] : loading;
}
