namespace Tamis.Statistics.Uncertainty;

/// <summary>The draws of one result, and what they say of it (JCGM 101:2008, clause 7).</summary>
public sealed class DrawnNumbers
{
    private readonly ReadOnlyMemory<double> _draws;

    /// <summary>Takes draws that were made elsewhere.</summary>
    public DrawnNumbers(ReadOnlyMemory<double> draws) => _draws = draws;

    /// <summary>How many there are.</summary>
    public int Count => _draws.Length;

    /// <summary>The draws in the order in which they were made.</summary>
    public ReadOnlySpan<double> Draws => _draws.Span;

    /// <summary>Their mean: the estimate of the result.</summary>
    public double Mean => Moments.Of(Draws).Mean;

    /// <summary>Their standard deviation: the standard uncertainty of the result.</summary>
    public double StandardDeviation => Moments.Of(Draws).StandardDeviation;

    /// <summary>The number below which a share of the draws lies, between two draws in proportion (Hyndman and Fan 1996, type 7).</summary>
    /// <param name="share">0 to 1.</param>
    public double Quantile(double share) => Quantiles(share)[0];

    /// <summary>Several quantiles in one pass.</summary>
    /// <param name="shares">Each 0 to 1.</param>
    public double[] Quantiles(params ReadOnlySpan<double> shares)
    {
        var quantiles = new double[shares.Length];
        OrderStatistics.Quantiles(Draws, shares, quantiles);
        return quantiles;
    }

    /// <summary>The interval from one tail to the other with the same share outside at each end.</summary>
    public (double Low, double High) Interval(double coverage = 0.95) => Quantiles((1 - coverage) / 2, (1 + coverage) / 2) is [var low, var high] ? (low, high) : default;

    /// <summary>The shortest interval that covers a share of the draws (JCGM 101:2008, 7.7.4).</summary>
    public (double Low, double High) ShortestInterval(double coverage = 0.95)
    {
        var sorted = Draws.ToArray();
        Array.Sort(sorted);
        var covered = (int)(coverage * sorted.Length + 0.5);
        var best = 0;
        for (var i = 1; i + covered < sorted.Length; i++)
            if (sorted[i + covered] - sorted[i] < sorted[best + covered] - sorted[best]) best = i;
        return (sorted[best], sorted[Math.Min(best + covered, sorted.Length - 1)]);
    }
}
