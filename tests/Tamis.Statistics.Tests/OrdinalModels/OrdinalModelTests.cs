using System.Globalization;
using Tamis.Statistics.Models;
using Tamis.Statistics.OrdinalModels;

namespace Tamis.Statistics.Tests.OrdinalModels;

// Bitterness of white wine (Randall 1989, Biometrical Journal 31); values of the R package ordinal 2022.11-16.
public class OrdinalModelTests
{
    private static readonly ModelData Wine = WineData();

    [Theory]
    [InlineData("rating ~ temp + contact", 1, -86.49192337, 2.503102008, 0.5286801008, 1e-5)]
    [InlineData("rating ~ temp + contact + (1 | judge)", 1, -81.56540929, 3.062996626, 0.5953761831, 3e-3)]
    public void Fit_Wine_AgreesWithTheReference(string model, int points, double logLikelihood, double warm, double error, double tolerance)
    {
        var fit = OrdinalModel.Parse(model, OrdinalLink.Logit, points).Fit(Wine).Required;

        Assert.Equal(logLikelihood, fit.LogLikelihood, 1e-5);
        Assert.Equal(warm, fit.Coefficient("tempwarm").Estimate, tolerance);
        Assert.Equal(error, fit.Coefficient("tempwarm").StandardError, tolerance);
    }

    [Fact]
    public void Against_WithoutTheInteraction_IsTheLikelihoodRatio()
    {
        var larger = OrdinalModel.Parse("rating ~ temp * contact", OrdinalLink.Logit).Fit(Wine).Required;
        var smaller = OrdinalModel.Parse("rating ~ temp + contact", OrdinalLink.Logit).Fit(Wine).Required;

        var test = larger.Against(smaller);

        // 2 × (86.49192337 − 86.41620042)
        Assert.Equal(0.1514459, test.ChiSquare, 1e-6);
        Assert.Equal(1, test.Degrees);
        Assert.Throws<ArgumentException>(() => smaller.Against(larger));
    }

    [Theory]
    [InlineData(new[] { 1.0, 1, 1, 2, 2, 2 }, "p p p q q q", "u v w u v w", "perfectly")]
    [InlineData(new[] { 3.0, 3, 3, 3, 3, 3 }, "p p p q q q", "u v w u v w", "equal")]
    [InlineData(new[] { 1.0, 2, 1, 2, 1, 2 }, "p p p q q q", "u u u u u u", "one level only")]
    public void Fit_DataThatCannotCarryIt_SaysWhy(double[] values, string levels, string groups, string why)
    {
        var data = ModelData.Empty.WithNumbers("y", values).WithFactor("a", levels.Split(' ')).WithFactor("g", groups.Split(' '));

        var outcome = OrdinalModel.Parse("y ~ a + (1 | g)", OrdinalLink.Probit).Fit(data);

        Assert.Null(outcome.Fit);
        Assert.Contains(why, outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_GroupsThatDoNotDiffer_HasNoVarianceAndSaysSo()
    {
        var data = ModelData.Empty.WithNumbers("y", [1, 2, 3, 1, 2, 3, 1, 2, 3]).WithFactor("g", ["u", "u", "u", "v", "v", "v", "w", "w", "w"]);

        var fit = OrdinalModel.Parse("y ~ (1 | g)", OrdinalLink.Logit).Fit(data).Required;

        Assert.Equal(0, fit.GroupVariance);
        Assert.Contains("nil", fit.Note, StringComparison.Ordinal);
        Assert.Equal([-Math.Log(2), Math.Log(2)], fit.Thresholds.Select(one => Math.Round(one.Estimate, 6)), (left, right) => Math.Abs(left - right) < 1e-6);
    }

    private static ModelData WineData()
    {
        var rows = Published.Rows("wine.csv");
        return ModelData.Empty.WithNumbers("rating", [.. rows.Select(row => double.Parse(row["rating"], CultureInfo.InvariantCulture))])
            .WithFactor("temp", [.. rows.Select(row => row["temp"])]).WithFactor("contact", [.. rows.Select(row => row["contact"])]).WithFactor("judge", [.. rows.Select(row => row["judge"])]);
    }
}
