namespace Tamis.Montage;

/// <summary>A quenelle: a long round body, lying.</summary>
public sealed record Ellipsoid(double Length, double DiameterMillimetres) : Shape
{
    /// <summary>A quenelle.</summary>
    public static ShapeKind Quenelle { get; } = new("quenelle", [ShapeKind.LengthColumn, ShapeKind.DiameterColumn], given => new Ellipsoid(given.Length!.Value, given.Diameter!.Value));

    private double Radius => DiameterMillimetres / 2;

    /// <inheritdoc/>
    public override double HeightMillimetres => DiameterMillimetres;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Math.PI * Length * DiameterMillimetres * DiameterMillimetres / 6000;

    /// <summary>By Thomsen's formula, p = 1.6075, within about 1 % (from memory).</summary>
    public override double CoatedSquareCentimetres
    {
        get
        {
            const double p = 1.6075;
            var (a, b) = (Math.Pow(Length / 2, p), Math.Pow(Radius, p));
            return 4 * Math.PI * Math.Pow((2 * a * b + b * b) / 3, 1 / p) / 100;
        }
    }

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => Math.Sqrt(Math.Max(0, Radius * Radius - Math.Pow(heightMillimetres - Radius, 2)));

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Math.PI * Math.Pow(HalfWidthAt(heightMillimetres), 2) * Length / DiameterMillimetres;
}
