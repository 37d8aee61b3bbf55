using Tamis.Statistics;
using Tamis.Statistics.Models;
using Tamis.Tables;

namespace Tamis.Verification;

/// <summary>The quantities that the statistics lend to published checks: plain samples and linear models.</summary>
/// <remarks>
/// Inputs: <c>data</c> names a CSV beside the check file, decimal point, in which blank or <c>NA</c> is missing; <c>model</c> is in
/// Wilkinson–Rogers notation; <c>factors</c> lists the columns that are read as factors. A sample is a <c>column</c> of the data, of the
/// rows of <c>where=column:value</c> if that is given.
/// </remarks>
public static class StatisticsQuantities
{
    /// <summary>Every quantity by its name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["sample_mean"] = inputs => CheckValue.Of(Sample(inputs).Mean),
        ["sample_standard_deviation"] = inputs => CheckValue.Of(Sample(inputs).StandardDeviation),
        ["mean_confidence_limit"] = MeanLimit,
        ["anova_f"] = inputs => CheckValue.Of(Line(inputs).F),
        ["anova_p"] = inputs => CheckValue.Of(Line(inputs).P),
        ["anova_sum_of_squares"] = inputs => CheckValue.Of(Line(inputs).SumOfSquares),
        ["anova_residual_sd"] = ResidualDeviation,
        ["regression_coefficient"] = Coefficient,
        ["regression_coefficient_standard_error"] = inputs => CheckValue.Of(Fit(inputs).Coefficient(inputs.Text("term")).StandardError),
        ["regression_residual_sd"] = ResidualDeviation,
        ["regression_r_squared"] = RSquared,
        ["regression_f"] = inputs => CheckValue.Of(Fit(inputs).RegressionF),
        ["scheffe_coefficient"] = Coefficient,
        ["scheffe_residual_sd"] = ResidualDeviation,
        ["scheffe_r_squared"] = RSquared,
    };

    private static CheckValue Coefficient(CheckInputs inputs) => CheckValue.Of(Fit(inputs).Coefficient(inputs.Text("term")).Estimate);

    private static CheckValue ResidualDeviation(CheckInputs inputs) => CheckValue.Of(Fit(inputs).ResidualStandardDeviation);

    private static CheckValue RSquared(CheckInputs inputs) => CheckValue.Of(Fit(inputs).RSquared);

    private static AnovaLine Line(CheckInputs inputs) => Fit(inputs).AnovaFor(inputs.Text("term"));

    private static LinearFit Fit(CheckInputs inputs)
    {
        var model = ModelFormula.Parse(inputs.Text("model"));
        return LinearFit.Of(model, CheckData.Columns(inputs, model.Columns));
    }

    private static SampleSummary Sample(CheckInputs inputs)
    {
        var sheet = CheckData.Sheet(inputs);
        var column = inputs.Text("column");
        var values = CheckData.Texts(sheet, column);
        if (inputs.OptionalText("where") is not null)
        {
            if (inputs.List("where") is not [var name, var wanted]) throw new FormatException("the input 'where' is 'column:value'");
            values = values.Zip(CheckData.Texts(sheet, name)).Where(pair => pair.Second == wanted).Select(pair => pair.First);
        }
        return SampleSummary.Of([.. values.OfType<string>().Select(text => CheckData.Number(sheet, column, text))]);
    }

    private static CheckValue MeanLimit(CheckInputs inputs)
    {
        var limits = Sample(inputs).MeanLimits(inputs.Number("confidence_percent") / 100)
            ?? throw new FormatException("a mean has limits from two values on");
        return CheckValue.Of(inputs.Text("limit") switch
        {
            "low" => limits.Low,
            "high" => limits.High,
            var other => throw new FormatException($"the input 'limit' is '{other}', not low or high"),
        });
    }
}
