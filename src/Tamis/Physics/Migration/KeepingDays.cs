namespace Tamis.Physics;

/// <summary>For how long a layer of a stack stays what it should be: crisp, or moist.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="Limit">The water activity that it must not pass.</param>
/// <param name="Days">The day on which it passes; without a value where it does not pass in the time looked at.</param>
/// <param name="LookedDays">For how many days the stack was looked at.</param>
/// <param name="EquilibriumWaterActivity">What the closed stack comes to in the end.</param>
public sealed record KeepingDays(string Layer, WaterLimit Limit, Predicted Days, double LookedDays, double EquilibriumWaterActivity)
{
    /// <summary>Whether the layer does not pass its limit in the time looked at, with the figures as given.</summary>
    public bool IsKept => !Days.IsKnown && Days.Lacks.Count == 0;

    /// <summary>The layer as it was when the stack was put together.</summary>
    public required WaterLayer Start { get; init; }

    /// <summary>Whether it lay on the wrong side of its limit before any water moved.</summary>
    public bool IsPassedAtStart => Limit.IsPassed(Start.WaterActivity, Limit.Figure.Value);

    /// <summary>The water at which the layer stands at its limit, % of the layer: a shell baked drier starts on the right side.</summary>
    public double LimitWaterPercent => Start.Isotherm.WaterGramsPerGramDry(Limit.Figure.Value) is var held ? 100 * held / (1 + held) : 0;

    /// <summary>The earliest and the latest day on which it may pass, as far as diffusivities, films and the limit are known; an end that lies beyond the time looked at is null.</summary>
    public required (double? Earliest, double? Latest) Between { get; init; }

    /// <summary>Whether the layer would stay what it should be for ever: the equilibrium lies on the right side of its limit. Known for a closed stack only.</summary>
    public required bool? IsKeptForEver { get; init; }

    /// <summary>When a layer passes its limit.</summary>
    /// <param name="stack">The stack.</param>
    /// <param name="layer">The layer's name.</param>
    /// <param name="lookDays">For how many days to look.</param>
    /// <param name="at">Where in the layer the water activity is taken.</param>
    /// <param name="detail">How finely to look; null for the usual.</param>
    /// <exception cref="ArgumentException">The layer has no limit.</exception>
    public static KeepingDays Of(WaterStack stack, string layer, double lookDays, LimitAt at = LimitAt.Mean, MigrationDetail? detail = null)
    {
        var course = WaterCourse.Of(stack, lookDays, detail);
        var limit = course.Of(layer).Layer.Limit ?? throw new ArgumentException($"The layer {layer} has no water activity that it must not pass.", nameof(layer));
        var equation = PhysicsData.Kit.Equation("keeping days");
        var day = PassedDay(course, layer, limit, limit.Figure.Value, at);
        var early = PassedDay(WaterCourse.Of(At(stack, range => range.High), lookDays, detail), layer, limit, limit.First, at);
        var late = PassedDay(WaterCourse.Of(At(stack, range => range.Low), lookDays, detail), layer, limit, limit.Last, at);
        var equilibrium = stack.Equilibrium.WaterActivity;
        var figure = Predicted.Computed(equation, day ?? double.NaN, () => Steps(stack, limit)) with
        {
            Range = early is { } low && late is { } high ? Interval.Between(Math.Min(low, high), Math.Max(low, high)) : null,
            Outside = equilibrium.Outside,
        };
        return new(layer, limit, figure, lookDays, equilibrium.Value)
        {
            Start = course.Of(layer).Layer,
            Between = (early, late),
            IsKeptForEver = stack is { Under: null, Over: null } ? !limit.IsPassed(equilibrium.Value, limit.Figure.Value) : null,
        };
    }

    /// <summary>What a thicker film buys: the days a layer keeps for each thickness of the film above some layer.</summary>
    /// <param name="stack">The stack; between the layers must lie a film with a permeability.</param>
    /// <param name="filmAbove">The number of the layer under the film, the lowest being 0.</param>
    /// <param name="thicknessMillimetres">The thicknesses to compare, mm, 0 or more.</param>
    /// <param name="layer">The layer that is to keep.</param>
    /// <param name="lookDays">For how many days to look.</param>
    /// <param name="at">Where in the layer the water activity is taken.</param>
    /// <param name="detail">How finely to look; null for the usual.</param>
    /// <remarks>The thicknesses are worked out side by side on all cores.</remarks>
    /// <exception cref="ArgumentException">There is no such film, or the layer has no limit.</exception>
    public static IReadOnlyList<(double ThicknessMillimetres, KeepingDays Keeping)> ByThickness(WaterStack stack, int filmAbove, IReadOnlyList<double> thicknessMillimetres, string layer, double lookDays, LimitAt at = LimitAt.Mean, MigrationDetail? detail = null)
    {
        if (filmAbove < 0 || filmAbove >= stack.Films.Count || stack.Films[filmAbove].Permeability is null)
            throw new ArgumentException($"There is no film with a permeability above layer {filmAbove} (the lowest is 0).", nameof(filmAbove));
        return [.. thicknessMillimetres.AsParallel().AsOrdered().Select(thickness => (thickness, Of(stack.WithFilm(filmAbove, stack.Films[filmAbove].Thick(thickness)), layer, lookDays, at, detail)))];
    }

    /// <summary>The day on which a layer passes a water activity, null where it does not in the time followed.</summary>
    internal static double? PassedDay(WaterCourse course, string name, WaterLimit limit, double waterActivity, LimitAt at)
    {
        var layer = course.Of(name);
        double before = 0;
        for (var i = 0; i < course.Days.Count; i++)
        {
            var here = at == LimitAt.Mean ? layer.MeanWaterActivity[i]
                : limit.Side == LimitSide.SoftAbove ? Math.Max(layer.LowerWaterActivity[i], layer.UpperWaterActivity[i])
                : Math.Min(layer.LowerWaterActivity[i], layer.UpperWaterActivity[i]);
            if (limit.IsPassed(here, waterActivity))
                return i == 0 || here == before ? course.Days[i] : course.Days[i - 1] + (waterActivity - before) / (here - before) * (course.Days[i] - course.Days[i - 1]);
            before = here;
        }
        return null;
    }

    // All diffusivities and permeabilities at one end of their ranges: water moves as fast, or as slowly, as it may.
    private static WaterStack At(WaterStack stack, Func<Interval, double> end) => WaterStack.Of(
        [.. stack.Layers.Select(layer => layer.WithDiffusivity(At(layer.Diffusivity, end)))],
        [.. stack.Films.Select(film => film.Permeability is { } permeability ? FatFilm.Of(film.Name, At(permeability, end), film.ThicknessMillimetres, film.BareShare) : film)],
        stack.TemperatureCelsius) with { Under = stack.Under, Over = stack.Over };

    private static Given At(Given given, Func<Interval, double> end) => given with { Value = given.Range is { } range ? end(range) : given.Value };

    private static IReadOnlyList<Working> Steps(WaterStack stack, WaterLimit limit) =>
    [
        limit.Figure.Working,
        .. stack.Layers.SelectMany(layer => new[]
        {
            new Working($"{layer.Name}: water activity at the start", layer.WaterActivity, "", layer.Isotherm.Source),
            new Working($"{layer.Name}: thickness", layer.ThicknessMillimetres, "mm", layer.Isotherm.Source),
            layer.Diffusivity.Working,
        }),
        .. stack.Films.Where(film => film.Permeability is not null).Select(film => new Working($"film of {film.Name}", film.ThicknessMillimetres, "mm", film.Permeability!.Source)),
    ];
}
