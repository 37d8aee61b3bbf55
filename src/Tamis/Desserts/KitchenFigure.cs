using Tamis.Losses;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>A figure that the kit works out of one component: water, fat, sugars, sweetness, water activity, the dose of a gelling agent. A function with a name.</summary>
/// <param name="Name">What it is, in the kitchen's words.</param>
/// <param name="Unit">Its unit; empty for a ratio.</param>
/// <param name="Decimals">To how many decimals it is shown, and so from which step on two are different.</param>
/// <param name="Of">The figure of a component; null where something behind it is unknown, or it does not apply.</param>
public sealed record KitchenFigure(string Name, string Unit, int Decimals, Func<ComponentBatch, double?> Of)
{
    private static readonly string[] GellingAgents = ["gelatine", "pectin", "agar", "carrageenan", "gellan", "xanthan", "locust bean gum", "alginate"];

    /// <summary>The figures that the kit knows.</summary>
    public static IReadOnlyList<KitchenFigure> Kit { get; } =
    [
        new("water", "%", 1, made => Share(made, balance => balance.PercentOf(BalancePart.Water))),
        new("fat", "%", 1, made => Share(made, balance => balance.PercentOf(balance.Fat))),
        new("sugars", "%", 1, made => Share(made, balance => balance.PercentOf(balance.Sugars))),
        new("sweetness as sucrose", "g in 100 g", 1, made => Predicted(made, balance => Sweetness.Of(balance))),
        new("water activity", "", 2, made => Predicted(made, balance => WaterActivityEstimate.Of(balance).Predicted)),
        .. GellingAgents.Select(agent => new KitchenFigure($"dose of {agent}", "%", 2, made => DoseOf(agent, made))),
    ];

    // A leaf and a powder are lines that name their agent; the dose is of all that was weighed in and not strained out again, as a cook reckons it.
    private static double? DoseOf(string agent, ComponentBatch made)
    {
        var grams = made.Lines.Where(line => !line.IsComponent && Names.HoldsWhole(line.Name, agent)).Sum(line => line.MassGrams);
        var inIt = made.MassInGrams - made.Losses.Where(loss => loss.Of is not null && !loss.IsWater).Sum(loss => loss.MassGrams);
        return inIt > 0 && grams > 0 ? Gelatine.DosePercent(grams, inIt) : null;
    }

    // What lies outside the tested range of a model is no figure to set scores against.
    private static double? Predicted(ComponentBatch made, Func<Balance, Predicted> predict) => made.YieldGrams > 0 && predict(Balance.Of(made.Out)) is { IsSound: true } sound ? sound.Value : null;

    private static double? Share(ComponentBatch made, Func<Balance, double?> share) => made.YieldGrams > 0 ? share(Balance.Of(made.Out)) : null;
}

/// <summary>A kitchen figure of one component that two trials have otherwise.</summary>
/// <param name="Component">The component.</param>
/// <param name="Figure">What moved.</param>
/// <param name="From">In the first trial; null where it is unknown or does not apply.</param>
/// <param name="To">In the second.</param>
public sealed record FigureDifference(string Component, KitchenFigure Figure, double? From, double? To)
{
    /// <summary>The figures that moved, as they are shown, between two batches; components inside others carry their change with them.</summary>
    public static IReadOnlyList<FigureDifference> Between(Batch from, Batch to) =>
        [.. from name in @from.Components.Concat(to.Components).Select(component => component.Name).Distinct(Names.Comparer)
            let pair = (From: @from.Find(name), To: to.Find(name))
            from figure in KitchenFigure.Kit
            let before = pair.From is null ? null : figure.Of(pair.From)
            let after = pair.To is null ? null : figure.Of(pair.To)
            where (before is not null || after is not null) && Shown(before, figure) != Shown(after, figure)
            select new FigureDifference(name, figure, before, after)];

    private static double? Shown(double? value, KitchenFigure figure) => value is { } known ? Math.Round(known, figure.Decimals, MidpointRounding.AwayFromZero) : null;
}
