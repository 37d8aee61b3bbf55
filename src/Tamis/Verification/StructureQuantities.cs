using Tamis.Physics;

namespace Tamis.Verification;

/// <summary>Quantities of gels, emulsions, foams, fats, leavening and ratios, as check files ask for them.</summary>
public static class StructureQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["bloom_equivalent_mass_linear"] = Of(inputs => Gelatine.LinearEquivalentGrams(inputs.Number("gelatine_g"), inputs.Number("bloom_from"), inputs.Number("bloom_to"))),
        ["bloom_equivalent_mass_sqrt"] = Of(inputs => Gelatine.SquareRootEquivalentGrams(inputs.Number("gelatine_g"), inputs.Number("bloom_from"), inputs.Number("bloom_to"))),
        ["hydrated_gelatine_mass"] = Of(inputs => Gelatine.HydratedMassGrams(inputs.Number("gelatine_g"), inputs.Number("water_per_gelatine_g_g"))),
        ["gelatine_leaf_mass"] = Of(inputs => GelatineGrade.Named(inputs.Text("grade")).Leaves(inputs.Number("leaves")).Value),
        ["gel_setting_temperature_low"] = Of(inputs => Agent(inputs).SetsAtCelsius?.Low),
        ["gel_setting_temperature_high"] = Of(inputs => Agent(inputs).SetsAtCelsius?.High),
        ["gel_melting_temperature_low"] = Of(inputs => Agent(inputs).MeltsAtCelsius?.Low),
        ["gel_melting_temperature_high"] = Of(inputs => Agent(inputs).MeltsAtCelsius?.High),
        ["starch_gelatinisation_low"] = Of(inputs => Starch.Named(inputs.Text("starch")).GelatinisesAtCelsius.Low),
        ["starch_gelatinisation_high"] = Of(inputs => Starch.Named(inputs.Text("starch")).GelatinisesAtCelsius.High),
        ["egg_setting_temperature"] = Of(inputs => EggSetting.Named(inputs.Text("change")).AtCelsius.Low),
        ["water_percent_of_mixture"] = Of(inputs => Mixed(inputs, "mass_g", "water_percent")),
        ["fat_percent_of_mixture"] = Of(inputs => Mixed(inputs, "mass_g", "fat_percent")),
        ["overrun_percent_by_mass"] = Of(inputs => Foam.OverrunPercent(inputs.Number("liquid_g"), inputs.Number("foam_g"))),
        ["foam_density_from_overrun"] = Of(inputs => Foam.DensityGramsPerMillilitre(inputs.Number("liquid_density_g_ml"), inputs.Number("overrun_percent"))),
        ["air_volume_fraction"] = Of(inputs => Foam.AirVolumeShare(inputs.Number("overrun_percent"))),
        ["folded_foam_density"] = Of(inputs => Foam.FoldedDensityGramsPerMillilitre(inputs.Number("base_g"), inputs.Number("base_density_g_ml"),
            new FoldedFoam(inputs.Number("foam_g"), inputs.Number("foam_density_g_ml"), inputs.Number("foam_liquid_density_g_ml"), inputs.Number("air_loss_percent")))),
        ["ideal_solubility_mole_fraction"] = Of(inputs => CocoaButter.IdealSolubilityShare(inputs.Number("temperature_c"), inputs.Number("enthalpy_of_fusion_kj_mol"), inputs.Number("melting_point_c"))),
        ["solid_fat_fraction_lever"] = Of(inputs => CocoaButter.SolidShare(inputs.Number("cocoa_butter_mass_fraction"), inputs.Number("temperature_c"), inputs.Number("enthalpy_of_fusion_kj_mol"), inputs.Number("melting_point_c"))),
        ["cocoa_butter_melting_point"] = Of(inputs => CocoaButter.MeltingPoint(inputs.Text("form")).Value),
        ["solid_fat_percent_table"] = Of(inputs => SolidFatCurve.Named(inputs.Text("fat")).SolidPercent(inputs.Number("temperature_c"))),
        ["tempering_work_low"] = Of(inputs => Tempering.Of(inputs.Text("chocolate"))[0].WorkCelsius.Low),
        ["tempering_work_high"] = Of(inputs => Tempering.Of(inputs.Text("chocolate"))[0].WorkCelsius.High),
        ["tempering_cool_low"] = Of(inputs => Tempering.Of(inputs.Text("chocolate"))[0].CoolCelsius?.Low),
        ["carbon_dioxide_mass_from_soda"] = Of(inputs => Leavening.CarbonDioxideGrams(inputs.Number("sodium_bicarbonate_g"), Reaction(inputs))),
        ["gas_mass_from_ammonium_bicarbonate"] = Of(inputs => Leavening.GasGramsOfAmmoniumBicarbonate(inputs.Number("ammonium_bicarbonate_g"))),
        ["leavening_acid_mass"] = Of(inputs => Leavening.AcidGrams(inputs.Number("sodium_bicarbonate_g"), inputs.Number("neutralising_value"))),
        ["leavening_acid_mass_stoichiometric"] = Of(inputs => Leavening.AcidGramsByMoles(inputs.Number("sodium_bicarbonate_g"), inputs.Number("acid_molar_mass_g_mol"), inputs.Number("soda_molar_mass_g_mol"), inputs.Number("acid_protons"))),
        ["carbon_dioxide_mass_baking_powder"] = Of(inputs => Leavening.CarbonDioxideGrams(
            inputs.Number("powder_g") * inputs.Number("soda_percent") / 100, inputs.Number("powder_g") * inputs.Number("acid_percent") / 100, inputs.Number("neutralising_value"))),
        ["carbon_dioxide_volume_ideal_gas"] = Of(inputs => Leavening.CarbonDioxideMillilitres(
            Leavening.CarbonDioxideGrams(inputs.Number("sodium_bicarbonate_g"), Reaction(inputs)), inputs.Number("temperature_c"), inputs.Number("pressure_kpa"))),
        ["dough_water_temperature"] = Of(inputs => Leavening.DoughWaterCelsius(inputs.Number("desired_dough_temperature_c"), inputs.Number("friction_c"), inputs.Number("flour_temperature_c"), inputs.Number("room_temperature_c"))),
        ["ratio_part_mass"] = Of(inputs => inputs.Numbers("parts")[(int)inputs.Number("part_index") - 1] / inputs.Numbers("parts").Sum() * inputs.Number("total_g")),
        ["water_percent_of_ratio"] = Of(inputs => Mixed(inputs, "parts", "water_percent")),
    };

    private static Func<CheckInputs, CheckValue> Of(Func<CheckInputs, double?> figure) =>
        inputs => CheckValue.Of(figure(inputs) ?? throw new InvalidOperationException("the kit has no figure for it"));

    private static double Mixed(CheckInputs inputs, string masses, string contents) => Emulsion.PercentOfMixture([.. inputs.Numbers(masses)], [.. inputs.Numbers(contents)]);

    private static Hydrocolloid Agent(CheckInputs inputs) => Hydrocolloid.Named(inputs.Text("agent"));

    private static SodaReaction Reaction(CheckInputs inputs) => inputs.Text("reaction") switch
    {
        "full_acid" => SodaReaction.WithAcid,
        "heat_only" => SodaReaction.ByHeat,
        var other => throw new FormatException($"the input 'reaction' is '{other}', not full_acid or heat_only"),
    };
}
