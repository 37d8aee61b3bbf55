namespace Tamis.Montage;

/// <summary>A ring's content, a disc, a round cut from a sheet.</summary>
public sealed record Cylinder(double DiameterMillimetres, double Height) : Shape
{
    /// <summary>An open ring or a straight round tin.</summary>
    public static ShapeKind Ring { get; } = new("ring", [ShapeKind.DiameterColumn, ShapeKind.HeightColumn], given => new Cylinder(given.Diameter!.Value, given.Height!.Value));

    /// <inheritdoc/>
    public override double HeightMillimetres => Height;

    /// <inheritdoc/>
    public override double VolumeMillilitres => AreaAt(0) * Height / 1000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => (AreaAt(0) + Math.PI * DiameterMillimetres * Height) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= Height ? DiameterMillimetres / 2 : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Math.PI * DiameterMillimetres * DiameterMillimetres / 4;

    /// <inheritdoc/>
    public override Shape? HollowOf(double thicknessMillimetres) => DiameterMillimetres > 2 * thicknessMillimetres && Height > thicknessMillimetres
        ? new Cylinder(DiameterMillimetres - 2 * thicknessMillimetres, Height - thicknessMillimetres)
        : null;
}
