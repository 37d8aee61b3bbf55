using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Tamis.Physics;

/// <summary>How fast heat goes into each cell of a round piece: what flows through its four faces.</summary>
internal sealed class PieceCells
{
    // Where no disc stands the cells let next to no heat through, so that the sums run on over them without asking.
    private static readonly ThermalCurve Nothing = ThermalCurve.Steady("nothing", 1, 1e-30, 1);

    private readonly int _rings, _floors;
    private readonly double[] _ringWidth, _floorHeight, _ringArea, _twiceOuterFace;
    private readonly double[] _celsius, _conductivity, _flow;
    private readonly CellCurves _curves;
    private readonly List<Exposure> _exposures = [];
    private readonly double[] _perMass;
    private readonly MouldedPiece _piece;

    public PieceCells(MouldedPiece piece)
    {
        _piece = piece;
        (_rings, _floors) = (piece.Axes.Rings, piece.Axes.Floors);
        double[] radius = [.. piece.Axes.RadiusMillimetres.Select(mm => mm / 1000)];
        double[] height = [.. piece.Axes.HeightMillimetres.Select(mm => mm / 1000)];
        _ringWidth = [.. Enumerable.Range(0, _rings).Select(i => radius[i + 1] - radius[i])];
        _floorHeight = [.. Enumerable.Range(0, _floors).Select(i => height[i + 1] - height[i])];
        _ringArea = [.. Enumerable.Range(0, _rings).Select(i => Math.PI * (radius[i + 1] * radius[i + 1] - radius[i] * radius[i]))];
        _twiceOuterFace = [.. Enumerable.Range(0, _rings).Select(i => 4 * Math.PI * radius[i + 1])];
        MassKg = [.. Enumerable.Range(0, Count).Select(cell => IsFilled(cell) ? _ringArea[cell % _rings] * _floorHeight[cell / _rings] * Material(cell).DensityKgPerM3 : 0)];
        _perMass = [.. MassKg.Select(mass => mass > 0 ? 1 / mass : 0)];
        for (var cell = 0; cell < Count; cell++) Expose(cell);
        _curves = new([.. Enumerable.Range(0, Count).Select(Material)]);
        (_celsius, _conductivity, _flow) = (new double[Count], new double[Count], new double[Count]);
    }

    public int Count => _piece.Cells;

    public double[] MassKg { get; }

    public ReadOnlySpan<double> Celsius => _celsius;

    public double[] StartEnthalpy() => [.. Enumerable.Range(0, Count).Select(cell => IsFilled(cell) ? Material(cell).EnthalpyAt(_piece.Discs[_piece.DiscOfCell[cell]].StartCelsius) : 0)];

    public void Read(ReadOnlySpan<double> enthalpy) => _curves.Read(enthalpy, _celsius, _conductivity);

    /// <summary>The rate at which each cell's heat content rises, W/kg; gives the heat that comes in through the outer faces, W.</summary>
    public double Rates(ReadOnlySpan<double> enthalpy, HeatStage stage, Span<double> wattsPerKg)
    {
        Read(enthalpy);
        var heat = _flow.AsSpan();
        heat.Clear();
        BetweenRings(heat);
        BetweenFloors(heat);
        var into = ThroughFaces(stage, heat);
        for (var i = 0; i < heat.Length; i++) wattsPerKg[i] = heat[i] * _perMass[i];
        return into;
    }

    /// <summary>The longest stable explicit step, s: no cell may give away more than it holds above its neighbours.</summary>
    public double LongestStepSeconds(HeatStage stage)
    {
        var conductance = new double[Count];
        for (var cell = 0; cell < Count; cell++)
        {
            var (ring, floor) = (cell % _rings, cell / _rings);
            if (ring + 1 < _rings) Join(cell, cell + 1, _twiceOuterFace[ring] * _floorHeight[floor], _ringWidth[ring], _ringWidth[ring + 1]);
            if (floor + 1 < _floors) Join(cell, cell + _rings, 2 * _ringArea[ring], _floorHeight[floor], _floorHeight[floor + 1]);
        }
        foreach (var exposure in _exposures) conductance[exposure.Cell] += ColumnCells.Through(exposure.FaceM2, exposure.In(stage), exposure.WidthMetres, Material(exposure.Cell).HighestConductivityWPerMK);
        return Enumerable.Range(0, Count).Where(IsFilled).Min(cell => MassKg[cell] / (conductance[cell] * Material(cell).SteepestKelvinKgPerJ));

        void Join(int one, int other, double twiceFace, double width, double otherWidth)
        {
            var joined = twiceFace / (width / Material(one).HighestConductivityWPerMK + otherWidth / Material(other).HighestConductivityWPerMK);
            conductance[one] += joined;
            conductance[other] += joined;
        }
    }

