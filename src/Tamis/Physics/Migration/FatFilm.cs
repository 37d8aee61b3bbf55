namespace Tamis.Physics;

/// <summary>What lies between two layers and slows the water: a film of fat, nothing at all, or a seal that lets no water through.</summary>
public sealed record FatFilm
{
    private const double MetresPerMillimetre = 1e-3;

    private FatFilm(string name, Given? permeability, double thicknessMillimetres, double bareShare) =>
        (Name, Permeability, ThicknessMillimetres, BareShare) = (name, permeability, thicknessMillimetres, bareShare);

    /// <summary>The layers touch: water passes as if nothing were there.</summary>
    public static FatFilm None { get; } = new("nothing between", null, 0, 1);

    /// <summary>No water passes.</summary>
    public static FatFilm Seal { get; } = new("sealed", null, double.PositiveInfinity, 0);

    /// <summary>What it is of (<c>cocoa butter</c>).</summary>
    public string Name { get; }

    /// <summary>Its permeability to water vapour, kg·m/(m²·s·Pa); null for nothing and for a seal.</summary>
    public Given? Permeability { get; }

    /// <summary>Its thickness, mm: 0 for nothing, infinite for a seal.</summary>
    public double ThicknessMillimetres { get; }

    /// <summary>The share of the area that was missed or has cracked, from 0 to 1; there the layers touch.</summary>
    public double BareShare { get; }

    /// <summary>A film of some thickness.</summary>
    /// <param name="name">What it is of.</param>
    /// <param name="permeability">Permeability to water vapour, kg·m/(m²·s·Pa), above 0.</param>
    /// <param name="thicknessMillimetres">Thickness, mm, 0 or more; 0 is no film.</param>
    /// <param name="bareShare">The share of the area without film, from 0 to 1.</param>
    /// <exception cref="ArgumentException">A figure is outside its range; all that are wrong are named.</exception>
    public static FatFilm Of(string name, Given permeability, double thicknessMillimetres, double bareShare = 0)
    {
        List<string> wrong = [];
        if (!(permeability.Value > 0 && double.IsFinite(permeability.Value))) wrong.Add(FormattableString.Invariant($"its permeability is above 0 kg·m/(m²·s·Pa), found {permeability.Value:G6}"));
        if (!(thicknessMillimetres >= 0 && double.IsFinite(thicknessMillimetres))) wrong.Add(FormattableString.Invariant($"its thickness is 0 mm or more, found {thicknessMillimetres:G6}"));
        if (!(bareShare is >= 0 and <= 1)) wrong.Add(FormattableString.Invariant($"the bare share of its area is from 0 to 1, found {bareShare:G6}"));
        return wrong.Count == 0 ? new(name, permeability, thicknessMillimetres, bareShare) : throw new ArgumentException($"The film of {name} cannot be: {string.Join("; ", wrong)}.");
    }

    /// <summary>The same film at another thickness. Nothing and a seal stay what they are.</summary>
    public FatFilm Thick(double thicknessMillimetres) => Permeability is { } permeability ? Of(Name, permeability, thicknessMillimetres, BareShare) : this;

    /// <summary>The water that passes the covered area at one unit of difference in water activity, kg/(m²·s): infinite for nothing, 0 for a seal.</summary>
    public double Conductance(double temperatureCelsius) => Conductance(temperatureCelsius, Permeability?.Value ?? double.NaN);

    internal double Conductance(double temperatureCelsius, double permeability) =>
        ThicknessMillimetres == 0 ? double.PositiveInfinity
        : double.IsPositiveInfinity(ThicknessMillimetres) ? 0
        : FluxKilogramsPerSquareMetreSecond(permeability, ThicknessMillimetres, 1, temperatureCelsius);

    /// <summary>The steady flow of water through a film, kg/(m²·s). Source: equations-migration.csv, <c>film flux</c>.</summary>
    /// <param name="permeability">Permeability, kg·m/(m²·s·Pa).</param>
    /// <param name="thicknessMillimetres">Thickness, mm.</param>
    /// <param name="waterActivityDifference">Water activity on the wet side less that on the dry side.</param>
    /// <param name="temperatureCelsius">Temperature of both sides.</param>
    public static double FluxKilogramsPerSquareMetreSecond(double permeability, double thicknessMillimetres, double waterActivityDifference, double temperatureCelsius) =>
        permeability * WaterVapour.SaturationPascals(temperatureCelsius) * waterActivityDifference / (thicknessMillimetres * MetresPerMillimetre);

    /// <summary>The steady flow through this film in g per m² and day, with its range and source.</summary>
    /// <param name="wetter">Water activity on the wet side.</param>
    /// <param name="drier">Water activity on the dry side.</param>
    /// <param name="temperature">Temperature of both sides, °C.</param>
    public Predicted FluxGramsPerSquareMetreDay(Given wetter, Given drier, Given temperature)
    {
        var equation = PhysicsData.Kit.Equation("film flux");
        if (Permeability is not { } permeability || ThicknessMillimetres == 0) return Predicted.Unknown(equation, "a film with a permeability and a thickness");
        Given thickness = new("film thickness", ThicknessMillimetres, "mm", Permeability.Source);
        return Predicted.From(equation, [permeability, thickness, wetter, drier, temperature],
            given => FluxKilogramsPerSquareMetreSecond(given[0], given[1], given[2] - given[3], given[4]) * GramsPerKilogram * SecondsPerDay);
    }

    private const double GramsPerKilogram = 1000, SecondsPerDay = 86400;
}
