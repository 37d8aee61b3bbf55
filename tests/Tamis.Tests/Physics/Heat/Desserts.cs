using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

/// <summary>Mixtures and pieces for tests; the figures are invented, of the size that such desserts have.</summary>
internal static class Desserts
{
    public static ThermalMixture Mousse { get; } = ThermalMixture.Make(Proximates.FromGrams(58, 4, 18, 19, 0, 1), -3.2).WithDensity(700, 4);

    public static ThermalMixture Gel { get; } = ThermalMixture.Make(Proximates.FromGrams(70, 1, 0, 27, 1.5, 0.5), -2.8);

    public static ThermalMixture Crumble { get; } = ThermalMixture.Make(Proximates.FromGrams(3, 7, 27, 58, 4, 1)).WithDensity(650, 20);

    /// <summary>A mousse of 140 mm × 30 mm with a gel of 120 mm × 10 mm on a crumble of 130 mm × 4 mm.</summary>
    public static MouldedPiece Entremets(double cellMillimetres) => MouldedPiece.Of(
    [
        new(ThermalCurve.Of("mousse", Mousse), 140, 30, 0, 12),
        new(ThermalCurve.Of("crumble", Crumble), 130, 4, 0, 20),
        new(ThermalCurve.Of("gel", Gel), 120, 10, 10, 4),
    ], cellMillimetres);
}
