using Tamis.Montage;

namespace Tamis.Verification;

/// <summary>Shapes, moulds and linings, as check files ask for them. Lengths come in centimetres, thicknesses in millimetres.</summary>
public static class ShapeQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["volume_cylinder"] = inputs => Volume(Round(inputs, "diameter_cm", "height_cm")),
        ["volume_frustum"] = inputs => Volume(Tapered(inputs, "")),
        ["volume_hemisphere"] = inputs => Volume(new SphericalCap(Cm(inputs, "diameter_cm"), Cm(inputs, "diameter_cm") / 2)),
        ["volume_spherical_cap"] = inputs => Volume(CapOf(inputs)),
        ["volume_torus"] = inputs => Volume(new Torus(Cm(inputs, "ring_radius_cm"), Cm(inputs, "tube_radius_cm"), IsHalf: false)),
        ["volume_half_torus"] = inputs => Volume(new Torus((Cm(inputs, "outer_diameter_cm") + Cm(inputs, "hole_diameter_cm")) / 4, (Cm(inputs, "outer_diameter_cm") - Cm(inputs, "hole_diameter_cm")) / 4, IsHalf: true)),
        ["volume_half_cylinder"] = inputs => Volume(new HalfCylinder(2 * Cm(inputs, "radius_cm"), Cm(inputs, "length_cm"))),
        ["volume_stadium"] = inputs => Volume(LongOf(inputs, "")),
        ["volume_prolate_ellipsoid"] = inputs => Volume(new Ellipsoid(Cm(inputs, "length_cm"), Cm(inputs, "diameter_cm"))),
        ["lining_area_straight_ring"] = inputs => CheckValue.Of(LinedSquareCentimetres(inputs)),
        ["lining_area_tapered_ring"] = inputs => CheckValue.Of(Tapered(inputs, "") is var tin ? tin.BaseSquareCentimetres + tin.WallSquareCentimetres : 0),
        ["lining_dough_mass_straight_ring"] = inputs => CheckValue.Of(LinedSquareCentimetres(inputs) * inputs.Number("thickness_mm") / 10 * inputs.Number("density_g_ml")),
        ["fill_volume_lined_straight_ring"] = inputs => Volume(Round(inputs, "diameter_cm", "height_cm").HollowOf(inputs.Number("thickness_mm")) ?? throw new FormatException("the lining leaves no hollow")),
        ["remaining_volume_cylinder_insert"] = inputs => CheckValue.Of(Round(inputs, "mould_diameter_cm", "mould_height_cm").VolumeMillilitres - Round(inputs, "insert_diameter_cm", "insert_height_cm").VolumeMillilitres),
        ["remaining_volume_stadium_insert"] = inputs => CheckValue.Of(LongOf(inputs, "mould_").VolumeMillilitres - LongOf(inputs, "insert_").VolumeMillilitres),
        ["pan_conversion_factor_area"] = inputs => CheckValue.Of(Base(inputs, "to") / Base(inputs, "from")),
        ["pan_conversion_factor_frustum_to_cylinder"] = inputs => CheckValue.Of(Round(inputs, "to_diameter_cm", "to_height_cm").VolumeMillilitres / Tapered(inputs, "from_").VolumeMillilitres),
        ["glaze_mass_spherical_cap"] = inputs => CheckValue.Of(CapOf(inputs).CoatedSquareCentimetres * inputs.Number("thickness_mm") / 10 * inputs.Number("density_g_ml")),
    };

    private static CheckValue Volume(Shape shape) => CheckValue.Of(shape.VolumeMillilitres);

    private static double Cm(CheckInputs inputs, string name) => inputs.Number(name) * 10;

    private static Cylinder Round(CheckInputs inputs, string diameter, string height) => new(Cm(inputs, diameter), Cm(inputs, height));

    private static Frustum Tapered(CheckInputs inputs, string which) => new(Cm(inputs, which + "bottom_diameter_cm"), Cm(inputs, which + "top_diameter_cm"), Cm(inputs, which + "height_cm"));

    private static SphericalCap CapOf(CheckInputs inputs) => new(2 * Cm(inputs, "base_radius_cm"), Cm(inputs, "height_cm"));

    private static Stadium LongOf(CheckInputs inputs, string which) => new(Cm(inputs, which + "length_cm"), Cm(inputs, which + "width_cm"), Cm(inputs, which + "height_cm"));

    // The source's lining: base and wall of the ring, the corner counted twice.
    private static double LinedSquareCentimetres(CheckInputs inputs) => Round(inputs, "diameter_cm", "height_cm").CoatedSquareCentimetres;

    private static double Base(CheckInputs inputs, string which) => inputs.Text(which + "_shape") == "square"
        ? new Cuboid(Cm(inputs, which + "_side_cm"), Cm(inputs, which + "_side_cm"), 1).BaseSquareCentimetres
        : new Cylinder(Cm(inputs, which + "_diameter_cm"), 1).BaseSquareCentimetres;
}
