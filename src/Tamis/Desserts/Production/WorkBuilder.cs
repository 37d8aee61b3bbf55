using Tamis.Formulas;
using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Makes tasks of the steps of a method: how long, on what, after what, in how many runs.</summary>
internal sealed class WorkBuilder
{
    /// <summary>Within how many minutes a step of hands or an oven is followed by the next of its component; common practice, no source.</summary>
    public const int FollowsWithinMinutes = 15;

    private const int AssumedMinutes = 10;
    private readonly Dessert _dessert;
    private readonly EquipmentList _equipment;
    private readonly DessertAmounts _amounts;
    private readonly Places _places;
    private readonly IReadOnlyDictionary<MethodStep, (int Minutes, string Why)> _physics;
    private readonly DateTime _start;
    private readonly int _grid;
    private readonly List<CellProblem> _problems = [];
    private readonly List<(WorkStep Work, WorkTask Task)> _tasks = [];
    private readonly Dictionary<MethodStep, Sized> _sized = [];
    private readonly Dictionary<string, int> _moulds = new(Names.Comparer);
    private readonly StepOrder _order;
    private IReadOnlyList<MouldRounds> _rounds = [];
    private readonly List<WorkHold> _holds = [];

    public WorkBuilder(Dessert dessert, EquipmentList equipment, DessertAmounts amounts, IReadOnlyDictionary<MethodStep, (int Minutes, string Why)> physics, DateTime start, int gridMinutes, IReadOnlyList<StandIn> standIns)
    {
        (_dessert, _equipment, _amounts, _physics, _start, _grid) = (dessert, equipment, amounts, physics, start, gridMinutes);
        _places = new(dessert, amounts.Trial, amounts.MontageSheet, amounts.Amounts.Pieces);
        var line = dessert.LineOf(amounts.Trial).ToArray();
        Steps = [.. amounts.Amounts.Components.Where(component => component.MadeGrams > 0).Select(component => component.Name).Append(MethodStep.Assembly)
            .SelectMany(component => dessert.Method?.StepsOf(component, line) ?? [])
            .Select(step => standIns.FirstOrDefault(each => each.Written == step)?.Instead ?? step)];
        _order = new(dessert.Trial(amounts.Trial), Steps);
    }

    private sealed record Sized(Equipment? Equipment, EquipmentKind Kind, int Need, int Capacity, int Runs, int ForPlaces);

    public IReadOnlyList<MethodStep> Steps { get; }

    /// <summary>The tasks, and what they hold.</summary>
    /// <exception cref="TableException">A cell must be mended: a circle, an oven that nobody has; all are named.</exception>
    public (WorkProblem Problem, IReadOnlyList<WorkStep> Steps) Build(DateTime? due, int horizonMinutes, PlanAim aim)
    {
        if (Steps.Count == 0) throw new TableException([new("steps.csv", 0, "", "", $"steps of {_amounts.Trial} to plan")]);
        LookForCircle();
        MouldUse[] moulds = [.. MouldRounds.UsesOf(_order, _places, _amounts.Amounts.Components.Select(component => component.Name))];
        foreach (var row in _places.RowsWithoutMoulds) _problems.Add(row.Problem("mould", $"a mould that the kitchen has: moulds.csv counts 0 of {row["mould"]}"));
        foreach (var step in Steps)
            if (Size(step) is { } sized) _sized[step] = sized;
        if (_problems.Count > 0) throw new TableException([.. _problems.Distinct()]);
        _rounds = MouldRounds.Of(_order, moulds, _places, _equipment);
        foreach (var rounds in _rounds)
            foreach (var step in rounds.Steps) _sized[step] = _sized[step] with { Runs = rounds.Rounds };
        foreach (var step in Steps) AddStep(step, _sized[step]);
        foreach (var use in moulds) AddMould(use);
        return (new()
        {
            Tasks = [.. _tasks.Select(each => each.Task)], Resources = [.. Resources(horizonMinutes)], Holds = _holds, HorizonMinutes = horizonMinutes,
            DueMinutes = due is { } time ? (int)Math.Floor((time - _start).TotalMinutes) : null, Aim = due is null ? PlanAim.Shortest : aim, StepMinutes = _grid,
        }, [.. _tasks.Select(each => each.Work)]);
    }

    private static string Key(MethodStep step) => new StepName(step.Component, step.Step).ToString();

    private void LookForCircle()
    {
        if (TaskOrder.CircleIn(Steps.ToDictionary(Key, step => _order.Before(step).Select(Key).ToArray(), Names.Comparer)) is not { } circle) return;
        var named = Steps.First(step => circle.Contains(Key(step), Names.Comparer) && step.After.Any(name => circle.Contains(name.ToString(), Names.Comparer)));
        throw new TableException([named.Problem("after", string.Join("; ", named.After), $"an order without a circle; each of these waits for the next: {string.Join(", ", circle)}")]);
    }

