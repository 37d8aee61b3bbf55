namespace Tamis.Montage;

/// <summary>A tapered tin: round, its base and top of different diameters.</summary>
public sealed record Frustum(double BottomDiameter, double TopDiameter, double Height) : Shape
{
    /// <summary>A tapered round tin.</summary>
    public static ShapeKind TaperedRing { get; } = new("tapered ring", [ShapeKind.DiameterColumn, ShapeKind.TopDiameterColumn, ShapeKind.HeightColumn],
        given => new Frustum(given.Diameter!.Value, given.TopDiameter!.Value, given.Height!.Value));

    private double Bottom => BottomDiameter / 2;

    private double Top => TopDiameter / 2;

    /// <summary>The wall from the base's edge to the rim, along the slant.</summary>
    public double SlantMillimetres => Math.Sqrt((Top - Bottom) * (Top - Bottom) + Height * Height);

    /// <summary>The wall's area, in square centimetres.</summary>
    public double WallSquareCentimetres => Math.PI * (Top + Bottom) * SlantMillimetres / 100;

    /// <inheritdoc/>
    public override double HeightMillimetres => Height;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Math.PI * Height * (Top * Top + Top * Bottom + Bottom * Bottom) / 3000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => Math.PI * Top * Top / 100 + WallSquareCentimetres;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= Height ? Bottom + (Top - Bottom) * heightMillimetres / Height : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Math.PI * Math.Pow(Bottom + (Top - Bottom) * heightMillimetres / Height, 2);

    /// <inheritdoc/>
    public override Shape? HollowOf(double thicknessMillimetres)
    {
        // The lining is measured square to the wall, so it takes more of the width the more the wall leans.
        var across = thicknessMillimetres * SlantMillimetres / Height;
        var floor = HalfWidthAt(Math.Min(thicknessMillimetres, Height)) - across;
        return Height > thicknessMillimetres && floor > 0 && Top > across ? new Frustum(2 * floor, 2 * (Top - across), Height - thicknessMillimetres) : null;
    }
}
