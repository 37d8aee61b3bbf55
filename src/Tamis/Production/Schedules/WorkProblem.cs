namespace Tamis.Production;

/// <summary>What a task holds while it runs: one of several things, from its start.</summary>
/// <param name="AnyOf">The names of the resources of which one is taken.</param>
/// <param name="Demand">How much of it: trays, places, hands.</param>
/// <param name="Minutes">For how long from the start; null for as long as the task takes.</param>
/// <param name="Celsius">The temperature that it must have; null where that does not matter.</param>
public sealed record TaskUse(IReadOnlyList<string> AnyOf, int Demand = 1, int? Minutes = null, double? Celsius = null);

/// <summary>A task that must be done before another begins.</summary>
/// <param name="Task">The name of the one before.</param>
/// <param name="MostMinutes">How long at most from its end to the start of the other; null for any time.</param>
public sealed record TaskLink(string Task, int? MostMinutes = null);

/// <summary>Something to do.</summary>
public sealed record WorkTask
{
    /// <summary>Its name; no two tasks share one.</summary>
    public required string Name { get; init; }

    /// <summary>How long it takes, in minutes, 0 or more.</summary>
    public required int Minutes { get; init; }

    /// <summary>How long it takes when it goes fast; <see cref="Minutes"/> where null.</summary>
    public int? LeastMinutes { get; init; }

    /// <summary>What it holds.</summary>
    public IReadOnlyList<TaskUse> Uses { get; init; } = [];

    /// <summary>What must be done before.</summary>
    public IReadOnlyList<TaskLink> After { get; init; } = [];

    /// <summary>Whether somebody must be in the kitchen when it starts, though no hands are held: something is put into the oven.</summary>
    public bool StartsAttended { get; init; }

    /// <summary>Whether somebody must be in the kitchen when it ends: something is taken out.</summary>
    public bool EndsAttended { get; init; }
}

/// <summary>Something that tasks hold.</summary>
/// <param name="Name">Its name; no two resources share one.</param>
/// <param name="Capacity">How much can be held at once.</param>
public sealed record WorkResource(string Name, int Capacity = 1)
{
    /// <summary>Whether it is a person: their times are when the kitchen is attended.</summary>
    public bool IsPerson { get; init; }

    /// <summary>When it is not to be had, minutes from the start of the plan, in order and apart.</summary>
    public IReadOnlyList<(int From, int To)> Away { get; init; } = [];
}

/// <summary>Something that is held from the start of one task to the end of another: a mould.</summary>
/// <param name="Resource">What is held.</param>
/// <param name="Demand">How much of it.</param>
/// <param name="From">The task that takes it.</param>
/// <param name="To">The task at whose end it is free again.</param>
public sealed record WorkHold(string Resource, int Demand, string From, string To);

/// <summary>What a plan is to be good at.</summary>
public enum PlanAim
{
    /// <summary>Done as early as can be.</summary>
    Shortest,
    /// <summary>Begun as late as can be and done when it is due.</summary>
    LatestStart,
}

/// <summary>Everything that a plan of work has to meet. Times are whole minutes from the start of the plan.</summary>
public sealed record WorkProblem
{
    /// <summary>The tasks.</summary>
    public required IReadOnlyList<WorkTask> Tasks { get; init; }

    /// <summary>What they hold.</summary>
    public required IReadOnlyList<WorkResource> Resources { get; init; }

    /// <summary>What is held over several tasks.</summary>
    public IReadOnlyList<WorkHold> Holds { get; init; } = [];

    /// <summary>The end of all time that is planned.</summary>
    public required int HorizonMinutes { get; init; }

    /// <summary>When all must be done; null for whenever.</summary>
    public int? DueMinutes { get; init; }

    /// <summary>What the plan is to be good at.</summary>
    public PlanAim Aim { get; init; }

    /// <summary>Tasks start on multiples of this many minutes.</summary>
    public int StepMinutes { get; init; } = 1;

