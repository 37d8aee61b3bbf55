namespace Tamis.Montage;

/// <summary>A long shape with round ends and straight walls.</summary>
/// <param name="Length">Overall length, at least <paramref name="Width"/>.</param>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
public sealed record Stadium(double Length, double Width, double Height) : Shape
{
    /// <summary>A long mould with round ends.</summary>
    public static ShapeKind Kind { get; } = new("round-ended", [ShapeKind.LengthColumn, ShapeKind.WidthColumn, ShapeKind.HeightColumn],
        given => new Stadium(Math.Max(given.Length!.Value, given.Width!.Value), Math.Min(given.Length.Value, given.Width.Value), given.Height!.Value));

    /// <inheritdoc/>
    public override double HeightMillimetres => Height;

    /// <inheritdoc/>
    public override double VolumeMillilitres => AreaAt(0) * Height / 1000;

    /// <inheritdoc/>
    public override double CoatedSquareCentimetres => (AreaAt(0) + (Math.PI * Width + 2 * (Length - Width)) * Height) / 100;

    /// <inheritdoc/>
    public override double HalfWidthAt(double heightMillimetres) => heightMillimetres >= 0 && heightMillimetres <= Height ? Width / 2 : 0;

    /// <inheritdoc/>
    public override double AreaAt(double heightMillimetres) => Math.PI * Width * Width / 4 + (Length - Width) * Width;

    /// <inheritdoc/>
    public override Shape? HollowOf(double thicknessMillimetres) => Width > 2 * thicknessMillimetres && Height > thicknessMillimetres
        ? new Stadium(Length - 2 * thicknessMillimetres, Width - 2 * thicknessMillimetres, Height - thicknessMillimetres)
        : null;
}
