using Tamis.Formulas;
using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The plan of work for a number of pieces of a trial: who does what, when, on what.</summary>
public sealed record PlanOfWork
{
    private const int GridMinutes = 5, DaysWithoutPeople = 7, MinutesPerDay = 1440;

    private PlanOfWork(Dessert dessert, string trial) => (Dessert, Trial) = (dessert, trial);

    /// <summary>The dessert.</summary>
    public Dessert Dessert { get; }

    /// <summary>The trial.</summary>
    public string Trial { get; }

    /// <summary>What is made.</summary>
    public required DessertAmounts Amounts { get; init; }

    /// <summary>The day and hour from which the plan counts its minutes.</summary>
    public required DateTime Start { get; init; }

    /// <summary>When all must be done; null where nobody said.</summary>
    public required DateTime? Due { get; init; }

    /// <summary>What the plan has to meet.</summary>
    public required WorkProblem Problem { get; init; }

    /// <summary>The steps behind the tasks, in the order of the method.</summary>
    public required IReadOnlyList<WorkStep> Steps { get; init; }

    /// <summary>The plan, or why there is none.</summary>
    public required ScheduleAnswer Answer { get; init; }

    /// <summary>What was taken for granted.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>Whether freezing and thawing take as long as physics says where that is longer.</summary>
    public required bool UsesPhysics { get; init; }

    /// <summary>The day and hour of a minute of the plan.</summary>
    public DateTime At(int minutes) => Start.AddMinutes(minutes);

    /// <summary>The step behind a task.</summary>
    public WorkStep StepOf(PlacedTask task) => Steps.First(step => step.Name == task.Task.Name);

    /// <summary>Makes the plan.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many; the ordered ones where null.</param>
    /// <param name="aim">What it is to be good at; without a due time always the shortest.</param>
    /// <param name="usePhysics">Whether freezing and thawing take as long as physics says where that is longer than written.</param>
    /// <param name="progress">Told of every better plan.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder.</param>
    /// <exception cref="TableException">A cell must be mended: a circle in the order, an oven that nobody has; all are named.</exception>
    public static PlanOfWork Of(Dessert dessert, string trial, int? pieces = null, PlanAim aim = PlanAim.LatestStart, bool usePhysics = true, IProgress<ScheduleProgress>? progress = null, string? montageSheet = null) =>
        Of(dessert, trial, dessert.Equipment, pieces, aim, usePhysics, progress, montageSheet, []);

    /// <summary>How many minutes of hands an order takes, by the tasks that a plan would have: each step at its longest, on a grid of 5 minutes. What grows with the pieces does so, what is once a make or a run does not.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many, 1 or more.</param>
    /// <exception cref="TableException">A cell must be mended; all are named.</exception>
    public static int HandsMinutes(Dessert dessert, string trial, int pieces)
    {
        var builder = new WorkBuilder(dessert, dessert.Equipment, DessertAmounts.Of(dessert, trial, pieces), new Dictionary<MethodStep, (int, string)>(), default, GridMinutes, []);
        var (problem, _) = builder.Build(null, MinutesPerDay, PlanAim.Shortest);
        return problem.Tasks.Sum(task => task.Uses.Where(use => use.AnyOf.All(name => problem.Resource(name).IsPerson)).Sum(use => use.Minutes ?? task.Minutes));
    }

    /// <summary>What breaks when something is down for the whole time.</summary>
    /// <param name="equipment">The name of what is down, as in <c>equipment.csv</c>.</param>
    /// <exception cref="KeyNotFoundException">The kitchen does not have it.</exception>
    public Breakdown Without(string equipment)
    {
        var kitchen = Dessert.Equipment.Without(equipment);
        var gone = Dessert.Equipment.Find(equipment)!;
        WorkStep[] broken = [.. Steps.Where(step => Names.Same(step.Step.Equipment, equipment)).DistinctBy(step => step.Step)];
        HashSet<string> stopped = [.. Steps.Where(step => Names.Same(step.Step.Equipment, equipment)).Select(step => step.Name)];
        // What comes after something that cannot be done cannot be done either.
        for (var before = -1; before != stopped.Count;)
        {
            before = stopped.Count;
            stopped.UnionWith(Problem.Tasks.Where(task => task.After.Any(link => stopped.Contains(link.Task))).Select(task => task.Name));
        }
        return new(gone, broken, [.. Steps.Where(step => stopped.Contains(step.Name) && !Names.Same(step.Step.Equipment, equipment)).DistinctBy(step => step.Step)],
            [.. kitchen.Machines.Select(name => kitchen.Find(name)!).Where(other => Names.Same(other.Kind, gone.Kind) && other.Count > 0)]);
    }

