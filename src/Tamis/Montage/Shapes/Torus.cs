namespace Tamis.Montage;

/// <summary>A round tube laid in a ring, whole or its upper half with the flat side down.</summary>
/// <param name="RingRadius">From the middle to the middle of the tube.</param>
/// <param name="TubeRadius">Of the tube, at most <paramref name="RingRadius"/>.</param>
/// <param name="IsHalf">Whether only the upper half is there.</param>
public sealed record Torus(double RingRadius, double TubeRadius, bool IsHalf) : Shape
{
    /// <summary>A whole tube: <c>diameter_mm</c> is the outer one, <c>height_mm</c> that of the tube.</summary>
    public static ShapeKind Kind { get; } = new("torus", [ShapeKind.DiameterColumn, ShapeKind.HeightColumn],
        given => new Torus((given.Diameter!.Value - given.Height!.Value) / 2, given.Height.Value / 2, IsHalf: false));

    /// <summary>The upper half: <c>diameter_mm</c> is the outer one, <c>height_mm</c> the radius of the tube.</summary>
    public static ShapeKind Half { get; } = new("half torus", [ShapeKind.DiameterColumn, ShapeKind.HeightColumn],
        given => new Torus(given.Diameter!.Value / 2 - given.Height!.Value, given.Height.Value, IsHalf: true));

    private double Share => IsHalf ? 0.5 : 1;

    private double Middle => IsHalf ? 0 : TubeRadius;

    /// <inheritdoc/>
    public override double HeightMillimetres => IsHalf ? TubeRadius : 2 * TubeRadius;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Share * 2 * Math.PI * Math.PI * RingRadius * TubeRadius * TubeRadius / 1000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => Share * 4 * Math.PI * Math.PI * RingRadius * TubeRadius / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres < 0 || heightMillimetres > HeightMillimetres ? 0 : RingRadius + HalfChord(heightMillimetres);

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => 4 * Math.PI * RingRadius * HalfChord(heightMillimetres);

    private double HalfChord(double height) => Math.Sqrt(Math.Max(0, TubeRadius * TubeRadius - (height - Middle) * (height - Middle)));
}
