namespace Tamis.Production;

/// <summary>How much later each task of a plan could start with all that comes after still in time; hands, places and order are kept.</summary>
internal static class ScheduleSlack
{
    public static WorkSchedule With(WorkSchedule schedule)
    {
        // What must be followed soon slides along with what follows it, as far as it can slide itself.
        var alone = Latest(schedule, task => schedule.Problem.HorizonMinutes);
        var latest = Latest(schedule, name => alone[name] + schedule[name].Task.Minutes);
        return schedule with { Tasks = [.. schedule.Tasks.Select(task => task with { SlackMinutes = latest[task.Task.Name] - task.StartMinutes })] };
    }

    private static Dictionary<string, int> Latest(WorkSchedule schedule, Func<string, int> latestEndOf)
    {
        var problem = schedule.Problem;
        var due = problem.DueMinutes ?? schedule.EndMinutes;
        Dictionary<string, int> latest = new(Names.Comparer);
        // From the last start back: what comes after a task has its latest start by then.
        foreach (var task in schedule.Tasks.OrderByDescending(task => task.StartMinutes).ThenByDescending(task => task.EndMinutes))
        {
            var bound = due - task.Task.Minutes;
            foreach (var next in schedule.Tasks.Where(next => next.Task.After.Any(link => Names.Same(link.Task, task.Task.Name))))
                bound = Math.Min(bound, latest.GetValueOrDefault(next.Task.Name, next.StartMinutes) - task.Task.Minutes);
            foreach (var link in task.Task.After)
                if (link.MostMinutes is { } most) bound = Math.Min(bound, latestEndOf(link.Task) + most);
            foreach (var resource in problem.Resources) bound = Math.Min(bound, BoundOn(schedule, resource, task, latest));
            while (bound > task.StartMinutes && !IsPossible(problem, task, bound)) bound--;
            latest[task.Task.Name] = Math.Max(task.StartMinutes, bound);
        }
        return latest;
    }

    // Something that starts later on the same thing, and for which there would be no room beside this.
    private static int BoundOn(WorkSchedule schedule, WorkResource resource, PlacedTask task, IReadOnlyDictionary<string, int> latest)
    {
        var uses = schedule.UsesOf(resource.Name).ToArray();
        var bound = int.MaxValue;
        foreach (var own in uses.Where(use => use.Task == task))
            foreach (var next in uses.Where(next => next.Task != task && next.From >= own.To && next.To > next.From))
            {
                var there = uses.Where(use => use.From <= next.From && use.To > next.From).Sum(use => use.Demand);
                if (there + own.Demand > resource.Capacity || own.Celsius is not null && next.Celsius is not null && own.Celsius != next.Celsius)
                    bound = Math.Min(bound, latest.GetValueOrDefault(next.Task.Task.Name, next.From) - (own.To - own.From));
            }
        return bound;
    }

    private static bool IsPossible(WorkProblem problem, PlacedTask task, int start)
    {
        if (start % problem.StepMinutes != 0) return false;
        if (task.Task.StartsAttended && !Attended(start) || task.Task.EndsAttended && !Attended(start + task.Task.Minutes)) return false;
        for (var i = 0; i < task.On.Count; i++)
        {
            var end = start + (task.Task.Uses[i].Minutes ?? task.Task.Minutes);
            if (end > start && problem.Resource(task.On[i]).Away.Any(away => start < away.To && end > away.From)) return false;
        }
        return true;

        bool Attended(int minutes) => problem.Attended.Any(time => minutes >= time.From && minutes <= time.To);
    }
}
