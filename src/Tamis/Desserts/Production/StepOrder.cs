using Tamis.Formulas;
using Tamis.Losses;

namespace Tamis.Desserts;

/// <summary>What waits for what among the steps of a trial.</summary>
/// <param name="batch">The trial, for what goes into what.</param>
/// <param name="steps">The steps of all components that are made, those that others take in before these, then of the putting together.</param>
internal sealed class StepOrder(Batch batch, IReadOnlyList<MethodStep> steps)
{
    private readonly Dictionary<MethodStep, IReadOnlyList<MethodStep>> _before = [];

    /// <summary>All steps, in their order.</summary>
    public IReadOnlyList<MethodStep> Steps => steps;

    /// <summary>The steps of a component, in their order.</summary>
    public IEnumerable<MethodStep> Of(string component) => steps.Where(step => Names.Same(step.Component, component));

    /// <summary>The last step of a component; null where it has none.</summary>
    public MethodStep? Last(string component) => Of(component).LastOrDefault();

    /// <summary>The step above one in the same component; null for the first.</summary>
    public MethodStep? Above(MethodStep step) => Of(step.Component).LastOrDefault(each => each.Step < step.Step);

    /// <summary>What a step waits for: the one above it, those that it names, components that go into it, and for the putting together all that nobody else fetches.</summary>
    public IReadOnlyList<MethodStep> Before(MethodStep step)
    {
        if (_before.TryGetValue(step, out var known)) return known;
        List<MethodStep> before = [.. step.After.Select(Find).OfType<MethodStep>()];
        if (Above(step) is { } above) before.Add(above);
        if (batch.Find(step.Component) is { } made)
            before.AddRange(made.Lines.Where(line => line.IsComponent && Of(step.Component).First(each => each.Step >= line.Step || each == Last(step.Component)) == step)
                .Where(line => !before.Any(each => Names.Same(each.Component, line.Name))).Select(line => Last(line.Name)).OfType<MethodStep>());
        else if (Above(step) is null)
            before.AddRange(batch.Components.Where(component => !IsFetched(component.Name)).Select(component => Last(component.Name)).OfType<MethodStep>());
        return _before[step] = [.. before.Distinct()];
    }

    /// <summary>All that a step waits for, itself with it; the order must be without a circle.</summary>
    public HashSet<MethodStep> AllBefore(MethodStep step)
    {
        HashSet<MethodStep> all = [];
        Visit(step);
        return all;

        void Visit(MethodStep each)
        {
            if (!all.Add(each)) return;
            foreach (var before in Before(each)) Visit(before);
        }
    }

    private MethodStep? Find(StepName name) => steps.FirstOrDefault(name.IsOf);

    private bool IsFetched(string component) => steps.Any(step => !Names.Same(step.Component, component) && step.After.Any(name => Names.Same(name.Component, component)))
        || batch.Components.Any(each => each.Lines.Any(line => line.IsComponent && Names.Same(line.Name, component)));
}
