using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Tasting;
using Tamis.Trials;

namespace Tamis.Desserts;

/// <summary>A step of the method that one trial does otherwise than another.</summary>
/// <param name="Component">The component.</param>
/// <param name="Step">The step.</param>
/// <param name="From">What is done in the first trial; null where the step is new.</param>
/// <param name="To">What is done in the second; null where the step is gone.</param>
public sealed record MethodDifference(string Component, int Step, MethodStep? From, MethodStep? To);

/// <summary>One trial against another: what was changed, and what tasters said of it.</summary>
public sealed record TrialStep
{
    /// <summary>The trial that is looked at.</summary>
    public required Trial To { get; init; }

    /// <summary>The trial that it is compared with: its parent, or another.</summary>
    public required Trial From { get; init; }

    /// <summary>What is made otherwise, in grams, shares, losses and steps.</summary>
    public required BatchDifference Difference { get; init; }

    /// <summary>What is done otherwise.</summary>
    public required IReadOnlyList<MethodDifference> Method { get; init; }

    /// <summary>The things that a cook changed; lines that moved as one count once.</summary>
    public required IReadOnlyList<Change> Changes { get; init; }

    /// <summary>How tasters scored the two, scale by scale and tasting by tasting; empty without tastings.</summary>
    public required IReadOnlyList<TrialComparison> Comparisons { get; init; }

    /// <summary>Whether several things changed at once, so that no score can be laid to one of them.</summary>
    public bool IsConfounded => Changes.Count > 1;

    /// <summary>One trial of a dessert against another.</summary>
    /// <exception cref="KeyNotFoundException">The log has no such trial.</exception>
    public static TrialStep Between(Dessert dessert, string from, string to)
    {
        var (first, second) = (dessert.Trial(from), dessert.Trial(to));
        var difference = BatchDifference.Between(first, second);
        var analysis = dessert.Analysis;
        return new()
        {
            From = dessert.LoggedTrial(from),
            To = dessert.LoggedTrial(to),
            Difference = difference,
            Method = MethodOf(dessert, first, second),
            Changes = Change.Of(difference),
            Comparisons = analysis is null ? [] : [.. analysis.Scales.SelectMany(scale => analysis.Compare(to, from, scale))],
        };
    }

    /// <summary>Every trial that has a parent against that parent, in the order of the log.</summary>
    internal static IReadOnlyList<TrialStep> AllOf(Dessert dessert) => dessert.Log is not { } log ? []
        : [.. log.Trials.Where(trial => trial.Parent is not null).Select(trial => Between(dessert, trial.Parent!, trial.Name))];

    private static List<MethodDifference> MethodOf(Dessert dessert, Batch from, Batch to)
    {
        if (dessert.Method is not { } method) return [];
        List<MethodDifference> differences = [];
        foreach (var component in from.Formula.Components.Concat(to.Formula.Components).Select(each => each.Name).Append(MethodStep.Assembly).Distinct(Names.Comparer))
        {
            var (before, after) = (method.StepsOf(component, dessert.LineOf(from.Trial)), method.StepsOf(component, dessert.LineOf(to.Trial)));
            foreach (var step in before.Concat(after).Select(each => each.Step).Distinct().Order())
                if ((before.FirstOrDefault(each => each.Step == step), after.FirstOrDefault(each => each.Step == step)) is var (a, b) && a != b)
                    differences.Add(new(component, step, a, b));
        }
        return differences;
    }
}
