namespace Tamis.Physics;

/// <summary>What is taken for a component of a family when water moves through it, until somebody measures it.</summary>
/// <param name="Family">The family, as in the windows.</param>
/// <param name="Isotherm">Its isotherm; null for a wet, sugar-rich layer, which takes one from its own composition (<see cref="SorptionIsotherm.OfComposition"/>).</param>
/// <param name="Diffusivity">How fast water moves in it at 20 °C, m²/s.</param>
/// <param name="Limit">The water activity that it must not pass; null where it has none.</param>
/// <param name="Source">Who says that the family is such a layer.</param>
public sealed record LayerKind(string Family, SorptionIsotherm? Isotherm, Given Diffusivity, WaterLimit? Limit, Source Source)
{
    /// <summary>Whether the isotherm is that of the starch, fibre and protein alone, so that fat and sugar beside them hold no water.</summary>
    public bool IsOfSwellingSolids { get; init; }

    /// <summary>The isotherm of a component of this kind; null where it takes one from its own composition.</summary>
    /// <param name="name">The component.</param>
    /// <param name="swellingShareOfDry">The share of starch, fibre and protein in its dry matter, 0 to 1; not asked where the isotherm is of all of it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The isotherm is of the swelling solids, and there are none.</exception>
    public SorptionIsotherm? IsothermOf(string name, double swellingShareOfDry) =>
        Isotherm is { } isotherm && IsOfSwellingSolids ? SorptionIsotherm.OfPart(name, isotherm, swellingShareOfDry) : Isotherm;
}
