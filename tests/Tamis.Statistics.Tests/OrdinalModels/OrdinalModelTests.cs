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

    // A class that one row of hundreds is in has thresholds closer than any step of a difference: 0.0007 on the scale of the link in the larger data.
    [Theory]
    [InlineData(300), InlineData(3000)]
    public void Fit_ClassThatHardlyAnybodyUses_HasThresholdsInOrder(int half)
    {
        double[] values = [.. Enumerable.Range(0, half).SelectMany(row => (double[])[1 + row % 2, 4 + row % 2]), 3];
        var data = ModelData.Empty.WithNumbers("y", values).WithFactor("a", [.. values.Select((_, row) => row % 5 < 3 ? "p" : "q")]);

        var fit = OrdinalModel.Parse("y ~ a", OrdinalLink.Logit).Fit(data).Required;

        Assert.Equal(4, fit.Thresholds.Count);
        Assert.All(fit.Thresholds.Zip(fit.Thresholds.Skip(1)), pair => Assert.True(pair.First.Estimate < pair.Second.Estimate));
        Assert.All(fit.Thresholds, threshold => Assert.True(double.IsFinite(threshold.StandardError) && threshold.StandardError > 0));
    }

    // Whatever the marks: an answer or a reason, and never a figure that is no number.
    [Fact]
    public void Fit_AnyMarks_GivesFiguresOrAReason()
    {
        for (var seed = 1; seed <= 60; seed++)
        {
            Random random = new(seed);
            var (people, items, classes) = (2 + random.Next(6), 2 + random.Next(3), 2 + random.Next(8));
            var rows = (from person in Enumerable.Range(0, people) from item in Enumerable.Range(0, items) where random.NextDouble() < 0.8 select (person, item)).ToArray();
            if (rows.Length == 0) continue;
            var data = ModelData.Empty.WithNumbers("y", [.. rows.Select(row => (double)Math.Clamp((int)(row.item * (seed % 3) + classes * random.NextDouble() * random.NextDouble()), 0, classes))])
                .WithFactor("a", [.. rows.Select(row => $"i{row.item}")]).WithFactor("g", [.. rows.Select(row => $"p{row.person}")]);

            var outcome = OrdinalModel.Parse("y ~ a + (1 | g)", OrdinalLink.Probit, 5).Fit(data);

            if (outcome.Fit is { } fit)
                Assert.All([fit.LogLikelihood, fit.GroupVariance ?? 0, .. fit.Thresholds.SelectMany(one => (double[])[one.Estimate, one.StandardError]), .. fit.Coefficients.SelectMany(one => (double[])[one.Estimate, one.StandardError, one.P])],
                    figure => Assert.True(double.IsFinite(figure), $"seed {seed}"));
            else
                Assert.False(string.IsNullOrWhiteSpace(outcome.Reason), $"seed {seed}");
        }
    }

    // One level less the reference is its coefficient; one less another has the variance of a difference, so turning it round changes the sign alone.
    [Fact]
    public void Contrast_OfLevels_IsTheDifferenceOfTheirCoefficients()
    {
        var fit = OrdinalModel.Parse("rating ~ temp * contact", OrdinalLink.Logit).Fit(Wine).Required;
        var (warm, yes) = (fit.Coefficient("tempwarm"), fit.Coefficient("contactyes"));
        var (one, other) = (fit.Contrast(new Dictionary<string, double> { ["tempwarm"] = 1, ["contactyes"] = -1 }), fit.Contrast(new Dictionary<string, double> { ["tempwarm"] = -1, ["contactyes"] = 1 }));

        Assert.Equal(warm.StandardError, fit.Contrast(new Dictionary<string, double> { ["tempwarm"] = 1 }).StandardError, 1e-12);
        Assert.Equal(warm.Estimate - yes.Estimate, one.Estimate, 1e-12);
        Assert.Equal((-one.Estimate, one.StandardError), (other.Estimate, other.StandardError));
        Assert.InRange(one.StandardError, Math.Abs(warm.StandardError - yes.StandardError), warm.StandardError + yes.StandardError);
        Assert.Throws<ArgumentException>(() => fit.Contrast(new Dictionary<string, double> { ["temp"] = 1 }));
    }

    private static ModelData WineData()
    {
        var rows = Published.Rows("wine.csv");
        return ModelData.Empty.WithNumbers("rating", [.. rows.Select(row => double.Parse(row["rating"], CultureInfo.InvariantCulture))])
            .WithFactor("temp", [.. rows.Select(row => row["temp"])]).WithFactor("contact", [.. rows.Select(row => row["contact"])]).WithFactor("judge", [.. rows.Select(row => row["judge"])]);
    }
}
