using System.Numerics;
using System.Runtime.CompilerServices;

namespace Tamis.Physics;

/// <summary>How fast heat goes into each cell of a round piece: what flows through its four faces.</summary>
internal sealed class PieceCells
{
    private readonly int _rings, _floors;
    private readonly double[] _ringWidth, _floorHeight, _ringArea, _twiceOuterFace;
    private readonly double[] _celsius, _conductivity, _flow;
    private readonly CellCurves _curves;
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
        MassKg = [.. Enumerable.Range(0, Count).Select(cell => _ringArea[cell % _rings] * _floorHeight[cell / _rings] * Material(cell).DensityKgPerM3)];
        _curves = new([.. Enumerable.Range(0, Count).Select(Material)]);
        (_celsius, _conductivity, _flow) = (new double[Count], new double[Count], new double[Count]);
    }

    public int Count => _piece.Cells;

    public double[] MassKg { get; }

    public ReadOnlySpan<double> Celsius => _celsius;

    public double[] StartEnthalpy() => [.. Enumerable.Range(0, Count).Select(cell => Material(cell).EnthalpyAt(_piece.Discs[_piece.DiscOfCell[cell]].StartCelsius))];

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
        for (var i = 0; i < heat.Length; i++) wattsPerKg[i] = heat[i] / MassKg[i];
        return into;
    }

    /// <summary>The longest stable explicit step, s.</summary>
    public double LongestStepSeconds(HeatStage stage)
    {
        var longest = double.PositiveInfinity;
        for (var cell = 0; cell < Count; cell++)
        {
            var (ring, floor, material) = (cell % _rings, cell / _rings, Material(cell));
            var k = material.HighestConductivityWPerMK;
            var sum = ring == 0 ? 0 : _twiceOuterFace[ring - 1] * _floorHeight[floor] / (_ringWidth[ring - 1] / K(cell - 1) + _ringWidth[ring] / k);
            sum += ring == _rings - 1
                ? ColumnCells.Through(_twiceOuterFace[ring] / 2 * _floorHeight[floor], stage.Side, _ringWidth[ring], k)
                : _twiceOuterFace[ring] * _floorHeight[floor] / (_ringWidth[ring] / k + _ringWidth[ring + 1] / K(cell + 1));
            sum += floor == 0
                ? ColumnCells.Through(_ringArea[ring], stage.Bottom, _floorHeight[floor], k)
                : 2 * _ringArea[ring] / (_floorHeight[floor - 1] / K(cell - _rings) + _floorHeight[floor] / k);
            sum += floor == _floors - 1
                ? ColumnCells.Through(_ringArea[ring], stage.Top, _floorHeight[floor], k)
                : 2 * _ringArea[ring] / (_floorHeight[floor] / k + _floorHeight[floor + 1] / K(cell + _rings));
            if (sum > 0) longest = Math.Min(longest, MassKg[cell] / (sum * material.SteepestKelvinKgPerJ));
        }
        return longest;

        double K(int other) => Material(other).HighestConductivityWPerMK;
    }

    private ThermalCurve Material(int cell) => _piece.Discs[_piece.DiscOfCell[cell]].Material;

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
        for (var ring = 0; ring < _rings; ring++)
        {
            sum += Face(heat, ring, stage.Bottom, _ringArea[ring], _floorHeight[0]);
            sum += Face(heat, (_floors - 1) * _rings + ring, stage.Top, _ringArea[ring], _floorHeight[^1]);
        }
        for (var floor = 0; floor < _floors; floor++)
            sum += Face(heat, floor * _rings + _rings - 1, stage.Side, _twiceOuterFace[^1] / 2 * _floorHeight[floor], _ringWidth[^1]);
        return sum;
    }

    private double Face(Span<double> heat, int cell, Surroundings air, double faceM2, double width)
    {
        var flow = ColumnCells.Through(faceM2, air, width, _conductivity[cell]) * (air.AirCelsius - _celsius[cell]);
        heat[cell] += flow;
        return flow;
    }
}
