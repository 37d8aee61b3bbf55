using CsCheck;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.MixedModels;

// Data that cannot carry a model are answered in words, and no figure that is given is NaN.
public class PoorDataTests
{
    private static readonly MixedFormula Model = MixedFormula.Parse("y ~ a + (1 | g)");

    [Theory]
    [InlineData(new[] { 1.0, 2, 3, 4 }, "u u u u", "p p q q", "one level only")]
    [InlineData(new[] { 5.0, 5, 5, 5 }, "u u v v", "p q p q", "All values of y are equal")]
    [InlineData(new[] { 1.0, 2, 1, 2 }, "u u v v", "p q p q", "without remainder")]
    [InlineData(new[] { 1.0, 2, 3, 4 }, "u v w x", "p q p q", "a level for every row")]
    [InlineData(new[] { 1.0, 2 }, "u u", "p q", "one level only")]
    [InlineData(new[] { 1.0, 1, 3, 3, 6, 6 }, "u u v v w w", "p p p p p p", "no spread is left")]
    public void Fit_DataThatCannotCarryIt_SaysWhy(double[] values, string groups, string levels, string why)
    {
        var data = ModelData.Empty.WithNumbers("y", values).WithFactor("g", groups.Split(' ')).WithFactor("a", levels.Split(' '));

        var outcome = MixedModel.Fit(Model, data);

        Assert.Null(outcome.Fit);
        Assert.Contains(why, outcome.Reason, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => outcome.Required);
    }

    [Fact]
    public void Fit_NoCompleteRow_SaysWhy() =>
        Assert.Contains("No row", MixedModel.Fit(Model, ModelData.Empty.WithNumbers("y", [double.NaN]).WithFactor("g", ["u"]).WithFactor("a", ["p"])).Reason, StringComparison.Ordinal);

    [Fact]
    public void Fit_SameLevelsTwice_SaysThatTheyCannotBeToldApart()
    {
        var data = ModelData.Empty.WithNumbers("y", [1, 2, 4, 3, 5, 7]).WithFactor("g", ["u", "u", "v", "v", "w", "w"]).WithFactor("h", ["1", "1", "2", "2", "3", "3"]);

        Assert.Contains("the same levels", MixedModel.Fit(MixedFormula.Parse("y ~ (1 | g) + (1 | h)"), data).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_LevelsMoreAlikeThanChance_HasAVarianceOfNilAndTheLinearModelsFigures()
    {
        // Each group holds the same two values: nothing varies between groups.
        double[] values = [1, 3, 2, 4, 3, 1, 4, 2];
        var data = ModelData.Empty.WithNumbers("y", values).WithFactor("g", ["u", "u", "u", "u", "v", "v", "v", "v"]).WithFactor("a", ["p", "q", "p", "q", "p", "q", "p", "q"]);
        var linear = LinearFit.Of(ModelFormula.Parse("y ~ a"), data);

        var fit = MixedModel.Fit(Model, data).Required;

        Assert.True(fit.IsSingular);
        Assert.Equal(0, fit.Components[0].Variance);
        Assert.Contains(fit.Remarks, remark => remark.Contains("variance of g is nil", StringComparison.Ordinal));
        Assert.Equal(linear.Coefficient("aq").Estimate, fit.FixedEffect("aq").Estimate!.Value.Value, 10);
        Assert.Equal(linear.Coefficient("aq").StandardError, fit.FixedEffect("aq").Estimate!.Value.StandardError, 8);
        Assert.Equal(6, fit.FixedEffect("aq").Estimate!.Value.Degrees, 6);
    }

    [Fact]
    public void Fit_OneLevelOfAFixedFactor_HasNothingToTest()
    {
        var data = ModelData.Empty.WithNumbers("y", [1, 2.5, 4, 3]).WithFactor("g", ["u", "u", "v", "v"]).WithFactor("a", ["p", "p", "p", "p"]);

        var fit = MixedModel.Fit(Model, data).Required;

        Assert.Empty(fit.Tests);
        Assert.Empty(fit.PairwiseDifferences("a"));
        Assert.NotNull(fit.Mean("a", "p"));
    }

    [Fact]
    public void Fit_FortyPercentMissing_NeverGivesNaN() =>
        Gen.Select(Gen.Double[0, 10].Array[60], Gen.Double[0, 1].Array[60]).Sample((values, missing) =>
        {
            var data = ModelData.Empty
                .WithNumbers("y", [.. values.Select((value, i) => missing[i] < 0.4 ? double.NaN : Math.Round(value))])
                .WithFactor("g", [.. values.Select((_, i) => $"{i / 6}")])
                .WithFactor("a", [.. values.Select((_, i) => $"{i % 3}")]);

            var outcome = MixedModel.Fit(MixedFormula.Parse("y ~ a + (1 | g) + (1 | g:a)"), data);

            Assert.True(outcome.Fit is not null || outcome.Reason.Length > 0);
            if (outcome.Fit is not { } fit) return;
            Assert.True(double.IsFinite(fit.Criterion) && double.IsFinite(fit.ResidualVariance));
            Assert.All(fit.Components, component => Assert.True(component.Variance >= 0));
            Assert.All(fit.FixedEffects.Where(effect => effect.Estimate is not null), effect => Assert.True(double.IsFinite(effect.Estimate!.Value.StandardError) && effect.Estimate.Value.Degrees > 0));
            Assert.All(fit.Tests, test => Assert.True(test is { P: >= 0 and <= 1, DenominatorDegrees: > 0 }));
            Assert.All(fit.PairwiseDifferences("a"), pair => Assert.InRange(pair.AdjustedP, 0, 1));
        }, iter: 60);

    [Theory]
    [InlineData("g ~ a + (1 | g)", "is a factor")]
    [InlineData("y ~ a + (1 | y)", "column of numbers")]
    [InlineData("y ~ a + (1 + a | g)", "slope on the factor")]
    [InlineData("y ~ b + (1 | g)", "the data have a, g, y")]
    public void Fit_WrongColumns_AreRefused(string model, string why) =>
        Assert.Contains(why, Assert.Throws<ArgumentException>(() => MixedModel.Fit(MixedFormula.Parse(model), ModelData.Empty
            .WithNumbers("y", [1, 2, 3, 5]).WithFactor("g", ["u", "u", "v", "v"]).WithFactor("a", ["p", "q", "p", "q"]))).Message, StringComparison.Ordinal);
}
