using System.Globalization;

namespace Tamis.Physics;

/// <summary>A mixture as heat meets it: what it is made of, where it begins to freeze, how much air it holds.</summary>
/// <remarks>
/// Properties of the components after Choi and Okos 1986, −40 to 150 °C; volumes add, specific heats add by mass, conductivities by volume
/// (the upper bound), air by Maxwell and Eucken. The melting of fat counts where it is given; evaporation does not.
/// Ice below the freezing point: <c>(water − bound water)·(1 − T_f/T)</c>, T in °C, or a curve of its own.
/// </remarks>
public sealed class ThermalMixture
{
    private static readonly double LatentHeatKJPerKg = PhysicsData.Kit.Constant("latent heat of ice at 0 °C").Value;
    private static readonly double BoundWaterPerProtein = PhysicsData.Kit.Constant("bound water per protein").Value;
    private static readonly double AirConductivity = PhysicsData.Kit.Constant("conductivity of still air").Value;
    private static readonly ThermalTable Table = ThermalTable.Kit;
    private readonly Func<double, double>? _frozenShareOfWater;

    private ThermalMixture(Proximates of, double? freezesAt, double air, Func<double, double>? frozen, FatMelting? fat) =>
        (Of, FreezingPointCelsius, AirShareOfVolume, _frozenShareOfWater, Fat) = (of, freezesAt, air, frozen, fat);

    /// <summary>What it is made of.</summary>
    public Proximates Of { get; }

    /// <summary>Where ice first forms, °C, below 0; null for a mixture whose water does not freeze.</summary>
    public double? FreezingPointCelsius { get; }

    /// <summary>The share of its volume that is air, 0 to below 1.</summary>
    public double AirShareOfVolume { get; }

    /// <summary>How its fat melts; null where that is left out.</summary>
    public FatMelting? Fat { get; }

    /// <summary>Water that never freezes, as a share of the mass: bound to protein.</summary>
    public double BoundWaterShare => Math.Min(Of.Water, BoundWaterPerProtein * Of.Protein);

