using Google.OrTools.Sat;

namespace Tamis.Production;

/// <summary>What may give way when a plan cannot be met.</summary>
internal enum GivesWay { Nothing, Due, Shifts, Times, Keeping }

/// <summary>A plan of work as constraints on whole minutes: starts, intervals, who does what.</summary>
internal sealed class ScheduleModel
{
    private const int MostOvertime = 240;
    private readonly WorkProblem _problem;
    private readonly GivesWay _gives;
    private readonly Dictionary<string, List<(IntervalVar Interval, int Demand, double? Celsius)>> _on = new(Names.Comparer);
    private readonly List<(IReadOnlyList<string> AnyOf, IntervalVar Interval, int Demand)> _taken = [];
    private readonly Dictionary<string, (IntVar Start, LinearExpr End)> _times = new(Names.Comparer);
    private readonly Dictionary<string, LinearExpr> _minutes = new(Names.Comparer);
    private readonly List<(WorkTask Task, TaskUse Use, IReadOnlyList<BoolVar> Chosen)> _chosen = [];
    private readonly List<(string Person, int From, int To, IntVar Before, IntVar After)> _shifts = [];
    private readonly List<(string Before, string After, IntVar Beyond)> _beyond = [];
    private readonly IntVar _end;
    private readonly int _last;

    public ScheduleModel(WorkProblem problem, GivesWay gives = GivesWay.Nothing)
    {
        (_problem, _gives) = (problem, gives);
        _last = gives == GivesWay.Due ? problem.HorizonMinutes : problem.DueMinutes ?? problem.HorizonMinutes;
        foreach (var resource in problem.Resources) _on[resource.Name] = [];
        if (gives == GivesWay.Shifts) AddShifts();
        foreach (var task in problem.Tasks) AddTask(task);
        foreach (var task in problem.Tasks) AddLinks(task);
        foreach (var hold in problem.Holds) AddHold(hold);
        foreach (var resource in problem.Resources) AddCapacity(resource);
        AddCapacityTogether();
        _end = Model.NewIntVar(0, _last, "end");
        foreach (var (_, end) in _times.Values) Model.Add(end <= _end);
        Objective = gives switch
        {
            GivesWay.Shifts => LinearExpr.Sum(_shifts.SelectMany(shift => new[] { shift.Before, shift.After })),
            GivesWay.Times => LinearExpr.Constant(problem.Tasks.Sum(task => task.Minutes)) - LinearExpr.Sum(_minutes.Values),
            GivesWay.Keeping => LinearExpr.Sum(_beyond.Select(each => each.Beyond)),
            GivesWay.Nothing when problem.Aim == PlanAim.LatestStart => -First(),
            _ => _end,
        };
        Model.Minimize(Objective);
    }

    public CpModel Model { get; } = new();

    public LinearExpr Objective { get; }

    public IReadOnlyDictionary<string, (IntVar Start, LinearExpr End)> Times => _times;

    /// <summary>The plan as solved.</summary>
    public IReadOnlyList<PlacedTask> Read(CpSolver solver)
    {
        return [.. _problem.Tasks.Select(task => new PlacedTask(task, (int)solver.Value(_times[task.Name].Start), (int)solver.Value(_times[task.Name].End), [.. OnOf(task)]))
            .OrderBy(task => task.StartMinutes).ThenBy(task => task.EndMinutes)];

        IEnumerable<string> OnOf(WorkTask task) => _chosen.Where(each => each.Task == task)
            .Select(each => each.Chosen.Count == 0 ? each.Use.AnyOf[0] : each.Use.AnyOf[each.Chosen.ToList().FindIndex(chosen => solver.BooleanValue(chosen))]);
    }

