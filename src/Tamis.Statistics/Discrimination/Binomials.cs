using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Tamis.Statistics.Discrimination;

/// <summary>Exact binomial probabilities, and the number of answers that they ask for.</summary>
public static class Binomials
{
    private const int Most = 2000;

    /// <summary>The probability of so many right answers or more.</summary>
    /// <param name="right">The right answers, 0 or more.</param>
    /// <param name="answers">All answers, at least as many.</param>
    /// <param name="share">The chance of each, above 0 and below 1.</param>
    /// <remarks>P(X ≥ k) = I(share; k, n − k + 1): Abramowitz and Stegun 26.5.24.</remarks>
    public static double AtLeast(int right, int answers, double share) => right <= 0 ? 1 : right > answers ? 0 : SpecialFunctions.BetaRegularized(right, answers - right + 1, share);

    /// <summary>The exact two-sided interval of a share (Clopper and Pearson 1934, Biometrika 26).</summary>
    public static ConfidenceLimits Limits(int right, int answers, double confidence)
    {
        var tail = (1 - confidence) / 2;
        return new(
            right == 0 ? 0 : Beta.InvCDF(right, answers - right + 1, tail),
            right == answers ? 1 : Beta.InvCDF(right + 1, answers - right, 1 - tail));
    }

    /// <summary>The fewest right answers that guessing would reach no more often than the risk allows; null where no number does.</summary>
    public static int? FewestRight(int answers, double guess, double risk)
    {
        for (var right = (int)Math.Ceiling(answers * guess); right <= answers; right++)
            if (AtLeast(right, answers, guess) <= risk) return right;
        return null;
    }

    /// <summary>The chance that a test reaches its fewest right answers, 0 to 1.</summary>
    /// <param name="answers">How many answers.</param>
    /// <param name="guess">The chance by guessing.</param>
    /// <param name="distinguisherShare">The share of people who really tell the two apart; the others guess.</param>
    /// <param name="risk">The risk of a false alarm.</param>
    public static double Power(int answers, double guess, double distinguisherShare, double risk) =>
        FewestRight(answers, guess, risk) is { } fewest ? AtLeast(fewest, answers, guess + (1 - guess) * distinguisherShare) : 0;

    /// <summary>The first number of answers that has the wanted power; null above two thousand. Power is a saw-tooth: a few answers more may have a little less.</summary>
    public static int? AnswersNeeded(double guess, double distinguisherShare, double risk, double power)
    {
        for (var answers = 2; answers <= Most; answers++)
            if (Power(answers, guess, distinguisherShare, risk) >= power) return answers;
        return null;
    }
}
