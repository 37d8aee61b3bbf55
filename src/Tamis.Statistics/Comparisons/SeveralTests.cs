namespace Tamis.Statistics.Comparisons;

/// <summary>Probabilities of several tests, so adjusted that the risk of calling any one of them by chance stays what was wanted.</summary>
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
}
