using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.MixedModels;

// Data drawn from a model without effects: how often tests err and intervals miss, within 3.5 standard errors of the simulation.
public class ErrorRateTests
{
    private const int Draws = 800;
    private static readonly double Allowed = 3.5 * Math.Sqrt(0.05 * 0.95 / Draws);

    [Fact]
    public void Tests_NoEffect_ErrAsOftenAsTheySay()
    {
        MersenneTwister random = new(20251);
        var (rejected, tukey, missed) = (0, 0, 0);
        string[] judges = [.. Enumerable.Range(0, 40).Select(row => $"j{row / 4}")];
        string[] items = [.. Enumerable.Range(0, 40).Select(row => $"i{row % 4}")];
        for (var draw = 0; draw < Draws; draw++)
        {
            var people = new double[10];
            Normal.Samples(random, people, 0, 1);
            var noise = new double[40];
            Normal.Samples(random, noise, 0, 1);
            var data = ModelData.Empty.WithNumbers("y", [.. noise.Select((value, row) => value + people[row / 4])]).WithFactor("judge", judges).WithFactor("item", items);
            var fit = MixedModel.Fit(MixedFormula.Parse("y ~ item + (1 | judge)"), data).Required;
            if (fit.Tests[0].P < 0.05) rejected++;
            if (fit.PairwiseDifferences("item").Any(pair => pair.AdjustedP < 0.05)) tukey++;
            if (!fit.Difference("item", "i0", "i1")!.Value.Limits().Contains(0)) missed++;
        }

        Assert.Equal(0.05, (double)rejected / Draws, Allowed);
        Assert.Equal(0.05, (double)tukey / Draws, Allowed);
        Assert.Equal(0.05, (double)missed / Draws, Allowed);
    }
}
