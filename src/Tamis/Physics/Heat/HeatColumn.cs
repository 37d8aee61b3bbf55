using System.Globalization;

namespace Tamis.Physics;

/// <summary>The shapes in which heat moves along one line.</summary>
public enum ConductionShape
{
    /// <summary>A wide flat piece with two faces.</summary>
    Slab,
    /// <summary>A long roll.</summary>
    Cylinder,
    /// <summary>A ball.</summary>
    Sphere,
}

/// <summary>A layer of one material.</summary>
/// <param name="Material">What it is.</param>
/// <param name="ThicknessMillimetres">How thick, above 0.</param>
/// <param name="StartCelsius">Its temperature at the start.</param>
public sealed record HeatLayer(ThermalCurve Material, double ThicknessMillimetres, double StartCelsius)
{
    /// <summary>How thick, in millimetres.</summary>
    public double ThicknessMillimetres { get; } = double.IsFinite(ThicknessMillimetres) && ThicknessMillimetres > 0 ? ThicknessMillimetres
        : throw new ArgumentOutOfRangeException(nameof(ThicknessMillimetres), ThicknessMillimetres, "A layer is more than 0 mm thick.");
}

/// <summary>Layers in a row, cut into cells: a slab from its bottom to its top, a roll or ball from its middle outwards.</summary>
/// <remarks>A slab is counted per square metre of face, a roll per metre of length, a ball whole.</remarks>
public sealed class HeatColumn
{
    private HeatColumn(ConductionShape shape, IReadOnlyList<HeatLayer> layers, double[] edges, int[] layerOfCell)
    {
        (Shape, Layers, EdgeMetres, LayerOfCell) = (shape, layers, edges, layerOfCell);
        FaceM2 = [.. edges.Select(FaceArea)];
        VolumeM3 = [.. Enumerable.Range(0, Cells).Select(i => Volume(edges[i + 1]) - Volume(edges[i]))];
    }

    /// <summary>Slab, roll or ball.</summary>
    public ConductionShape Shape { get; }

    /// <summary>The layers, from the bottom or the middle.</summary>
    public IReadOnlyList<HeatLayer> Layers { get; }

    /// <summary>How many cells there are.</summary>
    public int Cells => LayerOfCell.Count;

    /// <summary>Where the cells end, from the bottom or the middle, m.</summary>
    public IReadOnlyList<double> EdgeMetres { get; }

    /// <summary>Which layer each cell belongs to.</summary>
    public IReadOnlyList<int> LayerOfCell { get; }

    internal double[] FaceM2 { get; }

    internal double[] VolumeM3 { get; }

    /// <summary>Cuts layers into cells of about one size, each layer into two at least.</summary>
    /// <exception cref="ArgumentException">There is no layer.</exception>
    public static HeatColumn Of(ConductionShape shape, IReadOnlyList<HeatLayer> layers, int cells = 100)
    {
        if (layers.Count == 0) throw new ArgumentException("A piece has at least one layer.", nameof(layers));
        var whole = layers.Sum(layer => layer.ThicknessMillimetres) / 1000;
        List<double> edges = [0];
        List<int> owner = [];
        for (var i = 0; i < layers.Count; i++)
        {
            var thickness = layers[i].ThicknessMillimetres / 1000;
            var count = layers.Count == 1 ? Math.Max(2, cells) : Math.Max(2, (int)Math.Round(cells * thickness / whole));
            var from = edges[^1];
            for (var cell = 1; cell <= count; cell++)
            {
                edges.Add(from + thickness * cell / count);
                owner.Add(i);
            }
        }
        return new(shape, layers, [.. edges], [.. owner]);
    }

    internal double WidthMetres(int cell) => EdgeMetres[cell + 1] - EdgeMetres[cell];

    internal ThermalCurve Material(int cell) => Layers[LayerOfCell[cell]].Material;

    /// <summary>The column in words, for a working.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{Names.Key(Shape.ToString())} of {string.Join(", ", Layers.Select(layer => string.Create(CultureInfo.InvariantCulture, $"{layer.ThicknessMillimetres:0.#} mm {layer.Material.Name}")))}");

    private double FaceArea(double r) => Shape switch { ConductionShape.Slab => 1, ConductionShape.Cylinder => 2 * Math.PI * r, _ => 4 * Math.PI * r * r };

    private double Volume(double r) => Shape switch { ConductionShape.Slab => r, ConductionShape.Cylinder => Math.PI * r * r, _ => 4 * Math.PI / 3 * r * r * r };
}
