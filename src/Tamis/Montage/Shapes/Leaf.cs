namespace Tamis.Montage;

/// <summary>A leaf spread through a stencil: two thirds of the box that it stands in (two parabolas, whose area is exactly that).</summary>
public sealed record Leaf(double Length, double Width, double Height) : Shape
{
    /// <summary>A stencil; what is spread through it is raw.</summary>
    public static ShapeKind Stencil { get; } = new("stencil", [ShapeKind.LengthColumn, ShapeKind.WidthColumn, ShapeKind.HeightColumn],
        given => new Leaf(given.Length!.Value, given.Width!.Value, given.Height!.Value)) { HoldsRaw = true };

    /// <inheritdoc/>
    public override double HeightMillimetres => Height;

    /// <inheritdoc/>
    public override double VolumeMillilitres => AreaAt(0) * Height / 1000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => AreaAt(0) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= Height ? Width / 2 : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Length * Width * 2 / 3;
}
