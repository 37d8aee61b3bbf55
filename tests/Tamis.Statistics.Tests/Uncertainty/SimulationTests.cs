using CsCheck;
using Tamis.Statistics.Uncertainty;

namespace Tamis.Statistics.Tests.Uncertainty;

public class SimulationTests
{
    private const int Draws = 100_000;

    // First order is exact for a weighted mean with certain weights, so the two must agree within the error of the draws.
    [Fact]
    public void Draw_WeightedMeans_AgreesWithFirstOrder()
    {
        var means = Means();
        var drawn = means.Draw(Draws, seed: 11);
        for (var column = 0; column < means.Columns; column++)
        {
            var first = means.FirstOrder(column);
            Assert.Equal(first.Value, drawn[column].Mean, first.StandardUncertainty * 4 / Math.Sqrt(Draws) + first.Value * 1e-3);
            Assert.Equal(1, drawn[column].StandardDeviation / first.StandardUncertainty, 0.02);
        }
    }

    [Fact]
    public void Draw_AnyNumberOfThreads_GivesTheSameDraws()
    {
        var (one, four) = (Means().Draw(5_000, seed: 5, threads: 1), Means().Draw(5_000, seed: 5, threads: 4));

        for (var column = 0; column < one.Columns; column++) Assert.Equal(one[column].Draws.ToArray(), four[column].Draws.ToArray());
        Assert.Equal(one.Quantiles([0.025, 0.975], threads: 1), four.Quantiles([0.025, 0.975], threads: 4));
    }

    [Fact]
    public void Draw_AnotherSeed_GivesOtherDraws() => Assert.NotEqual(Means().Draw(2, seed: 1)[0].Draws.ToArray(), Means().Draw(2, seed: 2)[0].Draws.ToArray());

    [Fact]
    public void Draw_UsedRoom_GivesTheSame()
    {
        var first = Means().Draw(3_000, seed: 9)[1].Draws.ToArray();
        var room = Means().Draw(9_000, seed: 4);

        Assert.Equal(first, Means().Draw(3_000, seed: 9, room: room)[1].Draws.ToArray());
    }

    // The generator against the distributions themselves: shares below given quantiles (any table of the normal distribution).
    [Theory]
    [InlineData(DrawShape.Normal, -1.959964, 0.025)]
    [InlineData(DrawShape.Normal, 0.0, 0.5)]
    [InlineData(DrawShape.Normal, 3.090232, 0.999)]
    [InlineData(DrawShape.Rectangular, -1.5588457, 0.05)]
    [InlineData(DrawShape.Rectangular, 0.8660254, 0.75)]
    public void Run_OneInput_IsDistributedAsSaid(DrawShape shape, double at, double expected)
    {
        var drawn = Simulation.Run(x => x[0], [new(0, 1, shape)], 1_000_000, seed: 3);
        var below = drawn.Draws.ToArray().Count(value => value < at) / 1e6;

        Assert.Equal(expected, below, 4 * Math.Sqrt(expected * (1 - expected) / 1e6));
    }

    [Fact]
    public void Run_Lognormal_HasTheGivenMeanAndDeviation()
    {
        var drawn = Simulation.Run(x => x[0], [new(5, 1, DrawShape.Lognormal)], 400_000, seed: 2);

        Assert.Equal(5, drawn.Mean, 0.01);
        Assert.Equal(1, drawn.StandardDeviation, 0.01);
        Assert.Equal(3.32567272, drawn.Quantile(0.025), 0.02);
    }

    [Fact]
    public void Run_CertainInputs_AreNotMoved() => Assert.Equal(7, Simulation.Run(x => x[0] + x[1], [3.0, 4.0], 10, seed: 1).Interval().Low);

    [Theory]
    [InlineData(1, -1)]
    [InlineData(double.NaN, 1)]
    [InlineData(0, 1, DrawShape.Lognormal)]
    public void Run_NoSuchNumber_IsRefused(double value, double uncertainty, DrawShape shape = DrawShape.Normal) =>
        Assert.Throws<ArgumentException>(() => Simulation.Run(x => x[0], [new(value, uncertainty, shape)], 10, seed: 1));

    [Fact]
    public void Quantiles_AnyNumbers_AreThoseOfTheSortedNumbers() => Gen.Double[-1e6, 1e6].Array[1, 300].Sample(values =>
    {
        var sorted = values.Order().ToArray();
        DrawnNumbers drawn = new(values);
        foreach (var share in new[] { 0, 0.025, 0.37, 0.5, 0.975, 1 })
        {
            var place = share * (values.Length - 1);
            var (below, above) = (sorted[(int)Math.Floor(place)], sorted[(int)Math.Ceiling(place)]);
            Assert.Equal(below + (place - Math.Floor(place)) * (above - below), drawn.Quantile(share), 1e-9 * Math.Max(1, Math.Abs(above) + Math.Abs(below)));
        }
    });

    [Fact]
    public void Quantiles_AllTheSame_IsThatNumber() => Assert.Equal(2.5, new DrawnNumbers(new double[] { 2.5, 2.5, 2.5 }).Quantile(0.3));

    [Fact]
    public void Quantiles_NotANumber_IsRefused() => Assert.Throws<ArgumentException>(() => new DrawnNumbers(new[] { 1, double.NaN, 2 }).Quantile(0.5));

    private static WeightedMeans Means() => new(
        [new(250, 1), new(120, 0.8), new(80, 0.5), new(40, 0)],
        [
            new(3.2, 0.15), new(10, 2, DrawShape.Lognormal), new(5, 0.3, DrawShape.Rectangular),
            new(0.5, 0.1), new(4, 1, DrawShape.Lognormal), new(1, 0),
            new(82, 1.5), new(2, 0.5, DrawShape.Lognormal), new(7, 0.2),
            new(0.02, 0.01), new(1, 0.2), new(3, 0.5),
        ]);
}
