using System.Runtime.CompilerServices;

namespace Tamis.Physics;

/// <summary>The curves of several materials in one row of straight pieces, and for each cell the piece that it is on.</summary>
/// <remarks>Heat content changes little in a step, so a cell's piece is the one of the step before or its neighbour: no search is needed.</remarks>
internal sealed class CellCurves
{
    private readonly Piece[] _pieces;
    private readonly int[] _pieceOfCell;

    /// <summary>Lays out the curves of the cells' materials.</summary>
    public CellCurves(IReadOnlyList<ThermalCurve> materialOfCell)
    {
        List<Piece> pieces = [];
        Dictionary<ThermalCurve, int> first = [];
        foreach (var curve in materialOfCell.Distinct())
        {
            first.Add(curve, pieces.Count);
            for (var i = 0; i + 1 < curve.EnthalpyJPerKg.Count; i++) pieces.Add(Piece.Of(curve, i));
        }
        _pieces = [.. pieces];
        _pieceOfCell = [.. materialOfCell.Select(curve => first[curve])];
    }

    /// <summary>Temperature and conductivity of each cell from its heat content.</summary>
    // Hot from its first call on: a march runs it tens of thousands of times within one call of a notebook.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Read(ReadOnlySpan<double> enthalpyJPerKg, Span<double> celsius, Span<double> conductivityWPerMK)
    {
        ref var pieces = ref _pieces[0];
        var cells = _pieceOfCell.AsSpan(0, enthalpyJPerKg.Length);
        celsius = celsius[..enthalpyJPerKg.Length];
        conductivityWPerMK = conductivityWPerMK[..enthalpyJPerKg.Length];
        for (var i = 0; i < enthalpyJPerKg.Length; i++)
        {
            var heat = enthalpyJPerKg[i];
            // The outermost pieces of a curve end at infinity, so the walk never leaves the curve.
            ref var piece = ref Unsafe.Add(ref pieces, cells[i]);
            if (heat < piece.Low || heat > piece.High) piece = ref Walk(ref pieces, ref cells[i], heat);
            celsius[i] = piece.TemperatureAtZero + piece.TemperatureSlope * heat;
            conductivityWPerMK[i] = piece.ConductivityAtZero + piece.ConductivitySlope * heat;
        }
    }

    /// <summary>How fast each cell's temperature follows its heat content, K·kg/J, on the pieces that were read last.</summary>
    public void Slopes(Span<double> kelvinKgPerJ)
    {
        for (var i = 0; i < kelvinKgPerJ.Length; i++) kelvinKgPerJ[i] = _pieces[_pieceOfCell[i]].TemperatureSlope;
    }

    private static ref Piece Walk(ref Piece pieces, ref int at, double heat)
    {
        while (heat < Unsafe.Add(ref pieces, at).Low) at--;
        while (heat > Unsafe.Add(ref pieces, at).High) at++;
        return ref Unsafe.Add(ref pieces, at);
    }

    private readonly record struct Piece(double Low, double High, double TemperatureAtZero, double TemperatureSlope, double ConductivityAtZero, double ConductivitySlope)
    {
        public static Piece Of(ThermalCurve curve, int i)
        {
            var (low, high) = (curve.EnthalpyJPerKg[i], curve.EnthalpyJPerKg[i + 1]);
            var temperature = (curve.TemperatureCelsius[i + 1] - curve.TemperatureCelsius[i]) / (high - low);
            var conductivity = (curve.ConductivityWPerMK[i + 1] - curve.ConductivityWPerMK[i]) / (high - low);
            return new(i == 0 ? double.NegativeInfinity : low, i + 2 == curve.EnthalpyJPerKg.Count ? double.PositiveInfinity : high,
                curve.TemperatureCelsius[i] - temperature * low, temperature, curve.ConductivityWPerMK[i] - conductivity * low, conductivity);
        }
    }
}
