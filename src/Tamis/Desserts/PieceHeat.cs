using System.Globalization;
using Tamis.Losses;
using Tamis.Montage;
using Tamis.Physics;

namespace Tamis.Desserts;

/// <summary>A piece of a trial as heat meets it: its layers, each with what it is made of, how dense it is and where it freezes.</summary>
/// <param name="Piece">The piece; null where something must be known first.</param>
/// <param name="Mixtures">The mixture of each component that stands in it.</param>
/// <param name="Lacks">What would have to be known; empty where the piece is there.</param>
/// <param name="Remarks">What was taken for granted: a shape that counts as round, single pieces that are left out, mass of unknown nature.</param>
public sealed record PieceHeat(MouldedPiece? Piece, IReadOnlyDictionary<string, ThermalMixture> Mixtures, IReadOnlyList<string> Lacks, IReadOnlyList<string> Remarks)
{
    // Where the very first ice lies beyond the table of freezing points, so little of it marks the freezing point.
    private const double FirstIceShareOfWater = 0.001;
    private const double DensityAtCelsius = 4;
    // Densities of the components spread by about so much between foods.
    private const double WorthSaying = 1.01;

    /// <summary>The piece of a trial.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="startCelsius">The temperature of a component at the start.</param>
    /// <param name="cellMillimetres">About how large the cells are.</param>
    /// <param name="stands">Which layers are there; all where null. What is there stands on the lowest of them.</param>
    /// <exception cref="Tables.TableException">A sheet must be mended first.</exception>
    public static PieceHeat Of(Dessert dessert, string trial, Func<string, double> startCelsius, double cellMillimetres = 1.5, Func<PlacedLayer, bool>? stands = null)
    {
        if (dessert.PieceOf(trial) is not { } assembled) return new(null, new Dictionary<string, ThermalMixture>(), ["montage.csv, with how the piece is put together"], []);
        var batch = dessert.Trial(trial);
        List<string> lacks = [], remarks = [];
        PlacedLayer[] standing = [.. assembled.Layers.Where(layer => layer.As != Placing.Piece && stands?.Invoke(layer) != false)];
        if (assembled.Layers.Any(layer => layer.As == Placing.Piece)) remarks.Add("what is set on top as single pieces is left out");
        Dictionary<string, ThermalMixture> mixtures = new(Names.Comparer);
        foreach (var layer in standing)
            if (!mixtures.ContainsKey(layer.Component) && batch.Find(layer.Component) is { } component && MixtureOf(component, layer, lacks, remarks) is { } mixture)
                mixtures.Add(layer.Component, mixture);
        if (standing.Length == 0) lacks.Add("a layer in montage.csv");
        if (lacks.Count > 0) return new(null, mixtures, lacks, remarks);
        var curves = mixtures.ToDictionary(pair => pair.Key, pair => ThermalCurve.Of(pair.Key, pair.Value), Names.Comparer);
        HeatDisc[] discs = [.. DiscsOf(standing, layer => curves[layer.Component], startCelsius, remarks)];
        return new(MouldedPiece.Standing(discs, cellMillimetres), mixtures, [], [.. remarks.Distinct()]);
    }

    /// <summary>The mixture of a component with its air and its freezing point; null, with what is lacking noted, where too little is known.</summary>
    private static ThermalMixture? MixtureOf(ComponentBatch component, PlacedLayer layer, List<string> lacks, List<string> remarks)
    {
        var balance = Balance.Of(component.Out);
        var makeup = HeatMakeup.Of(balance);
        lacks.AddRange(makeup.Lacks.Select(lack => $"{component.Name}: {lack}"));
        if (layer.DensityGramsPerMillilitre is not > 0) lacks.Add($"{component.Name}: a density");
        if (makeup.Shares is not { } shares || layer.DensityGramsPerMillilitre is not { } density) return null;
        if (makeup.AssumedPercent > 0.5) remarks.Add(string.Create(CultureInfo.InvariantCulture, $"{component.Name}: {makeup.AssumedPercent:0.#} % of the mass, of unknown nature, counts as carbohydrate"));
        var mixture = Freezing(balance, shares, component.Name, remarks).WithFat(FatMelting.Of(balance));
        var solid = mixture.DensityKgPerM3(DensityAtCelsius);
        if (density * 1000 > solid * WorthSaying) remarks.Add(string.Create(CultureInfo.InvariantCulture, $"{component.Name}: without air it would have {solid / 1000:0.00} g/mL, less than the {density:0.00} of the sheets; the lower one counts"));
        return mixture.WithDensity(Math.Min(density * 1000, solid), DensityAtCelsius);
    }

    private static ThermalMixture Freezing(Balance balance, Proximates shares, string component, List<string> remarks)
    {
        var curve = FreezingCurve.Of(balance);
        var point = curve.InitialFreezingPoint is { IsKnown: true } first ? first.Value : curve.CelsiusAtIceShare(FirstIceShareOfWater);
        if (point is >= -40 and <= -0.01) return ThermalMixture.Make(shares, point, 0, celsius => curve.IceShareAt(celsius) is { IsKnown: true } ice ? ice.Value : 0);
        remarks.Add($"{component}: counts as if nothing in it froze");
        return ThermalMixture.Make(shares);
    }

    // A film lies around what it covers, so it comes before it; a lining is a disc with a hollow.
    private static IEnumerable<HeatDisc> DiscsOf(IReadOnlyList<PlacedLayer> layers, Func<PlacedLayer, ThermalCurve> curve, Func<string, double> start, List<string> remarks)
    {
        var floor = layers.Min(layer => layer.BottomMillimetres);
        foreach (var layer in layers.Where(layer => layer.As != Placing.Film))
        {
            foreach (var film in layers.Where(film => film.As == Placing.Film && Names.Same(film.Inside, layer.Component)))
                yield return Disc(film.Outer, film.BottomMillimetres - floor, film.ThicknessMillimetres, film);
            yield return Disc(layer.Outer, layer.BottomMillimetres - floor, 0, layer);
            if (layer.Hollow is { } hollow) yield return Disc(hollow, layer.BottomMillimetres - floor + layer.ThicknessMillimetres, 0, layer) with { Material = null };
        }

        HeatDisc Disc(Shape shape, double bottom, double coatMillimetres, PlacedLayer layer)
        {
            var height = shape.HeightMillimetres;
            var diameter = 2 * Math.Sqrt(shape.VolumeMillilitres * 1000 / height / Math.PI);
            if (Math.Abs(diameter / 2 - shape.HalfWidthAt(height / 2)) > 0.01 * diameter)
                remarks.Add(string.Create(CultureInfo.InvariantCulture, $"{layer.Component}: counts as a round of the same height and volume, {diameter:0} mm wide"));
            return new(curve(layer), diameter + 2 * coatMillimetres, height + coatMillimetres, bottom, start(layer.Component));
        }
    }
}
