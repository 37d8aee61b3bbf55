using Tamis.Losses;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>Something that was measured on makes of a trial, and what the models say of it.</summary>
/// <param name="Component">The component; null for the whole piece.</param>
/// <param name="What">What was measured, as the sheet words it.</param>
/// <param name="Predicted">What the models say; without a value, with what is lacking, where none speaks of it.</param>
/// <param name="Measured">The measurements, make by make.</param>
public sealed record PredictedFigure(string? Component, string What, Predicted Predicted, IReadOnlyList<Measurement> Measured)
{
    private const double RoomCelsius = 20;

    // A model is a new line here; what no line names is shown as measured without a prediction.
    private static readonly Dictionary<string, Func<ComponentPhysics, TrialPhysics, Predicted>> OfComponent = new(Names.Comparer)
    {
        ["yield"] = (own, _) => Of("yield after losses", own.Made.YieldGrams, own.Made.Losses.Select(loss => new Working($"{loss.Name} leaves", loss.MassGrams, "g", loss.Origin))),
        ["water activity"] = (own, _) => own.WaterActivity.Predicted,
        ["Brix"] = (own, _) => own.WaterActivity.Solution is { Lacks.Count: 0, WaterGrams: > 0 } solution
            ? Of("dissolved solids", solution.DissolvedPercent, [new("water", solution.WaterGrams, "g", Made(own)), new("dissolved", solution.SoluteGrams, "g", Made(own))])
            : Predicted.Unknown(PhysicsData.Kit.Equation("dissolved solids"), "the sugars and the water of every ingredient"),
        ["density"] = (own, _) => FoldedDensity(own) ?? (HeatMakeup.Of(own.Finished) is { Shares: { } shares } && !HoldsAir(own)
            ? Of("density without air", ThermalMixture.Make(shares).DensityKgPerM3(RoomCelsius) / 1000, [new("mass", own.Finished.FinishedGrams, "g", Made(own))])
            : Predicted.Unknown(PhysicsData.Kit.Equation("density without air"), "the air that was beaten in: weigh a ring of it")),
        ["core temperature"] = (own, trial) => trial.Freezing is { History: { } history, Step: { Minutes: { } planned } step, Piece: not null } && Names.Same(step.Component, own.Name)
            ? Of("coldest time in the core", history.Readings.MinBy(reading => Math.Abs(reading.Minutes - planned.High)).WarmestCelsius, [new("planned freezing", planned.High, "min", step.Origin)])
            : Predicted.Unknown(PhysicsData.Kit.Equation("coldest time in the core"), "a model of this bake or of this cooling on ice"),
    };

    private static readonly Dictionary<string, Func<TrialPhysics, Predicted>> OfPiece = new(Names.Comparer)
    {
        ["mass"] = trial => trial.Piece?.MassGrams is { } grams
            ? Of("mass of a piece", grams, trial.Piece.Layers.Select(layer => new Working(layer.Component, layer.MassGrams ?? double.NaN, "g", layer.Origin)))
            : Predicted.Unknown(PhysicsData.Kit.Equation("mass of a piece"), "a montage with densities"),
        ["height"] = trial => trial.Piece is { } piece
            ? Of("height of a piece", piece.HeightMillimetres, piece.Layers.Select(layer => new Working(layer.Component, layer.ThicknessMillimetres, "mm", layer.Origin)))
            : Predicted.Unknown(PhysicsData.Kit.Equation("height of a piece"), "a montage"),
    };

    /// <summary>Everything that was measured on a trial beside its prediction, in the order of the sheet; temperatures that belong to a log, but for the last, are left to the log.</summary>
    public static IReadOnlyList<PredictedFigure> AllOf(TrialPhysics trial) =>
    [
        .. from measurement in trial.Dessert.Measured
           where Names.Same(measurement.Trial, trial.Trial)
           group measurement by (Component: measurement.Component is null ? "" : Names.Key(measurement.Component), What: Names.Key(measurement.What)) into same
           let first = same.First()
           let shown = trial.Logs.Any(log => Names.Same(log.Component, first.Component) && Names.Same(log.What, first.What)) ? (IReadOnlyList<Measurement>)[same.MaxBy(each => each.At)!] : [.. same]
           select new PredictedFigure(first.Component, first.What, PredictedOf(trial, first), shown),
    ];

    private static Predicted PredictedOf(TrialPhysics trial, Measurement measurement) => measurement.Component is { } component
        ? trial.Components.FirstOrDefault(each => Names.Same(each.Name, component)) is { } own && OfComponent.TryGetValue(measurement.What, out var ofComponent) ? ofComponent(own, trial) : NoModel(measurement)
        : OfPiece.TryGetValue(measurement.What, out var ofPiece) ? ofPiece(trial) : NoModel(measurement);

    private static Predicted NoModel(Measurement measurement) =>
        Predicted.Unknown(new(measurement.What, measurement.What, measurement.Unit, new("the kit", Evidence.Computed)), $"a model of {measurement.What}: the kit has none");

    private static Predicted Of(string equation, double value, IEnumerable<Working> steps) => Predicted.Computed(PhysicsData.Kit.Equation(equation), value, () => [.. steps]);

    // A step that folds in a foam of foams.csv, by its words: what goes in at that step is the foam, all the rest the base.
    private static Predicted? FoldedDensity(ComponentPhysics own)
    {
        foreach (var step in own.Looked.Steps)
        {
            if (FoamKind.All.Where(foam => step.Do.Contains(foam.Name, StringComparison.OrdinalIgnoreCase)).MaxBy(foam => foam.Name.Length) is not { } kind) continue;
            // What is strained out whole, such as a leaf, is in neither.
            var parts = own.Looked.Contents.Where(content => !own.Made.Losses.Any(loss => Names.Same(loss.Of, content.Line.Name) && loss.MassGrams > 0.99 * content.Line.MassGrams)).ToLookup(content => content.Line.Step == step.Step);
            if (DensityOf(parts[true]) is not { } foam || DensityOf(parts[false]) is not { } rest) continue;
            return Foam.Folded(new("base", rest.Grams, "g", step.Origin), new("base density", rest.GramsPerMillilitre, "g/mL", Made(own)),
                new("foam", foam.Grams, "g", step.Origin), new("foam’s liquid", foam.GramsPerMillilitre, "g/mL", Made(own)), kind);
        }
        return null;
    }

    private static (double Grams, double GramsPerMillilitre)? DensityOf(IEnumerable<LineContent> contents) =>
        Mixture.Of(contents.Select(content => content.Content)) is { FinishedGrams: > 0 } mixture && HeatMakeup.Of(mixture).Shares is { } shares
            ? (mixture.FinishedGrams, ThermalMixture.Make(shares).DensityKgPerM3(RoomCelsius) / 1000) : null;

    private static bool HoldsAir(ComponentPhysics own) => HeatMakeup.Of(own.Finished).Shares is { } shares && own.Note?.DensityGramsPerMillilitre * 1000 < ThermalMixture.Make(shares).DensityKgPerM3(RoomCelsius) * 0.93;

    private static Source Made(ComponentPhysics own) => new($"{own.Name} as it is made", Evidence.Computed);
}
