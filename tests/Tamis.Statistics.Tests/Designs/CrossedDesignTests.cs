using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using Tamis.Statistics.Designs;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.Designs;

// Figures of R stand in data/published; here the formula is held against what the mixed model does with drawn scores.
public class CrossedDesignTests
{
    private const int Draws = 600;

    [Theory]
    [InlineData(12, 4, 4, 1, 1.6, 1.0, 0.0)]
    [InlineData(10, 5, 3, 1, 2.4, 1.0, 0.0)]
    [InlineData(9, 3, 3, 2, 1.5, 1.0, 0.5)]
    public void PowerOfPair_DrawnScores_IsHowOftenTheMixedModelTellsThemApart(int people, int items, int each, int times, double gap, double error, double own)
    {
        CrossedDesign design = new(people, items, each, times);
        var sets = IncompleteBlocks.Of(items, each, people, new Random(1).Next).Blocks;
        MersenneTwister random = new(20261);
        Normal normal = new(0, 1, random);
        (int Person, int Item)[] rows = [.. from person in Enumerable.Range(0, people) from item in sets[person] from _ in Enumerable.Range(0, times) select (person, item)];
        string[] judges = [.. rows.Select(row => $"j{row.Person:00}")], items0 = [.. rows.Select(row => $"i{row.Item}")];
        var model = MixedFormula.Parse(times > 1 ? "y ~ item + (1 | judge) + (1 | judge:item)" : "y ~ item + (1 | judge)");
        var told = 0;
        for (var draw = 0; draw < Draws; draw++)
        {
            double[] levels = [.. Enumerable.Range(0, people).Select(_ => normal.Sample())];
            var found = rows.Distinct().ToDictionary(row => row, _ => own * normal.Sample());
            var data = ModelData.Empty.WithFactor("judge", judges).WithFactor("item", items0)
                .WithNumbers("y", [.. rows.Select(row => levels[row.Person] + (row.Item == 0 ? gap : 0) + found[row] + error * normal.Sample())]);
            if (MixedModel.Fit(model, data).Required.PairwiseDifferences("item").Single(pair => (pair.First, pair.Second) == ("i0", "i1")).AdjustedP < 0.05) told++;
        }
        var power = design.PowerOfPair(gap, error, own);

        // Between blocks there is a little to learn too, and Satterthwaite's degrees are estimates: three standard errors and two in a hundred.
        Assert.Equal(power, (double)told / Draws, 3 * Math.Sqrt(power * (1 - power) / Draws) + 0.02);
    }

    [Fact]
    public void BlocksNeeded_Answer_ReachesThePowerAndOneFewerDoesNot()
    {
        CrossedDesign design = new(2, 5, 3);
        var needed = design.BlocksNeeded(1, 1.25, 0, 0.8)!.Value;

        Assert.True((design with { Blocks = needed }).PowerOfPair(1, 1.25) >= 0.8);
        Assert.True((design with { Blocks = needed - 1 }).PowerOfPair(1, 1.25) < 0.8);
        Assert.Null(design.BlocksNeeded(0.001, 1.25, 0, 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(() => design.BlocksNeeded(0, 1, 0, 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(() => design.BlocksNeeded(1, 0, 0, 0.8));
    }

    // Scores that agree to the digit leave an error near nil, beside which any gap is without end.
    [Theory]
    [InlineData(1e-3), InlineData(1e-6), InlineData(1e-12), InlineData(1e-150)]
    public void PowerOfPair_HardlyAnySpread_IsSure(double error)
    {
        Assert.Equal(1, new CrossedDesign(12, 4, 4).PowerOfPair(1, error), 1e-9);
        Assert.Equal(2, new CrossedDesign(2, 2, 2).BlocksNeeded(1, error, 0, 0.8));
    }

    // Either side of the point where the sum gives way to its limit.
    [Theory]
    [InlineData(1.0), InlineData(3e4), InlineData(1e5), InlineData(1.4e5)]
    public void NoncentralFAbove_LargeEffects_GoOnSmoothly(double f) =>
        Assert.Equal(Tails.NoncentralFAbove(f, 1, 9, 0.999e5), Tails.NoncentralFAbove(f, 1, 9, 1.001e5), 0.003);

    [Fact]
    public void PowerOfPair_NothingToJudgeBy_IsNil() => Assert.Equal(0, new CrossedDesign(1, 3, 2).PowerOfPair(5, 1));
}