    /// <summary>On what a step is done, how much room it takes there and in how many runs; null, with the cell noted, where nobody has it.</summary>
    private Sized? Size(MethodStep step)
    {
        var equipment = step.Equipment is null ? null : EquipmentOf(step);
        if (equipment is null) return step.Equipment is null ? new(null, EquipmentKind.HandsAlone, 1, 1, 1, 1) : null;
        var kind = EquipmentKind.Of(equipment.Kind);
        var made = _amounts.Amounts.Find(step.Component);
        if (!kind.IsByPlaces) return new(equipment, kind, 1, 1, Names.Same(equipment.Unit, "g") ? made?.Makes ?? 1 : 1, 1);
        var need = _places.Needed(equipment, made?.Name, made?.MadeGrams ?? 0);
        var capacity = (int)Math.Floor(equipment.Capacity ?? need) * (kind.HasOneTemperature ? 1 : equipment.Count);
        if (capacity >= 1) return new(equipment, kind, need, capacity, (need + capacity - 1) / capacity, (need + capacity - 1) / capacity);
        _problems.Add(step.Problem("equipment", equipment.Name, $"something with room for one of its unit: {equipment.Name} holds less than one of {equipment.Unit} by equipment.csv"));
        return null;
    }

    private void AddStep(MethodStep step, Sized sized)
    {
        var (equipment, kind, need, capacity, runs, forPlaces) = sized;
        var made = _amounts.Amounts.Find(step.Component);
        var written = step.Minutes ?? Interval.At(AssumedMinutes);
        var isWaiting = step.HandsMinutes == 0;
        var grows = kind.HandsGrow && !isWaiting ? Grown(step, made) : 1;
        // Hands that grow with the pieces do a round's share in each round, and never less than one formula takes.
        var round = RoundOf(step);
        if (round is not null && grows > 1) grows = Math.Max(1, grows / runs);
        var (minutes, least) = (written.High * grows, written.Low * grows);
        List<string> remarks = [];
        if (step.Minutes is null) remarks.Add(FormattableString.Invariant($"no minutes are written: {AssumedMinutes} assumed"));
        if (Math.Abs(grows - 1) > 0.05) remarks.Add(FormattableString.Invariant($"× {grows:0.#} for {_amounts.Amounts.Pieces} pieces{(round is null ? "" : ", each round")}"));
        if (round is not null) remarks.Add(round.Why);
        else if (runs > 1) remarks.Add(forPlaces > 1 ? FormattableString.Invariant($"{runs} runs: {need} {equipment!.Unit}, the {equipment.Name} holds {capacity}") : FormattableString.Invariant($"{runs} runs, one a make"));
        if (_physics.TryGetValue(step, out var heat) && heat.Minutes > minutes)
        {
            (minutes, least) = (heat.Minutes, Math.Min(least, heat.Minutes));
            remarks.Add(heat.Why);
        }
        var hands = isWaiting ? 0 : step.HandsMinutes is { } some ? Math.Min(some * grows, minutes) : minutes;
        var before = _order.Before(step);
        var remark = string.Join("; ", remarks);
        for (var run = 1; run <= runs; run++)
        {
            List<TaskUse> uses = [];
            if (hands > 0) uses.Add(new(People, 1, Math.Min(OnGrid(hands), OnGrid(minutes))));
            var demand = runs == 1 ? need : Math.Max(1, (need - (run - 1) + runs - 1) / runs);
            if (equipment is not null && kind.IsPlanned)
                uses.Add(kind.HasOneTemperature ? new(UnitsOf(equipment), demand, null, step.TemperatureCelsius) : new([equipment.Name], kind.IsByPlaces ? demand : 1));
            _tasks.Add((new(NameOf(step, run, runs), step, run, runs, written, remark), new()
            {
                Name = NameOf(step, run, runs), Minutes = OnGrid(minutes), LeastMinutes = Math.Min(OnGrid(least), OnGrid(minutes)), Uses = uses,
                StartsAttended = isWaiting && equipment is not null, EndsAttended = kind.IsTakenOut && equipment is not null && kind.IsByPlaces,
                After = [.. before.SelectMany(each => LinksTo(each, step, run, runs)), .. run == 1 ? [] : new[] { new TaskLink(NameOf(step, run - 1, runs)) }],
            }));
        }
    }

    // Runs in equal number of one component go one behind the other; else all of the one come before any of the other.
    private IEnumerable<TaskLink> LinksTo(MethodStep before, MethodStep step, int run, int runs)
    {
        var many = _sized[before].Runs;
        // A round of one mould goes on as that round, also into another component that is filled into it.
        var goesAlong = Names.Same(before.Component, step.Component) || RoundOf(step) is { } round && round.Steps.Contains(before);
        return Enumerable.Range(1, many).Where(each => many != runs || each == run || !goesAlong)
            .Select(each => new TaskLink(NameOf(before, each, many), Names.Same(before.Component, step.Component)
                ? many == runs || run == 1 && each == many ? FollowsMinutes(before) : null
                : KeepsMinutes(before)));
    }

