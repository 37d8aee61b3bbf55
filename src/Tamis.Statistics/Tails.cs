using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Tamis.Statistics;

/// <summary>Tail probabilities and quantiles of Student's t, F and χ², from the library's incomplete beta function.</summary>
public static class Tails
{
    private const double LargeEffect = 1e5, NearlyNormal = 1e7;

    /// <summary>The probability that F with these degrees of freedom exceeds a value; keeps its digits when it is small.</summary>
    /// <param name="f">The value, zero or more.</param>
    /// <param name="numeratorDegrees">Degrees of freedom above, more than zero.</param>
    /// <param name="denominatorDegrees">Degrees of freedom below, more than zero.</param>
    /// <remarks>P(F &gt; f) = I(d2/2, d1/2) at d2/(d2 + d1 f): Abramowitz and Stegun 26.6.2.</remarks>
    public static double FAbove(double f, double numeratorDegrees, double denominatorDegrees) => double.IsPositiveInfinity(f)
        ? 0
        : SpecialFunctions.BetaRegularized(denominatorDegrees / 2, numeratorDegrees / 2, denominatorDegrees / (denominatorDegrees + numeratorDegrees * f));

    /// <summary>The probability that the absolute value of Student's t exceeds that of <paramref name="t"/>.</summary>
    /// <param name="t">The value.</param>
    /// <param name="degrees">Degrees of freedom, more than zero.</param>
    public static double StudentBeyond(double t, double degrees) => FAbove(t * t, 1, degrees);

    /// <summary>The value that Student's t exceeds in absolute value with probability 1 − <paramref name="confidence"/>.</summary>
    /// <param name="confidence">The share of the distribution between the limits, above 0 and below 1.</param>
    /// <param name="degrees">Degrees of freedom, more than zero.</param>
    /// <returns>The value; infinite where so few degrees of freedom put it beyond the largest number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not between 0 and 1, or there are no degrees of freedom.</exception>
    public static double StudentTwoSided(double confidence, double degrees)
    {
        if (confidence is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence lies between 0 and 1, such as 0.95.");
        if (degrees is not > 0)
            throw new ArgumentOutOfRangeException(nameof(degrees), degrees, "An interval needs at least one degree of freedom.");
        if (degrees < 1) return FarOut(confidence, degrees);
        // So near the normal distribution the tail has no digits left to step by; the next term of its series is enough (Abramowitz and Stegun 26.7.5).
        if (degrees > NearlyNormal) return NormalTwoSided(confidence) is var z ? z + (z * z * z + z) / (4 * degrees) : z;
        var t = StudentT.InvCDF(0, 1, degrees, 1 - (1 - confidence) / 2);
        // The library stops at 1e-12 of probability, which is ten digits of t in the tails; a Newton step on the tail itself gives the rest.
        return t + (StudentBeyond(t, degrees) - (1 - confidence)) / (2 * StudentT.PDF(0, 1, degrees, t));
    }

    // Below one degree of freedom the tail is so long that the library finds no end of it: the logarithm of t is halved in on, and past the largest number it is infinite.
    private static double FarOut(double confidence, double degrees)
    {
        const double least = -30, most = 350;
        if (StudentBeyond(Math.Exp(most), degrees) > 1 - confidence) return double.PositiveInfinity;
        var (low, high) = (least, most);
        while (high - low > 1e-13 * Math.Max(1, Math.Abs(low)))
            if ((low + high) / 2 is var middle && StudentBeyond(Math.Exp(middle), degrees) > 1 - confidence) low = middle;
            else high = middle;
        return Math.Exp((low + high) / 2);
    }

    /// <summary>The value that a standard normal variable exceeds in absolute value with probability 1 − <paramref name="confidence"/>.</summary>
    /// <param name="confidence">Above 0 and below 1.</param>
    public static double NormalTwoSided(double confidence) => Normal.InvCDF(0, 1, 1 - (1 - confidence) / 2);

    /// <summary>The probability that χ² with these degrees of freedom exceeds a value.</summary>
    /// <param name="chiSquare">The value, zero or more.</param>
    /// <param name="degrees">Degrees of freedom, more than zero.</param>
    public static double ChiSquareAbove(double chiSquare, double degrees) => SpecialFunctions.GammaUpperRegularized(degrees / 2, chiSquare / 2);

    /// <summary>The probability that F exceeds a value where the mean square above holds a real effect.</summary>
    /// <param name="f">The value, zero or more.</param>
    /// <param name="numeratorDegrees">Degrees of freedom above, more than zero.</param>
    /// <param name="denominatorDegrees">Degrees of freedom below, more than zero.</param>
    /// <param name="effect">The non-centrality, 0 or more: the sum of squares of the true effects over the variance of one observation's error.</param>
    /// <remarks>A sum over Poisson weights of central probabilities: Abramowitz and Stegun 26.6.18. Terms are added from the likeliest outwards until they no longer count.
    /// Above an effect of a hundred thousand it is good to three parts in a thousand.</remarks>
    public static double NoncentralFAbove(double f, double numeratorDegrees, double denominatorDegrees, double effect)
    {
        if (!(effect >= 0) || !double.IsFinite(effect)) throw new ArgumentOutOfRangeException(nameof(effect), effect, "The non-centrality is zero or more, and finite.");
        if (effect == 0) return FAbove(f, numeratorDegrees, denominatorDegrees);
        // Beside so large an effect the numerator's own spread is nothing: it is the effect, and only the error below it varies.
        if (effect > LargeEffect) return f > 0 ? 1 - ChiSquareAbove(effect / (f * numeratorDegrees) * denominatorDegrees, denominatorDegrees) : 1;
        var share = denominatorDegrees / (denominatorDegrees + numeratorDegrees * f);
        var likeliest = (int)(effect / 2);
        double sum = 0, weights = 0;
        for (var count = likeliest; count >= 0 && Add(count); count--) { }
        for (var count = likeliest + 1; Add(count); count++) { }
        // Weights of terms left out are of no account; what is summed is brought to a whole.
        return Math.Clamp(sum / weights, 0, 1);

        bool Add(int count)
        {
            var weight = Math.Exp(-effect / 2 + count * Math.Log(effect / 2) - SpecialFunctions.GammaLn(count + 1));
            sum += weight * SpecialFunctions.BetaRegularized(denominatorDegrees / 2, numeratorDegrees / 2 + count, share);
            weights += weight;
            return weight > 1e-17;
        }
    }
}
