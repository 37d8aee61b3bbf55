using System.Numerics;
using System.Runtime.CompilerServices;

namespace Tamis.Physics;

/// <summary>An explicit march: each step moves the heat that flows at its start. Second order in the cells, first in the step; stable up to a longest step.</summary>
internal sealed class ExplicitColumn : IHeatStepper
{
    private readonly ColumnCells _cells;
    private readonly double[] _flow;
    private readonly double[] _share;

    public ExplicitColumn(HeatColumn column)
    {
        _cells = new(column);
        _flow = new double[_cells.Count + 1];
        _share = new double[_cells.Count];
    }

    public ReadOnlySpan<double> EnthalpyJPerKg => _cells.Enthalpy;

    public ReadOnlySpan<double> Celsius => _cells.Celsius;

    public ReadOnlySpan<double> MassKg => _cells.MassKg;

    public double HeatInJoules { get; private set; }

    public double LongestStepSeconds(HeatStage stage) => _cells.LongestStepSeconds(stage);

    // Hot from its first call on: a march runs it tens of thousands of times within one call of a notebook.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Advance(HeatStage stage, double stepSeconds, int steps)
    {
        var (first, last) = (stage.Bottom.AirCelsius, _cells.Outer(stage).AirCelsius);
        var (celsius, enthalpy, count) = (_cells.Celsius, _cells.Enthalpy, _cells.Count);
        for (var i = 0; i < count; i++) _share[i] = stepSeconds / _cells.MassKg[i];
        for (var step = 0; step < steps; step++)
        {
            _cells.Conductances(_flow.AsSpan(1));
            _flow[0] = _cells.FirstConductance(stage) * (first - celsius[0]);
            _flow[count] = _cells.LastConductance(stage) * (celsius[count - 1] - last);
            Times(_flow.AsSpan(1, count - 1), celsius);
            HeatInJoules += stepSeconds * (_flow[0] - _flow[count]);
            Store(enthalpy);
            _cells.Read();
        }
    }

    // Conductance times the difference of temperature, in place.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Times(Span<double> conductance, double[] celsius)
    {
        var i = 0;
        for (; i <= conductance.Length - Vector<double>.Count; i += Vector<double>.Count)
            (new Vector<double>(conductance[i..]) * (new Vector<double>(celsius, i) - new Vector<double>(celsius, i + 1))).CopyTo(conductance[i..]);
        for (; i < conductance.Length; i++) conductance[i] *= celsius[i] - celsius[i + 1];
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Store(double[] enthalpy)
    {
        var i = 0;
        for (; i <= enthalpy.Length - Vector<double>.Count; i += Vector<double>.Count)
            (new Vector<double>(enthalpy, i) + new Vector<double>(_share, i) * (new Vector<double>(_flow, i) - new Vector<double>(_flow, i + 1))).CopyTo(enthalpy, i);
        for (; i < enthalpy.Length; i++) enthalpy[i] += _share[i] * (_flow[i] - _flow[i + 1]);
    }
}
