using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Tamis.Physics;
using Tamis.Tests.Physics.Heat;

namespace Tamis.Benchmarks;

/// <summary>The same slab in a script of NumPy, run by turns with ours. The script reads a folder with the case and the curve, and prints what it found and how long it took.</summary>
internal sealed class NumPySlab : IDisposable
{
    private const string Script = "numpy_heat.py";
    private readonly string _script;
    private readonly string _inputs = Directory.CreateTempSubdirectory("tamis-slab-").FullName;

    /// <param name="peers">The folder of scripts.</param>
    public NumPySlab(string peers)
    {
        _script = Path.Combine(peers, Script);
        if (!File.Exists(_script)) throw new FileNotFoundException($"The folder of scripts has no {Script}.", _script);
        var curve = SlabCase.Curve;
        File.WriteAllLines(Path.Combine(_inputs, "heat_case.csv"),
        [
            "thickness_m,nodes,steps,dt_s,density_kg_m3,air_c,h_w_m2k,start_c",
            Text($"{SlabCase.ThicknessMillimetres / 1000},{SlabCase.Cells},{SlabCase.Steps},{SlabCase.StepSeconds},{curve.DensityKgPerM3},{SlabCase.Stage.Top.AirCelsius},{SlabCase.Stage.Top.TransferWPerM2K},{SlabCase.StartCelsius}"),
        ]);
        File.WriteAllLines(Path.Combine(_inputs, "heat_curve.csv"), Enumerable.Range(0, curve.TemperatureCelsius.Count)
            .Select(i => Text($"{curve.TemperatureCelsius[i]},{curve.EnthalpyJPerKg[i]},{curve.ConductivityWPerMK[i]}")).Prepend("temperature_c,enthalpy_j_per_kg,conductivity_w_per_mk"));
    }

    /// <summary>The temperature of the middle cell at the end, °C, and the milliseconds that the script took for the march alone: no start of Python, no reading.</summary>
    public (double CoreCelsius, double Milliseconds) Run()
    {
        using var process = Process.Start(new ProcessStartInfo("python3", [_script, _inputs]) { RedirectStandardOutput = true })
            ?? throw new InvalidOperationException("python3 cannot be started.");
        var printed = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0) throw new InvalidOperationException("The script failed; the python3 that is found first needs NumPy and pandas.");
        using var found = JsonDocument.Parse(printed);
        var core = found.RootElement.GetProperty("checksum").GetProperty("core_c_every_10000_steps");
        return (core[core.GetArrayLength() - 1].GetDouble(), found.RootElement.GetProperty("seconds").GetProperty("march").GetDouble() * 1000);
    }

    public void Dispose() => Directory.Delete(_inputs, recursive: true);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
