using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Verification;

/// <summary>What the heat part of the physics room lends to the published checks: thermal properties, freezing and cooling times, heat balance, drying, lethality.</summary>
/// <remarks>Inputs end in their unit: <c>temperature_c</c>, <c>thickness_m</c>, <c>latent_heat_j_kg</c>. A figure that the kit refuses to work out is reported as a miss with its reason.</remarks>
public static class HeatQuantities
{
    private static readonly Source Row = new("check row", Evidence.Sheet);

    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>
    {
        ["component_density_choi_okos"] = inputs => CheckValue.Of(ThermalTable.Kit.DensityKgPerM3(Component(inputs), inputs.Number("temperature_c"))),
        ["component_specific_heat_choi_okos"] = inputs => CheckValue.Of(ThermalTable.Kit.SpecificHeatKJPerKgK(Component(inputs), inputs.Number("temperature_c"))),
        ["component_conductivity_choi_okos"] = inputs => CheckValue.Of(ThermalTable.Kit.ConductivityWPerMK(Component(inputs), inputs.Number("temperature_c"))),
        ["component_diffusivity_from_properties"] = inputs => CheckValue.Of(ThermalTable.Kit.DiffusivityMm2PerS(Component(inputs), inputs.Number("temperature_c"))),
        ["component_diffusivity_choi_okos"] = inputs => CheckValue.Of(ThermalTable.Kit.DiffusivityPolynomialMm2PerS(Component(inputs), inputs.Number("temperature_c"))),
        ["specific_heat_quadratic"] = inputs => CheckValue.Of(new Quadratic(inputs.Number("c0_kj_kg_k"), inputs.Number("c1_kj_kg_k2"), inputs.Number("c2_kj_kg_k3")).At(inputs.Number("temperature_c"))),
        ["mixture_density_choi_okos"] = inputs => Figure(Mixture(inputs).Density(Given(inputs, "temperature_c", "°C"))),
        ["mixture_specific_heat_choi_okos"] = inputs => Figure(Mixture(inputs).SpecificHeat(Given(inputs, "temperature_c", "°C"))),
        ["mixture_conductivity_parallel"] = inputs => Figure(Mixture(inputs).Conductivity(Given(inputs, "temperature_c", "°C"))),
        ["freezing_time_plank"] = inputs => CheckValue.Of(FreezingTimes.PlankSeconds(Shape(inputs), inputs.OptionalNumber("thickness_m") ?? inputs.Number("diameter_m"), inputs.Number("density_kg_m3"),
            inputs.Number("latent_heat_j_kg"), inputs.Number("freezing_point_c"), inputs.Number("medium_temperature_c"), inputs.Number("heat_transfer_coefficient_w_m2_k"), inputs.Number("conductivity_frozen_w_m_k")) / 3600),
        ["mean_freezing_temperature_pham"] = inputs => CheckValue.Of(FreezingTimes.PhamMeanFreezingCelsius(inputs.Number("final_centre_temperature_c"), inputs.Number("medium_temperature_c"))),
        ["freezing_time_pham"] = inputs => CheckValue.Of(FreezingTimes.PhamSeconds(Shape(inputs), inputs.OptionalNumber("half_thickness_m") ?? inputs.Number("radius_m"), inputs.Number("heat_transfer_coefficient_w_m2_k"),
            inputs.Number("conductivity_frozen_w_m_k"), inputs.Number("density_unfrozen_kg_m3") * inputs.Number("specific_heat_unfrozen_j_kg_k"), inputs.Number("density_frozen_kg_m3"), inputs.Number("specific_heat_frozen_j_kg_k"),
            inputs.Number("latent_heat_j_kg"), inputs.Number("initial_temperature_c"), inputs.Number("final_centre_temperature_c"), inputs.Number("medium_temperature_c")) / 3600),
        ["one_term_slab_zeta"] = inputs => Zeta(ConductionShape.Slab, inputs),
        ["one_term_cylinder_zeta"] = inputs => Zeta(ConductionShape.Cylinder, inputs),
        ["one_term_sphere_zeta"] = inputs => Zeta(ConductionShape.Sphere, inputs),
        ["one_term_slab_a1"] = inputs => Coefficient(ConductionShape.Slab, inputs),
        ["one_term_cylinder_a1"] = inputs => Coefficient(ConductionShape.Cylinder, inputs),
        ["one_term_sphere_a1"] = inputs => Coefficient(ConductionShape.Sphere, inputs),
        ["cooling_time_slab_one_term"] = inputs => Figure(Cooling(inputs, ConductionShape.Slab, "half_thickness_m").MinutesByFirstTerm()),
        ["cooling_time_short_cylinder_one_term"] = inputs => Figure((Cooling(inputs, ConductionShape.Cylinder, "radius_m") with { HalfHeight = Millimetres(inputs, "half_height_m") }).MinutesByFirstTerm()),
        ["slab_temperature_ratio_series"] = inputs => CheckValue.Of(ConductionSeries.Of(ConductionShape.Slab, inputs.Number("biot")).Ratio(inputs.Number("fourier"), inputs.Number("relative_position"))),
        ["f_value_slab"] = inputs => CheckValue.Of(ConductionSeries.Of(ConductionShape.Slab, inputs.Number("biot"), firstTermOnly: true).FValueMinutes(inputs.Number("half_thickness_m"), inputs.Number("diffusivity_m2_s"))),
        ["mixing_temperature"] = inputs => Figure(HeatBalance.MixingTemperature(Parts(inputs))),
        ["mixing_temperature_melting"] = inputs => Figure(HeatBalance.MixingTemperature(Parts(inputs))),
        ["bake_loss_percent"] = inputs => Figure(BakingLoss.Percent(Given(inputs, "batter_g", "g"), Given(inputs, "baked_g", "g"))),
        ["water_mass_first_order_drying"] = inputs => Figure(BakingLoss.WaterAfter(Given(inputs, "initial_water_g", "g"), Given(inputs, "equilibrium_water_g", "g"), Given(inputs, "rate_per_minute", "1/min"), Given(inputs, "time_minutes", "min"))),
        ["water_percent_after_loss"] = inputs => Figure(BakingLoss.WaterPercentAfter(Given(inputs, "water_percent", "%"), Given(inputs, "loss_percent", "%"))),
        ["content_percent_after_loss"] = inputs => Figure(BakingLoss.ContentPercentAfter(Given(inputs, "content_percent", "%"), Given(inputs, "loss_percent", "%"), Given(inputs, "water_percent", "%"))),
        ["equivalent_time_minutes"] = inputs => Figure(Lethality.EquivalentMinutes(Reference(inputs) with { Target = Given(inputs, "reference_time_minutes", "min") }, Given(inputs, "temperature_c", "°C"))),
        ["lethality_minutes_trapezoid"] = inputs => Figure(Lethality.MinutesByTrapezium(Log(inputs), Reference(inputs))),
        ["lethality_minutes_linear_temperature"] = inputs => Figure(Lethality.Minutes(Log(inputs), Reference(inputs))),
        ["log_reduction"] = inputs => Figure(Lethality.LogReduction(Given(inputs, "lethality_minutes", "min"), Given(inputs, "d_value_minutes", "min"))),
        ["z_value_from_two_times"] = inputs => Figure(Lethality.Z(Given(inputs, "temperature_1_c", "°C"), Given(inputs, "time_1_minutes", "min"), Given(inputs, "temperature_2_c", "°C"), Given(inputs, "time_2_minutes", "min"))),
        ["pasteurisation_minimum_minutes"] = Minimum,
    };

