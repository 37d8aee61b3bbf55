using System.Runtime.CompilerServices;

namespace Tamis.Statistics.MixedModels;

/// <summary>A symmetric matrix of which each row of the lower triangle is kept from its first non-zero column to the diagonal.</summary>
/// <remarks>
/// A Cholesky factor has the same skyline, and its inner products run over neighbouring numbers (Jennings 1966, The Computer Journal 9;
/// George and Liu 1981, Computer Solution of Large Sparse Positive Definite Systems, chapter 4).
/// </remarks>
internal sealed class SkylineMatrix
{
    private readonly int[] _first;
    private readonly int[] _start;

    /// <summary>A matrix of zeros.</summary>
    /// <param name="first">The first column of each row that may hold something, at most the row's own number.</param>
    public SkylineMatrix(int[] first)
    {
        _first = first;
        _start = new int[first.Length + 1];
        for (var row = 0; row < first.Length; row++) _start[row + 1] = _start[row] + row - first[row] + 1;
        Values = new double[_start[^1]];
    }

    private SkylineMatrix(SkylineMatrix like) => (_first, _start, Values) = (like._first, like._start, new double[like.Values.Length]);

    public int Size => _first.Length;

    public double[] Values { get; }

    /// <summary>Another matrix of zeros with the same skyline.</summary>
    public SkylineMatrix Alike() => new(this);

    public int First(int row) => _first[row];

    /// <summary>Where column 0 of a row would stand among the values: add a column from the first one on.</summary>
    public int Origin(int row) => _start[row] - _first[row];

    public double Diagonal(int row) => Values[_start[row + 1] - 1];

    public Span<double> Row(int row) => Values.AsSpan(_start[row], row - _first[row] + 1);

    /// <summary>Replaces the matrix by its Cholesky factor. A pivot below <paramref name="least"/> counts as that.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Factor(double least)
    {
        var values = Values;
        for (var i = 0; i < Size; i++)
        {
            var origin = Origin(i);
            for (var j = _first[i]; j < i; j++)
            {
                var from = Math.Max(_first[i], _first[j]);
                var other = Origin(j);
                var sum = values[origin + j];
                if (from < j) sum -= Dense.Dot(values.AsSpan(origin + from, j - from), values.AsSpan(other + from, j - from));
                values[origin + j] = sum / values[other + j];
            }
            var left = Row(i)[..^1];
            values[origin + i] = Math.Sqrt(Math.Max(least, values[origin + i] - Dense.Dot(left, left)));
        }
    }

    /// <summary>
    /// Turns derivatives with respect to this Cholesky factor into derivatives with respect to the lower triangle of the matrix it came from
    /// (Murray 2016, Differentiation of the Cholesky decomposition, arXiv 1602.07527).
    /// </summary>
    /// <param name="bar">The derivatives with respect to the factor; replaced.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Reverse(SkylineMatrix bar)
    {
        var (values, bars) = (Values, bar.Values);
        for (var i = Size - 1; i >= 0; i--)
        {
            var origin = Origin(i);
            var pivot = bars[origin + i] / (2 * values[origin + i]);
            bars[origin + i] = pivot;
            Dense.AddScaled(bar.Row(i)[..^1], -2 * pivot, Row(i)[..^1]);
            for (var j = i - 1; j >= _first[i]; j--)
            {
                var value = bars[origin + j];
                if (value == 0) continue;
                var other = Origin(j);
                value /= values[other + j];
                bars[origin + j] = value;
                bars[other + j] -= value * values[origin + j];
                var from = Math.Max(_first[i], _first[j]);
                if (from >= j) continue;
                Dense.AddScaled(bars.AsSpan(origin + from, j - from), -value, values.AsSpan(other + from, j - from));
                Dense.AddScaled(bars.AsSpan(other + from, j - from), -value, values.AsSpan(origin + from, j - from));
            }
        }
    }
}
