using System.Globalization;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.Tests.Models;

// Source: NIST Statistical Reference Datasets, certified results in data/published/datasets/nist-certified.csv.
public class CertifiedTests
{
    // Nine digits, where double precision allows them. The polynomial of degree five loses one to its own condition, and AtmWtAg one to
    // its seven constant leading digits.
    private static double RelativeTolerance(string data) => data is "nist-wampler1.csv" or "nist-atmwtag.csv" ? 1e-8 : 1e-9;

    public static TheoryData<string, string, string, string, string, string> Certified()
    {
        TheoryData<string, string, string, string, string, string> rows = [];
        foreach (var row in Published.Rows("nist-certified.csv"))
            rows.Add(row["data"], row["model"], row["factors"], row["quantity"], row["term"], row["certified"]);
        return rows;
    }

    [Theory]
    [MemberData(nameof(Certified))]
    public void Of_CertifiedData_HasTheCertifiedDigits(string data, string model, string factors, string quantity, string term, string certified)
    {
        var fit = Fit(data, model, factors);
        var value = quantity switch
        {
            "coefficient" => fit.Coefficient(term).Estimate,
            "standard_error" => fit.Coefficient(term).StandardError,
            "residual_sd" => fit.ResidualStandardDeviation,
            "r_squared" => fit.RSquared,
            "residual_sum_of_squares" => fit.ResidualSumOfSquares,
            "sum_of_squares" => fit.AnovaFor(term).SumOfSquares,
            _ when term.Length > 0 => fit.AnovaFor(term).F,
            _ => fit.RegressionF,
        };
        if (certified == "Infinity")
        {
            // An exact fit: what is left is the rounding of values up to 3e6, so that F is as large as doubles allow.
            Assert.True(value > 1e20, $"{value:R}");
            return;
        }
        var wanted = double.Parse(certified, CultureInfo.InvariantCulture);
        Assert.InRange(value, wanted - Margin(), wanted + Margin());

        double Margin() => RelativeTolerance(data) * (wanted == 0 ? 1 : Math.Abs(wanted));
    }

    [Fact]
    public void Certified_File_HasSixSets() => Assert.Equal(6, Published.Rows("nist-certified.csv").Select(row => row["data"]).Distinct().Count());

    private static LinearFit Fit(string file, string model, string factors)
    {
        var rows = Published.Rows(file);
        var formula = ModelFormula.Parse(model);
        return LinearFit.Of(formula, formula.Columns.Aggregate(ModelData.Empty, (data, name) => name == factors
            ? data.WithFactor(name, [.. rows.Select(row => row[name])])
            : data.WithNumbers(name, [.. rows.Select(row => double.Parse(row[name], CultureInfo.InvariantCulture))])));
    }
}
