using Tamis.Formulas;
using Tamis.Montage;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>How a piece of real layers cools or warms in one step of the method.</summary>
public sealed record HeatCourse
{
    private const double FrozenCelsius = -18, CellMillimetres = 2, PastThePlan = 2, PastTheGoal = 1.3, UsualMinutes = 480;
    // The instants on the way to the goal that a page shows.
    private static readonly double[] Shown = [0.1, 0.35, 0.7, 1];

    private HeatCourse(IReadOnlyList<string> lacks) => Lacks = lacks;

    /// <summary>What would have to be known; empty where it could be worked out.</summary>
    public IReadOnlyList<string> Lacks { get; }

    /// <summary>What was assumed, in sentences.</summary>
    public IReadOnlyList<string> Assumed { get; private init; } = [];

    /// <summary>The piece as heat meets it; null where something is lacking.</summary>
    public PieceHeat? Piece { get; private init; }

    /// <summary>The step of the method that says where it stands and how long.</summary>
    public MethodStep? Step { get; private init; }

    /// <summary>How well the air takes or gives heat.</summary>
    public Given? Transfer { get; private init; }

    /// <summary>The temperatures with the middle of that range; null where something is lacking.</summary>
    public TemperatureHistory? History { get; private init; }

    /// <summary>The temperature that all of it has to pass: −18 °C when it freezes; when it thaws, the highest freezing point of its layers, where the last ice goes.</summary>
    public double GoalCelsius { get; private init; }

    /// <summary>How long until all of it has passed the goal, in minutes; null where it has not by twice the plan.</summary>
    public double? Minutes { get; private init; }

    /// <summary>The same with the best and the poorest air of the range; an end is null where it is not reached.</summary>
    public (double? Earliest, double? Latest) Between { get; private init; }

    /// <param name="trial">The trial.</param>
    /// <param name="instead">How a step is done in place of what is written; as written where null.</param>
    internal static HeatCourse Freezing(TrialPhysics trial, Func<MethodStep, MethodStep>? instead = null)
    {
        if (MouldedOf(trial, out var lack) is not { } moulded) return new([lack]);
        var steps = trial.Of(moulded.Component).Looked.Steps.ToList();
        var at = steps.FindLastIndex(step => step.TemperatureCelsius <= -10);
        if (at < 0) return new([$"a step of {moulded.Component} in steps.csv that freezes it: a temperature of −10 °C or below"]);
        var start = steps.Take(at).LastOrDefault(step => step.TemperatureCelsius is not null)?.TemperatureCelsius ?? 20;
        return March(trial, instead?.Invoke(steps[at]) ?? steps[at], FrozenCelsius, layer => layer == moulded || layer.As == Placing.Insert && Names.Same(layer.Inside, moulded.Component),
            component => Names.Same(component, moulded.Component) ? start : Math.Min(trial.Of(component).Note?.HoldCelsius ?? start, start),
            FormattableString.Invariant($"{moulded.Component} is at {start:0} °C all through when it goes in, what is inside it as cold as it is kept; its ring is left out"));
    }

    internal static HeatCourse Thawing(TrialPhysics trial)
    {
        if (MouldedOf(trial, out var lack) is null) return new([lack]);
        if (trial.Assembly.FirstOrDefault(step => step is { TemperatureCelsius: >= -5 and <= 25, Minutes.High: >= 60 }) is not { } thaw)
            return new(["a step of the assembly in steps.csv that thaws it: a temperature above −5 °C and at least an hour"]);
        var frozen = trial.Piece!.Layers.Where(layer => layer.As is Placing.Moulded or Placing.Insert or Placing.Film).Select(layer => layer.Component).ToHashSet(Names.Comparer);
        // The last ice is in what freezes first; without one that is known, plain water.
        var lastIce = trial.Piece.Layers.Select(layer => trial.Of(layer.Component).Ice.InitialFreezingPoint).Where(point => point.IsKnown).Select(point => point.Value).DefaultIfEmpty(0).Max();
        return March(trial, thaw, Math.Round(lastIce, 1), _ => true, component => frozen.Contains(component) ? FrozenCelsius : Math.Max(0, trial.Of(component).Note?.HoldCelsius ?? thaw.TemperatureCelsius!.Value),
            FormattableString.Invariant($"what was moulded is at {FrozenCelsius:0} °C all through when it comes out, what stands under it as warm as it is kept").Replace('-', '−'));
    }

    private static PlacedLayer? MouldedOf(TrialPhysics trial, out string lack)
    {
        var moulded = trial.Piece?.Layers.FirstOrDefault(layer => layer.As == Placing.Moulded);
        lack = moulded is not null ? "" : trial.Piece is null ? "montage.csv, for the layers of the piece" : "something moulded in montage.csv";
        return moulded;
    }

    private static HeatCourse March(TrialPhysics trial, MethodStep step, double goalCelsius, Func<PlacedLayer, bool> stands, Func<string, double> startCelsius, string assumed)
    {
        var place = step.Equipment ?? "still cold air";
        if (SurfaceTransfer.All.FirstOrDefault(each => Names.Same(each.Name, place)) is not { Range: { } range } transfer) return new([$"how well the air of a {place} takes heat: a row in surface-heat-transfer.csv"]);
        var heat = PieceHeat.Of(trial.Dessert, trial.Trial, startCelsius, CellMillimetres, stands);
        if (heat.Piece is not { } piece) return new(heat.Lacks);

        var planned = step.Minutes?.High ?? UsualMinutes;
        var runs = new[] { transfer.Value, range.High, range.Low }.AsParallel().AsOrdered().Select(w => Run(w, planned * PastThePlan, 60, [])).ToArray();
        // Once more to a little past the goal: the pictures are of the way there, not of the hours after.
        var end = Goal(runs[0]) ?? planned * PastThePlan;
        var history = Run(transfer.Value, Math.Max(end * PastTheGoal, 30), 20, [.. Shown.Select(share => Math.Max(1, Math.Round(end * share)))]);
        return new([])
        {
            Piece = heat, Step = step, Transfer = transfer, GoalCelsius = goalCelsius, Assumed = [assumed, .. heat.Remarks],
            History = history, Minutes = Goal(runs[0]), Between = (Goal(runs[1]), Goal(runs[2])),
        };

        TemperatureHistory Run(double w, double minutes, double stepSeconds, IReadOnlyList<double> fields) => piece.March([HeatStage.AllRound(minutes, Surroundings.Air(step.TemperatureCelsius!.Value, w))],
            new() { StepSeconds = stepSeconds, ReadingsEverySeconds = 60, FieldsAtMinutes = fields });

        double? Goal(TemperatureHistory run) => goalCelsius <= FrozenCelsius ? run.MinutesUntilAllBelow(goalCelsius) : run.MinutesUntilAllAbove(goalCelsius);
    }
}
