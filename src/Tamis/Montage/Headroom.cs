namespace Tamis.Montage;

/// <summary>The room between what is filled into a lining and its rim.</summary>
/// <param name="Lining">The component that lines.</param>
/// <param name="Millimetres">From the highest fill to the rim; below 0 where it stands above.</param>
/// <param name="Millilitres">What still goes in, below 0 for what is too much.</param>
public sealed record Headroom(string Lining, double Millimetres, double Millilitres)
{
    /// <summary>The headroom of every lining of a piece that something is filled into.</summary>
    public static IReadOnlyList<Headroom> Of(AssembledPiece piece) =>
        [.. from lining in piece.Layers
            where lining.Hollow is not null
            let fills = piece.Layers.Where(layer => layer.As == Placing.Fill && Names.Same(layer.Inside, lining.Component)).ToArray()
            where fills.Length > 0
            let room = lining.TopMillimetres - fills.Max(layer => layer.TopMillimetres)
            select new Headroom(lining.Component, room, lining.Hollow!.VolumeMillilitres - fills.Sum(layer => layer.VolumeMillilitres))];
}
