using System.Runtime.CompilerServices;

namespace Tamis.Physics;

/// <summary>An implicit march (backward Euler): each step moves the heat that flows at its end. Stable for any step; second order in the cells, first in the step.</summary>
internal sealed class ImplicitColumn : IHeatStepper
{
    private const double SettledJPerKg = 0.05;
    private const int Rounds = 25, MostHalvings = 12;
    private readonly ColumnCells _cells;
    private readonly double[] _start, _before, _slope, _conductance, _change, _upper;
    private double _lastStepSeconds;

    public ImplicitColumn(HeatColumn column)
    {
        _cells = new(column);
        double[] Row() => new double[_cells.Count];
        (_start, _before, _slope, _conductance, _change, _upper) = (Row(), Row(), Row(), Row(), Row(), Row());
    }

    public ReadOnlySpan<double> EnthalpyJPerKg => _cells.Enthalpy;

    public ReadOnlySpan<double> Celsius => _cells.Celsius;

    public ReadOnlySpan<double> MassKg => _cells.MassKg;

    public double HeatInJoules { get; private set; }

    public double LongestStepSeconds(HeatStage stage) => double.PositiveInfinity;

    public void Advance(HeatStage stage, double stepSeconds, int steps)
    {
        for (var step = 0; step < steps; step++) Step(stage, stepSeconds, 0);
    }

    // Where a freezing front makes the corrections swing, two half steps take the place of one.
    private void Step(HeatStage stage, double stepSeconds, int halvings)
    {
        _cells.Enthalpy.CopyTo(_start, 0);
        Foresee(stepSeconds);
        for (var round = 0; round < Rounds; round++)
        {
            if (!(Correct(stage, stepSeconds) < SettledJPerKg)) continue;
            HeatInJoules += HeatThroughFaces(stage, stepSeconds);
            _start.CopyTo(_before, 0);
            _lastStepSeconds = stepSeconds;
            return;
        }
        if (halvings == MostHalvings) throw new InvalidOperationException("The implicit march does not settle even in the shortest steps; a material’s curve must be faulty.");
        _start.CopyTo(_cells.Enthalpy, 0);
        _cells.Read();
        _lastStepSeconds = 0;
        Step(stage, stepSeconds / 2, halvings + 1);
        Step(stage, stepSeconds / 2, halvings + 1);
    }

    // Heat goes on as in the step before: a first guess that saves a round or two.
    private void Foresee(double stepSeconds)
    {
        if (_lastStepSeconds != stepSeconds) return;
        var enthalpy = _cells.Enthalpy;
        for (var i = 0; i < enthalpy.Length; i++) enthalpy[i] += enthalpy[i] - _before[i];
        _cells.Read();
    }

    /// <summary>One Newton correction of all cells; gives the largest change, J/kg.</summary>
    // Hot from its first call on: a march runs it tens of thousands of times within one call of a notebook.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Correct(HeatStage stage, double dt)
    {
        var (enthalpy, celsius, mass, count) = (_cells.Enthalpy, _cells.Celsius, _cells.MassKg, _cells.Count);
        _cells.Slopes(_slope);
        _cells.Conductances(_conductance);
        var (first, last) = (_cells.FirstConductance(stage), _cells.LastConductance(stage));
        var left = first;
        var flowIn = first * (stage.Bottom.AirCelsius - celsius[0]);
        var (pivot, result) = (0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            var isLast = i == count - 1;
            var right = isLast ? last : _conductance[i];
            var flowOut = right * (celsius[i] - (isLast ? _cells.Outer(stage).AirCelsius : celsius[i + 1]));
            var lower = i == 0 ? 0 : -dt * left * _slope[i - 1];
            pivot = mass[i] + dt * (left + right) * _slope[i] - (i == 0 ? 0 : lower * _upper[i - 1]);
            result = dt * (flowIn - flowOut) - mass[i] * (enthalpy[i] - _start[i]) - (i == 0 ? 0 : lower * _change[i - 1]);
            _upper[i] = isLast ? 0 : -dt * right * _slope[i + 1] / pivot;
            _change[i] = result / pivot;
            (left, flowIn) = (right, flowOut);
        }
        for (var i = count - 2; i >= 0; i--) _change[i] -= _upper[i] * _change[i + 1];
        var largest = 0.0;
        for (var i = 0; i < count; i++)
        {
            enthalpy[i] += _change[i];
            largest = Math.Max(largest, Math.Abs(_change[i]));
        }
        _cells.Read();
        return largest;
    }

    // Through the faces at the end of the step; that it is what the cells gained is a test, not a definition.
    private double HeatThroughFaces(HeatStage stage, double dt) => dt * (
        _cells.FirstConductance(stage) * (stage.Bottom.AirCelsius - _cells.Celsius[0])
        + _cells.LastConductance(stage) * (_cells.Outer(stage).AirCelsius - _cells.Celsius[^1]));
}