    private bool IsFilled(int cell) => _piece.DiscOfCell[cell] != MouldedPiece.Air;

    private ThermalCurve Material(int cell) => IsFilled(cell) ? _piece.Discs[_piece.DiscOfCell[cell]].Material ?? Nothing : Nothing;

    // The faces of a cell behind which nothing stands: they meet what is above, below or around the piece.
    private void Expose(int cell)
    {
        if (!IsFilled(cell)) return;
        var (ring, floor) = (cell % _rings, cell / _rings);
        var (width, height) = (_ringWidth[ring], _floorHeight[floor]);
        if (floor == 0 || !IsFilled(cell - _rings)) _exposures.Add(new(cell, _ringArea[ring], height, Facing.Down));
        if (floor == _floors - 1 || !IsFilled(cell + _rings)) _exposures.Add(new(cell, _ringArea[ring], height, Facing.Up));
        if (ring == _rings - 1 || !IsFilled(cell + 1)) _exposures.Add(new(cell, _twiceOuterFace[ring] / 2 * height, width, Facing.Sideways));
        if (ring > 0 && !IsFilled(cell - 1)) _exposures.Add(new(cell, _twiceOuterFace[ring - 1] / 2 * height, width, Facing.Sideways));
    }

    // Hot from its first call on: a march runs it tens of thousands of times within one call of a notebook.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void BetweenRings(Span<double> heat)
    {
        for (var floor = 0; floor < _floors; floor++)
        {
            var height = _floorHeight[floor];
            for (var ring = 0; ring + 1 < _rings; ring++)
            {
                var cell = floor * _rings + ring;
                var (left, right) = (_conductivity[cell], _conductivity[cell + 1]);
                var flow = _twiceOuterFace[ring] * height * left * right / (_ringWidth[ring] * right + _ringWidth[ring + 1] * left) * (_celsius[cell] - _celsius[cell + 1]);
                heat[cell] -= flow;
                heat[cell + 1] += flow;
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void BetweenFloors(Span<double> heat)
    {
        for (var floor = 0; floor + 1 < _floors; floor++)
        {
            var (below, above) = (new Vector<double>(_floorHeight[floor]), new Vector<double>(_floorHeight[floor + 1]));
            var (first, ring) = (floor * _rings, 0);
            for (; ring <= _rings - Vector<double>.Count; ring += Vector<double>.Count)
            {
                var (cell, over) = (first + ring, first + ring + _rings);
                var (lower, upper) = (new Vector<double>(_conductivity, cell), new Vector<double>(_conductivity, over));
                var flow = 2 * new Vector<double>(_ringArea, ring) * lower * upper / (below * upper + above * lower) * (new Vector<double>(_celsius, cell) - new Vector<double>(_celsius, over));
                (new Vector<double>(heat[cell..]) - flow).CopyTo(heat[cell..]);
                (new Vector<double>(heat[over..]) + flow).CopyTo(heat[over..]);
            }
            for (; ring < _rings; ring++)
            {
                var (cell, over) = (first + ring, first + ring + _rings);
                var (lower, upper) = (_conductivity[cell], _conductivity[over]);
                var flow = 2 * _ringArea[ring] * lower * upper / (_floorHeight[floor] * upper + _floorHeight[floor + 1] * lower) * (_celsius[cell] - _celsius[over]);
                heat[cell] -= flow;
                heat[over] += flow;
            }
        }
    }

    private double ThroughFaces(HeatStage stage, Span<double> heat)
    {
        var sum = 0.0;
        foreach (ref readonly var exposure in CollectionsMarshal.AsSpan(_exposures))
        {
            var air = exposure.In(stage);
            var flow = ColumnCells.Through(exposure.FaceM2, air, exposure.WidthMetres, _conductivity[exposure.Cell]) * (air.AirCelsius - _celsius[exposure.Cell]);
            heat[exposure.Cell] += flow;
            sum += flow;
        }
        return sum;
    }

    private enum Facing { Up, Down, Sideways }

    private readonly record struct Exposure(int Cell, double FaceM2, double WidthMetres, Facing Facing)
    {
        public Surroundings In(HeatStage stage) => Facing switch { Facing.Up => stage.Top, Facing.Down => stage.Bottom, _ => stage.Side };
    }
}
