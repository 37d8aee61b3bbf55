using Tamis.Statistics.Comparisons;
using Tamis.Statistics.Designs;

namespace Tamis.Statistics.Tests.Comparisons;

public class RankedBlocksTests
{
    // Largest values of the exact tables: three treatments, full agreement of three blocks is 6.0; Page's L is 42 (from memory, and by count).
    [Fact]
    public void Friedman_FullAgreement_IsTheLargestValue()
    {
        var ranked = RankedBlocks.Of([[1, 2, 3], [10, 20, 30], [5, 6, 9]]);

        Assert.Equal(6, ranked.Friedman()!.Value, 12);
        Assert.Equal(42, ranked.Page().L, 12);
        Assert.Equal([3, 6, 9], ranked.RankSums);
    }

    [Fact]
    public void Friedman_AllTied_HasNoStatistic() => Assert.Null(RankedBlocks.Of([[2, 2, 2], [1, 1, 1]]).Friedman());

    [Fact]
    public void Of_BlocksOfOtherLength_AreRefused() => Assert.Throws<ArgumentException>(() => RankedBlocks.Of([[1, 2], [1, 2, 3]]));

    [Fact]
    public void IsWilliams_ARowTwice_IsNot()
    {
        Assert.True(DesignBalance.IsWilliams([["1", "2", "4", "3"], ["2", "3", "1", "4"], ["3", "4", "2", "1"], ["4", "1", "3", "2"]]));
        Assert.False(DesignBalance.IsWilliams([["1", "2", "4", "3"], ["1", "2", "4", "3"], ["3", "4", "2", "1"], ["4", "1", "3", "2"]]));
    }

    // SciPy 1.10.1, page_trend_test(method='asymptotic'): L = 176.
    [Fact]
    public void PageChance_RisingTreatments_IsThatOfSciPy()
    {
        var ranked = RankedBlocks.Of([[1, 2, 3, 4], [2, 1, 3, 4], [1, 3, 2, 4], [1, 2, 4, 3], [2, 1, 3, 4], [1, 2, 3, 4]]);

        Assert.Equal(176, ranked.Page().L, 9);
        Assert.Equal(0.0001180172082646745, ranked.PageChance, 10);
    }

    // All orders of every block gone through: mean and spread of L among them are those that its normal score stands on, with ties too.
    [Fact]
    public void Page_WithTies_SpreadsAsAllOrdersOfTheBlocksDo()
    {
        double[][] rows = [[1, 2, 2, 4], [3, 3, 3, 5]];
        double[] all = [.. from first in Orders(rows[0]) from second in Orders(rows[1]) select RankedBlocks.Of([first, second]).Page().L];
        var mean = all.Average();
        var deviation = Math.Sqrt(all.Average(l => (l - mean) * (l - mean)));
        var (found, z) = RankedBlocks.Of(rows).Page(correctTies: true);

        Assert.Equal((found - mean) / deviation, z, 9);
        Assert.True(RankedBlocks.Of(rows).Page().Z < z);
        Assert.Equal(0.5, RankedBlocks.Of([[1, 1], [2, 2]]).PageChance, 12);

        static IEnumerable<double[]> Orders(double[] values) => values.Length == 0 ? [[]]
            : from at in Enumerable.Range(0, values.Length) from rest in Orders([.. values[..at], .. values[(at + 1)..]]) select (double[])[values[at], .. rest];
    }

    // Without ties q √(n k (k + 1)/12), Nemenyi 1963; ties make chance spread smaller.
    [Fact]
    public void GapNeeded_WithAndWithoutTies()
    {
        double[][] rows = [[1, 2, 3], [2, 1, 3], [3, 1, 2], [1, 3, 2]];
        Assert.Equal(StudentizedRange.Quantile(0.95, 3, double.PositiveInfinity) * Math.Sqrt(4 * 3 * 4 / 12.0), RankedBlocks.Of(rows).GapNeeded(0.95), 9);
        Assert.True(RankedBlocks.Of([[1, 1, 3], .. rows[1..]]).GapNeeded(0.95) < RankedBlocks.Of(rows).GapNeeded(0.95));
    }

    [Fact]
    public void Of_MissingValue_IsRefused() => Assert.Throws<ArgumentException>(() => RankedBlocks.Of([[1, double.NaN], [1, 2]]));
}
