using Tamis.Montage;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>How water moves between the layers of a piece, looked at through its middle from below to above.</summary>
public sealed record PieceWater
{
    private const double LeastMillimetres = 0.05;

    private PieceWater(IReadOnlyList<string> lacks) => Lacks = lacks;

    /// <summary>What would have to be known; empty where it could be worked out.</summary>
    public IReadOnlyList<string> Lacks { get; }

    /// <summary>What was assumed or left out, in sentences.</summary>
    public IReadOnlyList<string> Assumed { get; private init; } = [];

    /// <summary>The layers, lowest first; null where something is lacking.</summary>
    public WaterStack? Stack { get; private init; }

    /// <summary>The layers that go soft or dry, from below, with how long they keep.</summary>
    /// <param name="days">How many days to look ahead.</param>
    /// <remarks>One that is past its limit when it is put together is in <see cref="PastAtOnce"/> instead.</remarks>
    public IReadOnlyList<KeepingDays> Keeping(double days) => Stack is { } stack
        ? [.. stack.Layers.Where(layer => layer.Limit is not null && !PastAtOnce.Contains(layer)).AsParallel().AsOrdered().Select(layer => KeepingDays.Of(stack, layer.Name, days, detail: Coarse))] : [];

    /// <summary>The layers that are past their limit when they are put together, by their isotherm: too moist as made, or an isotherm that is not theirs.</summary>
    public IReadOnlyList<WaterLayer> PastAtOnce => Stack is { } stack ? [.. stack.Layers.Where(layer => layer.Limit is { } limit && limit.IsPassed(layer.WaterActivity, limit.Figure.Value))] : [];

    /// <summary>Fine enough for a day on a page: half the cells and half the steps move it by less than it is unsure.</summary>
    public static MigrationDetail Coarse { get; } = new(CellsPerLayer: 12, Steps: 160);

    internal static PieceWater Of(TrialPhysics trial)
    {
        if (trial.Piece is not { } piece) return new(["montage.csv, for the layers of the piece"]);
        List<WaterLayer> layers = [];
        List<string> lacks = [], assumed = [];
        var celsius = Math.Clamp(trial.Assembly.FirstOrDefault(step => step.TemperatureCelsius is >= 0 and <= 25)?.TemperatureCelsius ?? 4, 0, 25);
        foreach (var (name, component, thickness) in Cut(piece))
        {
            if (thickness < LeastMillimetres) continue;
            var own = trial.Of(component);
            if (own.Note?.Family is not { } family || !MigrationData.Kit.Kinds.TryGetValue(family, out var kind))
                lacks.Add($"{component}: a family in components.csv that has a row in migration-families.csv");
            else if (own.Finished.PercentOf(BalancePart.Water) is not { } water) lacks.Add($"{component}: the water of every ingredient");
            else if (own.Note.DensityGramsPerMillilitre is not { } density) lacks.Add($"{component}: its density in components.csv");
            else if (IsothermOf(own, kind) is not { } isotherm) lacks.Add($"{component}: its isotherm, or a composition whose water activity can be predicted");
            else layers.Add(LayerOf(name, own, kind, isotherm, thickness, density, water, celsius, assumed));
        }
        if (lacks.Count > 0 || layers.Count == 0) return new(lacks.Count > 0 ? [.. lacks.Distinct()] : ["at least one layer in montage.csv"]);
        if (layers.Any(layer => layer.Isotherm.IsIllustrative)) assumed.Add("the isotherms of the dry layers are illustrative: the course is of the right kind, the days are not measured.");
        return new([]) { Stack = WaterStack.Of(layers, [], celsius), Assumed = [.. assumed.Distinct()] };
    }

    // The isotherm of a dry layer may not reach the water that its own formula gives it; it is then taken at the edge of what it says.
    private static WaterLayer LayerOf(string name, ComponentPhysics own, LayerKind kind, SorptionIsotherm isotherm, double thickness, double density, double water, double celsius, List<string> assumed)
    {
        var diffusivity = MigrationData.At(kind.Diffusivity, celsius);
        var most = isotherm.WaterGramsPerGramDry(isotherm.ValidWaterActivity.High) is var held ? 100 * held / (1 + held) : 0;
        if (water > most) assumed.Add(FormattableString.Invariant($"{own.Name} has {water:0.#} % of water, more than its isotherm covers; it is taken at a water activity of {isotherm.ValidWaterActivity.High:0.##}."));
        var layer = water <= most
            ? WaterLayer.OfWater(name, isotherm, thickness, density, water, diffusivity)
            : WaterLayer.OfActivity(name, isotherm, thickness, density, isotherm.ValidWaterActivity.High, diffusivity);
        return layer with { Limit = kind.Limit };
    }

    private static SorptionIsotherm? IsothermOf(ComponentPhysics own, LayerKind kind)
    {
        var solution = own.WaterActivity.Solution;
        var dry = own.Finished.FinishedGrams - solution.WaterGrams;
        if (kind.Isotherm is not null) return kind.IsOfSwellingSolids && !(solution.SwellingGrams > 0) ? null : kind.IsothermOf(own.Name, solution.SwellingGrams / dry);
        if (own.WaterActivity.Chosen is not { } chosen) return null;
        var model = WaterActivityModel.All.First(each => each.Name == chosen.Model);
        var now = solution.WaterGrams / dry;
        return SorptionIsotherm.OfComposition(own.Name, water => model.Compute(solution.WithWater(water * dry)), Interval.Between(now * 0.6, now * 1.4), chosen.Predicted.Equation.Source);
    }

    // Straight up through the middle: a moulded layer is parted by what is inside it.
    private static IEnumerable<(string Name, string Component, double ThicknessMillimetres)> Cut(AssembledPiece piece)
    {
        foreach (var layer in piece.Layers.Where(layer => layer.As is Placing.Lining or Placing.Fill or Placing.Moulded).OrderBy(layer => layer.BottomMillimetres))
        {
            if (layer.As == Placing.Lining) yield return (layer.Component, layer.Component, layer.ThicknessMillimetres);
            else if (layer.As == Placing.Fill) yield return (layer.Component, layer.Component, layer.Outer.HeightMillimetres);
            else
            {
                var inside = piece.Layers.Where(each => each.As == Placing.Insert && Names.Same(each.Inside, layer.Component)).OrderBy(each => each.BottomMillimetres).ToArray();
                var level = layer.BottomMillimetres;
                foreach (var insert in inside)
                {
                    yield return ($"{layer.Component} under {insert.Component}", layer.Component, insert.BottomMillimetres - level);
                    yield return (insert.Component, insert.Component, insert.Outer.HeightMillimetres);
                    level = insert.TopMillimetres;
                }
                yield return (inside.Length == 0 ? layer.Component : $"{layer.Component} over {inside[^1].Component}", layer.Component, layer.TopMillimetres - level);
            }
        }
    }
}