    /// <summary>What gave way, in minutes: by the name of a task, or of a person with the shift.</summary>
    public IReadOnlyList<Relaxation> Gave(CpSolver solver) => _gives switch
    {
        GivesWay.Due => [new DoneLater((int)solver.Value(_end) - _problem.DueMinutes!.Value, (int)solver.Value(_end))],
        GivesWay.Shifts => [.. _shifts.SelectMany(shift => new Relaxation[]
            { new ComeEarlier(shift.Person, (int)solver.Value(shift.Before), shift.From), new StayLonger(shift.Person, (int)solver.Value(shift.After), shift.To) }).Where(each => each.Minutes > 0)],
        GivesWay.Times => [.. _problem.Tasks.Select(task => new Faster(task.Name, task.Minutes - (int)solver.Value(_minutes[task.Name]), task.Minutes)).Where(each => each.Minutes > 0)],
        GivesWay.Keeping => [.. _beyond.Select(each => new KeptLonger(each.Before, each.After, (int)solver.Value(each.Beyond))).Where(each => each.Minutes > 0)],
        _ => [],
    };

    private IntVar First()
    {
        var first = Model.NewIntVar(0, _last, "first");
        foreach (var (start, _) in _times.Values) Model.Add(first <= start);
        return first;
    }

    private void AddTask(WorkTask task)
    {
        var steps = Model.NewIntVar(0, _last / _problem.StepMinutes, task.Name);
        var start = Model.NewIntVar(0, _last, task.Name + " start");
        Model.Add(start == steps * _problem.StepMinutes);
        var least = _gives == GivesWay.Times ? task.LeastMinutes ?? task.Minutes : task.Minutes;
        LinearExpr minutes = LinearExpr.Constant(task.Minutes), end = start + task.Minutes;
        if (least < task.Minutes)
        {
            // An interval's end is one variable where its length is another.
            var (length, last) = (Model.NewIntVar(least, task.Minutes, task.Name + " minutes"), Model.NewIntVar(0, _last, task.Name + " end"));
            Model.Add(start + length == last);
            (minutes, end) = (length, last);
        }
        _minutes[task.Name] = minutes;
        Model.Add(end <= _last);
        _times[task.Name] = (start, end);
        if (task.StartsAttended) Attend(start);
        if (task.EndsAttended) Attend(end);
        foreach (var use in task.Uses)
        {
            // Hands that are held for part of a task take no longer than it does.
            var part = use.Minutes < task.Minutes ? Math.Min(use.Minutes.Value, least) : (int?)null;
            var (held, until) = part is { } fewer ? (LinearExpr.Constant(fewer), start + fewer) : (minutes, end);
            var taken = Model.NewIntervalVar(start, held, until, $"{task.Name} on {string.Join(" or ", use.AnyOf)}");
            _taken.Add((use.AnyOf, taken, use.Demand));
            if (use.AnyOf.Count == 1)
            {
                _on[use.AnyOf[0]].Add((taken, use.Demand, use.Celsius));
                _chosen.Add((task, use, []));
                continue;
            }
            BoolVar[] chosen = [.. use.AnyOf.Select(name => Model.NewBoolVar($"{task.Name} on {name}"))];
            Model.AddExactlyOne(chosen);
            for (var i = 0; i < chosen.Length; i++)
                _on[use.AnyOf[i]].Add((Model.NewOptionalIntervalVar(start, held, until, chosen[i], $"{task.Name} on {use.AnyOf[i]}"), use.Demand, use.Celsius));
            _chosen.Add((task, use, chosen));
        }
    }

    private void Attend(LinearExpr time)
    {
        var attended = _problem.Attended;
        if (_gives != GivesWay.Shifts)
        {
            Model.AddLinearExpressionInDomain(time, Google.OrTools.Util.Domain.FromIntervals([.. attended.Select(each => new long[] { each.From, each.To })]));
            return;
        }
        List<ILiteral> there = [];
        foreach (var shift in _shifts)
        {
            var isThere = Model.NewBoolVar("there");
            Model.Add(time >= shift.From - shift.Before).OnlyEnforceIf(isThere);
            Model.Add(time <= shift.To + shift.After).OnlyEnforceIf(isThere);
            there.Add(isThere);
        }
        if (there.Count > 0) Model.AddBoolOr(there);
    }

