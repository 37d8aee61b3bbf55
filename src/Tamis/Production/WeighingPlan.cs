using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Production;

/// <summary>Something to weigh.</summary>
/// <param name="Name">The ingredient or component.</param>
/// <param name="MassGrams">How much, edible part.</param>
/// <param name="Count">The number of pieces where the cook counts them; null where they are weighed only.</param>
/// <param name="Piece">The word for one piece; null where they are weighed only.</param>
/// <param name="Notes">The remark of the formula sheet.</param>
public sealed record WeighingLine(string Name, double MassGrams, double? Count, string? Piece, string Notes);

/// <summary>One step: what to weigh for it and what to do.</summary>
public sealed record WeighingStep(int Step, IReadOnlyList<WeighingLine> Lines, MethodStep? Method);

/// <summary>A component on the weighing sheet.</summary>
/// <param name="Name">The component.</param>
/// <param name="Factor">How many of the formula's batches it is.</param>
/// <param name="TakenInGrams">What the other components take of it; 0 for one that is put together in the end.</param>
/// <param name="Steps">The steps in order.</param>
/// <param name="ExpectedYieldGrams">What it should weigh when finished, by the written losses.</param>
public sealed record WeighingComponent(string Name, double Factor, double TakenInGrams, IReadOnlyList<WeighingStep> Steps, double ExpectedYieldGrams);

/// <summary>What to weigh and do for a number of pieces of one trial.</summary>
/// <remarks>Components that are put together are scaled by pieces; one that others take in is made in the mass that they need. Rounding to whole eggs, smallest batches and a reserve are the cook's to add.</remarks>
public sealed record WeighingPlan
{
    /// <summary>The trial.</summary>
    public required string Trial { get; init; }

    /// <summary>How many pieces.</summary>
    public required double Pieces { get; init; }

    /// <summary>How many pieces the formula makes as written; null where nobody said, when the sheet is for one formula.</summary>
    public required double? FormulaPieces { get; init; }

    /// <summary>The components, those that others take in before these.</summary>
    public required IReadOnlyList<WeighingComponent> Components { get; init; }

    /// <summary>How they are put together.</summary>
    public required IReadOnlyList<MethodStep> Assembly { get; init; }

    /// <summary>Works out the sheet.</summary>
    /// <param name="batch">The trial as one batch.</param>
    /// <param name="pieces">How many pieces are wanted, or how many formulas where <paramref name="formulaPieces"/> is null.</param>
    /// <param name="formulaPieces">How many the formula makes.</param>
    /// <param name="stepsOf">The method's steps of a component; empty where there is none.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of pieces is not above zero.</exception>
    public static WeighingPlan For(Batch batch, double pieces, double? formulaPieces, Func<string, IReadOnlyList<MethodStep>> stepsOf)
    {
        if (!double.IsFinite(pieces) || pieces <= 0) throw new ArgumentOutOfRangeException(nameof(pieces), pieces, "Weigh for a number of pieces above zero.");
        var factor = pieces / (formulaPieces ?? 1);
        Dictionary<string, double> factors = new(Names.Comparer);
        List<ComponentBatch> order = [];
        foreach (var component in batch.Components) InnerFirst(component);
        // From the outside in: what a component needs is known once all that take it in are.
        foreach (var component in Enumerable.Reverse(order))
            factors[component.Name] = Needed(component.Name) is var needed and > 0 ? needed / component.YieldGrams : factor;

        return new()
        {
            Trial = batch.Trial,
            Pieces = pieces,
            FormulaPieces = formulaPieces,
            Components = [.. order.Select(component => PlanOf(component, factors[component.Name], Needed(component.Name), stepsOf(component.Name)))],
            Assembly = stepsOf(MethodStep.Assembly),
        };

        void InnerFirst(ComponentBatch component)
        {
            foreach (var line in component.Lines.Where(line => line.IsComponent))
                if (batch.Find(line.Name) is { } inner) InnerFirst(inner);
            if (!order.Contains(component)) order.Add(component);
        }

        double Needed(string name) => order.Where(each => factors.ContainsKey(each.Name))
            .Sum(each => each.Lines.Where(line => line.IsComponent && Names.Same(line.Name, name)).Sum(line => line.MassGrams) * factors[each.Name]);
    }

    private static WeighingComponent PlanOf(ComponentBatch component, double factor, double takenIn, IReadOnlyList<MethodStep> method) => new(
        component.Name, factor, takenIn,
        [.. component.Lines.Select(line => line.Step).Concat(method.Select(step => step.Step)).Distinct().Order().Select(step => new WeighingStep(
            step,
            [.. component.Lines.Where(line => line.Step == step).Select(line => LineOf(line, factor))],
            method.FirstOrDefault(each => each.Step == step)))],
        component.YieldGrams * factor);

    private static WeighingLine LineOf(BatchLine line, double factor) => line.Quantity.Kind == QuantityKind.Pieces
        ? new(line.Name, line.MassGrams * factor, line.Quantity.Range.Middle * factor, line.Quantity.Unit, line.Notes)
        : new(line.Name, line.MassGrams * factor, null, null, line.Notes);
}