    /// <summary>The plan while something is down for the whole time: its steps stand on the nearest thing of the same kind.</summary>
    /// <param name="equipment">The name of what is down, as in <c>equipment.csv</c>.</param>
    /// <exception cref="KeyNotFoundException">The kitchen does not have it.</exception>
    /// <exception cref="TableException">A cell must be mended; all are named.</exception>
    public Replan Replanned(string equipment)
    {
        var down = Without(equipment);
        MethodStep[] broken = [.. down.Broken.Select(step => step.Step)];
        var physics = Dessert.Physics(Trial);
        var standIns = broken.Select(step => StandIn.For(step, down.SameKind, physics.Components.FirstOrDefault(each => Names.Same(each.Name, step.Component))?.Ice.InitialFreezingPoint is { IsKnown: true } point ? point.Value : null)).OfType<StandIn>().Select(each => UsesPhysics ? each.ByModel(physics) : each).ToArray();
        MethodStep[] nowhere = [.. broken.Where(step => !standIns.Any(each => each.Written == step))];
        return new(down, standIns, nowhere, nowhere.Length > 0 ? null
            : Of(Dessert, Trial, Dessert.Equipment.Without(equipment), Amounts.Amounts.Pieces, Problem.Aim, UsesPhysics, null, Amounts.MontageSheet, standIns));
    }

    private static PlanOfWork Of(Dessert dessert, string trial, EquipmentList equipment, int? pieces, PlanAim aim, bool usePhysics, IProgress<ScheduleProgress>? progress, string? montageSheet, IReadOnlyList<StandIn> standIns)
    {
        var amounts = DessertAmounts.Of(dessert, trial, pieces ?? (int)Math.Ceiling(dessert.WantedPieces(trial)), montageSheet: montageSheet);
        var due = OrderText.Due(dessert);
        var shifts = equipment.People.SelectMany(equipment.ShiftsOf).ToArray();
        var start = shifts.Length > 0 ? shifts.Min(shift => shift.From).Date : due?.Date.AddDays(-DaysWithoutPeople) ?? new DateTime(2000, 1, 3);
        var end = new[] { due ?? start.AddDays(DaysWithoutPeople), shifts.Length > 0 ? shifts.Max(shift => shift.To) : start }.Max();
        var horizon = (int)Math.Ceiling((end - start).TotalDays + 1) * MinutesPerDay;
        if (due <= start) throw new TableException([dessert.Facts.Problem("order", "", $"an order that is due after the first shift of equipment.csv, {start:yyyy-MM-dd}")]);
        List<string> assumed =
        [
            "every task is planned at the longest of its written minutes, on a grid of 5 minutes",
            "hands without a machine, and at the spray gun, take as long for each piece more as the formula does for its own; machines, ovens and waiting do not (common practice, no source)",
            FormattableString.Invariant($"what was mixed, melted or baked goes on within {WorkBuilder.FollowsWithinMinutes} minutes; what rests, sets or is cold can wait (common practice, no source)"),
            "what is put into or taken out of an oven, and put into the cold, needs somebody in the kitchen",
        ];
        if (equipment.People.Count == 0) assumed.Add("equipment.csv names no person: one pair of hands is there day and night");
        var physics = usePhysics ? PhysicsTimes(dessert, trial, assumed) : [];
        // That is of the place as it is written; a stand-in comes with its own time.
        foreach (var moved in standIns) physics.Remove(moved.Written);
        assumed.AddRange(standIns.Select(moved => FormattableString.Invariant($"{moved.Written.Component} {moved.Written.Step} in the {moved.Instead.Equipment}: {moved.Instead.Minutes?.High ?? 0:0} min at most, and not what is written or modelled for the {moved.Written.Equipment}")));
        var builder = new WorkBuilder(dessert, equipment, amounts, physics, start, GridMinutes, standIns);
        var (problem, steps) = builder.Build(due, horizon, aim);
        return new(dessert, trial) { Amounts = amounts, Start = start, Due = due, Problem = problem, Steps = steps, UsesPhysics = usePhysics, Answer = Scheduler.Solve(problem, progress), Assumed = assumed };
    }

    // Where physics cannot tell, or is faster than what was written, the method's own time holds.
    private static Dictionary<MethodStep, (int Minutes, string Why)> PhysicsTimes(Dessert dessert, string trial, List<string> assumed)
    {
        Dictionary<MethodStep, (int, string)> times = [];
        foreach (var (course, what) in new[] { (dessert.Physics(trial).Freezing, "frozen to the core"), (dessert.Physics(trial).Thawing, "thawed to the core") })
        {
            if (course.Step is not { } step || (course.Minutes ?? course.Between.Latest) is not { } minutes) continue;
            times[step] = ((int)Math.Ceiling(minutes), FormattableString.Invariant($"{what} after {Math.Ceiling(minutes):0} min by the model"));
            assumed.Add(FormattableString.Invariant($"{step.Component} {step.Step}: {what} after {minutes:0} min by the model{(course.Between.Latest is { } poorest ? FormattableString.Invariant($" ({poorest:0} min in the poorest air)") : "")}, {step.Minutes?.High:0} min at most are written; the longer counts"));
        }
        return times;
    }
}

/// <summary>What happens when something is down.</summary>
/// <param name="Equipment">What is down.</param>
/// <param name="Broken">The steps that are written for it.</param>
/// <param name="Behind">What waits for those.</param>
/// <param name="SameKind">What else the kitchen has of its kind.</param>
public sealed record Breakdown(Equipment Equipment, IReadOnlyList<WorkStep> Broken, IReadOnlyList<WorkStep> Behind, IReadOnlyList<Equipment> SameKind)
{
    /// <summary>Which of the same kind reach the temperature of a step; all where none is written.</summary>
    public IReadOnlyList<Equipment> CouldTake(WorkStep step) => [.. SameKind.Where(other => step.Step.TemperatureCelsius is not { } celsius || other.Reaches(celsius))];
}
