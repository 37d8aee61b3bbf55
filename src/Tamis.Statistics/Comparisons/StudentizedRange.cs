using MathNet.Numerics;
using MathNet.Numerics.RootFinding;

namespace Tamis.Statistics.Comparisons;

/// <summary>The studentized range: the range of independent standard normal values over an independent root mean square of so many degrees of freedom.</summary>
/// <remarks>
/// P(Q &gt; q) = ∫ f(s) P(range of k &gt; q s) ds with f the density of √(χ²/ν) (Harter 1960, Annals of Mathematical Statistics 31). Both integrals
/// are trapezoidal sums of integrands that fall off on both sides, which converge faster than any power of the step (Trefethen and Weideman
/// 2014, SIAM Review 56); the outer one runs over log s, so that one or a broken number of degrees of freedom is no special case. What is summed
/// is the upper tail itself, so that a small probability keeps its digits.
/// </remarks>
public static class StudentizedRange
{
    private const double InnerEnd = 8.75, InnerStep = 0.25, Negligible = 1e-17;

    private static readonly double[] InnerPoints = [.. Enumerable.Range(0, (int)(2 * InnerEnd / InnerStep) + 1).Select(i => i * InnerStep - InnerEnd)];
    private static readonly double[] InnerBelow = [.. InnerPoints.Select(Below)];
    private static readonly double[] InnerWeights = [.. InnerPoints.Select(z => InnerStep * Math.Exp(-z * z / 2) / Constants.Sqrt2Pi)];

    /// <summary>The probability that the studentized range exceeds a value.</summary>
    /// <param name="q">The value; at 0 or below the answer is 1.</param>
    /// <param name="groups">How many values the range is of, two or more.</param>
    /// <param name="degrees">Degrees of freedom of the root mean square, more than zero; infinite where it is known.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two groups, or no degrees of freedom.</exception>
    public static double Above(double q, int groups, double degrees)
    {
        Check(groups, degrees);
        if (q <= 0) return 1;
        if (double.IsPositiveInfinity(q)) return 0;
        // Two values: the range over the root mean square is √2 |t|, for which the incomplete beta function is exact.
        if (groups == 2) return double.IsPositiveInfinity(degrees) ? SpecialFunctions.Erfc(q / 2) : Tails.StudentBeyond(q / Constants.Sqrt2, degrees);
        return double.IsPositiveInfinity(degrees) ? RangeAbove(q, groups) : Math.Min(1, OverRootMeanSquare(q, groups, degrees));
    }

    /// <summary>The value that the studentized range stays below with a probability.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    /// <param name="groups">How many values the range is of, two or more.</param>
    /// <param name="degrees">Degrees of freedom of the root mean square, more than zero; infinite where it is known.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not between 0 and 1, fewer than two groups, or no degrees of freedom.</exception>
    public static double Quantile(double probability, int groups, double degrees)
    {
        Check(groups, degrees);
        if (probability is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability lies between 0 and 1, such as 0.95.");
        var wanted = Math.Log(1 - probability);
        var high = 4.0;
        while (Math.Log(Above(high, groups, degrees)) > wanted) high *= 2;
        var low = high;
        while (Math.Log(Above(low, groups, degrees)) < wanted) low /= 2;
        // The logarithm of the tail against the logarithm of q is nearly straight, so that the root is found in a few steps.
        return Math.Exp(Brent.FindRoot(x => Math.Log(Above(Math.Exp(x), groups, degrees)) - wanted, Math.Log(low), Math.Log(high), 1e-13, 200));
    }

    private static void Check(int groups, double degrees)
    {
        if (groups < 2) throw new ArgumentOutOfRangeException(nameof(groups), groups, "A range needs two values or more.");
        if (degrees is not > 0) throw new ArgumentOutOfRangeException(nameof(degrees), degrees, "A root mean square needs degrees of freedom.");
    }

    private static double OverRootMeanSquare(double q, int groups, double degrees)
    {
        // The logarithm of √(χ²/ν) is nearly normal with standard deviation 1/√(2ν) where ν is large.
        var step = Math.Min(0.1, 0.5 / Math.Sqrt(2 * degrees));
        var constant = degrees / 2 * Math.Log(degrees / 2) + Math.Log(2) - SpecialFunctions.GammaLn(degrees / 2);
        double sum = 0;
        for (var t = 0.0; Density(t) is var density && density > Negligible; t += step) sum += density * RangeAbove(q * Math.Exp(t), groups);
        for (var t = -step; Density(t) is var density && density > Negligible; t -= step) sum += density * RangeAbove(q * Math.Exp(t), groups);
        return step * sum;

        double Density(double t) => Math.Exp(constant + degrees * t - degrees / 2 * Math.Exp(2 * t));
    }

    // k ∫ φ(z) {Φ(z)^(k−1) − [Φ(z) − Φ(z − w)]^(k−1)} dz: the largest of k values stands at z, and not all others within w below it.
    private static double RangeAbove(double w, int groups)
    {
        if (w < 1e-15) return 1;
        double sum = 0;
        for (var i = 0; i < InnerPoints.Length; i++)
        {
            var below = InnerBelow[i];
            var outside = Math.Min(1, Below(InnerPoints[i] - w) / below);
            var power = (groups - 1) * Math.Log(below);
            if (power < -60) continue;
            sum += InnerWeights[i] * Math.Exp(power) * (outside < 1 ? -LessOne((groups - 1) * SpecialFunctions.Log1p(-outside)) : 1);
        }
        return Math.Min(1, groups * sum);
    }

    // e^x − 1. The library's own is nine digits good near −0.1.
    private static double LessOne(double x) => 2 / (1 / Math.Tanh(x / 2) - 1);

    private static double Below(double z) => SpecialFunctions.Erfc(-z / Constants.Sqrt2) / 2;
}
