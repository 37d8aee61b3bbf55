using Tamis.Statistics.Designs;

namespace Tamis.Statistics.Tests.Designs;

public class AdjustmentCostTests
{
    // 0, 1, last, 2 … and turned on, with its mirror image where the number is odd (Williams 1949).
    private static List<DesignRow> Williams(int treatments)
    {
        int[] first = [.. Enumerable.Range(0, treatments).Select(place => place == 0 ? 0 : place % 2 == 1 ? (place + 1) / 2 : treatments - place / 2)];
        var square = Enumerable.Range(0, treatments).Select(row => first.Select(each => (each + row) % treatments).ToArray()).ToList();
        if (treatments % 2 == 1) square.AddRange([.. square.Select(row => row.Reverse().ToArray())]);
        return [.. square.SelectMany((order, block) => order.Select((treatment, place) => new DesignRow($"{block}", $"{treatment}",
            [.. Enumerable.Range(0, treatments).Select(at => at == place ? 1.0 : 0)], [.. Enumerable.Range(0, treatments).Select(each => place > 0 && order[place - 1] == each ? 1.0 : 0)])))];
    }

    // In Williams' squares with places as classes, what follows costs (t² − t − 1) / ((t + 1)(t − 2)): efficiencies of 80 % for three and 90.91 % for four
    // (Jones and Kenward, Design and Analysis of Cross-Over Trials; from memory).
    [Theory]
    [InlineData(3, 5.0 / 4), InlineData(4, 11.0 / 10), InlineData(5, 19.0 / 18), InlineData(6, 29.0 / 28)]
    public void Of_WilliamsSquares_CostsWhatTheBookSays(int treatments, double ratio)
    {
        var cost = AdjustmentCost.Of(Williams(treatments))!.Value;
        var people = treatments % 2 == 0 ? treatments : 2 * treatments;

        Assert.Equal(ratio, cost.VarianceRatio, 9);
        Assert.Equal((people - 1) * (treatments - 1) - (treatments - 1), cost.Degrees);
        Assert.Equal(cost.Degrees - (treatments - 1), cost.AdjustedDegrees);
        Assert.True(cost.WidthRatio(0.95) > Math.Sqrt(ratio));
    }

    [Fact]
    public void Of_OneOrderForAll_CannotBeTold() =>
        Assert.Null(AdjustmentCost.Of([.. Enumerable.Range(0, 6).SelectMany(block => Williams(4)[..4].Select(row => row with { Block = $"{block}" }))]));

    [Fact]
    public void Of_OneTreatment_CannotBeTold() => Assert.Null(AdjustmentCost.Of([new("1", "a", [1], [0]), new("2", "a", [2], [1])]));
}
