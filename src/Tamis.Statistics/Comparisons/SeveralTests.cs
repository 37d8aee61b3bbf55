namespace Tamis.Statistics.Comparisons;

/// <summary>Probabilities of several tests, so adjusted that chance is counted over all of them together.</summary>
public static class SeveralTests
{
    /// <summary>Holm's step-down adjustment: valid however the tests hang together.</summary>
    /// <param name="probabilities">The probability of each test by itself, 0 to 1; one that is not a number is left as it is and does not count.</param>
    /// <returns>The adjusted probabilities in the order given: the smallest times the number of tests, the next times one less, none below its forerunner, none above 1.</returns>
    /// <remarks>Holm (1979), Scandinavian Journal of Statistics 6, 65 to 70.</remarks>
    public static IReadOnlyList<double> Holm(IReadOnlyList<double> probabilities)
    {
        double[] adjusted = [.. probabilities];
        int[] order = [.. Enumerable.Range(0, adjusted.Length).Where(at => !double.IsNaN(adjusted[at])).OrderBy(at => adjusted[at])];
        double before = 0;
        for (var rank = 0; rank < order.Length; rank++)
            adjusted[order[rank]] = before = Math.Max(before, Math.Min(1, (order.Length - rank) * probabilities[order[rank]]));
        return adjusted;
    }

    /// <summary>Benjamini and Hochberg's step-up adjustment: of what is called below a limit, no larger share than the limit is called by chance on average.</summary>
    /// <param name="probabilities">The probability of each test by itself, 0 to 1; one that is not a number is left as it is and does not count.</param>
    /// <returns>The adjusted probabilities in the order given: the largest as it is, the next times the number of tests over one less, none above its forerunner.</returns>
    /// <remarks>Benjamini and Hochberg (1995), Journal of the Royal Statistical Society B 57, 289 to 300; for tests that do not pull against one another. It lets more through than Holm's.</remarks>
    public static IReadOnlyList<double> BenjaminiHochberg(IReadOnlyList<double> probabilities)
    {
        double[] adjusted = [.. probabilities];
        int[] order = [.. Enumerable.Range(0, adjusted.Length).Where(at => !double.IsNaN(adjusted[at])).OrderByDescending(at => adjusted[at])];
        var before = 1.0;
        for (var rank = 0; rank < order.Length; rank++)
            adjusted[order[rank]] = before = Math.Min(before, probabilities[order[rank]] * order.Length / (order.Length - rank));
        return adjusted;
    }
}
