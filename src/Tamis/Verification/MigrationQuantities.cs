using Tamis.Physics;

namespace Tamis.Verification;

/// <summary>Water between layers, as check files ask for it.</summary>
public static class MigrationQuantities
{
    private const double SecondsPerDay = 86400, SecondsPerHour = 3600, GramsPerKilogram = 1000;

    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["moisture_content_gab"] = inputs => CheckValue.Of(Gab.Of(inputs.Number("m0_kg_kg"), inputs.Number("c"), inputs.Number("k")).WaterGramsPerGramDry(inputs.Number("water_activity"))),
        ["moisture_content_points_g_per_100g"] = inputs => CheckValue.Of(100 * MigrationData.Kit.Isotherm($"{inputs.Text("solid")}, {inputs.Text("form")}").WaterGramsPerGramDry(inputs.Number("water_activity"))),
        ["equilibrium_water_activity"] = inputs => CheckValue.Of(StackEquilibrium.Of(Holders(inputs)).WaterActivity.Value),
        ["diffusion_time_days"] = inputs => CheckValue.Of(DiffusionTimes.Seconds(inputs.Number("length_mm"), inputs.Number("diffusivity_m2_s")) / SecondsPerDay),
        ["diffusion_time_hours"] = inputs => CheckValue.Of(DiffusionTimes.Seconds(inputs.Number("length_mm"), inputs.Number("diffusivity_m2_s")) / SecondsPerHour),
        ["diffusion_half_time_days"] = inputs => CheckValue.Of(DiffusionTimes.HalfTimeSeconds(inputs.Number("length_mm"), inputs.Number("diffusivity_m2_s")) / SecondsPerDay),
        ["diffusion_done_share"] = inputs => CheckValue.Of(DiffusionTimes.DoneShare(inputs.Number("fourier"))),
        ["film_flux_g_m2_day"] = inputs => CheckValue.Of(GramsPerKilogram * SecondsPerDay * FatFilm.FluxKilogramsPerSquareMetreSecond(
            inputs.Number("permeability"), inputs.Number("thickness_mm"), inputs.Number("water_activity_wet") - inputs.Number("water_activity_dry"), inputs.Number("temperature_c"))),
        ["saturation_pressure_pa"] = inputs => CheckValue.Of(WaterVapour.SaturationPascals(inputs.Number("temperature_c"))),
    };

    private static IReadOnlyList<WaterHolder> Holders(CheckInputs inputs)
    {
        var (dry, activity) = (inputs.Numbers("dry_mass_g"), inputs.Numbers("initial_water_activity"));
        var (monolayer, c, k) = (inputs.Numbers("m0_kg_kg"), inputs.Numbers("c"), inputs.Numbers("k"));
        if (new[] { activity.Count, monolayer.Count, c.Count, k.Count }.Any(count => count != dry.Count)) throw new FormatException("the lists of the inputs are not of one length");
        Source source = new("check row", Evidence.Sheet);
        return [.. dry.Select((grams, i) => WaterHolder.OfActivity($"layer {i + 1}", SorptionIsotherm.OfGab($"layer {i + 1}", Gab.Of(monolayer[i], c[i], k[i]), Interval.Between(0, 1), source), grams, activity[i]))];
    }
}