    // What was mixed, melted or baked goes on at once; what rests, sets or is cold can wait, and a finished component as long as it keeps.
    private int? FollowsMinutes(MethodStep before) => MouldRounds.CannotWait(before, _equipment) ? FollowsWithinMinutes : null;

    private MouldRounds? RoundOf(MethodStep step) => _rounds.FirstOrDefault(each => each.Steps.Contains(step));

    private static string NameOf(MethodStep step, int run, int runs) => runs == 1 ? Key(step) : FormattableString.Invariant($"{Key(step)}, {run} of {runs}");

    private int? KeepsMinutes(MethodStep before) =>
        before == _order.Last(before.Component) && _dessert.Components.Of(before.Component, _dessert.LineOf(_amounts.Trial))?.HoldHours is { } hours ? (int)Math.Min(hours * 60, 1e7) : null;

    private double Grown(MethodStep step, ComponentAmount? made) =>
        made?.FactorRatio ?? (_dessert.Facts.Number("pieces", _amounts.Trial) is { } pieces ? _amounts.Amounts.Pieces / pieces : 1);

    private Equipment? EquipmentOf(MethodStep step)
    {
        var name = step.Equipment!;
        if (_equipment.Find(name) is not { Count: > 0 } found)
        {
            var near = Names.Nearest(name, _equipment.Machines);
            _problems.Add(step.Problem("equipment", name, $"something that the kitchen has, by equipment.csv{(near.Count > 0 ? $"; near ones: {string.Join(", ", near)}" : "")}"));
            return null;
        }
        if (step.TemperatureCelsius is not { } celsius || !EquipmentKind.Of(found.Kind).IsByPlaces || found.Reaches(celsius)) return found;
        _problems.Add(step.Problem("temperature_c", NumberText.Write(celsius, '.'), FormattableString.Invariant($"a temperature that the {found.Name} reaches: {found.Celsius.Low:0.#} to {found.Celsius.High:0.#} °C")));
        return null;
    }

    private IReadOnlyList<string> People => _equipment.People.Count > 0 ? _equipment.People : ["a pair of hands"];

    private static IReadOnlyList<string> UnitsOf(Equipment equipment) =>
        equipment.Count == 1 ? [equipment.Name] : [.. Enumerable.Range(1, equipment.Count).Select(i => FormattableString.Invariant($"{equipment.Name} {i}"))];

    private void AddMould(MouldUse use)
    {
        _moulds[use.Mould] = use.Owned;
        var (runs, last) = (_sized[use.Filled].Runs, _sized[use.Freed].Runs);
        // In rounds each takes its share and gives it back; else all are taken by the first part and free with the last.
        if (use.Rounds == 1) _holds.Add(new(use.Mould, use.Needed, NameOf(use.Filled, 1, runs), NameOf(use.Freed, last, last)));
        else
            for (var run = 1; run <= runs; run++)
                _holds.Add(new(use.Mould, Math.Max(1, (use.Needed - (run - 1) + runs - 1) / runs), NameOf(use.Filled, run, runs), NameOf(RoundOf(use.Filled)!.Steps.Contains(use.Freed) ? use.Freed : _order.Last(use.Component)!, run, runs)));
    }

    private IEnumerable<WorkResource> Resources(int horizon)
    {
        foreach (var person in People)
            yield return new(person) { IsPerson = true, Away = _equipment.People.Count == 0 ? [] : Outside(_equipment.ShiftsOf(person), horizon) };
        var used = _tasks.SelectMany(each => each.Task.Uses).SelectMany(use => use.AnyOf).ToHashSet(Names.Comparer);
        foreach (var name in _equipment.Machines)
        {
            var thing = _equipment.Find(name)!;
            var kind = EquipmentKind.Of(thing.Kind);
            foreach (var unit in (kind.HasOneTemperature ? UnitsOf(thing) : [name]).Where(used.Contains))
                yield return new(unit, kind.IsByPlaces ? (int)Math.Floor(thing.Capacity ?? 1e6) * (kind.HasOneTemperature ? 1 : thing.Count) : thing.Count)
                    { Away = [.. _equipment.AwayOf(name).Select(away => (At(away.From, horizon), At(away.To, horizon)))] };
        }
        foreach (var (mould, owned) in _moulds) yield return new(mould, owned);
    }

    private List<(int From, int To)> Outside(IReadOnlyList<(DateTime From, DateTime To)> shifts, int horizon)
    {
        List<(int, int)> away = [];
        var at = 0;
        foreach (var (from, to) in shifts)
        {
            if (At(from, horizon) > at) away.Add((at, At(from, horizon)));
            at = Math.Max(at, At(to, horizon));
        }
        if (at < horizon) away.Add((at, horizon));
        return away;
    }

    private int At(DateTime time, int horizon) => Math.Clamp((int)(time - _start).TotalMinutes, 0, horizon);

    private int OnGrid(double minutes) => (int)Math.Ceiling(minutes / _grid - 1e-9) * _grid;
}
