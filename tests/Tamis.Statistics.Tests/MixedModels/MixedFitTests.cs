using System.Globalization;
using CsCheck;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.MixedModels;

public class MixedFitTests
{
    private static readonly MixedFormula Nested = MixedFormula.Parse("angle ~ recipe * temperature + (1 | recipe:replicate)");

    // Cook (1938): a split plot, balanced, so that the variances follow from the mean squares of the analysis of variance.
    [Fact]
    public void Components_BalancedSplitPlot_AreThoseOfTheMeanSquares()
    {
        var data = Cake();
        var anova = LinearFit.Of(ModelFormula.Parse("angle ~ recipe * temperature + recipe:replicate"), data);
        var (mixes, residual) = (anova.AnovaFor("recipe:replicate").MeanSquare, anova.ResidualStandardDeviation * anova.ResidualStandardDeviation);

        var fit = MixedModel.Fit(Nested, data).Required;

        Assert.Equal(residual, fit.ResidualVariance, tolerance: 1e-7 * residual);
        Assert.Equal((mixes - residual) / 6, Assert.Single(fit.Components).Variance, tolerance: 1e-6 * mixes);
        Assert.Equal(anova.AnovaFor("temperature").SumOfSquares / 5 / residual, fit.Tests.Single(test => test.Term == "temperature").F, 6);
        Assert.Equal(42, fit.Tests.Single(test => test.Term == "recipe").DenominatorDegrees, 5);
        Assert.Empty(fit.Remarks);
    }

    [Fact]
    public void RandomEffects_BalancedMixes_AreTheMeansDrawnTowardsNil()
    {
        var data = Cake();
        var fit = MixedModel.Fit(Nested, data).Required;
        var variance = fit.Components[0].Variance;
        var rows = Published.Rows("cake.csv");
        double MeanOf(string recipe, string? replicate) => rows.Where(row => row["recipe"] == recipe && (replicate is null || row["replicate"] == replicate)).Average(row => Number(row["angle"]));

        var effects = fit.RandomEffects(fit.Formula.Random[0]);

        Assert.Equal(45, effects.Count);
        Assert.All(effects, effect =>
        {
            var level = effect.Level.Split(':');
            var drawn = 6 * variance / (6 * variance + fit.ResidualVariance);
            Assert.Equal(drawn * (MeanOf(level[0], level[1]) - MeanOf(level[0], null)), effect.Value, 6);
        });
    }

    [Fact]
    public void RandomEffects_CrossedAndTakenOut_SumToNilWithinTheTerm()
    {
        var fit = MixedModel.Fit(MixedFormula.Parse("angle ~ temperature + (1 | recipe) + (1 | recipe:replicate)"), Cake()).Required;

        foreach (var term in fit.Formula.Random) Assert.Equal(0, fit.RandomEffects(term).Sum(effect => effect.Value), 6);
    }

    [Fact]
    public void Fit_OtherOrderOfRows_IsTheSame() =>
        Gen.Shuffle(Published.Rows("cake.csv").Take(150).ToArray()).Sample(rows =>
        {
            var model = MixedFormula.Parse("angle ~ temperature + (1 | recipe) + (1 | replicate)");
            var (before, after) = (MixedModel.Fit(model, Cake(Published.Rows("cake.csv").Take(150))).Required, MixedModel.Fit(model, Cake(rows)).Required);
            Assert.Equal(before.Criterion, after.Criterion, tolerance: 1e-8);
            Assert.Equal(before.Components[1].Variance, after.Components[1].Variance, tolerance: 1e-5);
        }, iter: 10);

    [Fact]
    public void Fit_ScaledResponse_ScalesVariancesBySquares()
    {
        var fit = MixedModel.Fit(Nested, Cake()).Required;
        var scaled = MixedModel.Fit(Nested, Cake(factor: 1000)).Required;

        Assert.Equal(1e6 * fit.Components[0].Variance, scaled.Components[0].Variance, tolerance: 1e-6 * scaled.Components[0].Variance);
        Assert.Equal(fit.Tests[0].P, scaled.Tests[0].P, 8);
    }

    [Fact]
    public void TestOf_TheOnlyRandomTerm_ComparesWithTheLinearModel()
    {
        var fit = MixedModel.Fit(MixedFormula.Parse("angle ~ temp + (1 | replicate)"), Cake(), restricted: false).Required;
        var linear = LinearFit.Of(ModelFormula.Parse("angle ~ temp"), Cake());

        var test = fit.TestOf(fit.Formula.Random[0])!;

        Assert.Equal(270 * (1 + Math.Log(2 * Math.PI * linear.ResidualSumOfSquares / 270)) - fit.Criterion, test.ChiSquare, 6);
        Assert.Equal(1, test.Degrees);
        Assert.True(test.P < 1e-6);
    }

    [Fact]
    public void Against_ASmallerFixedPart_CountsItsParameters()
    {
        MixedFit Fit(string model) => MixedModel.Fit(MixedFormula.Parse(model), Cake(), restricted: false).Required;

        var test = Fit("angle ~ recipe * temperature + (1 | recipe:replicate)").Against(Fit("angle ~ recipe + temperature + (1 | recipe:replicate)"));

        // The full-likelihood deviances of both models are among the published rows: 1679.05 and 1687.0.
        Assert.Equal(10, test.Degrees);
        Assert.InRange(test.P, 0.2, 0.9);
        Assert.Throws<ArgumentException>(() => MixedModel.Fit(Nested, Cake()).Required.Against(Fit("angle ~ recipe + (1 | recipe:replicate)")));
    }

    [Fact]
    public void Contrast_EmptyCell_IsToldWhereTheDataCan()
    {
        var rows = Published.Rows("cake.csv").Where(row => row["recipe"] != "C" || row["temperature"] != "225").ToList();

        var fit = MixedModel.Fit(Nested, Cake(rows)).Required;

        Assert.Null(fit.FixedEffect("recipeC:temperature225").Estimate);
        Assert.Null(fit.Mean("recipe", "C"));
        Assert.NotNull(fit.Mean("recipe", "A"));
        Assert.Contains(fit.Remarks, remark => remark.Contains("recipeC:temperature225 cannot be told apart", StringComparison.Ordinal));
    }

    internal static ModelData Cake(IEnumerable<IReadOnlyDictionary<string, string>>? rows = null, double factor = 1)
    {
        var list = (rows ?? Published.Rows("cake.csv")).ToList();
        return ModelData.Empty
            .WithNumbers("angle", [.. list.Select(row => factor * Number(row["angle"]))])
            .WithNumbers("temp", [.. list.Select(row => Number(row["temp"]))])
            .WithFactor("recipe", [.. list.Select(row => row["recipe"])])
            .WithFactor("temperature", [.. list.Select(row => row["temperature"])])
            .WithFactor("replicate", [.. list.Select(row => row["replicate"])]);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
