namespace Tamis.Montage;

/// <summary>Half a ball on a straight round wall, flat side down.</summary>
public sealed record Dome(double DiameterMillimetres, double Height) : Shape
{
    /// <summary>A dome whose height, wall included, is at least half of its diameter.</summary>
    public static ShapeKind Kind { get; } = new("dome", [ShapeKind.DiameterColumn, ShapeKind.HeightColumn], given => new Dome(given.Diameter!.Value, Math.Max(given.Height!.Value, given.Diameter.Value / 2)));

    private double Radius => DiameterMillimetres / 2;

    private double Wall => Height - Radius;

    /// <inheritdoc/>
    public override double HeightMillimetres => Height;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Math.PI * Radius * Radius * (Wall + Radius * 2 / 3) / 1000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => 2 * Math.PI * Radius * (Radius + Wall) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres < 0 || heightMillimetres > Height ? 0 : Math.Sqrt(AreaAt(heightMillimetres) / Math.PI);

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Math.Max(0, heightMillimetres - Wall) is var above ? Math.PI * Math.Max(0, Radius * Radius - above * above) : 0;
}
