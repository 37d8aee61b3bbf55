using CsCheck;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.Models;

public class BlockModelTests
{
    // Seven treatments in seven blocks of three, every pair once: the lines of the plane of seven points (Fano).
    private static readonly int[][] Plane = [[0, 1, 3], [1, 2, 4], [2, 3, 5], [3, 4, 6], [4, 5, 0], [5, 6, 1], [6, 0, 2]];

    private static readonly Gen<List<BlockValue>> GenDesign =
        from blocks in Gen.Int[3, 8]
        from treatments in Gen.Int[2, 5]
        from values in Gen.Double[0, 10].Array[blocks * treatments]
        from kept in Gen.Double[0, 1].Array[blocks * treatments]
        select Enumerable.Range(0, blocks * treatments)
            // The first block is whole, so that every treatment is linked; about a quarter of the rest is missing.
            .Where(i => i < treatments || kept[i] > 0.25)
            .Select(i => new BlockValue($"b{i / treatments}", $"t{i % treatments}", values[i])).ToList();

    [Fact]
    public void Difference_TwoTreatmentsWhole_IsThePairedT()
    {
        double[] first = [5.1, 6.0, 4.2, 7.7, 5.5], second = [4.0, 5.8, 4.4, 6.1, 5.0];
        var paired = SampleSummary.Of([.. first.Zip(second, (a, b) => a - b)]);

        var difference = BlockModel.Of(first.SelectMany((value, i) => new[] { new BlockValue($"{i}", "A", value), new BlockValue($"{i}", "B", second[i]) })).Difference("A", "B")!.Value;

        Assert.Equal(paired.Mean, difference.Value, 12);
        Assert.Equal(paired.StandardError, difference.StandardError, 12);
        Assert.Equal(4, difference.Degrees);
    }

    // Yates (1936), intra-block estimate of a balanced incomplete block design: (k Q1 - k Q2) / (lambda t), error s sqrt(2 k / (lambda t)).
    [Fact]
    public void Difference_BalancedIncompleteBlocks_IsTheIntraBlockEstimate()
    {
        List<BlockValue> values = [.. Plane.SelectMany((line, block) => line.Select((point, i) => new BlockValue($"{block}", $"{point}", point * point + 3 * block + (block * 7 + i * 5) % 4)))];
        var model = BlockModel.Of(values);
        double Adjusted(string treatment) => values.Where(value => value.Treatment == treatment)
            .Sum(value => value.Value - values.Where(other => other.Block == value.Block).Average(other => other.Value));

        var difference = model.Difference("6", "2")!.Value;

        Assert.Equal(3 * (Adjusted("6") - Adjusted("2")) / 7, difference.Value, 10);
        Assert.Equal(model.ResidualStandardDeviation * Math.Sqrt(2 * 3 / 7.0), difference.StandardError, 10);
        Assert.Equal(21 - 7 - 7 + 1, difference.Degrees);
    }

    [Fact]
    public void Mean_WholeBlocks_IsThePlainMean()
    {
        var model = BlockModel.Of([new("1", "A", 1), new("2", "A", 3), new("1", "B", 5), new("2", "B", 8)]);

        Assert.Equal(2, model.Mean("A")!.Value.Value, 12);
        Assert.Equal(6.5, model.Mean("B")!.Value.Value, 12);
    }

    [Fact]
    public void Difference_NoChainOfBlocks_IsNull()
    {
        var model = BlockModel.Of([new("1", "A", 1), new("1", "B", 2), new("2", "C", 5), new("2", "D", 4)]);

        Assert.Null(model.Difference("A", "C"));
        Assert.Equal(-1, model.Difference("A", "B")!.Value.Value, 12);
        Assert.Equal(1, model.Difference("C", "D")!.Value.Value, 12);
        Assert.Null(model.Mean("A"));
    }

    [Fact]
    public void Difference_OfATreatmentAndItself_IsZeroWithoutError()
    {
        var difference = BlockModel.Of([new("1", "A", 1), new("1", "B", 2), new("2", "A", 5), new("2", "B", 4)]).Difference("B", "B")!.Value;

        Assert.Equal((0, 0), (difference.Value, difference.StandardError));
    }

    [Fact]
    public void Difference_UnknownTreatment_NamesThoseThereAre() =>
        Assert.Contains("A, B", Assert.Throws<ArgumentException>(() => BlockModel.Of([new("1", "A", 1), new("1", "B", 2)]).Difference("A", "X")).Message, StringComparison.Ordinal);

    [Fact]
    public void Difference_ConstantAddedToEachBlock_Stays() =>
        GenDesign.Select(Gen.Double[-20, 20].Array[8]).Sample((values, shift) =>
            SameDifferences(values, [.. values.Select(value => value with { Value = value.Value + shift[value.Block[1] - '0'] })], name => name));

    [Fact]
    public void Difference_OtherOrder_IsTheSameToTheLastDigit() =>
        GenDesign.SelectMany(values => Gen.Shuffle(values.ToArray()).Select(shuffled => (values, shuffled))).Sample(pair =>
            Assert.Equal(BlockModel.Of(pair.values).Difference("t0", "t1"), BlockModel.Of(pair.shuffled).Difference("t0", "t1")));

    [Fact]
    public void Difference_RenamedTreatments_Stays() =>
        GenDesign.Sample(values => SameDifferences(values, [.. values.Select(value => value with { Treatment = Renamed(value.Treatment), Block = $"z{'9' - value.Block[1]}" })], Renamed));

    private static string Renamed(string treatment) => $"{'9' - treatment[1]}";

    private static void SameDifferences(List<BlockValue> before, List<BlockValue> after, Func<string, string> name)
    {
        var (left, right) = (BlockModel.Of(before), BlockModel.Of(after));
        foreach (var treatment in left.Treatments.Skip(1))
        {
            var (one, other) = (left.Difference("t0", treatment)!.Value, right.Difference(name("t0"), name(treatment))!.Value);
            Assert.Equal(one.Value, other.Value, tolerance: 1e-9);
            Assert.Equal(one.StandardError, other.StandardError, tolerance: 1e-9);
            Assert.Equal(one.Degrees, other.Degrees);
        }
    }
}
