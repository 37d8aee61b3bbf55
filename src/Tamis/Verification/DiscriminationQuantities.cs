using MathNet.Numerics.Distributions;
using Tamis.Statistics;
using Tamis.Statistics.Designs;
using Tamis.Statistics.Discrimination;
using Tamis.Tasting;

namespace Tamis.Verification;

/// <summary>Tests of same or different, ranks of a table and designs for published checks.</summary>
/// <remarks>Inputs: <c>test</c>, <c>answers</c>, <c>correct</c>, <c>alpha</c>, <c>beta</c>, <c>pd</c> (the share who tell the two apart), <c>d_prime</c>, <c>sides</c>; a <c>table</c> has a row an assessor. Designs: <c>blocks</c>, <c>treatments</c>, <c>each</c> or <c>size</c> (how many in a block), <c>times</c>, <c>difference</c>, <c>error_sd</c>, <c>block_in_treatment_sd</c>, <c>power</c>.</remarks>
public static class DiscriminationQuantities
{
    /// <summary>Every quantity by its name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["triangle_critical_count"] = inputs => Count(Critical(inputs, 1.0 / 3)),
        ["duo_trio_critical_count"] = inputs => Count(Critical(inputs, 0.5)),
        ["paired_critical_count"] = inputs => Count(Critical(inputs, 0.5)),
        ["similarity_max_count"] = inputs => CheckValue.Of(Test(inputs).MostForSimilarity(Answers(inputs), inputs.Number("pd"), inputs.Number("beta"))),
        ["discrimination_power"] = Power,
        ["discrimination_p_value"] = inputs => CheckValue.Of(Sides(inputs) * Binomials.AtLeast((int)inputs.Number("correct"), Answers(inputs), Test(inputs).Guess)),
        ["discrimination_answers_needed"] = inputs => Count(Binomials.AnswersNeeded(Test(inputs).Guess, inputs.Number("pd"), inputs.Number("alpha"), 1 - inputs.Number("beta"))),
        ["proportion_confidence_limit"] = Limit,
        ["proportion_correct_from_d_prime"] = inputs => CheckValue.Of(Test(inputs).ProportionRight(inputs.Number("d_prime"))),
        ["d_prime"] = inputs => CheckValue.Of(Test(inputs).DPrime(inputs.Number("proportion_correct"))),
        ["a_not_a_d_prime"] = inputs => CheckValue.Of(Normal.InvCDF(0, 1, inputs.Number("hits") / inputs.Number("signals")) - Normal.InvCDF(0, 1, inputs.Number("false_alarms") / inputs.Number("noises"))),
        ["beta_binomial_mu"] = inputs => CheckValue.Of(Spread(inputs).Mean),
        ["beta_binomial_gamma"] = inputs => CheckValue.Of(Spread(inputs).Overdispersion),
        ["beta_binomial_log_likelihood"] = inputs => CheckValue.Of(Spread(inputs).LogLikelihood),
        ["williams_square_is_balanced"] = inputs => CheckValue.Of(DesignBalance.IsWilliams(inputs.Table("square")) ? "yes" : "no"),
        ["incomplete_block_design"] = Incomplete,
        ["noncentral_f_above"] = inputs => CheckValue.Of(Tails.NoncentralFAbove(inputs.Number("f"), inputs.Number("numerator_df"), inputs.Number("denominator_df"), inputs.Number("effect"))),
        ["crossed_design_power"] = inputs => CheckValue.Of(Design(inputs).PowerOfPair(inputs.Number("difference"), inputs.Number("error_sd"), inputs.OptionalNumber("block_in_treatment_sd") ?? 0)),
        ["crossed_design_blocks_needed"] = inputs => Count(Design(inputs).BlocksNeeded(inputs.Number("difference"), inputs.Number("error_sd"), inputs.OptionalNumber("block_in_treatment_sd") ?? 0, inputs.Number("power"))),
        ["incomplete_block_lambda"] = inputs => DesignBalance.PairsTogether(inputs.Table("blocks")) is { } together ? CheckValue.Of(together) : CheckValue.Of("not balanced"),
    };

    private static CrossedDesign Design(CheckInputs inputs) =>
        new((int)(inputs.OptionalNumber("blocks") ?? 2), (int)inputs.Number("treatments"), (int)inputs.Number("each"), (int)(inputs.OptionalNumber("times") ?? 1));

    // A design made anew, with seed 1, and its pairs counted in it.
    private static CheckValue Incomplete(CheckInputs inputs)
    {
        var made = IncompleteBlocks.Of((int)inputs.Number("treatments"), (int)inputs.Number("size"), (int)inputs.Number("blocks"), new SeededOrder(1).Below);
        return DesignBalance.PairsTogether([.. made.Blocks.Select(block => (IReadOnlyList<string>)[.. block.Select(treatment => $"{treatment}")])]) is { } together ? CheckValue.Of(together) : CheckValue.Of("not balanced");
    }

    private static ForcedChoice Test(CheckInputs inputs) => inputs.Text("test") is var name && name == "paired"
        ? ForcedChoice.TwoAlternatives
        : ForcedChoice.All.FirstOrDefault(test => test.Name == name) ?? throw new FormatException($"the input 'test' is '{name}', none of {string.Join(", ", ForcedChoice.All.Select(test => test.Name))}");

    private static int Answers(CheckInputs inputs) => (int)inputs.Number("answers");

    private static double Sides(CheckInputs inputs) => inputs.OptionalNumber("sides") ?? 1;

    private static int? Critical(CheckInputs inputs, double guess) => Binomials.FewestRight(Answers(inputs), guess, inputs.Number("alpha") / Sides(inputs));

    private static CheckValue Count(int? count) => count is { } number ? CheckValue.Of(number) : CheckValue.Of("none");

    private static CheckValue Power(CheckInputs inputs)
    {
        var test = Test(inputs);
        if (Critical(inputs, test.Guess) is not { } critical) return CheckValue.Of(0);
        var right = test.ProportionRight(inputs.Number("d_prime"));
        var above = Binomials.AtLeast(critical, Answers(inputs), right);
        return CheckValue.Of(Sides(inputs) > 1 ? above + Binomials.AtLeast(critical, Answers(inputs), 1 - right) : above);
    }

    private static CheckValue Limit(CheckInputs inputs)
    {
        var limits = Binomials.Limits((int)inputs.Number("correct"), Answers(inputs), inputs.Number("confidence_percent") / 100);
        return CheckValue.Of(inputs.Text("limit") == "low" ? limits.Low : limits.High);
    }

    private static BetaBinomialFit Spread(CheckInputs inputs) =>
        BetaBinomialFit.Of([.. inputs.Numbers("counts").Select(count => (int)count)], (int)inputs.Number("replicates")) ?? throw new FormatException("all answers are right, or all wrong");
}
