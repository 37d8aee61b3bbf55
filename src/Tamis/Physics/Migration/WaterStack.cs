namespace Tamis.Physics;

/// <summary>Layers on one another, from the lowest to the uppermost, with what lies between them.</summary>
public sealed record WaterStack
{
    private WaterStack(IReadOnlyList<WaterLayer> layers, IReadOnlyList<FatFilm> films, double temperatureCelsius) =>
        (Layers, Films, TemperatureCelsius) = (layers, films, temperatureCelsius);

    /// <summary>The layers, lowest first.</summary>
    public IReadOnlyList<WaterLayer> Layers { get; }

    /// <summary>What lies between each layer and the next: one less than the layers.</summary>
    public IReadOnlyList<FatFilm> Films { get; private init; }

    /// <summary>The temperature at which it is kept, °C; the isotherms and diffusivities are taken as they are, the vapour pressure follows it.</summary>
    public double TemperatureCelsius { get; }

    /// <summary>The air under the lowest layer; null where it is closed.</summary>
    public SurroundingAir? Under { get; init; }

    /// <summary>The air over the uppermost layer; null where it is closed.</summary>
    public SurroundingAir? Over { get; init; }

    /// <summary>The equilibrium that the closed stack comes to.</summary>
    public StackEquilibrium Equilibrium => StackEquilibrium.Of([.. Layers.Select(layer => layer.Holder)]);

    /// <summary>Layers with what lies between them.</summary>
    /// <param name="layers">The layers, lowest first, at least one, each with a name of its own.</param>
    /// <param name="films">What lies between each and the next; empty where all touch.</param>
    /// <param name="temperatureCelsius">The temperature at which it is kept, from −30 to 50 °C.</param>
    /// <exception cref="ArgumentException">Something does not fit; all that is wrong is named.</exception>
    public static WaterStack Of(IReadOnlyList<WaterLayer> layers, IReadOnlyList<FatFilm> films, double temperatureCelsius)
    {
        List<string> wrong = [];
        if (layers.Count == 0) wrong.Add("it has no layer");
        wrong.AddRange(layers.GroupBy(layer => layer.Name, Names.Comparer).Where(same => same.Count() > 1).Select(same => $"{same.Count()} layers are called {same.Key}"));
        if (films.Count > 0 && films.Count != layers.Count - 1) wrong.Add(FormattableString.Invariant($"{layers.Count} layers have {layers.Count - 1} places between them, but {films.Count} films are given"));
        if (!(temperatureCelsius is >= -30 and <= 50)) wrong.Add(FormattableString.Invariant($"its temperature is from -30 to 50 °C, found {temperatureCelsius:G6}"));
        if (wrong.Count > 0) throw new ArgumentException($"The stack cannot be: {string.Join("; ", wrong)}.");
        return new(layers, films.Count > 0 ? films : [.. Enumerable.Repeat(FatFilm.None, layers.Count - 1)], temperatureCelsius);
    }

    /// <summary>The same stack with another film above a layer.</summary>
    /// <param name="layer">The number of the layer under the film, the lowest being 0.</param>
    /// <param name="film">What lies on it.</param>
    public WaterStack WithFilm(int layer, FatFilm film) => this with { Films = [.. Films.Select((each, i) => i == layer ? film : each)] };
}
