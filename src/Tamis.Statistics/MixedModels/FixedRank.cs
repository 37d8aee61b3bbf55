using System.Runtime.CompilerServices;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.MixedModels;

/// <summary>Which columns of the fixed part add something to those before them, and what the others are made of.</summary>
internal sealed class FixedRank
{
    // The share of a column's square that is left beside earlier columns: rounding of the sums leaves up to about 1e-13 of it.
    private const double Held = 1e-11, Doubtful = 1e-7;

    private FixedRank(int[] kept, IReadOnlyDictionary<int, double[]> held, double residualSquares) =>
        (Kept, HeldAs, ResidualSquares) = (kept, held, residualSquares);

    /// <summary>The columns that count, in their order.</summary>
    public int[] Kept { get; }

    /// <summary>Each other column as a combination of those that count.</summary>
    public IReadOnlyDictionary<int, double[]> HeldAs { get; }

    /// <summary>What the fixed part alone leaves of the response's sum of squares.</summary>
    public double ResidualSquares { get; }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static FixedRank Of(FixedColumns design, double[] response)
    {
        var size = design.Columns.Count + 1;
        var sums = new double[size, size];
        var (columns, values) = (new int[design.WidthOfRow + 1], new double[design.WidthOfRow + 1]);
        for (var row = 0; row < response.Length; row++)
        {
            var count = design.Row(row, columns, values);
            (columns[count], values[count]) = (size - 1, response[row]);
            for (var a = 0; a <= count; a++)
                for (var b = 0; b <= a; b++)
                    sums[Math.Max(columns[a], columns[b]), Math.Min(columns[a], columns[b])] += values[a] * values[b];
        }
        List<int> kept = [];
        Dictionary<int, double[]> held = [];
        for (var j = 0; j < size; j++)
        {
            var whole = sums[j, j];
            for (var k = 0; k < kept.Count; k++)
            {
                var sum = sums[j, kept[k]];
                for (var m = 0; m < k; m++) sum -= sums[j, kept[m]] * sums[kept[k], kept[m]];
                sums[j, kept[k]] = sum / sums[kept[k], kept[k]];
                sums[j, j] -= sums[j, kept[k]] * sums[j, kept[k]];
            }
            if (j == size - 1) continue;
            var share = whole > 0 ? sums[j, j] / whole : 0;
            if (share > Held && share < Doubtful && IsHeld(design, kept, j, response.Length)) share = 0;
            if (share > Held)
            {
                sums[j, j] = Math.Sqrt(sums[j, j]);
                kept.Add(j);
            }
            else
                held[j] = Solved(sums, kept, j);
        }
        return new([.. kept], held.ToDictionary(pair => pair.Key, pair => Padded(pair.Value, kept.Count)), Math.Max(0, sums[size - 1, size - 1]));
    }

    /// <summary>The weights of the columns that count in a combination of all; <see langword="null"/> where the data cannot tell the combination.</summary>
    public double[]? Reduced(double[] weights)
    {
        double[] reduced = [.. Kept.Select(column => weights[column])];
        var size = 1e-7 * weights.Max(Math.Abs);
        foreach (var (column, combination) in HeldAs)
            if (Math.Abs(weights[column] - Dense.Dot(reduced, combination)) > size) return null;
        return reduced;
    }

    // Sums of squares hold half the digits; where they leave a doubt, the columns themselves decide.
    private static bool IsHeld(FixedColumns design, List<int> kept, int column, int rowCount)
    {
        int[] wanted = [.. kept, column];
        double[][] whole = [.. wanted.Select(_ => new double[rowCount])];
        var (columns, values) = (new int[design.WidthOfRow], new double[design.WidthOfRow]);
        for (var row = 0; row < rowCount; row++)
            for (var k = design.Row(row, columns, values) - 1; k >= 0; k--)
                if (Array.IndexOf(wanted, columns[k]) is var at and >= 0) whole[at][row] = values[k];
        return new OrderedQr(whole, new double[rowCount]).Position[^1] < 0;
    }

    private static double[] Solved(double[,] sums, List<int> kept, int column)
    {
        var solved = new double[kept.Count];
        for (var i = kept.Count - 1; i >= 0; i--)
        {
            solved[i] = sums[column, kept[i]];
            for (var k = i + 1; k < kept.Count; k++) solved[i] -= sums[kept[k], kept[i]] * solved[k];
            solved[i] /= sums[kept[i], kept[i]];
        }
        return solved;
    }

    private static double[] Padded(double[] values, int length) => [.. values, .. new double[length - values.Length]];
}