    /// <summary>Times at which somebody is in the kitchen; the whole time where no person has times.</summary>
    public IReadOnlyList<(int From, int To)> Attended
    {
        get
        {
            WorkResource[] people = [.. Resources.Where(resource => resource.IsPerson)];
            return people.Length == 0 ? [(0, HorizonMinutes)] : Merged(people.SelectMany(person => Present(person.Away, HorizonMinutes)));
        }
    }

    /// <summary>A resource by its name.</summary>
    public WorkResource Resource(string name) => Resources.First(resource => Names.Same(resource.Name, name));

    /// <summary>Names a task as something unknown, a name that stands twice, a demand that nothing can meet, or a circle; none where all is well.</summary>
    public IEnumerable<string> Faults()
    {
        var names = Tasks.Select(task => task.Name).ToHashSet(Names.Comparer);
        foreach (var twice in Tasks.GroupBy(task => task.Name, Names.Comparer).Where(group => group.Count() > 1)) yield return $"two tasks are called {twice.Key}";
        foreach (var task in Tasks)
        {
            if (task.Minutes < 0 || task.LeastMinutes > task.Minutes || task.LeastMinutes < 0) yield return $"{task.Name} takes {task.LeastMinutes ?? task.Minutes} to {task.Minutes} minutes";
            foreach (var link in task.After.Where(link => !names.Contains(link.Task))) yield return $"{task.Name} comes after {link.Task}, which is no task";
            foreach (var use in task.Uses)
            {
                foreach (var unknown in use.AnyOf.Where(name => !Resources.Any(resource => Names.Same(resource.Name, name)))) yield return $"{task.Name} needs {unknown}, which nobody has";
                if (!use.AnyOf.Any(name => Resources.Any(resource => Names.Same(resource.Name, name) && resource.Capacity >= use.Demand))) yield return $"{task.Name} needs {use.Demand} of {string.Join(" or ", use.AnyOf)}, more than there is";
            }
        }
        if (TaskOrder.CircleIn(Tasks.ToDictionary(task => task.Name, task => task.After.Select(link => link.Task).ToArray(), Names.Comparer)) is { } circle)
            yield return $"each waits for the next in a circle: {string.Join(", ", circle)}";
    }

    internal static IReadOnlyList<(int From, int To)> Present(IEnumerable<(int From, int To)> away, int horizon)
    {
        List<(int, int)> present = [];
        var at = 0;
        foreach (var (from, to) in away.OrderBy(each => each.From))
        {
            if (from > at) present.Add((at, from));
            at = Math.Max(at, to);
        }
        if (at < horizon) present.Add((at, horizon));
        return present;
    }

    private static List<(int From, int To)> Merged(IEnumerable<(int From, int To)> times)
    {
        List<(int From, int To)> merged = [];
        foreach (var (from, to) in times.OrderBy(time => time.From))
            if (merged.Count > 0 && from <= merged[^1].To) merged[^1] = (merged[^1].From, Math.Max(merged[^1].To, to));
            else merged.Add((from, to));
        return merged;
    }
}

/// <summary>Looks for circles in what waits for what.</summary>
public static class TaskOrder
{
    /// <summary>Names that wait for each other in a circle, the first once more at the end; null where there is none.</summary>
    /// <param name="before">What each name waits for; names that are not there themselves are passed over.</param>
    public static IReadOnlyList<string>? CircleIn(IReadOnlyDictionary<string, string[]> before)
    {
        HashSet<string> done = new(Names.Comparer);
        List<string> way = [];
        return before.Keys.Select(Visit).FirstOrDefault(circle => circle is not null);

        IReadOnlyList<string>? Visit(string name)
        {
            if (done.Contains(name) || !before.TryGetValue(name, out var waitsFor)) return null;
            if (way.FindIndex(each => Names.Same(each, name)) is var at and >= 0) return [.. way[at..], name];
            way.Add(name);
            var circle = waitsFor.Select(Visit).FirstOrDefault(found => found is not null);
            way.RemoveAt(way.Count - 1);
            done.Add(name);
            return circle;
        }
    }
}
