using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Production;

/// <summary>How much to make of everything for a number of pieces, or how many pieces can be made.</summary>
/// <remarks>Whole numbers (makes, pieces) are decided by an exact solver (<see cref="AmountsModel"/>); masses follow from them without rounding, from the outside in.</remarks>
public sealed record Amounts
{
    private const double Slack = 1e-9;

    private Amounts(AmountsRequest request) => Request = request;

    /// <summary>What was asked.</summary>
    public AmountsRequest Request { get; }

    /// <summary>How many pieces.</summary>
    public required int Pieces { get; init; }

    /// <summary>The components, those that others take in before these.</summary>
    public required IReadOnlyList<ComponentAmount> Components { get; init; }

    /// <summary>What is needed of every ingredient, in the order of first use.</summary>
    public required IReadOnlyList<NeededIngredient> Ingredients { get; init; }

    /// <summary>A component by its name; null where the trial has none.</summary>
    public ComponentAmount? Find(string component) => Components.FirstOrDefault(each => Names.Same(each.Name, component));

    /// <summary>Where all mass goes.</summary>
    public MassAccount Account => new(
        Ingredients.Sum(each => each.BoughtGrams), Components.Sum(each => each.HaveGrams),
        Ingredients.Sum(each => each.NotEdibleGrams), Ingredients.Sum(each => each.LeftOfPieceGrams),
        [.. Components.SelectMany(each => each.Leaves).GroupBy(each => each.Loss.Name, Names.Comparer).Select(group => (group.Key, group.Sum(each => each.Grams)))],
        Components.Sum(each => each.LeftGrams), Components.Sum(each => each.InPiecesGrams),
        Components.Sum(each => each.Makes * each.Weighed.Where(line => !line.Line.IsComponent).Sum(line => line.WeighedGrams - line.ExactGrams)));

    /// <summary>Works them out.</summary>
    /// <exception cref="ArgumentException">There is nothing to count pieces by.</exception>
    /// <exception cref="OrderException">A component stands in a piece with a mass that nobody knows, or yields nothing, or no amounts meet all limits; the sentence says which component.</exception>
    public static Amounts Of(AmountsRequest request)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(request.ReserveShare, nameof(request));
        if (request.Pieces is { } wanted) ArgumentOutOfRangeException.ThrowIfLessThan(wanted, 1, nameof(request));
        var order = InnerFirst(request.Batch);
        var pieceGrams = order.ToDictionary(each => each.Name, each => request.PieceGrams(each.Name)
            ?? throw new OrderException($"Nobody knows what {each.Name} weighs in a piece: it needs a density in components.csv or a mass in montage.csv."), Names.Comparer);
        foreach (var empty in order.Where(each => each.YieldGrams <= 0 && pieceGrams[each.Name] > 0))
            throw new OrderException($"Nothing is left of {empty.Name} by its written losses, so no amount of it can be planned.");

