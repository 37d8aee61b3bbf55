namespace Tamis.Montage;

/// <summary>What comes out of a mould that is not filled up.</summary>
/// <param name="Whole">What would come out of it filled up.</param>
/// <param name="From">Where it begins above the base of the whole, in millimetres: above 0 where the mould is filled upside down.</param>
/// <param name="High">How high it is, in millimetres.</param>
public sealed record PartFilled(Shape Whole, double From, double High) : Shape
{
    /// <inheritdoc/>
    public override double HeightMillimetres => High;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Whole.VolumeBelow(From + High) - Whole.VolumeBelow(From);

    /// <summary>Top and wall. The wall is taken in proportion to its height, which is so of upright walls and of spheres (Archimedes) and near for others.</summary>
    public override double CoatedSquareCentimetres =>
        (AreaAt(High) + (Whole.CoatedSquareCentimetres * 100 - Whole.AreaAt(Whole.HeightMillimetres)) * High / Whole.HeightMillimetres) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= High ? Whole.HalfWidthAt(Math.Min(From + heightMillimetres, Whole.HeightMillimetres)) : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Whole.AreaAt(Math.Min(From + heightMillimetres, Whole.HeightMillimetres));
}
