namespace Tamis.Production;

/// <summary>A task with its time.</summary>
/// <param name="Task">The task.</param>
/// <param name="StartMinutes">When it starts, minutes from the start of the plan.</param>
/// <param name="EndMinutes">When it ends.</param>
/// <param name="On">What it holds, in the order of its uses.</param>
/// <param name="SlackMinutes">How much later it could start with all that comes after still in time, hands and order kept.</param>
public sealed record PlacedTask(WorkTask Task, int StartMinutes, int EndMinutes, IReadOnlyList<string> On, int SlackMinutes = 0)
{
    /// <summary>Whether everything is late when it is late.</summary>
    public bool IsCritical => SlackMinutes == 0;
}

/// <summary>A plan of work.</summary>
/// <param name="Problem">What it meets.</param>
/// <param name="Tasks">The tasks in the order of their starts.</param>
/// <param name="ObjectiveMinutes">What it was to be good at: the end of the last task, or the start of the first.</param>
/// <param name="BoundMinutes">No plan can be better than this.</param>
public sealed record WorkSchedule(WorkProblem Problem, IReadOnlyList<PlacedTask> Tasks, int ObjectiveMinutes, int BoundMinutes)
{
    /// <summary>Whether no plan is better.</summary>
    public bool IsProven => GapMinutes == 0;

    /// <summary>By how much a plan could be better at most.</summary>
    public int GapMinutes => Math.Abs(ObjectiveMinutes - BoundMinutes);

    /// <summary>When the first task starts.</summary>
    public int StartMinutes => Tasks.Count == 0 ? 0 : Tasks.Min(task => task.StartMinutes);

    /// <summary>When the last task ends.</summary>
    public int EndMinutes => Tasks.Count == 0 ? 0 : Tasks.Max(task => task.EndMinutes);

    /// <summary>A task by its name.</summary>
    public PlacedTask this[string name] => Tasks.First(task => Names.Same(task.Task.Name, name));

    /// <summary>What the plan breaks of what it has to meet, in sentences; none for a plan of <see cref="Scheduler"/>.</summary>
    public IEnumerable<string> Breaches()
    {
        foreach (var placed in Tasks)
        {
            var task = placed.Task;
            if (placed.EndMinutes - placed.StartMinutes != task.Minutes) yield return $"{task.Name} takes another time";
            if (placed.EndMinutes > (Problem.DueMinutes ?? Problem.HorizonMinutes)) yield return $"{task.Name} is late";
            foreach (var link in task.After)
                if (this[link.Task] is var before && (before.EndMinutes > placed.StartMinutes || placed.StartMinutes - before.EndMinutes > link.MostMinutes)) yield return $"{task.Name} does not keep to {link.Task}";
            if (task.StartsAttended && !IsAttended(placed.StartMinutes)) yield return $"nobody is there when {task.Name} starts";
            if (task.EndsAttended && !IsAttended(placed.EndMinutes)) yield return $"nobody is there when {task.Name} ends";
        }
        foreach (var resource in Problem.Resources)
        {
            var uses = UsesOf(resource.Name).ToArray();
            foreach (var at in uses.Select(use => use.From))
            {
                var there = uses.Where(use => use.From <= at && use.To > at).ToArray();
                if (there.Sum(use => use.Demand) > resource.Capacity) yield return $"{resource.Name} holds too much at {at}";
                if (there.Select(use => use.Celsius).OfType<double>().Distinct().Count() > 1) yield return $"{resource.Name} has two temperatures at {at}";
            }
            if (uses.Any(use => use.To > use.From && resource.Away.Any(away => use.From < away.To && use.To > away.From))) yield return $"{resource.Name} is used while it is away";
        }
    }

    /// <summary>Who or what is held when: tasks and what is held over several of them.</summary>
    public IEnumerable<(PlacedTask Task, int From, int To, int Demand, double? Celsius)> UsesOf(string resource)
    {
        foreach (var placed in Tasks)
            for (var i = 0; i < placed.Task.Uses.Count; i++)
                if (Names.Same(placed.On[i], resource))
                    yield return (placed, placed.StartMinutes, placed.StartMinutes + (placed.Task.Uses[i].Minutes ?? placed.Task.Minutes), placed.Task.Uses[i].Demand, placed.Task.Uses[i].Celsius);
        foreach (var hold in Problem.Holds.Where(hold => Names.Same(hold.Resource, resource)))
            yield return (this[hold.From], this[hold.From].StartMinutes, this[hold.To].EndMinutes, hold.Demand, null);
    }

    private bool IsAttended(int minutes) => Problem.Attended.Any(time => minutes >= time.From && minutes <= time.To);
}
