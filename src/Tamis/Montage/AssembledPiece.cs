namespace Tamis.Montage;

/// <summary>One piece as it is put together.</summary>
/// <param name="Layers">What stands in it, in the order of the sheet.</param>
/// <param name="Remarks">What does not look right but can be made: a layer above the rim, a given mass that its volume does not bear out.</param>
public sealed record AssembledPiece(IReadOnlyList<PlacedLayer> Layers, IReadOnlyList<string> Remarks)
{
    /// <summary>What it weighs; null while a layer's mass is unknown.</summary>
    public double? MassGrams => Layers.Count > 0 && Layers.All(layer => layer.MassGrams is not null) ? Layers.Sum(layer => layer.MassGrams) : null;

    /// <summary>Its height without what is set on top as single pieces.</summary>
    public double HeightMillimetres => Layers.Where(layer => layer.As != Placing.Piece).Select(layer => layer.TopMillimetres).DefaultIfEmpty().Max();

    /// <summary>Its greatest width.</summary>
    public double WidthMillimetres => Layers.Where(layer => layer.As != Placing.Piece).Select(layer => 2 * layer.Outer.WidestHalfMillimetres).DefaultIfEmpty().Max();

    /// <summary>What a component weighs in it, wherever it stands; null where unknown, 0 where it does not occur.</summary>
    public double? GramsOf(string component)
    {
        PlacedLayer[] own = [.. Layers.Where(layer => Names.Same(layer.Component, component))];
        return own.Any(layer => layer.MassGrams is null) ? null : own.Sum(layer => layer.MassGrams) ?? 0;
    }
}
