using MathNet.Numerics.LinearAlgebra;

namespace Tamis.Statistics.MixedModels;

/// <summary>The joint test of several contrasts.</summary>
/// <remarks>
/// The contrasts are turned into independent ones, each with its own degrees of freedom ν; the mean of their squared t is taken for an F whose
/// denominator has the same expectation: 2E/(E − q), E the sum of ν/(ν − 2) (Fai and Cornelius 1996).
/// </remarks>
internal static class TypeThree
{
    public static FixedTest? Test(string term, double[][] contrasts, double[] estimates, Satterthwaite sureness)
    {
        if (contrasts.Length == 0) return null;
        var covariance = Matrix<double>.Build.Dense(contrasts.Length, contrasts.Length, (i, j) => sureness.Covariance(contrasts[i], contrasts[j]));
        var parts = covariance.Evd(Symmetricity.Symmetric);
        var least = 1e-10 * parts.EigenValues.Max(value => value.Real);
        List<double> squares = [], degrees = [];
        for (var k = 0; k < contrasts.Length; k++)
        {
            var variance = parts.EigenValues[k].Real;
            if (variance <= least) continue;
            var direction = parts.EigenVectors.Column(k);
            var weights = new double[estimates.Length];
            for (var i = 0; i < contrasts.Length; i++) Dense.AddScaled(weights, direction[i], contrasts[i]);
            var value = Dense.Dot(weights, estimates);
            squares.Add(value * value / variance);
            degrees.Add(sureness.Degrees(weights));
        }
        if (squares.Count == 0) return null;
        var f = squares.Average();
        var denominator = Pooled(degrees);
        return new(term, squares.Count, denominator, f, Tails.FAbove(f, squares.Count, denominator));
    }

    private static double Pooled(List<double> degrees)
    {
        if (degrees.Count == 1 || degrees.Max() - degrees.Min() < 1e-8 * degrees.Max()) return degrees.Average();
        // Below two degrees of freedom F has no expectation to match.
        if (degrees.Min() <= 2) return 2;
        var expectation = degrees.Sum(one => one / (one - 2));
        return 2 * expectation / (expectation - degrees.Count);
    }
}
