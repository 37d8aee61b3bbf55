using Tamis.Physics;

namespace Tamis.Tests.Physics.Migration;

/// <summary>Stacks for the tests of water between layers.</summary>
internal static class Stacks
{
    public static readonly Source Made = new("made for a test", Evidence.Estimate);

    public static Given Diffusivity(double squareMetresPerSecond) => new("diffusivity", squareMetresPerSecond, "m²/s", Made);

    // A straight isotherm, for which the equations of diffusion have answers in closed form: within the activities that the test uses.
    public static SorptionIsotherm Straight(double gramsPerGram) => SorptionIsotherm.OfComposition("straight", water => water / gramsPerGram, Interval.Between(0.15 * gramsPerGram, 0.85 * gramsPerGram), Made);

    public static WaterLayer Shell(double activity = 0.25, double thickness = 3, double diffusivity = 3e-12) =>
        WaterLayer.OfActivity("shell", MigrationData.Kit.Isotherm("biscuit and shortcrust"), thickness, 1.08, activity, Diffusivity(diffusivity)) with { Limit = MigrationData.Kit.Limit("biscuit and shortcrust") };

    public static WaterLayer Sponge(double activity = 0.85, double thickness = 10, double diffusivity = 2e-10) =>
        WaterLayer.OfActivity("sponge", MigrationData.Kit.Isotherm("sponge"), thickness, 0.4, activity, Diffusivity(diffusivity)) with { Limit = MigrationData.Kit.Limit("sponge") };

    public static WaterStack Tart(FatFilm film) => WaterStack.Of([Shell(), Sponge()], [film], 20);

    public static double Most(IEnumerable<double> differences) => differences.Select(Math.Abs).Max();
}
