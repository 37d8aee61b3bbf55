using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

/// <summary>A slab of 40 mm in air of −60 °C with an enthalpy curve of 2,201 knots: the case that a script in NumPy also computes.</summary>
internal static class SlabCase
{
    public const double ThicknessMillimetres = 40, StartCelsius = 20, StepSeconds = 0.015, Minutes = 12.5;
    public const int Cells = 200, Steps = 50_000;

    public static HeatStage Stage { get; } = HeatStage.AllRound(Minutes, Surroundings.Air(-60, 200));

    public static HeatColumn Column(int cells = Cells) => HeatColumn.Of(ConductionShape.Slab, [new(Curve, ThicknessMillimetres, StartCelsius)], cells);

    // 60 % water, freezing from −2.5 °C, a twentieth of the mass bound; heat content summed by the trapezium and rounded as the script's table is.
    public static ThermalCurve Curve { get; } = Make();

    private static ThermalCurve Make()
    {
        double[] celsius = [.. Enumerable.Range(0, 1550).Select(i => -80 + 0.05 * i), .. Enumerable.Range(0, 651).Select(i => -2.5 + 0.05 * i)];
        double[] ice = [.. celsius.Select(t => t < -2.5 - 1e-9 ? (0.60 - 0.05) * (1 - -2.5 / t) : 0)];
        var heat = new double[celsius.Length];
        for (var i = 1; i < heat.Length; i++)
        {
            var middle = (ice[i] + ice[i - 1]) / 2;
            heat[i] = heat[i - 1] + (0.4 * 1500 + (0.60 - middle) * 4180 + middle * 2050) * (celsius[i] - celsius[i - 1]) - 333600 * (ice[i] - ice[i - 1]);
        }
        return ThermalCurve.FromKnots("test food", 900, [.. celsius.Select(t => Math.Round(t, 4))], [.. heat.Select(h => Math.Round(h, 3))], [.. ice.Select(share => Math.Round(0.45 + share * 2, 6))]);
    }
}
