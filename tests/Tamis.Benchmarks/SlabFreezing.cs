using BenchmarkDotNet.Attributes;
using Tamis.Physics;
using Tamis.Tests.Physics.Heat;

namespace Tamis.Benchmarks;

/// <summary>A slab of 200 cells that freezes for 12.5 minutes: 50,000 explicit steps beside 750 implicit ones.</summary>
[MemoryDiagnoser]
public class SlabFreezing
{
    private readonly HeatColumn _column = SlabCase.Column();

    /// <summary>The explicit march.</summary>
    [Benchmark(Baseline = true)]
    public double Explicit() => Core(HeatMarch.Explicit(_column, [SlabCase.Stage], new() { StepSeconds = SlabCase.StepSeconds }));

    /// <summary>The implicit march in steps of a second.</summary>
    [Benchmark]
    public double Implicit() => Core(HeatMarch.Implicit(_column, [SlabCase.Stage], new() { StepSeconds = 1 }));

    /// <summary>The temperature of the middle cell at the end, °C.</summary>
    internal static double Core(TemperatureHistory history) => history.End.Celsius[SlabCase.Cells / 2];
}
