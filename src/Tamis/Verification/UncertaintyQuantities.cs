using MathNet.Numerics.Distributions;
using Tamis.Statistics.Uncertainty;

namespace Tamis.Verification;

/// <summary>The quantities of measurement uncertainty: propagation to first order and by drawing, with the examples of JCGM 100 and 101.</summary>
public static class UncertaintyQuantities
{
    // The models of the examples, as functions of their inputs in the order of the text.
    private static readonly Dictionary<string, Func<double[], double>> Models = new(StringComparer.Ordinal)
    {
        ["sum"] = x => x.Sum(),
        // JCGM 101:2008, 9.3.1.3: mass of a weight by comparison, with the buoyancy of air; mg and kg/m³.
        ["mass_calibration"] = x => (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000,
        // JCGM 101:2008, 9.4.2.1: what a power meter loses by mismatch.
        ["comparison_loss"] = x => x[0] * x[0] + x[1] * x[1],
    };

    /// <summary>Every quantity by its name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["propagated_standard_uncertainty"] = inputs => CheckValue.Of(Propagation.Combined(
            [.. inputs.Numbers("sensitivities")], [.. inputs.Numbers("uncertainties")], inputs.OptionalNumber("correlation") ?? 0)),
        ["mixture_standard_uncertainty"] = Mixture,
        ["mixture_variance_share"] = inputs => CheckValue.Of(Means(inputs).FirstOrder(0).VarianceShares is var shares && (int)inputs.Number("line") - 1 is var line
            ? (shares[line] + shares[line + shares.Count / 2]) * 100 : double.NaN),
        ["effective_degrees_of_freedom"] = inputs => CheckValue.Of(Propagation.EffectiveDegreesOfFreedom([.. inputs.Numbers("contributions")], [.. inputs.Numbers("degrees_of_freedom")])),
        ["coverage_factor"] = inputs => CheckValue.Of(Propagation.CoverageFactor(inputs.Number("coverage"), inputs.OptionalNumber("degrees_of_freedom") ?? double.PositiveInfinity)),
        ["lognormal_quantile"] = inputs => CheckValue.Of(new UncertainNumber(inputs.Number("mean"), inputs.Number("sd"), DrawShape.Lognormal).OfLogarithm is var (mean, deviation)
            ? Math.Exp(Normal.InvCDF(mean, deviation, inputs.Number("probability"))) : double.NaN),
        ["triangular_quantile"] = inputs => CheckValue.Of(Triangular.InvCDF(inputs.Number("low"), inputs.Number("high"), inputs.Number("mode"), inputs.Number("probability"))),
        ["model_standard_uncertainty"] = inputs => CheckValue.Of(Propagation.FirstOrder(Model(inputs), Inputs(inputs)).StandardUncertainty),
        ["drawn_mean"] = inputs => CheckValue.Of(Drawn(inputs).Mean),
        ["drawn_standard_uncertainty"] = inputs => CheckValue.Of(Drawn(inputs).StandardDeviation),
        ["drawn_half_width"] = inputs => CheckValue.Of(Drawn(inputs).Interval(inputs.Number("coverage")) is var (low, high) ? (high - low) / 2 : double.NaN),
        ["drawn_shortest_low"] = inputs => CheckValue.Of(Drawn(inputs).ShortestInterval(inputs.Number("coverage")).Low),
        ["drawn_shortest_high"] = inputs => CheckValue.Of(Drawn(inputs).ShortestInterval(inputs.Number("coverage")).High),
    };

    private static DrawnNumbers Drawn(CheckInputs inputs) => Simulation.Run(Model(inputs), Inputs(inputs), (int)inputs.Number("draws"), (ulong)inputs.Number("seed"));

    private static Func<double[], double> Model(CheckInputs inputs) =>
        Models.TryGetValue(inputs.Text("model"), out var model) ? model : throw new FormatException($"there is no model '{inputs.Text("model")}'; known: {string.Join(", ", Models.Keys)}");

    // A table of normal:mean:uncertainty and rectangular:low:high.
    private static UncertainNumber[] Inputs(CheckInputs inputs) => [.. inputs.Table("inputs").Select(row => row switch
    {
        ["normal", var mean, var uncertainty] => new UncertainNumber(Number(mean), Number(uncertainty)),
        ["rectangular", var low, var high] => UncertainNumber.Between(Number(low), Number(high)),
        _ => throw new FormatException($"'{string.Join(':', row)}' is no normal:mean:uncertainty or rectangular:low:high"),
    })];

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static CheckValue Mixture(CheckInputs inputs)
    {
        if (inputs.Text("basis") == "per_100g") return CheckValue.Of(Means(inputs).FirstOrder(0).StandardUncertainty);
        var (masses, values) = (inputs.Numbers("masses_g"), inputs.Numbers("values_per_100g"));
        return CheckValue.Of(Propagation.Combined(
            [.. values.Select(value => value / 100), .. masses.Select(mass => mass / 100)],
            [.. inputs.Numbers("mass_uncertainties_g"), .. inputs.Numbers("value_uncertainties_per_100g")]));
    }

    private static WeightedMeans Means(CheckInputs inputs) => new(
        [.. inputs.Numbers("masses_g").Zip(inputs.Numbers("mass_uncertainties_g"), (mass, uncertainty) => new UncertainNumber(mass, uncertainty))],
        [.. inputs.Numbers("values_per_100g").Zip(inputs.Numbers("value_uncertainties_per_100g"), (value, uncertainty) => new UncertainNumber(value, uncertainty))]);
}