    private void AddLinks(WorkTask task)
    {
        foreach (var link in task.After)
        {
            Model.Add(_times[task.Name].Start >= _times[link.Task].End);
            if (link.MostMinutes is not { } most) continue;
            if (_gives == GivesWay.Keeping)
            {
                var beyond = Model.NewIntVar(0, _problem.HorizonMinutes, "beyond");
                _beyond.Add((link.Task, task.Name, beyond));
                Model.Add(_times[task.Name].Start <= _times[link.Task].End + most + beyond);
            }
            else Model.Add(_times[task.Name].Start <= _times[link.Task].End + most);
        }
    }

    private void AddHold(WorkHold hold)
    {
        var size = Model.NewIntVar(0, _last, "held");
        _on[hold.Resource].Add((Model.NewIntervalVar(_times[hold.From].Start, size, _times[hold.To].End, $"{hold.From} in {hold.Resource}"), hold.Demand, null));
    }

    private void AddShifts()
    {
        foreach (var person in _problem.Resources.Where(resource => resource.IsPerson))
        {
            var present = WorkProblem.Present(person.Away, _problem.HorizonMinutes);
            IntVar[] before = [.. present.Select((shift, i) => Model.NewIntVar(0, i == 0 ? Math.Min(MostOvertime, shift.From) : Math.Min(MostOvertime, (shift.From - present[i - 1].To) / 2), "before"))];
            IntVar[] after = [.. present.Select((shift, i) => Model.NewIntVar(0, i == present.Count - 1 ? Math.Min(MostOvertime, _problem.HorizonMinutes - shift.To) : Math.Min(MostOvertime, (present[i + 1].From - shift.To) / 2), "after"))];
            for (var i = 0; i < present.Count; i++) _shifts.Add((person.Name, present[i].From, present[i].To, before[i], after[i]));
            for (var i = 0; i <= present.Count; i++)
            {
                LinearExpr from = i == 0 ? LinearExpr.Constant(0) : after[i - 1] + present[i - 1].To;
                LinearExpr to = i == present.Count ? LinearExpr.Constant(_problem.HorizonMinutes) : present[i].From - before[i];
                var size = Model.NewIntVar(0, _problem.HorizonMinutes, "away");
                _on[person.Name].Add((Model.NewIntervalVar(from, size, to, "away"), person.Capacity, null));
            }
        }
    }

    /// <summary>Of things of which a task takes any, all together hold no more than their sum: that follows from each alone, but the search sees it before it chooses.</summary>
    private void AddCapacityTogether()
    {
        foreach (var group in _taken.Select(each => each.AnyOf).Where(names => names.Count > 1).DistinctBy(names => string.Join('\n', names)).ToArray())
        {
            var resources = group.Select(_problem.Resource).ToArray();
            var room = Model.AddCumulative(resources.Sum(resource => resource.Capacity));
            foreach (var (anyOf, interval, demand) in _taken)
                if (anyOf.All(name => group.Contains(name, Names.Comparer))) room.AddDemand(interval, demand);
            // Where shifts give way, the times away are not known beforehand.
            foreach (var resource in resources.Where(resource => _gives != GivesWay.Shifts || !resource.IsPerson))
                foreach (var (from, to) in resource.Away.Where(away => away.To > away.From))
                    room.AddDemand(Model.NewFixedSizeIntervalVar(from, to - from, "away"), resource.Capacity);
        }
    }

    private void AddCapacity(WorkResource resource)
    {
        var uses = _on[resource.Name];
        if (_gives != GivesWay.Shifts || !resource.IsPerson)
            foreach (var (from, to) in resource.Away.Where(away => away.To > away.From))
                uses.Add((Model.NewFixedSizeIntervalVar(from, to - from, "away"), resource.Capacity, null));
        if (uses.Count == 0) return;
        if (uses.All(use => 2 * use.Demand > resource.Capacity)) Model.AddNoOverlap(uses.Select(use => use.Interval));
        else
        {
            var room = Model.AddCumulative(resource.Capacity);
            foreach (var (interval, demand, _) in uses) room.AddDemand(interval, demand);
            // One temperature at a time: what wants another waits until it is out.
            for (var i = 0; i < uses.Count; i++)
                for (var j = i + 1; j < uses.Count; j++)
                    if (uses[i].Celsius is { } one && uses[j].Celsius is { } other && one != other) Model.AddNoOverlap([uses[i].Interval, uses[j].Interval]);
        }
    }
}
