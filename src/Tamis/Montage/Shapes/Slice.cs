namespace Tamis.Montage;

/// <summary>The part of a hollow between two levels: what a fill is. Above the rim it keeps the width of the rim.</summary>
/// <param name="Hollow">The hollow.</param>
/// <param name="From">Its lower level above the hollow's floor.</param>
/// <param name="Thickness">From the lower to the upper level.</param>
public sealed record Slice(Shape Hollow, double From, double Thickness) : Shape
{
    /// <inheritdoc/>
    public override double HeightMillimetres => Thickness;

    /// <inheritdoc/>
    public override double VolumeMillilitres => Hollow.VolumeBelow(From + Thickness) - Hollow.VolumeBelow(From)
        + Math.Max(0, From + Thickness - Hollow.HeightMillimetres) * Hollow.AreaAt(Hollow.HeightMillimetres) / 1000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => AreaAt(Thickness) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= Thickness ? Hollow.HalfWidthAt(Level(heightMillimetres)) : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Hollow.AreaAt(Level(heightMillimetres));

    private double Level(double height) => Math.Min(From + height, Hollow.HeightMillimetres);
}
