using CsCheck;
using Tamis.Statistics.Designs;

namespace Tamis.Statistics.Tests.Designs;

public class IncompleteBlocksTests
{
    // Every set of numbers is held against its published pair count in data/published; here: whatever the numbers, what is said of a design is what stands in it.
    [Fact]
    public void Of_AnyNumbers_CountsWhatItMadeAndServesEvenly() =>
        (from treatments in Gen.Int[3, 9] from size in Gen.Int[2, 5] from blocks in Gen.Int[2, 16] from seed in Gen.Int[0, 1000] select (treatments, size: Math.Min(size, treatments - 1), blocks, seed)).Sample(
            each =>
            {
                var made = IncompleteBlocks.Of(each.treatments, each.size, each.blocks, new Random(each.seed).Next);
                int[] served = [.. Enumerable.Range(0, each.treatments).Select(treatment => made.Blocks.Count(block => block.Contains(treatment)))];
                int[] pairs = [.. from i in Enumerable.Range(0, each.treatments) from j in Enumerable.Range(i + 1, each.treatments - i - 1) select made.Blocks.Count(block => block.Contains(i) && block.Contains(j))];

                Assert.Equal(each.blocks, made.Blocks.Count);
                Assert.All(made.Blocks, block => Assert.Equal(each.size, block.Distinct().Count()));
                Assert.True(served.Max() - served.Min() <= 1);
                Assert.Equal((pairs.Min(), pairs.Max(), served.Min(), served.Max()), (made.Together.Fewest, made.Together.Most, made.Served.Fewest, made.Served.Most));
                Assert.Equal(pairs.Distinct().Count() == 1 && served.Distinct().Count() == 1, made.IsBalanced);
                Assert.True(!made.IsBalanced || IncompleteBlocks.MayBalance(each.treatments, each.size, each.blocks));
            },
            iter: 60, threads: 1);

    // Each pair is counted here, apart from what the design says of itself; places can be even wherever the places divide the repeats.
    [Theory]
    [InlineData(16, 6, 16, 2), InlineData(25, 4, 50, 1), InlineData(31, 6, 31, 1), InlineData(10, 4, 15, 2), InlineData(28, 4, 63, 1), InlineData(31, 25, 31, 20), InlineData(25, 4, 100, 2), InlineData(15, 7, 15, 3)]
    public void Of_NumbersOfADifferenceFamily_IsBalancedInPairsAndInPlacesWhereTheyDivide(int treatments, int size, int blocks, int together)
    {
        var made = IncompleteBlocks.Of(treatments, size, blocks, new Random(1).Next);
        var orders = BlockOrders.Of(treatments, made.Blocks, new Random(2).Next);

        Assert.Equal(together, DesignBalance.PairsTogether([.. made.Blocks.Select(block => (IReadOnlyList<string>)[.. block.Select(treatment => $"{treatment}")])]));
        Assert.Equal((together, together), made.Together);
        int[] places = [.. from place in Enumerable.Range(0, size) from treatment in Enumerable.Range(0, treatments) select orders.Count(order => order[place] == treatment)];
        if (blocks % treatments == 0 && size <= 7) Assert.Equal(places.Min(), places.Max());
        Assert.True(places.Max() - places.Min() <= 2);
    }

    // Six in fours by twelve: eight repeats times three companions over five others is 4.8, so no pair can do better than four or five together.
    [Fact]
    public void Of_NumbersThatCannotBalance_ComesAsNearAsWholeNumbersCan()
    {
        Assert.False(IncompleteBlocks.MayBalance(6, 4, 12));
        for (var seed = 1; seed <= 5; seed++) Assert.Equal((4, 5), IncompleteBlocks.Of(6, 4, 12, new Random(seed).Next).Together);
    }

    [Theory]
    [InlineData(5, 3, 12, 10), InlineData(6, 4, 12, 15), InlineData(7, 3, 12, 14), InlineData(6, 3, 10, 10)]
    public void NearestCount_Wanted_IsANumberThatMayBalance(int treatments, int size, int wanted, int nearest) =>
        Assert.Equal(nearest, IncompleteBlocks.NearestCount(treatments, size, wanted));

    [Theory]
    [InlineData(1, 2, 3), InlineData(4, 1, 3), InlineData(4, 5, 3), InlineData(4, 2, 0)]
    public void Of_NumbersThatMakeNoDesign_AreRefused(int treatments, int size, int blocks) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => IncompleteBlocks.Of(treatments, size, blocks, new Random(1).Next));

    // Seven in threes by seven: three repeats in three places, so each treatment can stand once in each (the rows of a Youden square; Youden 1937).
    [Theory]
    [InlineData(7, 3, 7, 1), InlineData(5, 3, 10, 2), InlineData(4, 3, 4, 1), InlineData(6, 3, 20, 0)]
    public void Orders_RepeatsThatDivide_StandEquallyOftenInEveryPlace(int treatments, int size, int blocks, int each)
    {
        var made = IncompleteBlocks.Of(treatments, size, blocks, new Random(3).Next);
        var orders = BlockOrders.Of(treatments, made.Blocks, new Random(4).Next);
        int[] counts = [.. from place in Enumerable.Range(0, size) from treatment in Enumerable.Range(0, treatments) select orders.Count(order => order[place] == treatment)];

        Assert.All(orders.Zip(made.Blocks), pair => Assert.Equal(pair.Second.Order(), pair.First.Order()));
        if (each > 0) Assert.All(counts, count => Assert.Equal(each, count));
        else Assert.True(counts.Max() - counts.Min() <= 1);
    }

    // Six in fours by fifteen: 45 neighbours for 30 ordered pairs, so one or two each; four in threes by twelve: 24 for 12, so two each.
    [Theory]
    [InlineData(6, 4, 15, 1, 2), InlineData(4, 3, 12, 2, 2), InlineData(7, 3, 14, 0, 1)]
    public void Orders_Neighbours_ComeEquallyOften(int treatments, int size, int blocks, int fewest, int most)
    {
        var made = IncompleteBlocks.Of(treatments, size, blocks, new Random(5).Next);
        var orders = BlockOrders.Of(treatments, made.Blocks, new Random(6).Next);
        int[] counts = [.. from one in Enumerable.Range(0, treatments) from other in Enumerable.Range(0, treatments) where one != other
                           select orders.Sum(order => order.Zip(order.Skip(1)).Count(pair => pair == (one, other)))];

        Assert.Equal((fewest, most), (counts.Min(), counts.Max()));
    }
}
