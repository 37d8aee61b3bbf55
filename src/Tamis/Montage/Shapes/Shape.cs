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

    /// <summary>How thick a lining on base and wall is that takes a volume: the reverse of <see cref="HollowOf"/>.</summary>
    /// <param name="volumeMillilitres">What the lining takes, above 0.</param>
    /// <returns>The thickness in millimetres; null where so much leaves no hollow, or where a shape is not lined.</returns>
    public double? LiningThicknessOf(double volumeMillilitres)
    {
        if (!(volumeMillilitres > 0)) return null;
        // A thicker lining leaves less, until it leaves nothing at all.
        var (thin, thick) = (0.0, HeightMillimetres);
        for (var halving = 0; halving < 60; halving++)
        {
            var middle = (thin + thick) / 2;
            if (HollowOf(middle) is { } hollow && VolumeMillilitres - hollow.VolumeMillilitres < volumeMillilitres) thin = middle;
            else thick = middle;
        }
        return thin > 0 && HollowOf(thin) is { } left && Math.Abs(VolumeMillilitres - left.VolumeMillilitres - volumeMillilitres) < 1e-6 * VolumeMillilitres ? thin : null;
    }

    /// <summary>What comes out of a mould of this shape that is not filled up: a mould that is narrow at its top is filled upside down, through its base.</summary>
    /// <param name="volumeMillilitres">What is filled in, above 0.</param>
    /// <returns>The part of the shape; the whole where it is full; null where it does not fit in.</returns>
    public Shape? FilledWith(double volumeMillilitres)
    {
        if (!(volumeMillilitres > 0) || volumeMillilitres > VolumeMillilitres * (1 + 1e-9)) return null;
        if (volumeMillilitres >= VolumeMillilitres * (1 - 1e-9)) return this;
        var isUpsideDown = AreaAt(HeightMillimetres * (1 - 1e-9)) < AreaAt(0) * (1 - 1e-9);
        var level = HeightOf(isUpsideDown ? VolumeMillilitres - volumeMillilitres : volumeMillilitres)!.Value;
        return isUpsideDown ? new PartFilled(this, level, HeightMillimetres - level) : new PartFilled(this, 0, level);
    }

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
