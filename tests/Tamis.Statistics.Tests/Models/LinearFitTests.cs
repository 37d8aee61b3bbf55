using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.Models;

public class LinearFitTests
{
    private static readonly ModelData Cells = ModelData.Empty
        .WithNumbers("y", [1, 3, 4, 8, 10, 20])
        .WithFactor("a", ["lo", "lo", "hi", "hi", "hi", "hi"])
        .WithFactor("n", ["2", "10", "2", "2", "10", "10"]);

    [Fact]
    public void Coefficients_TreatmentCoding_AreDifferencesFromTheFirstLevel()
    {
        var fit = LinearFit.Of(ModelFormula.Parse("y ~ a * n"), Cells);

        // Levels of words by character code (hi before lo), of numbers as numbers (2 before 10).
        Assert.Equal(["(Intercept)", "alo", "n10", "alo:n10"], fit.Coefficients.Select(one => one.Name));
        Assert.Equal([6, -5, 9, -7], fit.Coefficients.Select(one => Math.Round(one.Estimate, 10)));
    }

    [Fact]
    public void Coefficients_WithoutIntercept_AreLevelMeans()
    {
        var fit = LinearFit.Of(ModelFormula.Parse("y ~ 0 + a"), Cells);

        Assert.Equal([("ahi", 10.5), ("alo", 2.0)], fit.Coefficients.Select(one => (one.Name, Math.Round(one.Estimate, 10))));
    }

    [Fact]
    public void Coefficients_InteractionAlone_AreCellMeans()
    {
        var fit = LinearFit.Of(ModelFormula.Parse("y ~ 0 + a:n"), Cells);

        Assert.Equal([("ahi:n2", 6), ("alo:n2", 1), ("ahi:n10", 15), ("alo:n10", 3)], fit.Coefficients.Select(one => (one.Name, Math.Round(one.Estimate, 10))));
    }

    [Fact]
    public void Coefficients_ColumnHeldByEarlierOnes_IsUnknownAndCostsNoDegree()
    {
        var data = Cells.WithNumbers("x", [0, 0, 1, 1, 1, 1]);

        var fit = LinearFit.Of(ModelFormula.Parse("y ~ a + x"), data);

        Assert.True(double.IsNaN(fit.Coefficient("x").Estimate));
        Assert.Equal(4, fit.ResidualDegrees);
        Assert.Equal(0, fit.AnovaFor("x").Degrees);
        Assert.True(double.IsNaN(fit.AnovaFor("x").F));
        Assert.Null(fit.Contrast(new Dictionary<string, double> { ["x"] = 1 }));
        // What a and x do together can be told all the same: from 'hi' (x = 1) to 'lo' (x = 0).
        Assert.Equal(-8.5, fit.Contrast(new Dictionary<string, double> { ["alo"] = 1, ["x"] = -1 })!.Value.Value, 10);
    }

    [Fact]
    public void Of_MissingValues_LeavesOutTheRow()
    {
        var data = ModelData.Empty.WithNumbers("y", [1, double.NaN, 3, 4]).WithFactor("a", ["u", "u", null, "v"]);

        var fit = LinearFit.Of(ModelFormula.Parse("y ~ a"), data);

        Assert.Equal(2, fit.RowCount);
        Assert.Equal(3, fit.Coefficient("av").Estimate, 12);
    }

    [Fact]
    public void Of_UnknownColumn_NamesTheColumnsThereAre() =>
        Assert.Contains("the data have a, n, y", Assert.Throws<ArgumentException>(() => LinearFit.Of(ModelFormula.Parse("y ~ b"), Cells)).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_NoCompleteRow_IsRefused() =>
        Assert.Throws<ArgumentException>(() => LinearFit.Of(ModelFormula.Parse("y ~ x"), Cells.WithNumbers("x", Enumerable.Repeat(double.NaN, 6).ToList())));

    [Fact]
    public void Contrast_DifferenceOfMeans_HasTheTextbookError()
    {
        var fit = LinearFit.Of(ModelFormula.Parse("y ~ a"), Cells);

        var difference = fit.Contrast(new Dictionary<string, double> { ["alo"] = -1 })!.Value;

        // Pooled two-sample t: sum of squares 2 within 'lo' and 139 within 'hi', four degrees of freedom, error s sqrt(1/2 + 1/4).
        Assert.Equal(8.5, difference.Value, 12);
        Assert.Equal(Math.Sqrt(141.0 / 4 * 0.75), difference.StandardError, 12);
        Assert.Equal(4, difference.Degrees);
    }
}
