using BenchmarkDotNet.Attributes;
using Tamis.Physics;

namespace Tamis.Benchmarks;

/// <summary>The leaf equations of mixtures on one component: each takes less than a microsecond and allocates nothing.</summary>
[MemoryDiagnoser]
public class MixtureModels
{
    private readonly double[] _moles = [0.066, 0.012, 0.014, 0.003, 0.002];
    private readonly double[] _constants = [-6.47, -2.25, -2.25, -10.2, -6.5];
    private readonly double[] _relative = [1, 0.72, 1.3, 0.2, 0.1];
    private readonly Antoine _below = Antoine.Below(PhysicsData.Kit);
    private readonly Antoine _above = Antoine.Above(PhysicsData.Kit);

    /// <summary>Water activity of five solutes by Norrish.</summary>
    [Benchmark]
    public double NorrishOfFive() => Norrish.SquareRoot(1.05, _moles, _constants);

    /// <summary>Water activity of five solutes by Norrish with a mean constant.</summary>
    [Benchmark]
    public double MeanConstantOfFive() => Norrish.MeanConstant(1.05, _moles, _constants);

    /// <summary>Water activity of a brine by Pitzer.</summary>
    [Benchmark]
    public double Pitzer() => Salts.PitzerWaterActivity(2, 0.0765, 0.2664, 0.00127);

    /// <summary>Water activity of a syrup by Chen.</summary>
    [Benchmark]
    public double Chen() => SimpleModels.Chen(2, 1, 0.1136, 0.955);

    /// <summary>Boiling point of a syrup.</summary>
    [Benchmark]
    public double BoilingPoint() => Boiling.Celsius(0.72, 101.325, _below, _above);

    /// <summary>Density of a syrup.</summary>
    [Benchmark]
    public double Density() => SucroseSolution.DensityGramsPerMillilitre(60, 0.998227, 3.859605e-3, 1.259962e-5, 6.803082e-8, -2.624543e-10);

    /// <summary>Sweetness of five sugars.</summary>
    [Benchmark]
    public double Sweet() => Sweetness.SucroseEquivalentGrams(_moles, _relative);

    /// <summary>Temperature of ice beside a solution.</summary>
    [Benchmark]
    public double FreezingPoint() => FreezingEquations.FreezingCelsius(0.95, 9.6934e-3, 4.761e-6);
}
