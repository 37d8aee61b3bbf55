namespace Tamis.Physics;

/// <summary>What is taken for a component of a family when water moves through it, until somebody measures it.</summary>
/// <param name="Family">The family, as in the windows.</param>
/// <param name="Isotherm">Its isotherm; null for a wet, sugar-rich layer, which takes one from its own composition (<see cref="SorptionIsotherm.OfComposition"/>).</param>
/// <param name="Diffusivity">How fast water moves in it at 20 °C, m²/s.</param>
/// <param name="Limit">The water activity that it must not pass; null where it has none.</param>
/// <param name="Source">Who says that the family is such a layer.</param>
public sealed record LayerKind(string Family, SorptionIsotherm? Isotherm, Given Diffusivity, WaterLimit? Limit, Source Source);
