using MathNet.Numerics.Integration;

namespace Tamis.Montage;

/// <summary>A solid as it stands on the plate, its base at height 0. All lengths in millimetres.</summary>
public abstract record Shape
{
    /// <summary>From base to top.</summary>
    public abstract double HeightMillimetres { get; }

    /// <summary>The whole volume, in millilitres, by the textbook's formula.</summary>
    public abstract double VolumeMillilitres { get; }

    /// <summary>The widest half of the section through the middle.</summary>
    public double WidestHalfMillimetres => Math.Max(HalfWidthAt(0), HalfWidthAt(HeightMillimetres));

    /// <summary>The area of the base, in square centimetres.</summary>
    public double BaseSquareCentimetres => AreaAt(0) / 100;

    /// <summary>What a coat covers: everything but the base, in square centimetres.</summary>
    public abstract double CoatedSquareCentimetres { get; }

    /// <summary>Half of the width of the section through the middle at a height; 0 outside the solid.</summary>
    public abstract double HalfWidthAt(double heightMillimetres);

    /// <summary>The area of the level section at a height, in square millimetres.</summary>
    public abstract double AreaAt(double heightMillimetres);

    /// <summary>The hollow left by a lining of one thickness on base and wall, open above.</summary>
    /// <returns>The hollow, its own base at height 0; null where the lining leaves none, or where a shape is not lined.</returns>
    public virtual Shape? HollowOf(double thicknessMillimetres) => null;

    /// <summary>The volume from the base up to a height, in millilitres.</summary>
    public double VolumeBelow(double heightMillimetres) => heightMillimetres >= HeightMillimetres ? VolumeMillilitres
        : heightMillimetres <= 0 ? 0
        : GaussLegendreRule.Integrate(AreaAt, 0, heightMillimetres, 64) / 1000;

    /// <summary>The height to which a volume fills the shape from its base; null where it does not fit in.</summary>
    public double? HeightOf(double volumeMillilitres)
    {
        if (volumeMillilitres < 0 || volumeMillilitres > VolumeMillilitres * (1 + 1e-9)) return null;
        if (volumeMillilitres >= VolumeMillilitres) return HeightMillimetres;
        return MathNet.Numerics.RootFinding.Brent.FindRoot(height => VolumeBelow(height) - volumeMillilitres, 0, HeightMillimetres, 1e-9);
    }
}
