using MathNet.Numerics.LinearAlgebra;

namespace Tamis.Statistics.OrdinalModels;

/// <summary>Where a log likelihood is largest, and its curvature there.</summary>
/// <param name="Parameters">The parameters.</param>
/// <param name="LogLikelihood">The largest value found.</param>
/// <param name="Information">The observed information: minus the second derivatives.</param>
/// <param name="IsSettled">Whether the last step was too short to matter; false also where the function had no finite value beside a step.</param>
internal sealed record OrdinalSearch(double[] Parameters, double LogLikelihood, Matrix<double> Information, bool IsSettled)
{
    private const int MaximumRounds = 100;

    /// <summary>Newton's method on differences of fourth order for slopes, of second order for curvature.</summary>
    /// <param name="likelihood">The function.</param>
    /// <param name="start">Parameters at which it is finite.</param>
    /// <param name="hasLeft">Whether parameters have gone so far that there is no maximum to find.</param>
    public static OrdinalSearch Run(Func<double[], double> likelihood, double[] start, Predicate<double[]> hasLeft)
    {
        var (at, value) = (start, likelihood(start));
        for (var round = 0; ; round++)
        {
            var slope = Slope(likelihood, at);
            var information = Curvature(likelihood, at, value);
            // Where a neighbouring value is no number there is no direction to go in, and eigenvalues would be sought without end.
            if (!double.IsFinite(value) || slope.Any(one => !double.IsFinite(one)) || information.Enumerate().Any(one => !double.IsFinite(one)))
                return new(at, value, information, false);
            var step = Step(information, slope);
            var gain = step.DotProduct(slope);
            if (gain < 1e-16 * (1 + Math.Abs(value)) || round == MaximumRounds || hasLeft(at)) return new(at, value, information, round < MaximumRounds);
            var (length, tried, next) = (1.0, double.NaN, at);
            for (var halving = 0; halving < 40 && !(tried > value); halving++, length /= 2)
            {
                next = [.. at.Select((parameter, j) => parameter + length * step[j])];
                tried = likelihood(next);
            }
            // No gain in forty halvings: the digits of the likelihood are used up.
            if (!(tried > value)) return new(at, value, information, gain < 1e-8);
            (at, value) = (next, tried);
        }
    }

    private static Vector<double> Step(Matrix<double> information, Vector<double> slope)
    {
        var eigen = information.Evd(Symmetricity.Symmetric);
        var along = eigen.EigenVectors.TransposeThisAndMultiply(slope);
        var floor = 1e-8 * eigen.EigenValues.Max(value => Math.Abs(value.Real));
        for (var j = 0; j < along.Count; j++) along[j] /= Math.Max(Math.Abs(eigen.EigenValues[j].Real), floor);
        var step = eigen.EigenVectors * along;
        var longest = step.AbsoluteMaximum();
        return longest > 3 ? step * (3 / longest) : step;
    }

    private static Vector<double> Slope(Func<double[], double> likelihood, double[] at)
    {
        const double by = 1e-3;
        return Vector<double>.Build.Dense(at.Length, j =>
            (8 * (Shifted(likelihood, at, j, by) - Shifted(likelihood, at, j, -by)) - Shifted(likelihood, at, j, 2 * by) + Shifted(likelihood, at, j, -2 * by)) / (12 * by));
    }

    private static Matrix<double> Curvature(Func<double[], double> likelihood, double[] at, double value)
    {
        const double by = 5e-4;
        var result = Matrix<double>.Build.Dense(at.Length, at.Length);
        double[] beside = [.. at.Select((_, i) => Shifted(likelihood, at, i, by) + Shifted(likelihood, at, i, -by))];
        for (var i = 0; i < at.Length; i++)
        {
            result[i, i] = -(beside[i] - 2 * value) / (by * by);
            // Two values on the diagonal, and those beside each axis that are known already (Abramowitz and Stegun 25.3.27).
            for (var j = 0; j < i; j++)
                result[i, j] = result[j, i] = -(Shifted(likelihood, at, i, by, j, by) + Shifted(likelihood, at, i, -by, j, -by) - beside[i] - beside[j] + 2 * value) / (2 * by * by);
        }
        return result;
    }

    private static double Shifted(Func<double[], double> likelihood, double[] at, int i, double by, int j = 0, double byOther = 0)
    {
        double[] moved = [.. at];
        moved[i] += by;
        moved[j] += byOther;
        return likelihood(moved);
    }
}
