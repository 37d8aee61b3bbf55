namespace Tamis.Physics;

/// <summary>The thermal properties of a mixture as figures that say where they hold and how they came about.</summary>
public static class ThermalPredictions
{
    private static readonly Source Made = new("what the mixture is made of", Evidence.Computed);

    extension(ThermalMixture mixture)
    {
        /// <summary>Density with its air, kg/m³.</summary>
        public Predicted Density(Given temperature) => Of("density_choi_okos", mixture, temperature, mixture.DensityKgPerM3);

        /// <summary>Specific heat without freezing, kJ/(kg·K).</summary>
        public Predicted SpecificHeat(Given temperature) => Of("specific_heat_choi_okos", mixture, temperature, mixture.SpecificHeatKJPerKgK);

        /// <summary>Conductivity with ice and air, W/(m·K).</summary>
        public Predicted Conductivity(Given temperature) => Of("conductivity_choi_okos", mixture, temperature, mixture.ConductivityWPerMK);

        /// <summary>Diffusivity, mm²/s.</summary>
        public Predicted Diffusivity(Given temperature) => Of("diffusivity_from_properties", mixture, temperature, mixture.DiffusivityMm2PerS);

        /// <summary>Heat content above −40 °C, kJ/kg.</summary>
        public Predicted Enthalpy(Given temperature) => Of("enthalpy_choi_okos", mixture, temperature, mixture.EnthalpyKJPerKg);

        /// <summary>Ice, % of the mass.</summary>
        public Predicted Ice(Given temperature) => Of("ice_share", mixture, temperature, celsius => mixture.IceShare(celsius) * 100);
    }

    private static Predicted Of(string key, ThermalMixture mixture, Given temperature, Func<double, double> at)
    {
        List<Given> given = [temperature with { Name = "temperature" }];
        for (var c = ThermalComponent.Water; c < ThermalComponent.Ice; c++)
            if (mixture.Of.Share(c) > 0) given.Add(new(Names.Key(c.ToString()), mixture.Of.Share(c) * 100, "%", Made));
        if (mixture.AirShareOfVolume > 0) given.Add(new("air in the volume", mixture.AirShareOfVolume * 100, "%", Made));
        if (mixture.FreezingPointCelsius is { } point) given.Add(new("freezing point", point, "°C", Made));
        return CheckedPrediction.Of(key, given, x => at(x[0]));
    }
}