    private static ThermalComponent Component(CheckInputs inputs) => ThermalTable.Words.TryGetValue(inputs.Text("component"), out var component) ? component
        : throw new FormatException($"the input 'component' is '{inputs.Text("component")}', not one of {string.Join(", ", ThermalTable.Words.Keys)}");

    private static ConductionShape Shape(CheckInputs inputs) => Enum.TryParse<ConductionShape>(inputs.Text("shape"), ignoreCase: true, out var shape) ? shape
        : throw new FormatException($"the input 'shape' is '{inputs.Text("shape")}', not slab, cylinder or sphere");

    private static ThermalMixture Mixture(CheckInputs inputs)
    {
        double Share(string component) => inputs.OptionalNumber(component + "_mass_fraction") ?? 0;
        return ThermalMixture.Make(Proximates.FromGrams(Share("water"), Share("protein"), Share("fat"), Share("carbohydrate"), Share("fibre"), Share("ash")));
    }

    private static CheckValue Zeta(ConductionShape shape, CheckInputs inputs) => CheckValue.Of(ConductionRoots.Zeta(shape, inputs.Number("biot")));

    private static CheckValue Coefficient(ConductionShape shape, CheckInputs inputs) => CheckValue.Of(ConductionRoots.Coefficient(shape, ConductionRoots.Zeta(shape, inputs.Number("biot"))));

