namespace Tamis.Montage;

/// <summary>A bar, a cube, a frame or a sheet.</summary>
public sealed record Cuboid(double Length, double Width, double Height) : Shape
{
    /// <summary>A bar, a square or a cube.</summary>
    public static ShapeKind Bar { get; } = new("bar", [ShapeKind.LengthColumn, ShapeKind.WidthColumn, ShapeKind.HeightColumn], Make);

    /// <summary>A sheet in a frame; what is cut from it is another row.</summary>
    public static ShapeKind Sheet { get; } = new("sheet", [ShapeKind.LengthColumn, ShapeKind.WidthColumn, ShapeKind.HeightColumn], Make);

    /// <inheritdoc/>
    public override double HeightMillimetres => Height;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Length * Width * Height / 1000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => (Length * Width + 2 * (Length + Width) * Height) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= Height ? Width / 2 : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Length * Width;

    /// <inheritdoc/>
    public override Shape? HollowOf(double thicknessMillimetres) => Math.Min(Length, Width) > 2 * thicknessMillimetres && Height > thicknessMillimetres
        ? new Cuboid(Length - 2 * thicknessMillimetres, Width - 2 * thicknessMillimetres, Height - thicknessMillimetres)
        : null;

    private static Cuboid Make(Dimensions given) => new(given.Length!.Value, given.Width!.Value, given.Height!.Value);
}
