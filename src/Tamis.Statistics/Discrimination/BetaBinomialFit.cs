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
    /// <summary>Fits the counts.</summary>
    /// <param name="counts">Right answers of each person.</param>
    /// <param name="replicates">Answers of each person, two or more.</param>
    /// <returns>The fit; null where all answers are right, or all wrong, so that no spread can be told.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two replicates, or a count outside 0 to the replicates.</exception>
    public static BetaBinomialFit? Of(IReadOnlyList<int> counts, int replicates)
    {
        if (replicates < 2) throw new ArgumentOutOfRangeException(nameof(replicates), replicates, "Over-dispersion needs two answers of each person or more.");
        foreach (var count in counts)
            if (count < 0 || count > replicates) throw new ArgumentOutOfRangeException(nameof(counts), count, $"A count lies between 0 and {replicates}.");
        double mean = counts.Sum() / (double)(counts.Count * replicates);
        if (mean is not (> 0 and < 1)) return null;
        var found = new NelderMeadSimplex(1e-14, 5000).FindMinimum(ObjectiveFunction.Value(at => -LogLikelihoodOf(counts, replicates, Logistic(at[0]), Logistic(at[1]))),
            Vector<double>.Build.Dense([Math.Log(mean / (1 - mean)), -1]), Vector<double>.Build.Dense([0.2, 0.5])).MinimizingPoint;
        return new(Logistic(found[0]), Logistic(found[1]), LogLikelihoodOf(counts, replicates, Logistic(found[0]), Logistic(found[1])));
    }

    private static double LogLikelihoodOf(IReadOnlyList<int> counts, int replicates, double mean, double dispersion)
    {
        // Products of (μ(1 − γ) + iγ) and the like are exact down to γ = 0, where they are the binomial's.
        double Log(double chance, int count) => Enumerable.Range(0, count).Sum(i => Math.Log(chance * (1 - dispersion) + i * dispersion));
        var whole = Log(1, replicates);
        return counts.CountBy(count => count).Sum(group => group.Value *
            (SpecialFunctions.BinomialLn(replicates, group.Key) + Log(mean, group.Key) + Log(1 - mean, replicates - group.Key) - whole));
    }

    private static double Logistic(double value) => 1 / (1 + Math.Exp(-value));
}
