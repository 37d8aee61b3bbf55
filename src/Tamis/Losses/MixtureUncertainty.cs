using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Statistics.Uncertainty;

namespace Tamis.Losses;

/// <summary>Chooses the interval of a content; null where none is to be used.</summary>
public delegate ContentInterval? IntervalChoice(Ingredient ingredient, string tag);

/// <summary>A content of a mixture in 100 g finished, with the uncertainty that its parts leave it.</summary>
/// <param name="Propagated">The first-order result: first the masses, then the contents, part by part.</param>
/// <param name="Parts">The parts in the order of the mixture, with the interval of each content; null where its data give none.</param>
/// <param name="SpreadShare">The share of the content, 0 to 1, that comes from parts with an interval: what the uncertainty speaks for.</param>
public sealed record UncertainContent(Propagated Propagated, IReadOnlyList<(MixturePart Part, ContentInterval? Interval)> Parts, double SpreadShare)
{
    private readonly Func<double[], double> _model = _ => double.NaN;

    private readonly IReadOnlyList<UncertainNumber> _inputs = [];

    /// <summary>The content in 100 g finished, in the nutrient's unit.</summary>
    public double Per100Grams => Propagated.Value;

    /// <summary>Its standard uncertainty, in the nutrient's unit.</summary>
    public double StandardUncertaintyPer100Grams => Propagated.StandardUncertainty;

    /// <summary>Where it lies in 95 of 100 cases, to first order and no lower than zero.</summary>
    public Interval Range => Propagated.Interval() is var (low, high) ? Interval.Between(Math.Max(0, low), Math.Max(0, high)) : default;

    /// <summary>The same by drawing.</summary>
    /// <param name="draws">How many draws, two at least.</param>
    /// <param name="seed">The same seed gives the same draws, on any number of threads.</param>
    /// <param name="threads">At most so many threads; 0 for as many as the machine has.</param>
    public DrawnNumbers Drawn(int draws = 100_000, ulong seed = 1, int threads = 0) => Simulation.Run(_model, _inputs, draws, seed, threads);

    /// <summary>A content in 100 g finished with its uncertainty; null where a part is unknown, where nothing is finished, or where no part has a spread.</summary>
    /// <param name="mixture">The mixture.</param>
    /// <param name="tag">The nutrient's tagname.</param>
    /// <param name="choice">Which interval of a content counts; null for the one that its data give.</param>
    /// <remarks>A mass counts as uncertain where it was written as a range. All inputs are independent, also two parts of one ingredient:
    /// write them as one line where they come from one lot.</remarks>
    public static UncertainContent? Of(Mixture mixture, string tag, IntervalChoice? choice = null)
    {
        if (mixture.Per100Grams(tag) is null) return null;
        choice ??= (ingredient, nutrient) => ContentInterval.Of(ingredient.Profile![nutrient]);
        (MixturePart Part, ContentInterval? Interval)[] parts = [.. mixture.Parts.Select(part => (part, choice(part.Ingredient, tag)))];
        if (parts.All(part => part.Interval is null && part.Part.MassRangeGrams is null or { IsPoint: true })) return null;
        var (count, lost, isWater) = (parts.Length, mixture.WaterLostGrams, tag.Equals("WATER", StringComparison.OrdinalIgnoreCase));
        UncertainNumber[] inputs = [.. parts.Select(part => Mass(part.Part)), .. parts.Select(part => part.Interval?.Number ?? part.Part.Ingredient.Profile![tag].Per100Grams)];
        var known = parts.Sum(part => part.Part.MassGrams * part.Part.Ingredient.Profile![tag].Per100Grams);
        var spread = parts.Where(part => part.Interval is not null).Sum(part => part.Part.MassGrams * part.Part.Ingredient.Profile![tag].Per100Grams);
        return new(Propagation.FirstOrder(Model, inputs), parts, known > 0 ? spread / known : 0, Model, inputs);

        double Model(double[] at)
        {
            double sum = 0, mass = 0;
            for (var i = 0; i < count; i++) (sum, mass) = (sum + at[i] * at[count + i] / 100, mass + at[i]);
            return (isWater ? sum - lost : sum) / (mass - lost) * 100;
        }
    }

    private UncertainContent(Propagated propagated, IReadOnlyList<(MixturePart, ContentInterval?)> parts, double spreadShare, Func<double[], double> model, IReadOnlyList<UncertainNumber> inputs)
        : this(propagated, parts, spreadShare) => (_model, _inputs) = (model, inputs);

    private static UncertainNumber Mass(MixturePart part) => part.MassRangeGrams is { IsPoint: false } range
        ? UncertainNumber.Between(range.Low, range.High) with { Value = part.MassGrams }
        : part.MassGrams;
}
