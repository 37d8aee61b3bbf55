using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Tamis.Statistics.Discrimination;

/// <summary>Counts of right answers of people who each answered several times: people differ more than chance alone lets them.</summary>
/// <param name="Mean">The mean chance of a right answer.</param>
/// <param name="Overdispersion">0 where all have the same chance, 1 where each is always right or always wrong. A count's variance is 1 + (replicates − 1) times this as large as a binomial one.</param>
/// <param name="LogLikelihood">The largest log likelihood, binomial coefficients included.</param>
/// <remarks>Beta-binomial by maximum likelihood: a = μ(1 − γ)/γ, b = (1 − μ)(1 − γ)/γ (Skellam 1948; Ennis and Bi 1998, Journal of Sensory Studies 13).</remarks>
public sealed record BetaBinomialFit(double Mean, double Overdispersion, double LogLikelihood)
{
    /// <summary>How often chance alone would spread the counts at least so much if all people had the same chance: the likelihood ratio against a binomial,
    /// half a χ² with one degree of freedom because a spread cannot be below zero (Self and Liang 1987, Journal of the American Statistical Association 82).</summary>
    public required double ChanceOfNoSpread { get; init; }

    /// <summary>Fits counts of people who all answered equally often.</summary>
    /// <param name="counts">Right answers of each person.</param>
    /// <param name="replicates">Answers of each person, two or more.</param>
    /// <returns>The fit; null where all answers are right, or all wrong, so that no spread can be told.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two replicates, or a count outside 0 to the replicates.</exception>
    public static BetaBinomialFit? Of(IReadOnlyList<int> counts, int replicates) => replicates < 2
        ? throw new ArgumentOutOfRangeException(nameof(replicates), replicates, "Over-dispersion needs two answers of each person or more.")
        : Of([.. counts.Select(count => (count, replicates))]);

    /// <summary>Fits counts of people who may have answered unequally often; whoever answered once says nothing of the spread and counts for the mean.</summary>
    /// <param name="counts">Right answers and all answers of each person.</param>
    /// <returns>The fit; null where all answers are right, or all wrong, or nobody answered twice.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count lies outside 0 to the answers of its person.</exception>
    public static BetaBinomialFit? Of(IReadOnlyList<(int Right, int Answered)> counts)
    {
        foreach (var (right, answered) in counts)
            if (right < 0 || right > answered) throw new ArgumentOutOfRangeException(nameof(counts), right, $"A count lies between 0 and {answered}.");
        double mean = counts.Sum(each => each.Right) / (double)counts.Sum(each => each.Answered);
        if (mean is not (> 0 and < 1) || counts.All(each => each.Answered < 2)) return null;
        var found = new NelderMeadSimplex(1e-14, 5000).FindMinimum(ObjectiveFunction.Value(at => -LogLikelihoodOf(counts, Logistic(at[0]), Logistic(at[1]))),
            Vector<double>.Build.Dense([Math.Log(mean / (1 - mean)), -1]), Vector<double>.Build.Dense([0.2, 0.5])).MinimizingPoint;
        var likelihood = LogLikelihoodOf(counts, Logistic(found[0]), Logistic(found[1]));
        var ratio = Math.Max(0, 2 * (likelihood - LogLikelihoodOf(counts, mean, 0)));
        return new(Logistic(found[0]), Logistic(found[1]), likelihood) { ChanceOfNoSpread = ratio <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(0.5, ratio / 2) / 2 };
    }

    private static double LogLikelihoodOf(IReadOnlyList<(int Right, int Answered)> counts, double mean, double dispersion)
    {
        // Products of (μ(1 − γ) + iγ) and the like are exact down to γ = 0, where they are the binomial's.
        double Log(double chance, int count) => Enumerable.Range(0, count).Sum(i => Math.Log(chance * (1 - dispersion) + i * dispersion));
        return counts.CountBy(each => each).Sum(group => group.Value * (SpecialFunctions.BinomialLn(group.Key.Answered, group.Key.Right)
            + Log(mean, group.Key.Right) + Log(1 - mean, group.Key.Answered - group.Key.Right) - Log(1, group.Key.Answered)));
    }

    // Where all are always right or always wrong the likelihood rises for ever: beyond 15 nothing of a share changes that a page shows.
    private static double Logistic(double value) => 1 / (1 + Math.Exp(-Math.Clamp(value, -15, 15)));
}
