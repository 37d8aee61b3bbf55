using Tamis.Statistics.Comparisons;

namespace Tamis.Verification;

/// <summary>The studentized range for published checks. Inputs: <c>groups</c>, <c>df</c> (a number or <c>inf</c>), <c>q</c> or <c>probability</c>.</summary>
public static class RangeQuantities
{
    /// <summary>Every quantity by its name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["studentized_range_cdf"] = inputs => CheckValue.Of(1 - StudentizedRange.Above(inputs.Number("q"), Groups(inputs), Degrees(inputs))),
        ["studentized_range_quantile"] = inputs => CheckValue.Of(StudentizedRange.Quantile(inputs.Number("probability"), Groups(inputs), Degrees(inputs))),
    };

    private static int Groups(CheckInputs inputs) => (int)inputs.Number("groups");

    private static double Degrees(CheckInputs inputs) => inputs.Text("df") is "inf" ? double.PositiveInfinity : inputs.Number("df");
}
