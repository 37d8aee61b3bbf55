using System.Globalization;

namespace Tamis.Physics;

/// <summary>What one model says.</summary>
/// <param name="Model">The model's name.</param>
/// <param name="Predicted">Its figure, with what lies outside its range.</param>
public sealed record ModelAnswer(string Model, Predicted Predicted);

/// <summary>The water activity of a mixture at 25 °C: every model's answer, the one that is taken and why, and how far those that hold differ.</summary>
public sealed class WaterActivityEstimate
{
    private WaterActivityEstimate(Solution solution) => Solution = solution;

    /// <summary>The water and what is dissolved in it at the storage temperature.</summary>
    public Solution Solution { get; }

    /// <summary>What each model says, the one that is taken first where one is.</summary>
    public IReadOnlyList<ModelAnswer> Answers { get; private init; } = [];

    /// <summary>The model that is taken; null where none can be.</summary>
    public ModelAnswer? Chosen { get; private init; }

    /// <summary>Why it is taken, or why none is, in a sentence.</summary>
    public string Reason { get; private init; } = "";

    /// <summary>The figure to show: the chosen model's, its <see cref="Predicted.Range"/> from the lowest to the highest of the models that hold; without a value where no model of solutions can speak.</summary>
    public required Predicted Predicted { get; init; }

    /// <summary>From the lowest to the highest of the models that hold for this mixture; null where fewer than two do. It is the models' uncertainty alone.</summary>
    public Interval? Spread => Predicted.Range;

    /// <summary>Where it would lie if starch, fibre and proteins took up their usual share of the water: lower; null where there are none, or no model holds.</summary>
    public Interval? IfSolidsBindWater { get; private init; }

    /// <summary>The figure if nothing had fallen out of solution yet; null where nothing does.</summary>
    public double? IfAllDissolvedRatio { get; private init; }

    /// <summary>The groups of microbes whose limit lies below the figure, the highest limit first: what water alone does not stop.</summary>
    public IReadOnlyList<MicrobialLimit> NotStopped { get; private init; } = [];

    /// <summary>The limits of growth that the figure keeps under.</summary>
    public IReadOnlyList<MicrobialLimit> Stopped { get; private init; } = [];

    /// <summary>The estimate of a mixture at its storage temperature.</summary>
    /// <param name="balance">What it is made of, after losses.</param>
    /// <param name="storageCelsius">Where it is kept, which decides what stays dissolved.</param>
    public static WaterActivityEstimate Of(Balance balance, double storageCelsius = 20) => Of(Solution.Of(balance, storageCelsius));

    /// <summary>The estimate of a solution.</summary>
    public static WaterActivityEstimate Of(Solution solution)
    {
        ModelAnswer[] answers = [.. WaterActivityModel.All.Select(model => new ModelAnswer(model.Name, model.Of(solution)))];
        var equation = answers[1].Predicted.Equation;
        if (solution.Lacks.Count > 0)
            return new(solution) { Answers = answers, Predicted = Predicted.Unknown(equation, solution.Lacks), Reason = $"Nothing is computed: {string.Join("; ", solution.Lacks)}." };
        if (solution.SwellingGrams > 0 && solution.WaterGrams / solution.SwellingGrams < solution.Table.Data.Constant("least water to swelling solids").Value)
        {
            var dry = string.Create(CultureInfo.InvariantCulture, $"a sorption isotherm of the layer: {solution.WaterGrams:0.#} g of water are held by {solution.SwellingGrams:0.#} g of starch, proteins and fibre, not by what is dissolved");
            return new(solution) { Answers = answers, Predicted = Predicted.Unknown(equation, dry), Reason = "It is too dry for the models of solutions." };
        }
        var sound = answers.Where(answer => answer.Predicted.IsSound).ToArray();
        var chosen = sound.Length > 0 ? sound[0] : answers[1];
        var value = chosen.Predicted.Value;
        Interval? spread = sound.Length > 1 ? Interval.Between(sound.Min(each => each.Predicted.Value), sound.Max(each => each.Predicted.Value)) : null;
        return new(solution)
        {
            Answers = [chosen, .. answers.Where(answer => answer != chosen)],
            Chosen = chosen,
            Predicted = chosen.Predicted with { Range = spread },
            Reason = sound.Length > 0 ? ReasonFor(chosen.Model, sound.Length) : $"No model was tested for such a mixture: {string.Join("; ", chosen.Predicted.Outside)}. {chosen.Model} is shown.",
            IfSolidsBindWater = Bound(solution, chosen),
            IfAllDissolvedRatio = solution.Undissolved.Count > 0 ? Model(chosen).Compute(solution.AllDissolved) : null,
            NotStopped = [.. MicrobialLimit.Kit.Where(limit => limit.IsGrowth && limit.WaterActivityRatio <= value)],
            Stopped = [.. MicrobialLimit.Kit.Where(limit => limit.IsGrowth && limit.WaterActivityRatio > value)],
        };
    }

    private static Interval? Bound(Solution solution, ModelAnswer chosen)
    {
        // Grover counts these solids already.
        if (solution.SwellingGrams <= 0 || chosen.Model == "Grover" || solution.Table.Data.Constant("water taken up by swelling solids").Range is not { } perGram) return null;
        var (most, least) = (solution.WaterGrams - perGram.High * solution.SwellingGrams, solution.WaterGrams - perGram.Low * solution.SwellingGrams);
        return most > 0 ? Interval.Between(Model(chosen).Compute(solution.WithWater(most)), Model(chosen).Compute(solution.WithWater(least))) : null;
    }

    private static WaterActivityModel Model(ModelAnswer answer) => WaterActivityModel.All.First(model => model.Name == answer.Model);

    private static string ReasonFor(string model, int sound) => (model switch
    {
        "Pitzer" => "Only salt is dissolved: Pitzer’s equation is made for that",
        "Norrish" => "Sugars and polyols within the range in which Norrish’s equation was tested; salt, if any, by Pitzer beside it",
        "Grover" => "It lies below the range of the equations of solutions; Grover’s was fitted to confectionery that low",
        _ => $"{model} is the first model that holds for it",
    }) + (sound > 1 ? $"; {sound} models hold and differ by the range shown." : "; no other model holds.");
}
