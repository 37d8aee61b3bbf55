namespace Tamis.Montage;

/// <summary>The dimensions that a mould's row gives; null where its cell is blank.</summary>
public sealed record Dimensions(double? Diameter, double? TopDiameter, double? Length, double? Width, double? Height, double? MeasuredMillilitres);

/// <summary>A word for a shape in <c>moulds.csv</c>, and how its dimensions make a solid.</summary>
/// <param name="Name">The word.</param>
/// <param name="Needs">The columns that must be filled.</param>
/// <param name="Make">The solid; only called with all of <paramref name="Needs"/> there and above zero.</param>
public sealed record ShapeKind(string Name, IReadOnlyList<string> Needs, Func<Dimensions, Shape> Make)
{
    /// <summary>Whether what lies in it is spread raw through it: the place holds raw mass.</summary>
    public bool HoldsRaw { get; init; }

    /// <summary>All shapes of the trade that the kit knows; a new one is a line here and a file beside.</summary>
    public static IReadOnlyList<ShapeKind> All { get; } =
    [
        Cylinder.Ring, Frustum.TaperedRing, SphericalCap.Hemisphere, SphericalCap.Cap, Dome.Kind, Torus.Kind, Torus.Half,
        Cuboid.Bar, Cuboid.Sheet, HalfCylinder.Kind, Stadium.Kind, Ellipsoid.Quenelle, Leaf.Stencil, MeasuredShape.Kind,
    ];

    internal const string DiameterColumn = "diameter_mm", TopDiameterColumn = "top_diameter_mm", LengthColumn = "length_mm", WidthColumn = "width_mm", HeightColumn = "height_mm", MeasuredColumn = "measured_ml";
}
