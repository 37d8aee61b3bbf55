using System.Numerics;
using System.Runtime.CompilerServices;

namespace Tamis.Physics;

/// <summary>The cells of a column as a march needs them: masses, faces, what is known of each cell now.</summary>
internal sealed class ColumnCells
{
    private readonly CellCurves _curves;
    private readonly double[] _width, _twiceFace;

    public ColumnCells(HeatColumn column)
    {
        Column = column;
        Count = column.Cells;
        _curves = new([.. Enumerable.Range(0, Count).Select(column.Material)]);
        _width = [.. Enumerable.Range(0, Count).Select(column.WidthMetres)];
        _twiceFace = [.. Enumerable.Range(1, Count - 1).Select(i => 2 * column.FaceM2[i])];
        MassKg = [.. Enumerable.Range(0, Count).Select(i => column.VolumeM3[i] * column.Material(i).DensityKgPerM3)];
        Enthalpy = [.. Enumerable.Range(0, Count).Select(i => column.Material(i).EnthalpyAt(column.Layers[column.LayerOfCell[i]].StartCelsius))];
        Celsius = new double[Count];
        Conductivity = new double[Count];
        Read();
    }

    public HeatColumn Column { get; }

    public int Count { get; }

    public double[] MassKg { get; }

    public double[] Enthalpy { get; }

    public double[] Celsius { get; }

    public double[] Conductivity { get; }

    /// <summary>Temperature and conductivity from heat content.</summary>
    public void Read() => _curves.Read(Enthalpy, Celsius, Conductivity);

    public void Slopes(Span<double> kelvinKgPerJ) => _curves.Slopes(kelvinKgPerJ);

    /// <summary>The conductance from cell to cell, W/K: two half cells in a row. Entry i is between the cells i and i + 1.</summary>
    // Hot from its first call on: a march runs it tens of thousands of times within one call of a notebook.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Conductances(Span<double> wattsPerKelvin)
    {
        var i = 0;
        for (; i <= Count - 1 - Vector<double>.Count; i += Vector<double>.Count)
        {
            var (left, right) = (new Vector<double>(Conductivity, i), new Vector<double>(Conductivity, i + 1));
            (new Vector<double>(_twiceFace, i) * left * right / (new Vector<double>(_width, i) * right + new Vector<double>(_width, i + 1) * left)).CopyTo(wattsPerKelvin[i..]);
        }
        for (; i < Count - 1; i++)
            wattsPerKelvin[i] = _twiceFace[i] * Conductivity[i] * Conductivity[i + 1] / (_width[i] * Conductivity[i + 1] + _width[i + 1] * Conductivity[i]);
    }

    /// <summary>The conductance from the air at the bottom of a slab to the middle of its first cell, W/K; 0 at the middle of a roll or ball.</summary>
    public double FirstConductance(HeatStage stage) => Column.Shape == ConductionShape.Slab ? FaceConductance(0, 0, stage.Bottom) : 0;

    /// <summary>The conductance from the air outside to the middle of the last cell, W/K.</summary>
    public double LastConductance(HeatStage stage) => FaceConductance(Count, Count - 1, Outer(stage));

    /// <summary>The surroundings of the outermost face.</summary>
    public Surroundings Outer(HeatStage stage) => Column.Shape == ConductionShape.Slab ? stage.Top : stage.Side;

    /// <summary>The longest stable explicit step, s: no cell may give away more than it holds above its neighbours.</summary>
    public double LongestStepSeconds(HeatStage stage)
    {
        var longest = double.PositiveInfinity;
        for (var i = 0; i < Count; i++)
        {
            var material = Column.Material(i);
            var left = i == 0 ? 0 : HighestConductance(i - 1);
            var right = i == Count - 1 ? 0 : HighestConductance(i);
            if (i == 0 && Column.Shape == ConductionShape.Slab) left = Faced(0, i, stage.Bottom);
            if (i == Count - 1) right = Faced(Count, i, Outer(stage));
            if (left + right > 0) longest = Math.Min(longest, MassKg[i] / ((left + right) * material.SteepestKelvinKgPerJ));
        }
        return longest;

        double HighestConductance(int face)
        {
            var (one, other) = (Column.Material(face).HighestConductivityWPerMK, Column.Material(face + 1).HighestConductivityWPerMK);
            return _twiceFace[face] / (_width[face] / one + _width[face + 1] / other);
        }

        double Faced(int face, int cell, Surroundings air) => Through(Column.FaceM2[face], air, _width[cell], Column.Material(cell).HighestConductivityWPerMK);
    }

    private double FaceConductance(int face, int cell, Surroundings air) => Through(Column.FaceM2[face], air, _width[cell], Conductivity[cell]);

    internal static double Through(double faceM2, Surroundings air, double widthMetres, double conductivityWPerMK) =>
        air.OverallWPerM2K > 0 ? faceM2 / (1 / air.OverallWPerM2K + widthMetres / (2 * conductivityWPerMK)) : 0;
}