    private static CoolingCase Cooling(CheckInputs inputs, ConductionShape shape, string length) => new()
    {
        Shape = shape,
        Length = Millimetres(inputs, length),
        Conductivity = Given(inputs, "conductivity_w_m_k", "W/(m·K)"),
        Density = Given(inputs, "density_kg_m3", "kg/m³"),
        SpecificHeat = Given(inputs, "specific_heat_j_kg_k", "kJ/(kg·K)", 1e-3),
        Transfer = Given(inputs, "heat_transfer_coefficient_w_m2_k", "W/(m²·K)"),
        Initial = Given(inputs, "initial_temperature_c", "°C"),
        Final = Given(inputs, "final_centre_temperature_c", "°C"),
        Air = Given(inputs, "medium_temperature_c", "°C"),
    };

    private static MixedPart[] Parts(CheckInputs inputs)
    {
        var (mass, heat, temperature) = (inputs.Numbers("mass_g"), inputs.Numbers("specific_heat_j_kg_k"), inputs.Numbers("temperature_c"));
        if (mass.Count != heat.Count || mass.Count != temperature.Count) throw new FormatException("the lists of masses, specific heats and temperatures differ in length");
        var parts = mass.Select((grams, i) => new MixedPart(new("mass", grams, "g", Row), new("specific heat", heat[i] / 1000, "kJ/(kg·K)", Row), new("temperature", temperature[i], "°C", Row)));
        if (inputs.OptionalText("fat_percent") is null) return [.. parts];
        var (fat, solid) = (inputs.Numbers("fat_percent"), inputs.Numbers("solid_share_of_fat_percent"));
        if (fat.Count != mass.Count || solid.Count != mass.Count) throw new FormatException("the lists of fat and of its solid share are as long as that of masses");
        return [.. parts.Select((part, i) => part with
        {
            MeltingFat = new("melting fat", mass[i] * fat[i] / 100 * solid[i] / 100, "g", Row),
            MeltingHeat = Given(inputs, "latent_heat_j_g", "J/g"),
        })];
    }

    private static LethalityReference Reference(CheckInputs inputs) =>
        new(Given(inputs, "reference_temperature_c", "°C"), Given(inputs, "z_c", "°C"), PhysicsData.Kit.Constant("minutes at the reference of cook-chill"));

    private static TemperatureLog Log(CheckInputs inputs)
    {
        const string Series = "time_temperature_minutes_c";
        return TemperatureLog.Of([.. inputs.Table(Series).Select(pair => pair is [var minutes, var celsius]
            ? (Number(minutes), Number(celsius))
            : throw new FormatException($"the input '{Series}' holds '{string.Join(':', pair)}', not minutes:celsius"))], Row);

        static double Number(string text) => NumberText.TryParse(text, '.', out var number, out _) ? number : throw new FormatException($"the input '{Series}' holds '{text}', not a number");
    }

    private static CheckValue Minimum(CheckInputs inputs)
    {
        var celsius = inputs.OptionalNumber("temperature_f") is { } fahrenheit ? PasteurisationMinimum.FromFahrenheit(fahrenheit) : inputs.Number("temperature_c");
        return PasteurisationMinimum.Find(inputs.Text("product"), inputs.Text("jurisdiction"), celsius) is { } minimum ? CheckValue.Of(minimum.Minutes)
            : throw new FormatException($"no row of the kit tells a minimum for {inputs.Text("product")} in {inputs.Text("jurisdiction")} at that temperature");
    }

    private static Given Given(CheckInputs inputs, string name, string unit, double factor = 1) => new(name, inputs.Number(name) * factor, unit, Row);

    private static Given Millimetres(CheckInputs inputs, string name) => Given(inputs, name, "mm", 1000);

    private static CheckValue Figure(Predicted predicted) => predicted.IsKnown ? CheckValue.Of(predicted.Value) : throw new FormatException(predicted.ToString());
}
