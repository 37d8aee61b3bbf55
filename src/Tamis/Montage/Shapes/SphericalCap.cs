namespace Tamis.Montage;

/// <summary>A piece of a ball, flat side down; half a ball where the height is half of the diameter.</summary>
public sealed record SphericalCap(double BaseDiameter, double Height) : Shape
{
    /// <summary>Half a ball.</summary>
    public static ShapeKind Hemisphere { get; } = new("hemisphere", [ShapeKind.DiameterColumn], given => new SphericalCap(given.Diameter!.Value, given.Diameter.Value / 2));

    /// <summary>Less than half a ball.</summary>
    public static ShapeKind Cap { get; } = new("cap", [ShapeKind.DiameterColumn, ShapeKind.HeightColumn], given => new SphericalCap(given.Diameter!.Value, given.Height!.Value));

    private double Base => BaseDiameter / 2;

    private double Radius => (Base * Base + Height * Height) / (2 * Height);

    /// <inheritdoc/>
    public override double HeightMillimetres => Height;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Math.PI * Height * (3 * Base * Base + Height * Height) / 6000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => Math.PI * (Base * Base + Height * Height) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= Height ? Math.Sqrt(Math.Max(0, AreaAt(heightMillimetres) / Math.PI)) : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres)
    {
        var aboveCentre = Radius - Height + heightMillimetres;
        return Math.PI * Math.Max(0, Radius * Radius - aboveCentre * aboveCentre);
    }
}