    /// <summary>Makes a mixture.</summary>
    /// <param name="of">What it is made of.</param>
    /// <param name="freezingPointCelsius">Where ice first forms, from −40 to −0.01 °C; null where nothing freezes.</param>
    /// <param name="airShareOfVolume">The share of the volume that is air.</param>
    /// <param name="frozenShareOfWater">The share of all water that is ice at a temperature, if it is known better than by the freezing point alone.</param>
    /// <exception cref="ArgumentOutOfRangeException">The freezing point or the share of air cannot be.</exception>
    public static ThermalMixture Make(Proximates of, double? freezingPointCelsius = null, double airShareOfVolume = 0, Func<double, double>? frozenShareOfWater = null)
    {
        ArgumentNullException.ThrowIfNull(of);
        if (freezingPointCelsius is { } point && !(point is >= -40 and <= -0.01))
            throw new ArgumentOutOfRangeException(nameof(freezingPointCelsius), point, "A freezing point lies from −40 to −0.01 °C; leave it out for a mixture that does not freeze.");
        if (!(airShareOfVolume is >= 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(airShareOfVolume), airShareOfVolume, "The share of air is a part of the volume, from 0 to below 1.");
        return new(of, freezingPointCelsius, airShareOfVolume, frozenShareOfWater, null);
    }

    /// <summary>The same with fat that melts and sets.</summary>
    /// <param name="fat">How its fat melts; null to leave it out.</param>
    public ThermalMixture WithFat(FatMelting? fat) => new(Of, FreezingPointCelsius, AirShareOfVolume, _frozenShareOfWater, fat);

    /// <summary>The share of air that gives a mixture a density that was measured.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The density is not above zero, or more than the mixture has without air.</exception>
    public ThermalMixture WithDensity(double kgPerM3, double celsius)
    {
        var solid = 1 / VolumePerKg(celsius);
        // A little above comes from rounding and from the spread of foods; much above is a mistake in a sheet.
        if (!(kgPerM3 > 0) || kgPerM3 > solid * 1.05)
            throw new ArgumentOutOfRangeException(nameof(kgPerM3), kgPerM3, string.Create(CultureInfo.InvariantCulture, $"Without air the mixture has {solid:0} kg/m³; a density lies above 0 and not above that."));
        return new(Of, FreezingPointCelsius, Math.Max(0, 1 - kgPerM3 / solid), _frozenShareOfWater, Fat);
    }

    /// <summary>Ice as a share of the mass.</summary>
    public double IceShare(double celsius)
    {
        if (FreezingPointCelsius is not { } point || celsius >= point) return 0;
        return _frozenShareOfWater is { } frozen ? Of.Water * frozen(celsius) : (Of.Water - BoundWaterShare) * (1 - point / celsius);
    }

    /// <summary>Density with its air, kg/m³.</summary>
    public double DensityKgPerM3(double celsius) => (1 - AirShareOfVolume) / VolumePerKg(celsius);

    /// <summary>Specific heat without freezing and melting, kJ/(kg·K): what a degree costs while ice and solid fat stay as they are.</summary>
    public double SpecificHeatKJPerKgK(double celsius)
    {
        var sum = 0.0;
        var ice = IceShare(celsius);
        for (var c = ThermalComponent.Water; c <= ThermalComponent.Ice; c++)
            if (Share(c, ice) is var share and > 0) sum += share * Table.SpecificHeatKJPerKgK(c, celsius);
        return sum;
    }

    /// <summary>Thermal conductivity with ice and air, W/(m·K).</summary>
    public double ConductivityWPerMK(double celsius)
    {
        var ice = IceShare(celsius);
        double volume = 0, sum = 0;
        for (var c = ThermalComponent.Water; c <= ThermalComponent.Ice; c++)
        {
            if (Share(c, ice) is not (var share and > 0)) continue;
            var part = share / Table.DensityKgPerM3(c, celsius);
            volume += part;
            sum += part * Table.ConductivityWPerMK(c, celsius);
        }
        return WithAir(sum / volume, AirShareOfVolume, AirConductivity);
    }

    /// <summary>Thermal diffusivity without freezing, conductivity over density and specific heat, mm²/s.</summary>
    public double DiffusivityMm2PerS(double celsius) => ConductivityWPerMK(celsius) / (DensityKgPerM3(celsius) * SpecificHeatKJPerKgK(celsius)) * 1e3;

    /// <summary>Heat content above −40 °C, with the latent heat of what thaws and melts, kJ/kg.</summary>
    public double EnthalpyKJPerKg(double celsius) => HeatContent(celsius) - HeatContent(-40);

    /// <summary>Conductivity of a mixture with bubbles (Maxwell and Eucken, air dispersed), W/(m·K).</summary>
    public static double WithAir(double conductivityWPerMK, double airShareOfVolume, double airConductivityWPerMK)
    {
        var difference = airShareOfVolume * (conductivityWPerMK - airConductivityWPerMK);
        var sum = 2 * conductivityWPerMK + airConductivityWPerMK;
        return conductivityWPerMK * (sum - 2 * difference) / (sum + difference);
    }

    // Liquid water, melted fat and dry matter at 0 °C are zero, ice and solid fat are less by their latent heat: a function of state, so no path counts.
    private double HeatContent(double celsius)
    {
        if (celsius < Temperature.AbsoluteZeroCelsius) throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "There is no temperature below absolute zero, −273.15 °C.");
        var ice = IceShare(celsius);
        var sum = -ice * LatentHeatKJPerKg - (Fat?.BoundKJPerKg(celsius) ?? 0);
        for (var c = ThermalComponent.Water; c <= ThermalComponent.Ice; c++)
            if (Share(c, ice) is var share and > 0) sum += share * Table.SensibleHeatKJPerKg(c, celsius);
        return sum;
    }

    private double VolumePerKg(double celsius)
    {
        var ice = IceShare(celsius);
        var volume = 0.0;
        for (var c = ThermalComponent.Water; c <= ThermalComponent.Ice; c++)
            if (Share(c, ice) is var share and > 0) volume += share / Table.DensityKgPerM3(c, celsius);
        return volume;
    }

    private double Share(ThermalComponent component, double ice) => component switch
    {
        ThermalComponent.Ice => ice,
        ThermalComponent.Water => Of.Water - ice,
        _ => Of.Share(component),
    };
}