        var (pieces, makes) = AmountsModel.Solve(request, order, pieceGrams);
        return Exact(request, order, pieceGrams, pieces, makes);
    }

    /// <summary>What lies in a component's pot at a step of its formula, in grams.</summary>
    internal static double InPotGrams(ComponentBatch component, int step) =>
        component.Lines.Where(line => line.Step <= step).Sum(line => line.MassGrams) - component.Losses.Where(loss => loss.Step < step).Sum(loss => loss.MassGrams);

    /// <summary>The lines of which a make takes at least one whole piece, with how many the formula counts.</summary>
    internal static IEnumerable<(BatchLine Line, double Count)> Whole(AmountsRequest request, ComponentBatch component) =>
        from line in component.Lines
        where line.Quantity.Kind == QuantityKind.Pieces && !line.IsComponent
        let count = line.Quantity.Range.Middle
        where count > 0 && line.MassGrams / count >= request.WholeFromGrams
        select (line, count);

    private static Amounts Exact(AmountsRequest request, IReadOnlyList<ComponentBatch> order, IReadOnlyDictionary<string, double> pieceGrams, int pieces, IReadOnlyDictionary<string, int> makes)
    {
        Dictionary<string, ComponentAmount> done = new(Names.Comparer);
        // From the outside in: what a component needs is known once all that take it in are.
        foreach (var component in order.Reverse())
        {
            var inPieces = pieces * pieceGrams[component.Name];
            var inOthers = done.Values.Sum(each => each.Formula.Lines.Where(line => line.IsComponent && Names.Same(line.Name, component.Name)).Sum(line => line.MassGrams) * each.FactorRatio);
            var isAll = AmountsModel.IsAllThereIs(request, component.Name);
            var had = AmountsModel.Had(request, component.Name);
            var needed = isAll ? 0 : inOthers + inPieces * (1 + request.ReserveShare) - had;
            var (factor, why, origin) = needed > 1e-6 ? Factor(request, component, needed, makes[component.Name]) : (0, null, null);
            var count = factor > 0 ? Math.Max(1, makes[component.Name]) : 0;
            done[component.Name] = new()
            {
                Formula = component, FactorRatio = factor, Makes = count, HaveGrams = had,
                InPiecesGrams = inPieces, InOthersGrams = inOthers, ReserveGrams = isAll ? 0 : inPieces * request.ReserveShare,
                WhyMore = why, WhyOrigin = origin ?? (count > 1 ? Tightest(request, component)?.Origin : null),
                WhySeveral = count <= 1 ? null : request.LeastMakesOf(component.Name) is { } rounds && rounds.Makes == count ? rounds.Why
                    : Tightest(request, component) is { } full ? FormattableString.Invariant($"the {full.Equipment} holds {full.MostGrams:0} g") : null,
                Weighed = count == 0 ? [] : [.. component.Lines.Select(line => Weigh(request, line, factor / count))],
            };
        }
        ComponentAmount[] components = [.. order.Select(component => done[component.Name])];
        return new(request) { Pieces = pieces, Components = components, Ingredients = [.. Needed(components)] };
    }

    private static (double Factor, string? Why, Source? Origin) Factor(AmountsRequest request, ComponentBatch component, double neededGrams, int makes)
    {
        var (factor, why, origin) = (neededGrams / component.YieldGrams, (string?)null, (Source?)null);
        foreach (var limit in request.LimitsOf(component.Name))
            if (limit.LeastGrams is { } least && InPotGrams(component, limit.Step) is > 0 and var pot && makes * least / pot > factor + Slack)
                (factor, why, origin) = (makes * least / pot, FormattableString.Invariant($"the {limit.Equipment} needs {least:0} g"), limit.Origin);
        foreach (var (line, count) in Whole(request, component))
            if (makes / count > factor + Slack) (factor, why, origin) = (makes / count, $"one whole {line.Quantity.Unit}", line.Origin);
        return (factor, why, origin);
    }

    private static MakeLimit? Tightest(AmountsRequest request, ComponentBatch component) => request.LimitsOf(component.Name)
        .Where(limit => limit.MostGrams is not null && InPotGrams(component, limit.Step) > 0).MinBy(limit => limit.MostGrams / InPotGrams(component, limit.Step));

    private static WeighedAmount Weigh(AmountsRequest request, BatchLine line, double factor)
    {
        var exact = line.MassGrams * factor;
        var count = line.Quantity.Kind == QuantityKind.Pieces ? line.Quantity.Range.Middle * factor : (double?)null;
        return new(line, exact, OnScale(request.Scales, exact), count);
    }

    // The finest scale that bears the mass; the largest where it has to be weighed in parts. What is less than a step is weighed as one.
    private static double OnScale(IReadOnlyList<(double MostGrams, double StepGrams)> scales, double grams)
    {
        if (scales.Count == 0 || grams <= 0) return grams;
        var step = scales.FirstOrDefault(scale => scale.MostGrams >= grams, scales[^1]).StepGrams;
        return Math.Max(1, Math.Round(grams / step, MidpointRounding.AwayFromZero)) * step;
    }

    private static IEnumerable<NeededIngredient> Needed(IReadOnlyList<ComponentAmount> components)
    {
        var lines = from component in components
                    from weighed in component.Weighed
                    where !weighed.Line.IsComponent
                    select (component, weighed, Ingredient: component.Formula.In.Parts.First(part => Names.Same(part.Ingredient.Name, weighed.Line.Name)).Ingredient);
        foreach (var group in lines.GroupBy(each => each.weighed.Line.Name, Names.Comparer))
        {
            var ingredient = group.First().Ingredient;
            var grams = group.Sum(each => each.weighed.WeighedGrams * each.component.Makes);
            var edible = ingredient.EdiblePercent / 100;
            if (group.All(each => each.weighed.Count is null) || ingredient.PieceGrams is not { } pieceGrams)
            {
                yield return new(ingredient, grams, null, null, grams / edible);
                continue;
            }
            var pieces = (int)Math.Ceiling(grams / (pieceGrams * edible) - 1e-3);
            // A scale's step may ask for a trace more than the pieces that were counted.
            yield return new(ingredient, grams, pieces, ingredient.Piece, Math.Max(pieces * pieceGrams, grams / edible));
        }
    }

    private static List<ComponentBatch> InnerFirst(Batch batch)
    {
        List<ComponentBatch> order = [];
        foreach (var component in batch.Components) Visit(component);
        return order;

        void Visit(ComponentBatch component)
        {
            foreach (var line in component.Lines.Where(line => line.IsComponent))
                if (batch.Find(line.Name) is { } inner && !order.Contains(inner)) Visit(inner);
            if (!order.Contains(component)) order.Add(component);
        }
    }
}
