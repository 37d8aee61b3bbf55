using Tamis.Statistics.Comparisons;

namespace Tamis.Verification;

/// <summary>The studentized range, and several tests counted together, for published checks.</summary>
/// <remarks>Inputs: <c>groups</c>, <c>df</c> (a number or <c>inf</c>), <c>q</c> or <c>probability</c>; or <c>probabilities</c>, <c>method</c> and <c>at</c>, which of them, from 1.</remarks>
public static class RangeQuantities
{
    /// <summary>Every quantity by its name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["studentized_range_cdf"] = inputs => CheckValue.Of(1 - StudentizedRange.Above(inputs.Number("q"), Groups(inputs), Degrees(inputs))),
        ["studentized_range_quantile"] = inputs => CheckValue.Of(StudentizedRange.Quantile(inputs.Number("probability"), Groups(inputs), Degrees(inputs))),
        ["adjusted_probability"] = Adjusted,
    };

    private static CheckValue Adjusted(CheckInputs inputs) => CheckValue.Of((inputs.Text("method") switch
    {
        "holm" => SeveralTests.Holm(inputs.Numbers("probabilities")),
        "benjamini_hochberg" => SeveralTests.BenjaminiHochberg(inputs.Numbers("probabilities")),
        var other => throw new FormatException($"the input 'method' is '{other}', not holm or benjamini_hochberg"),
    })[(int)inputs.Number("at") - 1]);

    private static int Groups(CheckInputs inputs) => (int)inputs.Number("groups");

    private static double Degrees(CheckInputs inputs) => inputs.Text("df") is "inf" ? double.PositiveInfinity : inputs.Number("df");
}
