namespace Tamis.Montage;

/// <summary>A mould without a formula: its volume was measured with water. Drawn, and taken where a width is needed, as a straight round solid of that volume and height.</summary>
public sealed record MeasuredShape(double Millilitres, double Height) : Shape
{
    /// <summary>A mould of any shape, its water weighed.</summary>
    public static ShapeKind Kind { get; } = new("measured", [ShapeKind.MeasuredColumn, ShapeKind.HeightColumn], given => new MeasuredShape(given.MeasuredMillilitres!.Value, given.Height!.Value));

    private double Radius => Math.Sqrt(Millilitres * 1000 / (Math.PI * Height));

    /// <inheritdoc/>
    public override double HeightMillimetres => Height;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Millilitres;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => (Math.PI * Radius * Radius + 2 * Math.PI * Radius * Height) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= Height ? Radius : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Math.PI * Radius * Radius;
}
