using Tamis.Physics;

namespace Tamis.Verification;

/// <summary>Water activity, sugar solutions, freezing, sweetness and rules for ingredients, as check files ask for them.</summary>
/// <remarks>Solutes are inputs such as <c>sucrose_g</c>; <c>temperature_c</c> says where the equation holds and is held against it.</remarks>
public static class MixtureQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = Quantities.Merge(
        WaterActivity(), SugarSolutions(), Freezing(), SweetnessAndIngredients());

    private static Dictionary<string, Func<CheckInputs, CheckValue>> WaterActivity() => new(StringComparer.Ordinal)
    {
        ["water_activity_raoult"] = inputs => Number(SimpleModels.Raoult(SolutionOf(inputs).WaterMoles, SolutionOf(inputs).ParticleMoles)),
        ["water_activity_norrish"] = inputs => At(25, inputs, OneNorrish),
        ["water_activity_norrish_square_root"] = inputs => At(25, inputs, given => SolutionOf(given) is var solution ? Norrish.SquareRoot(solution.WaterMoles, solution.Moles, solution.NorrishConstants) : 0),
        ["water_activity_norrish_mean_k"] = inputs => At(25, inputs, given => SolutionOf(given) is var solution ? Norrish.MeanConstant(solution.WaterMoles, solution.Moles, solution.NorrishConstants) : 0),
        ["water_activity_ross"] = inputs => At(25, inputs, Ross),
        ["water_activity_pitzer"] = inputs => At(25, inputs, given => Salts.PitzerWaterActivity(given.Number("sodium_chloride_mol_kg"),
            Constant("pitzer beta0 of sodium chloride"), Constant("pitzer beta1 of sodium chloride"), Constant("pitzer c of sodium chloride"))),
        ["water_activity_bromley"] = inputs => At(25, inputs, given => Salts.BromleyWaterActivity(given.Number("sodium_chloride_mol_kg"), given.Number("b_kg_mol"))),
        ["water_activity_chen"] = inputs => Number(SimpleModels.Chen(inputs.Number("sucrose_mol_kg"), inputs.Number("beta"), inputs.Number("b"), inputs.Number("n"))),
        ["water_activity_money_born"] = inputs => Number(SimpleModels.MoneyAndBorn(SolutionOf(inputs).ParticleMoles / inputs.Number("water_g") * 100, Constant("money and born factor"))),
        ["water_activity_grover"] = inputs => Number(Grover(inputs)),
        ["number_average_molar_mass"] = inputs => Number(GlucoseSyrups.HundredGlucoseGramsPerMole / inputs.Number("dextrose_equivalent")),
        ["relative_humidity_saturated_salt_greenspan"] = inputs => Number(SaturatedSalts.Humidity(inputs.Text("salt").Replace('_', ' '), inputs.Number("temperature_c")).Value),
        ["relative_humidity_saturated_salt_exponential"] = inputs => Number(SaturatedSalts.ExponentialPercent(inputs.Number("temperature_c"), inputs.Number("a_percent"), inputs.Number("b_k"))),
    };

    private static Dictionary<string, Func<CheckInputs, CheckValue>> SugarSolutions() => new(StringComparer.Ordinal)
    {
        ["solution_density"] = inputs => At(20, inputs, given => SucroseSolution.Density(given.Number("sucrose_mass_percent")).Value),
        ["refractive_index"] = inputs => At(20, inputs, given => given.Number("wavelength_nm") == 589 ? SucroseSolution.RefractiveIndex(given.Number("sucrose_mass_percent")).Value
            : throw new FormatException("the refractive index is tabulated at 589 nm")),
        ["baume_from_specific_gravity"] = inputs => Number(SucroseSolution.Baume(inputs.Number("specific_gravity_20_20"), inputs.Number("modulus"))),
        ["baume_from_density"] = inputs => Number(SucroseSolution.Baume(inputs.Number("density_g_ml") / inputs.Number("water_density_g_ml"), inputs.Number("modulus"))),
        ["solubility_mass_percent_icumsa"] = inputs => Number(Solubility.Sucrose(inputs.Number("temperature_c")).Value),
        ["solubility_per_100g_water_icumsa"] = inputs => Number(Solubility.Per100GramsWater(Solubility.Sucrose(inputs.Number("temperature_c")).Value)),
        ["solubility_per_100g_water_table"] = inputs => Number(Solubility.SucroseByTable(inputs.Number("temperature_c")).Value),
        ["boiling_point_celsius_table"] = inputs => Number(Math.Abs(inputs.Number("pressure_kpa") - Constant("pressure at sea level")) < 1
            ? Boiling.OfSucroseByTable(inputs.Number("sucrose_mass_percent")).Value : throw new FormatException("the table is of boiling at sea level")),
        ["boiling_point_celsius_norrish"] = inputs => Number(Boiling.OfSucrose(inputs.Number("sucrose_mass_percent"), inputs.Number("pressure_kpa")).Value),
        ["sugar_stage_shift_altitude"] = inputs => Number(AirPressure.StageShift(inputs.Number("altitude_m")).Value),
    };

    private static Dictionary<string, Func<CheckInputs, CheckValue>> Freezing() => new(StringComparer.Ordinal)
    {
        ["sucrose_equivalent_leighton"] = inputs => Number(MixOf(inputs, 1).SucroseEquivalentGrams / inputs.Number("mix_g") * 100),
        ["freezing_point_depression_milk_salts"] = inputs => Number(FreezingEquations.MilkSaltsDepression(inputs.Number("nonfat_milk_solids_g") + inputs.Number("whey_solids_g"), inputs.Number("water_g"), Constant("milk salts factor"))),
        ["freezing_point_depression_sucrose_table"] = inputs => Number(-FreezingCurve.Of(MixOf(inputs)).InitialFreezingPoint.Value),
        ["initial_freezing_point_leighton"] = inputs => Number(FreezingCurve.Of(MixOf(inputs)).InitialFreezingPoint.Value),
        ["frozen_water_fraction_leighton"] = inputs => Number(FreezingCurve.Of(MixOf(inputs)).IceShareAt(inputs.Number("temperature_c")).Value),
        ["water_activity_ice_equilibrium"] = inputs => Number(FreezingEquations.WaterActivityOfIce(inputs.Number("temperature_c"), Constant("ice balance linear term"), Constant("ice balance quadratic term"))),
        ["freezing_point_from_water_activity"] = inputs => Number(FreezingEquations.FreezingCelsius(inputs.Number("water_activity"), Constant("ice balance linear term"), Constant("ice balance quadratic term"))),
    };

    private static Dictionary<string, Func<CheckInputs, CheckValue>> SweetnessAndIngredients() => new(StringComparer.Ordinal)
    {
        ["relative_freezing_power"] = inputs => Number(FreezingPower.Relative(inputs.Number("molar_mass_g_mol"), inputs.Number("particles"))),
        ["relative_freezing_power_glucose_syrup"] = inputs => Number(FreezingPower.OfGlucoseSyrup(inputs.Number("dextrose_equivalent"))),
        ["relative_freezing_power_mixture"] = inputs => inputs.Number("factor_monosaccharide") is var mono && inputs.Number("factor_disaccharide") is var twin
            ? Number(FreezingPower.OfMixture([inputs.Number("fructose_g"), inputs.Number("glucose_g"), inputs.Number("maltose_g"), inputs.Number("sucrose_g")], [mono, mono, twin, twin], inputs.Number("total_g"))) : default,
        ["sweetness_sucrose_equivalent"] = inputs => Number(Sweetness.SucroseEquivalentGrams([inputs.Number("sucrose_g"), inputs.Number("glucose_g"), inputs.Number("fructose_g")],
            [inputs.Number("sweetness_sucrose"), inputs.Number("sweetness_glucose"), inputs.Number("sweetness_fructose")])),
        ["lactose_from_nonfat_milk_solids"] = inputs => Number(IngredientRules.LactoseGrams(inputs.Number("nonfat_milk_solids_g"), Constant("lactose in milk solids not fat"))),
        ["nonfat_milk_solids_percent_of_cream"] = inputs => Number(IngredientRules.MilkSolidsPercentOfCream(inputs.Number("fat_percent"), Constant("nonfat milk solids in the part of cream that is not fat"))),
        ["nonfat_cocoa_solids_percent"] = inputs => Number(IngredientRules.CocoaSolidsPercent(inputs.Number("cocoa_percent"), inputs.Number("total_fat_percent"), inputs.Number("milk_fat_percent"))),
        ["pearson_square_mass"] = inputs => Number(IngredientRules.PearsonSquareGrams(inputs.Number("content_a_percent"), inputs.Number("content_b_percent"), inputs.Number("target_percent"), inputs.Number("total_g"))),
        ["sugar_solids_after_inversion"] = inputs => Number(IngredientRules.SolidsAfterInversionGrams(inputs.Number("sucrose_g"), inputs.Number("inversion_percent"))),
        ["ethanol_mass_percent"] = inputs => Number(IngredientRules.EthanolMassPercent(inputs.Number("alcohol_by_volume_percent"), inputs.Number("spirit_density_g_ml"), inputs.Number("ethanol_density_g_ml"))),
    };

    private static CheckValue Number(double number) => CheckValue.Of(number);

    private static double Constant(string name) => PhysicsData.Kit.Constant(name).Value;

    // The rows say at which temperature their equation holds; another one would be another equation.
    private static CheckValue At(double celsius, CheckInputs inputs, Func<CheckInputs, double> compute) => inputs.Number("temperature_c") == celsius
        ? Number(compute(inputs))
        : throw new FormatException(FormattableString.Invariant($"the equation holds at {celsius} °C"));

    private static IReadOnlyList<(string Solute, double Grams)> SolutesOf(CheckInputs inputs) =>
        [.. inputs.Values.Keys.Where(name => name.EndsWith("_g", StringComparison.Ordinal) && name != "water_g").Order(StringComparer.Ordinal)
            .Select(name => (name == "sodium_chloride_g" ? "salt" : name[..^2].Replace('_', ' '), inputs.Number(name)))];

    private static Solution SolutionOf(CheckInputs inputs) => Solution.OfGrams(inputs.Number("water_g"), SolutesOf(inputs));

    private static double OneNorrish(CheckInputs inputs)
    {
        if (SolutionOf(inputs) is not { Solutes: [var only] } solution) throw new FormatException("the equation is for one solute");
        return Norrish.WaterActivity(solution.WaterMoles, only.Moles, inputs.OptionalNumber($"k_{only.Solute.Name.Replace(' ', '_')}") ?? only.Solute.NorrishConstant);
    }

    private static double Ross(CheckInputs inputs)
    {
        if (inputs.Text("sugar_model") != "norrish" || inputs.OptionalText("salt_model") is not (null or "pitzer")) throw new FormatException("sugars go by norrish here and salt by pitzer");
        return WaterActivityModel.All.First(model => model.Name == "Ross").Compute(SolutionOf(inputs));
    }

    private static double Grover(CheckInputs inputs) => SimpleModels.Grover(
        inputs.Values.Keys.Where(name => name.StartsWith("e_", StringComparison.Ordinal)).Sum(name => inputs.Number(name) * (inputs.OptionalNumber($"{name[2..]}_g") ?? 0)) / inputs.Number("water_g"),
        Constant("grover constant term"), Constant("grover linear term"), Constant("grover quadratic term"));

    private static FreezingMix MixOf(CheckInputs inputs, double? waterGrams = null) => FreezingMix.FromGrams(waterGrams ?? inputs.Number("water_g"),
        inputs.OptionalNumber("sucrose_g") ?? 0, inputs.OptionalNumber("nonfat_milk_solids_g") ?? 0, inputs.OptionalNumber("whey_solids_g") ?? 0,
        inputs.OptionalNumber("glucose_g") ?? 0, inputs.OptionalNumber("glucose_syrup_solids_g") ?? 0, inputs.OptionalNumber("glucose_syrup_factor") ?? 0);
}
