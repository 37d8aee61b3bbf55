using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>How the components of food carry heat at a temperature: the coefficients of <c>data/physics/thermal-properties.csv</c>.</summary>
/// <remarks>Choi and Okos 1986, −40 to 150 °C, ice to 0 °C. Water below 0 °C that is not frozen has a specific heat of its own.</remarks>
public sealed class ThermalTable
{
    /// <summary>The sheet that the kit ships.</summary>
    public const string File = "thermal-properties.csv";

    private const string SupercooledWater = "supercooled water";
    private static readonly Lazy<ThermalTable> Shipped = new(() => Read(PhysicsData.Kit.Table(File)));
    private readonly Quadratic[] _density, _conductivity, _specificHeat, _diffusivity;
    private readonly Quadratic _supercooledSpecificHeat;

    private ThermalTable(Quadratic[] density, Quadratic[] conductivity, Quadratic[] specificHeat, Quadratic[] diffusivity, Quadratic supercooled) =>
        (_density, _conductivity, _specificHeat, _diffusivity, _supercooledSpecificHeat) = (density, conductivity, specificHeat, diffusivity, supercooled);

    /// <summary>What the kit ships.</summary>
    public static ThermalTable Kit => Shipped.Value;

    /// <summary>The components by their words, <c>water</c> to <c>ice</c>.</summary>
    public static IReadOnlyDictionary<string, ThermalComponent> Words { get; } =
        Enum.GetValues<ThermalComponent>().ToDictionary(each => Names.Key(each.ToString()), Names.Comparer);

    /// <summary>Density, kg/m³.</summary>
    public double DensityKgPerM3(ThermalComponent component, double celsius) => _density[(int)component].At(celsius);

    /// <summary>Thermal conductivity, W/(m·K).</summary>
    public double ConductivityWPerMK(ThermalComponent component, double celsius) => _conductivity[(int)component].At(celsius);

    /// <summary>Specific heat, kJ/(kg·K); of water below 0 °C the supercooled water's.</summary>
    public double SpecificHeatKJPerKgK(ThermalComponent component, double celsius) => SpecificHeat(component, celsius).At(celsius);

    /// <summary>Thermal diffusivity, conductivity over density and specific heat, mm²/s.</summary>
    /// <remarks>The sheet's own polynomial for it differs from this by up to 3 %; this one is consistent with the other three.</remarks>
    public double DiffusivityMm2PerS(ThermalComponent component, double celsius) =>
        ConductivityWPerMK(component, celsius) / (DensityKgPerM3(component, celsius) * SpecificHeatKJPerKgK(component, celsius)) * 1e3;

    /// <summary>Thermal diffusivity by the sheet's own polynomial, mm²/s.</summary>
    public double DiffusivityPolynomialMm2PerS(ThermalComponent component, double celsius) => _diffusivity[(int)component].At(celsius);

    /// <summary>Heat content above the component's own state at 0 °C, kJ/kg; of ice above ice at 0 °C.</summary>
    public double SensibleHeatKJPerKg(ThermalComponent component, double celsius) => SpecificHeat(component, celsius).Integral(celsius);

    /// <summary>Reads the coefficients.</summary>
    /// <exception cref="TableException">A cell cannot be read, or a component lacks a property; all are named.</exception>
    public static ThermalTable Read(Sheet sheet)
    {
        List<CellProblem> problems = [];
        Dictionary<(string Component, string Property), Quadratic> found = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            var key = (Names.Key(reader.Required("component")), Names.Key(reader.Required("property")));
            if (!found.TryAdd(key, new(reader.RequiredNumber("constant"), reader.RequiredNumber("per_degree"), reader.RequiredNumber("per_degree_squared"))))
                problems.Add(row.Problem("property", "a property that no other row of this component has"));
        }
        var components = Enum.GetValues<ThermalComponent>().Select(each => Names.Key(each.ToString())).ToArray();
        Quadratic[] Of(string property) => [.. components.Select(component => Find(component, property))];
        ThermalTable table = new(Of("density"), Of("conductivity"), Of("specific heat"), Of("diffusivity"), Find(SupercooledWater, "specific heat"));
        return problems.Count == 0 ? table : throw new TableException(problems);

        Quadratic Find(string component, string property)
        {
            if (found.TryGetValue((component, property), out var quadratic)) return quadratic;
            problems.Add(new(sheet.File, 0, "", "", $"a row with the {property} of {component} is wanted"));
            return default;
        }
    }

    private Quadratic SpecificHeat(ThermalComponent component, double celsius) =>
        component == ThermalComponent.Water && celsius < 0 ? _supercooledSpecificHeat : _specificHeat[(int)component];
}
