using Tamis.Statistics.Comparisons;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.Comparisons;

public class PairwiseDifferenceTests
{
    // Tippett (1950), breaks of a loom's warp by wool and tension; adjusted probabilities as printed with R's example, from memory.
    [Theory]
    [InlineData("L", "M", 10.000, 0.0336)]
    [InlineData("H", "L", -14.722, 0.0011)]
    [InlineData("H", "M", -4.722, 0.4474)]
    public void AdjustedP_WarpBreaks_AsPrinted(string first, string second, double difference, double p)
    {
        var model = BlockModel.Of(Published.Rows("warpbreaks.csv").Select(row => new BlockValue(row["wool"], row["tension"], int.Parse(row["breaks"], System.Globalization.CultureInfo.InvariantCulture))));

        var pair = Assert.Single(model.PairwiseDifferences(), pair => pair.First == first && pair.Second == second || pair.First == second && pair.Second == first);

        Assert.Equal(Math.Abs(difference), Math.Abs(pair.Difference.Value), 3);
        Assert.Equal(p, pair.AdjustedP, 4);
        Assert.Equal(pair.AdjustedP < 0.05, !pair.AdjustedLimits().Contains(0));
    }

    [Fact]
    public void AdjustedP_TwoLevels_IsThePlainOne()
    {
        var pair = new PairwiseDifference("a", "b", new(1.3, 0.6, 7), 2);

        Assert.Equal(pair.PlainP, pair.AdjustedP, 12);
    }

    [Fact]
    public void AdjustedP_NoSpreadAtAll_IsCertainEitherWay()
    {
        Assert.Equal(0, new PairwiseDifference("a", "b", new(2, 0, 7), 3).AdjustedP);
        Assert.Equal(1, new PairwiseDifference("a", "b", new(0, 0, 7), 3).AdjustedP);
    }
}
