using Tamis.Formulas;
using Tamis.Montage;
using Tamis.Production;

namespace Tamis.Desserts;

/// <summary>A mould that is taken while something stands in it, and given back for the next round where there are too few.</summary>
/// <param name="Mould">Its name.</param>
/// <param name="Component">What stands in it.</param>
/// <param name="Needed">How many places all pieces take.</param>
/// <param name="Owned">How many the kitchen has, above 0.</param>
/// <param name="Filled">The step that takes it.</param>
/// <param name="Freed">The step at whose end it is free again.</param>
internal sealed record MouldUse(string Mould, string Component, int Needed, int Owned, MethodStep Filled, MethodStep Freed)
{
    /// <summary>How often it is filled, 1 or more.</summary>
    public int Rounds => (Needed + Owned - 1) / Owned;

    /// <summary>Why there are several rounds.</summary>
    public string Why => FormattableString.Invariant($"{Rounds} rounds: {Needed} places of {Mould}, the kitchen has {Owned}");
}

/// <summary>Steps that are done once a round because a mould in them has fewer places than there are pieces.</summary>
/// <param name="Steps">The steps, from the first that cannot wait until the mould is free to the one that frees it.</param>
/// <param name="Rounds">How many rounds, 2 or more.</param>
/// <param name="Why">Why, in words.</param>
internal sealed record MouldRounds(IReadOnlySet<MethodStep> Steps, int Rounds, string Why)
{
    /// <summary>What moulds of a trial are taken when.</summary>
    /// <remarks>A mould is taken when it is filled, by the last work of hands before what follows is waiting alone, and free when that is over; a lining's when its first fill is done.</remarks>
    public static IEnumerable<MouldUse> UsesOf(StepOrder order, Places places, IEnumerable<string> components)
    {
        foreach (var component in components)
            foreach (var (mould, needed, owned, placing) in places.MouldsOf(component))
            {
                MethodStep[] own = [.. order.Of(component)];
                if (own.Length == 0) continue;
                var filled = own.LastOrDefault(step => step.HandsMinutes != 0) ?? own[^1];
                yield return new(mould, component, needed, owned, filled, placing == Placing.Lining && places.FillsOf(component).FirstOrDefault() is { } fill && order.Last(fill) is { } done ? done : own[^1]);
            }
    }

    /// <summary>The steps that are done in rounds; those of moulds that share a step go in the same rounds, and an oven or a chiller that holds fewer makes more of them.</summary>
    public static IReadOnlyList<MouldRounds> Of(StepOrder order, IEnumerable<MouldUse> uses, Places places, EquipmentList equipment)
    {
        List<MouldRounds> all = [];
        foreach (var use in uses.Where(use => use.Rounds > 1))
        {
            var (steps, rounds, why) = (StepsOf(order, use, equipment), use.Rounds, use.Why);
            foreach (var other in all.Where(other => other.Steps.Overlaps(steps)).ToArray())
            {
                steps.UnionWith(other.Steps);
                (rounds, why) = other.Rounds > rounds ? (other.Rounds, other.Why) : (rounds, why);
                all.Remove(other);
            }
            all.Add(new(steps, rounds, why));
        }
        return [.. all.Select(each => each.Steps.Select(step => ByPlaces(step, places, equipment)).Prepend((each.Rounds, each.Why)).MaxBy(way => way.Item1) is var (most, why) ? each with { Rounds = most, Why = why } : each)];
    }

    /// <summary>How many makes of a component its moulds ask for: one a round where what goes into the mould is mixed for it and cannot wait.</summary>
    public int MakesOf(Losses.ComponentBatch component) => Steps.Any(step => Names.Same(step.Component, component.Name) && component.Lines.Any(line => line.Step >= step.Step)) ? Rounds : 1;

    private static (int Rounds, string Why) ByPlaces(MethodStep step, Places places, EquipmentList equipment)
    {
        if (step.Equipment is null || equipment.Find(step.Equipment) is not { Count: > 0 } thing || EquipmentKind.Of(thing.Kind) is not { IsByPlaces: true } kind) return (1, "");
        var need = places.Needed(thing, Names.Same(step.Component, MethodStep.Assembly) ? null : step.Component, 0);
        var capacity = Math.Max(1, (int)Math.Floor(thing.Capacity ?? need) * (kind.HasOneTemperature ? 1 : thing.Count));
        var rounds = (need + capacity - 1) / capacity;
        return (rounds, FormattableString.Invariant($"{rounds} rounds: {need} {thing.Unit}, the {thing.Name} holds {capacity}"));
    }

    private static HashSet<MethodStep> StepsOf(StepOrder order, MouldUse use, EquipmentList equipment)
    {
        var until = order.AllBefore(use.Freed);
        HashSet<MethodStep> steps = until.Contains(use.Filled) ? [.. until.Where(step => order.AllBefore(step).Contains(use.Filled))] : [.. order.Of(use.Component).Where(step => step.Step >= use.Filled.Step)];
        // What was mixed for it cannot wait for the next round, so it is mixed anew.
        foreach (var first in steps.ToArray())
            for (var above = order.Above(first); above is not null && CannotWait(above, equipment); above = order.Above(above)) steps.Add(above);
        return steps;
    }

    /// <summary>Whether what comes out of a step goes on at once: it was mixed, melted or baked, and does not rest, set or stand cold.</summary>
    public static bool CannotWait(MethodStep step, EquipmentList equipment) => step.HandsMinutes != 0
        || step.Equipment is { } name && equipment.Find(name) is { } thing && EquipmentKind.Of(thing.Kind).IsTakenOut;
}
