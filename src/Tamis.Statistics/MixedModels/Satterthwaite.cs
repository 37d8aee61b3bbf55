using MathNet.Numerics.LinearAlgebra;

namespace Tamis.Statistics.MixedModels;

/// <summary>How sure the fixed effects are, and how sure that is.</summary>
/// <remarks>
/// Degrees of freedom after Satterthwaite (1946, Biometrics Bulletin 2) as generalised by Giesbrecht and Burns (1985, Biometrics 41) and Fai and
/// Cornelius (1996, Journal of Statistical Computation and Simulation 54): twice the squared variance of a contrast over the variance of that
/// variance, which comes from the curvature of the criterion in the variance parameters. A variance of nil has no part in it.
/// </remarks>
internal sealed class Satterthwaite
{
    private readonly double[,] _covariance;
    private readonly double[][,] _slopes;
    private readonly Matrix<double> _doubt;

    private Satterthwaite(double[,] covariance, double[][,] slopes, Matrix<double> doubt) => (_covariance, _slopes, _doubt) = (covariance, slopes, doubt);

    public static Satterthwaite Of(MixedCriterion criterion, double[] parameters, IReadOnlyList<int> free)
    {
        criterion.Value(parameters);
        var variance = criterion.PenalisedSquares / criterion.ResidualRows;
        var covariance = FixedPart.UnitCovariance(criterion).Scaled(variance);
        var squaresSlope = criterion.GradientOfSquares(parameters);
        // The parameters are the free relative factors and, last, the logarithm of the residual standard deviation.
        var count = free.Count + 1;
        var curvature = Matrix<double>.Build.Dense(count, count);
        var slopes = new double[count][,];
        for (var j = 0; j < free.Count; j++)
        {
            var width = 1e-4 * Math.Max(0.05, Math.Abs(parameters[free[j]]));
            double[] above = [.. parameters], below = [.. parameters];
            above[free[j]] += width;
            below[free[j]] -= width;
            criterion.Value(above);
            var (up, covarianceUp) = (criterion.GradientAt(above, variance), FixedPart.UnitCovariance(criterion));
            criterion.Value(below);
            var (down, covarianceDown) = (criterion.GradientAt(below, variance), FixedPart.UnitCovariance(criterion));
            for (var i = 0; i < free.Count; i++) curvature[i, j] = (up[free[i]] - down[free[i]]) / (2 * width);
            curvature[j, count - 1] = curvature[count - 1, j] = -2 * squaresSlope[free[j]] / variance;
            slopes[j] = covarianceUp.Less(covarianceDown).Scaled(variance / (2 * width));
        }
        curvature[count - 1, count - 1] = 4 * criterion.ResidualRows;
        slopes[count - 1] = covariance.Scaled(2);
        criterion.Value(parameters);
        return new(covariance, slopes, PositiveInverse((curvature + curvature.Transpose()) / 2));
    }

    public double Covariance(double[] left, double[] right) => _covariance.Between(left, right);

    /// <summary>The degrees of freedom of the variance of a combination.</summary>
    public double Degrees(double[] weights)
    {
        var variance = Covariance(weights, weights);
        var slope = Vector<double>.Build.Dense(_slopes.Length, i => _slopes[i].Between(weights, weights));
        // −2 log likelihood has twice the curvature of the log likelihood: the parameters' covariance is twice its inverse.
        return variance * variance / slope.DotProduct(_doubt * slope);
    }

    // A direction in which the criterion does not curve upwards says nothing about the parameters.
    private static Matrix<double> PositiveInverse(Matrix<double> curvature)
    {
        var parts = curvature.Evd(Symmetricity.Symmetric);
        var inverse = Matrix<double>.Build.Dense(curvature.RowCount, curvature.ColumnCount);
        var least = 1e-8 * parts.EigenValues.Max(value => value.Real);
        for (var i = 0; i < curvature.RowCount; i++)
            if (parts.EigenValues[i].Real is var value && value > least)
                inverse += parts.EigenVectors.Column(i).OuterProduct(parts.EigenVectors.Column(i)) / value;
        return inverse;
    }
}
