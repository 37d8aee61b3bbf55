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
}
