namespace Tamis.Montage;

/// <summary>A log: half a cylinder lying on its flat side.</summary>
public sealed record HalfCylinder(double DiameterMillimetres, double Length) : Shape
{
    /// <summary>A log.</summary>
    public static ShapeKind Kind { get; } = new("half cylinder", [ShapeKind.DiameterColumn, ShapeKind.LengthColumn], given => new HalfCylinder(given.Diameter!.Value, given.Length!.Value));

    private double Radius => DiameterMillimetres / 2;

    /// <inheritdoc/>
    public override double HeightMillimetres => Radius;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Math.PI * Radius * Radius * Length / 2000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => Math.PI * Radius * (Length + Radius) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres < 0 || heightMillimetres > Radius ? 0 : Math.Sqrt(Radius * Radius - heightMillimetres * heightMillimetres);

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => 2 * HalfWidthAt(heightMillimetres) * Length;
}
