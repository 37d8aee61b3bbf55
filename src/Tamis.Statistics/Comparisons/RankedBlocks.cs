using MathNet.Numerics;
using MathNet.Numerics.Statistics;

namespace Tamis.Statistics.Comparisons;

/// <summary>Treatments ranked within blocks; equal values share the mean of their ranks.</summary>
public sealed class RankedBlocks
{
    private readonly double _tied;

    private RankedBlocks(double[][] ranks, double tied) => (Ranks, _tied) = (ranks, tied);

    /// <summary>The ranks, a row a block.</summary>
    public IReadOnlyList<IReadOnlyList<double>> Ranks { get; }

    /// <summary>How many treatments.</summary>
    public int TreatmentCount => Ranks[0].Count;

    /// <summary>The sum of each treatment's ranks.</summary>
    public IReadOnlyList<double> RankSums => [.. Enumerable.Range(0, TreatmentCount).Select(treatment => Ranks.Sum(row => row[treatment]))];

    /// <summary>Ranks values within blocks.</summary>
    /// <param name="blocks">A row a block, a column a treatment.</param>
    /// <exception cref="ArgumentException">There is no block, fewer than two treatments, a block of another length, or a value that is no number.</exception>
    public static RankedBlocks Of(IReadOnlyList<double[]> blocks)
    {
        if (blocks.Count == 0 || blocks[0].Length < 2 || blocks.Any(row => row.Length != blocks[0].Length))
            throw new ArgumentException("Ranks within blocks need one block or more, each with the same two treatments or more.", nameof(blocks));
        if (blocks.Any(row => Array.Exists(row, double.IsNaN))) throw new ArgumentException("A missing value has no rank: leave its block out, or fill it.", nameof(blocks));
        return new([.. blocks.Select(row => ArrayStatistics.RanksInplace([.. row]))],
            blocks.Sum(row => row.CountBy(value => value).Sum(group => Math.Pow(group.Value, 3) - group.Value)));
    }

    /// <summary>Friedman's statistic, 0 or more (1937, Journal of the American Statistical Association 32); null where every block ties all treatments.</summary>
    /// <param name="correctTies">Whether ties make the statistic larger, as they make chance spread smaller.</param>
    public double? Friedman(bool correctTies = true)
    {
        double n = Ranks.Count, k = TreatmentCount;
        var raw = 12 / (n * k * (k + 1)) * RankSums.Sum(sum => Math.Pow(sum - n * (k + 1) / 2, 2));
        var spread = correctTies ? 1 - _tied / (n * k * (k * k - 1)) : 1;
        return spread > 0 ? raw / spread : null;
    }

    /// <summary>How far two rank sums must lie apart for a difference, all pairs counted together (Nemenyi 1963); ties make chance spread smaller, and this with it.</summary>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    public double GapNeeded(double confidence) => StudentizedRange.Quantile(confidence, TreatmentCount, double.PositiveInfinity)
        * Math.Sqrt(Ranks.Sum(row => row.Sum(rank => Math.Pow(rank - (TreatmentCount + 1) / 2.0, 2))) / (TreatmentCount - 1));

    /// <summary>The chance of so large an L if no treatment rose above another: the upper tail of its normal score.</summary>
    public double PageChance => SpecialFunctions.Erfc(Page(correctTies: true).Z / Math.Sqrt(2)) / 2;

    /// <summary>Page's L for treatments expected to rise in the order of the columns (1963, Journal of the American Statistical Association 58), and its normal score; 0 where every block ties all treatments.</summary>
    /// <param name="correctTies">Whether chance spreads as it does among the ranks that are there; else as among ranks without ties, which makes the score smaller.</param>
    public (double L, double Z) Page(bool correctTies = false)
    {
        double n = Ranks.Count, k = TreatmentCount;
        var l = RankSums.Select((sum, i) => (i + 1) * sum).Sum();
        // Over all orders of a block's ranks its part of L spreads as the squares of the ranks and of 1 to k about their mean, over k − 1.
        var squares = correctTies ? Ranks.Sum(row => row.Sum(rank => Math.Pow(rank - (k + 1) / 2, 2))) : n * k * (k * k - 1) / 12;
        return (l, squares > 0 ? (l - n * k * (k + 1) * (k + 1) / 4) / Math.Sqrt(squares * k * (k + 1) / 12) : 0);
    }
}
