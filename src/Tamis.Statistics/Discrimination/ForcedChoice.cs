using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace Tamis.Statistics.Discrimination;

/// <summary>A test with a right answer, seen as Thurstone does: sensations are normal with standard deviation 1, two kinds lie d′ apart.</summary>
/// <remarks>
/// Psychometric functions: m alternatives, Hacker and Ratcliff (1979, Perception and Psychophysics 26); duo-trio and triangle, David and Trivedi
/// (1962), Ennis (1993, Journal of Sensory Studies 8); unspecified tetrad, Ennis, Ennis, Palen and Boyle (1998, Journal of Sensory Studies 13).
/// </remarks>
public sealed class ForcedChoice
{
    private const double End = 9;
    private const int Order = 200;

    private readonly Func<double, double> _right;

    private ForcedChoice(string name, double guess, Func<double, double> right) => (Name, Guess, _right) = (name, guess, right);

    /// <summary>Which of three is unlike the two others.</summary>
    public static ForcedChoice Triangle { get; } = new("triangle", 1.0 / 3, d => 2 * Integral(z =>
        (Below(-z * Constants.Sqrt3 + d * Math.Sqrt(2.0 / 3)) + Below(-z * Constants.Sqrt3 - d * Math.Sqrt(2.0 / 3))) * Density(z), 0, End));

    /// <summary>Which of two is like the one given.</summary>
    public static ForcedChoice DuoTrio { get; } = new("duo_trio", 0.5, d =>
        1 - Below(d / Constants.Sqrt2) - Below(d / Math.Sqrt(6)) + 2 * Below(d / Constants.Sqrt2) * Below(d / Math.Sqrt(6)));

    /// <summary>Which of two is stronger.</summary>
    public static ForcedChoice TwoAlternatives { get; } = new("two_afc", 0.5, d => Below(d / Constants.Sqrt2));

    /// <summary>Which of three is strongest.</summary>
    public static ForcedChoice ThreeAlternatives { get; } = new("three_afc", 1.0 / 3, d => Integral(z => Density(z - d) * Below(z) * Below(z), -End, End + d));

    /// <summary>Which two of four belong together, without being told by what.</summary>
    public static ForcedChoice Tetrad { get; } = new("tetrad", 1.0 / 3, d =>
        1 - 2 * Integral(z => Density(z) * (2 * Below(z) * Below(z - d) - Below(z - d) * Below(z - d)), -End, End + d));

    /// <summary>Every test.</summary>
    public static IReadOnlyList<ForcedChoice> All { get; } = [Triangle, DuoTrio, TwoAlternatives, ThreeAlternatives, Tetrad];

    /// <summary>The test's name.</summary>
    public string Name { get; }

    /// <summary>The chance of a right answer by guessing.</summary>
    public double Guess { get; }

    /// <summary>The chance of a right answer at a distance.</summary>
    /// <param name="dPrime">The distance in standard deviations, 0 or more.</param>
    public double ProportionRight(double dPrime) => double.IsPositiveInfinity(dPrime) ? 1 : _right(dPrime);

    /// <summary>The distance at which answers are right so often: 0 at or below guessing, infinite where all are right.</summary>
    /// <param name="proportionRight">0 to 1.</param>
    public double DPrime(double proportionRight)
    {
        if (proportionRight <= Guess) return 0;
        if (proportionRight >= 1) return double.PositiveInfinity;
        var high = 1.0;
        while (_right(high) < proportionRight && high < 100) high *= 2;
        return Brent.FindRoot(d => _right(d) - proportionRight, 0, high, 1e-11, 200);
    }

    /// <summary>The largest number of right answers that people who tell the two apart in this share would fall to no more often than the risk allows; −1 where there is none.</summary>
    /// <param name="answers">How many answers.</param>
    /// <param name="distinguisherShare">The share that must not be overlooked, 0 to 1.</param>
    /// <param name="risk">The risk of overlooking it.</param>
    public int MostForSimilarity(int answers, double distinguisherShare, double risk)
    {
        var right = Guess + (1 - Guess) * distinguisherShare;
        var most = -1;
        while (most + 1 < answers && Binomial.CDF(right, answers, most + 1) <= risk) most++;
        return most;
    }

    /// <summary>The chance that a test of similarity calls two things near enough that nobody can tell apart, 0 to 1.</summary>
    /// <param name="answers">How many answers.</param>
    /// <param name="distinguisherShare">The share that must not be overlooked, 0 to 1.</param>
    /// <param name="risk">The risk of overlooking it.</param>
    public double SimilarityPower(int answers, double distinguisherShare, double risk) =>
        MostForSimilarity(answers, distinguisherShare, risk) is var most and >= 0 ? Binomial.CDF(Guess, answers, most) : 0;

    /// <summary>The first number of answers with which a test of similarity has the wanted power; null above two thousand.</summary>
    /// <param name="distinguisherShare">The share that must not be overlooked, above 0 to 1.</param>
    /// <param name="risk">The risk of overlooking it.</param>
    /// <param name="power">The wanted power.</param>
    public int? AnswersForSimilarity(double distinguisherShare, double risk, double power)
    {
        for (var answers = 2; answers <= 2_000; answers++)
            if (SimilarityPower(answers, distinguisherShare, risk) >= power) return answers;
        return null;
    }

    private static double Integral(Func<double, double> value, double from, double to) => GaussLegendreRule.Integrate(value, from, to, Order);

    private static double Below(double z) => SpecialFunctions.Erfc(-z / Constants.Sqrt2) / 2;

    private static double Density(double z) => Math.Exp(-z * z / 2) / Constants.Sqrt2Pi;
}
