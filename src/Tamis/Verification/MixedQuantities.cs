using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Verification;

/// <summary>Mixed models for published checks.</summary>
/// <remarks>
/// Inputs: <c>data</c>, <c>model</c> (<c>y ~ a + (1 | g)</c>) and <c>factors</c>; then <c>term</c> for an effect or a test, <c>component</c>
/// (a grouping or <c>residual</c>) and <c>effect</c> for a variance, <c>of</c> with <c>level</c> or <c>first</c> and <c>second</c> for means.
/// Restricted likelihood unless the name says ml.
/// </remarks>
public static class MixedQuantities
{
    /// <summary>Every quantity by its name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["mixed_model_fixed_effect"] = inputs => CheckValue.Of(Effect(inputs).Value),
        ["mixed_model_fixed_effect_standard_error"] = inputs => CheckValue.Of(Effect(inputs).StandardError),
        ["mixed_model_satterthwaite_df"] = inputs => CheckValue.Of(Effect(inputs).Degrees),
        ["mixed_model_variance"] = Variance,
        ["mixed_model_correlation"] = inputs => CheckValue.Of(Told(Fit(inputs).Correlation(inputs.Text("component"), inputs.Text("effect"), inputs.Text("with")))),
        ["mixed_model_reml_criterion"] = inputs => CheckValue.Of(Fit(inputs).Criterion),
        ["mixed_model_ml_deviance"] = inputs => CheckValue.Of(Fit(inputs, restricted: false).Criterion),
        ["mixed_model_f_test_f"] = inputs => CheckValue.Of(Test(inputs).F),
        ["mixed_model_f_test_p"] = inputs => CheckValue.Of(Test(inputs).P),
        ["mixed_model_f_test_denominator_df"] = inputs => CheckValue.Of(Test(inputs).DenominatorDegrees),
        ["mixed_model_random_term_chi_square"] = RandomTest,
        ["marginal_mean"] = inputs => CheckValue.Of(Mean(inputs).Value),
        ["marginal_mean_standard_error"] = inputs => CheckValue.Of(Mean(inputs).StandardError),
        ["pairwise_difference"] = inputs => CheckValue.Of(Told(Fit(inputs).Difference(inputs.Text("of"), inputs.Text("first"), inputs.Text("second"))).Value),
        ["pairwise_difference_tukey_p"] = PairP,
    };

    private static MixedFit Fit(CheckInputs inputs, bool restricted = true)
    {
        var model = MixedFormula.Parse(inputs.Text("model"));
        return MixedModel.Fit(model, CheckData.Columns(inputs, model.Columns), restricted).Required;
    }

    private static Estimate Effect(CheckInputs inputs) => Told(Fit(inputs).FixedEffect(inputs.Text("term")).Estimate);

    private static Estimate Mean(CheckInputs inputs) => Told(Fit(inputs).Mean(inputs.Text("of"), inputs.Text("level")));

    private static FixedTest Test(CheckInputs inputs)
    {
        var wanted = inputs.Text("term").Split(':').ToHashSet(StringComparer.Ordinal);
        return Fit(inputs).Tests.FirstOrDefault(test => wanted.SetEquals(test.Term.Split(':'))) ?? throw new FormatException($"the model has no test of '{inputs.Text("term")}'");
    }

    private static CheckValue Variance(CheckInputs inputs)
    {
        var (fit, group) = (Fit(inputs), inputs.Text("component"));
        if (group == "residual") return CheckValue.Of(fit.ResidualVariance);
        var effect = inputs.OptionalText("effect") ?? "(Intercept)";
        return CheckValue.Of(fit.Components.FirstOrDefault(one => one.Group == group && one.Effect == effect)?.Variance
            ?? throw new FormatException($"the model has no component '{group}' with the effect '{effect}'"));
    }

    private static CheckValue RandomTest(CheckInputs inputs)
    {
        var fit = Fit(inputs);
        var term = fit.Formula.Random.FirstOrDefault(term => term.ToString() == inputs.Text("term")) ?? throw new FormatException($"the model has no random term '{inputs.Text("term")}'");
        return CheckValue.Of((fit.TestOf(term) ?? throw new FormatException("the simpler model has no fit")).ChiSquare);
    }

    private static CheckValue PairP(CheckInputs inputs)
    {
        var (first, second) = (inputs.Text("first"), inputs.Text("second"));
        return CheckValue.Of((Fit(inputs).PairwiseDifferences(inputs.Text("of")).FirstOrDefault(pair => pair.First == first && pair.Second == second || pair.First == second && pair.Second == first)
            ?? throw new FormatException($"no difference of '{first}' and '{second}'")).AdjustedP);
    }

    private static T Told<T>(T? value) where T : struct => value ?? throw new FormatException("the data cannot tell it");
}
