using System.Globalization;
using Tamis.Statistics.OrdinalModels;

namespace Tamis.Verification;

/// <summary>Models of ordered classes for published checks.</summary>
/// <remarks>Inputs: <c>data</c>, <c>model</c>, <c>factors</c>, <c>link</c> (logit, probit), <c>quadrature_points</c> with a random intercept; then <c>term</c> or <c>between</c>.</remarks>
public static class OrdinalQuantities
{
    /// <summary>Every quantity by its name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["cumulative_link_threshold"] = Threshold,
        ["cumulative_link_coefficient"] = inputs => CheckValue.Of(Fit(inputs).Coefficient(inputs.Text("term")).Estimate),
        ["cumulative_link_standard_error"] = inputs => CheckValue.Of(Fit(inputs).Coefficient(inputs.Text("term")).StandardError),
        ["cumulative_link_log_likelihood"] = inputs => CheckValue.Of(Fit(inputs).LogLikelihood),
        ["cumulative_link_variance"] = inputs => CheckValue.Of(Fit(inputs).GroupVariance ?? throw new FormatException("the model has no random intercept")),
    };

    private static CheckValue Threshold(CheckInputs inputs)
    {
        if (inputs.List("between") is not [var lower, var upper]) throw new FormatException("the input 'between' is 'lower class:upper class'");
        return CheckValue.Of((Fit(inputs).Thresholds.FirstOrDefault(one => Is(one.Lower, lower) && Is(one.Upper, upper))
            ?? throw new FormatException($"no threshold stands between '{lower}' and '{upper}'")).Estimate);
    }

    private static bool Is(double value, string text) => value.ToString(CultureInfo.InvariantCulture) == text;

    private static OrdinalFit Fit(CheckInputs inputs)
    {
        var link = inputs.Text("link") switch
        {
            "logit" => OrdinalLink.Logit,
            "probit" => OrdinalLink.Probit,
            var other => throw new FormatException($"the input 'link' is '{other}', not logit or probit"),
        };
        var points = inputs.OptionalText("quadrature_points") is null ? 1 : (int)inputs.Number("quadrature_points");
        var model = OrdinalModel.Parse(inputs.Text("model"), link, points);
        return model.Fit(CheckData.Columns(inputs, model.Columns)).Required;
    }
}
