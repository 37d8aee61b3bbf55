using UnitsNet;

namespace Tamis.Formulas;

/// <summary>What the measures of a kitchen hold.</summary>
/// <param name="Name">How it is called in a setting: <c>metric</c>, <c>us</c>.</param>
/// <param name="TablespoonMillilitres">A level tablespoon, in millilitres.</param>
/// <param name="TeaspoonMillilitres">A level teaspoon, in millilitres.</param>
/// <param name="CupMillilitres">A level cup, in millilitres.</param>
/// <param name="FluidOunceMillilitres">A fluid ounce, in millilitres; null where the kitchen does not know it.</param>
public sealed record KitchenMeasures(string Name, double TablespoonMillilitres, double TeaspoonMillilitres, double CupMillilitres, double? FluidOunceMillilitres)
{
    private static readonly Lazy<KitchenMeasures> LazyUs = new(() => new("us",
        Volume.FromUsTablespoons(1).Milliliters, Volume.FromUsTeaspoons(1).Milliliters, Volume.FromUsCustomaryCups(1).Milliliters, Volume.FromUsOunces(1).Milliliters));

    /// <summary>Metric spoons and cup: 15, 5 and 250 ml (common practice, no source).</summary>
    public static KitchenMeasures Metric { get; } = new("metric", 15, 5, 250, null);

    /// <summary>US customary measures, by the definitions of the units library.</summary>
    public static KitchenMeasures Us => LazyUs.Value;

    /// <summary>A pinch of a dry powder, in grams: about 0.3 g, from 0.2 to 0.5 g (common practice, no source).</summary>
    public static Interval PinchRangeGrams { get; } = Interval.Between(0.2, 0.5);

    /// <summary>The mass that stands for a pinch where the kitchen has not weighed its own, in grams (common practice, no source).</summary>
    public const double PinchGrams = 0.3;

    /// <summary>The measures of a name.</summary>
    /// <exception cref="FormatException">There are none of this name.</exception>
    public static KitchenMeasures Named(string name) =>
        Names.Same(name, Metric.Name) ? Metric
        : Names.Same(name, "us") ? Us
        : throw new FormatException($"the kitchen measures '{name}' are not known; metric and us are");
}
