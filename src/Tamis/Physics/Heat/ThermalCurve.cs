using System.Globalization;

namespace Tamis.Physics;

/// <summary>What a march has to know of a material: temperature and conductivity against heat content, straight between knots.</summary>
/// <remarks>The density stays as it is while heat moves: mass is conserved, swelling is left out. Beyond the outermost knots the lines run on.</remarks>
public sealed class ThermalCurve
{
    private const double ColdestCelsius = -80, HottestCelsius = 150, DensityAtCelsius = 4;
    // Below the freezing point ice follows 1/T: knots in steps of this ratio keep straight lines within a thousandth of the curve.
    private const double StepRatio = 1.015, StepCelsius = 1;

    private ThermalCurve(string name, double density, double[] temperature, double[] enthalpy, double[] conductivity)
    {
        (Name, DensityKgPerM3, TemperatureCelsius, EnthalpyJPerKg, ConductivityWPerMK) = (name, density, temperature, enthalpy, conductivity);
        SteepestKelvinKgPerJ = Enumerable.Range(1, temperature.Length - 1).Max(i => (temperature[i] - temperature[i - 1]) / (enthalpy[i] - enthalpy[i - 1]));
        HighestConductivityWPerMK = conductivity.Max();
    }

    /// <summary>What it is.</summary>
    public string Name { get; }

    /// <summary>Density, kg/m³.</summary>
    public double DensityKgPerM3 { get; }

    /// <summary>The knots' temperatures, rising, °C.</summary>
    public IReadOnlyList<double> TemperatureCelsius { get; }

    /// <summary>The heat content at the knots, rising, J/kg.</summary>
    public IReadOnlyList<double> EnthalpyJPerKg { get; }

    /// <summary>The conductivity at the knots, W/(m·K).</summary>
    public IReadOnlyList<double> ConductivityWPerMK { get; }

    /// <summary>The least heat for a degree, as degrees for a J/kg: what bounds an explicit step.</summary>
    internal double SteepestKelvinKgPerJ { get; }

    /// <summary>The highest conductivity of any knot, W/(m·K).</summary>
    internal double HighestConductivityWPerMK { get; }

    /// <summary>A curve from knots, as measured or tabulated.</summary>
    /// <exception cref="ArgumentException">The lists differ in length, have fewer than two knots, do not rise, or a density or conductivity is not above zero.</exception>
    public static ThermalCurve FromKnots(string name, double densityKgPerM3, IReadOnlyList<double> temperatureCelsius, IReadOnlyList<double> enthalpyJPerKg, IReadOnlyList<double> conductivityWPerMK)
    {
        if (temperatureCelsius.Count < 2 || temperatureCelsius.Count != enthalpyJPerKg.Count || temperatureCelsius.Count != conductivityWPerMK.Count)
            throw new ArgumentException($"{name}: a curve has two knots or more, each with temperature, heat content and conductivity; found {temperatureCelsius.Count}, {enthalpyJPerKg.Count} and {conductivityWPerMK.Count}.");
        if (!(densityKgPerM3 > 0 && double.IsFinite(densityKgPerM3)))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name}: a density is above 0 kg/m³; found {densityKgPerM3}."));
        for (var i = 0; i < temperatureCelsius.Count; i++)
        {
            var rises = i == 0 || temperatureCelsius[i] > temperatureCelsius[i - 1] && enthalpyJPerKg[i] > enthalpyJPerKg[i - 1];
            if (!rises || !(conductivityWPerMK[i] > 0))
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{name}: temperature and heat content rise from knot to knot and a conductivity is above 0; knot {i + 1} at {temperatureCelsius[i]} °C does not fit."));
        }
        return new(name, densityKgPerM3, [.. temperatureCelsius], [.. enthalpyJPerKg], [.. conductivityWPerMK]);
    }

    /// <summary>A material whose properties do not change with temperature.</summary>
    public static ThermalCurve Steady(string name, double densityKgPerM3, double conductivityWPerMK, double specificHeatJPerKgK) => FromKnots(name, densityKgPerM3,
        [ColdestCelsius, HottestCelsius], [ColdestCelsius * specificHeatJPerKgK, HottestCelsius * specificHeatJPerKgK], [conductivityWPerMK, conductivityWPerMK]);

    /// <summary>The curve of a mixture, with the density that it has near 4 °C.</summary>
    public static ThermalCurve Of(string name, ThermalMixture mixture)
    {
        double[] knots = [.. Knots(mixture.FreezingPointCelsius)];
        return FromKnots(name, mixture.DensityKgPerM3(DensityAtCelsius), knots,
            [.. knots.Select(celsius => mixture.EnthalpyKJPerKg(celsius) * 1000)], [.. knots.Select(mixture.ConductivityWPerMK)]);
    }

    /// <summary>Heat content at a temperature, J/kg.</summary>
    public double EnthalpyAt(double celsius) => Along(TemperatureCelsius, EnthalpyJPerKg, celsius);

    /// <summary>Temperature of a heat content, °C.</summary>
    public double TemperatureAt(double enthalpyJPerKg) => Along(EnthalpyJPerKg, TemperatureCelsius, enthalpyJPerKg);

    private static double Along(IReadOnlyList<double> from, IReadOnlyList<double> to, double at)
    {
        var (low, high) = (0, from.Count - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (from[middle] <= at) low = middle;
            else high = middle;
        }
        return to[low] + (to[high] - to[low]) * (at - from[low]) / (from[high] - from[low]);
    }

    private static IEnumerable<double> Knots(double? freezingPoint)
    {
        List<double> knots = [];
        if (freezingPoint is { } point)
        {
            for (var celsius = point; celsius > ColdestCelsius; celsius *= StepRatio) knots.Add(celsius);
            knots.Add(ColdestCelsius);
            knots.Reverse();
        }
        else knots.Add(ColdestCelsius);
        for (var celsius = Math.Floor(knots[^1]) + StepCelsius; celsius <= HottestCelsius; celsius += StepCelsius) knots.Add(celsius);
        return knots;
    }
}
