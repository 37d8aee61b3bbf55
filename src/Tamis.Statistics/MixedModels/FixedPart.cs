namespace Tamis.Statistics.MixedModels;

/// <summary>What a criterion's factor says about the fixed effects and, given these, about the random ones.</summary>
internal static class FixedPart
{
    /// <summary>All columns' coefficients: random effects in units of their factors, then fixed effects.</summary>
    public static double[] Solve(MixedCriterion criterion)
    {
        var factor = criterion.Factor;
        var last = factor.Size - 1;
        double[] solved = [.. factor.Row(last)[..^1]];
        for (var i = last - 1; i >= 0; i--)
        {
            solved[i] /= factor.Diagonal(i);
            Dense.AddScaled(solved.AsSpan(factor.First(i), i - factor.First(i)), -solved[i], factor.Row(i)[..^1]);
        }
        return solved;
    }

    /// <summary>The covariance of the fixed effects in units of the residual variance.</summary>
    public static double[,] UnitCovariance(MixedCriterion criterion)
    {
        var (start, count, factor) = (criterion.Sums.RandomCount, criterion.Sums.FixedCount, criterion.Factor);
        var inverse = new double[count, count];
        for (var column = 0; column < count; column++)
        {
            inverse[column, column] = 1 / factor.Diagonal(start + column);
            for (var row = column + 1; row < count; row++)
            {
                double sum = 0;
                for (var k = column; k < row; k++) sum += factor.Values[factor.Origin(start + row) + start + k] * inverse[k, column];
                inverse[row, column] = -sum / factor.Diagonal(start + row);
            }
        }
        var covariance = new double[count, count];
        for (var i = 0; i < count; i++)
            for (var j = 0; j <= i; j++)
            {
                double sum = 0;
                for (var k = i; k < count; k++) sum += inverse[k, i] * inverse[k, j];
                covariance[i, j] = covariance[j, i] = sum;
            }
        return covariance;
    }

    public static double[,] Scaled(this double[,] matrix, double factor) => Each(matrix, (i, j) => matrix[i, j] * factor);

    public static double[,] Less(this double[,] matrix, double[,] other) => Each(matrix, (i, j) => matrix[i, j] - other[i, j]);

    public static double Between(this double[,] matrix, double[] left, double[] right)
    {
        double sum = 0;
        for (var i = 0; i < left.Length; i++)
        {
            if (left[i] == 0) continue;
            double row = 0;
            for (var j = 0; j < right.Length; j++) row += matrix[i, j] * right[j];
            sum += left[i] * row;
        }
        return sum;
    }

    private static double[,] Each(double[,] like, Func<int, int, double> value)
    {
        var result = new double[like.GetLength(0), like.GetLength(1)];
        for (var i = 0; i < result.GetLength(0); i++)
            for (var j = 0; j < result.GetLength(1); j++) result[i, j] = value(i, j);
        return result;
    }
}
