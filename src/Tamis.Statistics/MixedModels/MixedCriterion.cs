namespace Tamis.Statistics.MixedModels;

/// <summary>
/// −2 log likelihood, restricted or not, of a mixed model as a function of its relative factors, the other parameters at their best for these.
/// </summary>
/// <remarks>
/// Penalised least squares (Bates, Mächler, Bolker and Walker 2015, Journal of Statistical Software 67(1), sections 3.2 to 3.4) on the sums of
/// products: one Cholesky factor of random effects, fixed effects and response holds the determinants on its diagonal and the root of the
/// penalised residual sum of squares in its last corner. The gradient comes from the same factor run backwards.
/// </remarks>
internal sealed class MixedCriterion
{
    private readonly CrossProducts _sums;
    private readonly SlopeBlocks _slopes;
    private readonly SkylineMatrix _factor;
    private readonly SkylineMatrix _bar;
    private readonly double[] _scale;
    private readonly int[] _termOfColumn;
    private readonly double[] _left;
    private readonly double _leastPivot;

    public MixedCriterion(CrossProducts sums, int rowCount, bool restricted)
    {
        (_sums, RowCount, IsRestricted) = (sums, rowCount, restricted);
        Factors = new(sums.Random);
        _slopes = new(sums, Factors);
        (_factor, _bar) = (sums.Matrix.Alike(), sums.Matrix.Alike());
        _scale = new double[sums.Matrix.Size];
        _termOfColumn = new int[sums.Matrix.Size];
        _left = new double[sums.Matrix.Values.Length];
        Array.Fill(_scale, 1);
        Array.Fill(_termOfColumn, -1);
        foreach (var (term, start) in sums.BlockTerm.Zip(sums.BlockStart))
            if (sums.Random[term].IsPlain) _termOfColumn[start] = term;
        // The response explained to the last digit leaves no spread; a pivot never falls below what rounding leaves of it.
        _leastPivot = 1e-26 * Math.Max(double.Epsilon, sums.Matrix.Diagonal(sums.Matrix.Size - 1));
    }

    public RelativeFactor Factors { get; }

    public int RowCount { get; }

    public bool IsRestricted { get; }

    /// <summary>Rows that the residual variance is judged by: all, or all less the fixed effects.</summary>
    public int ResidualRows => RowCount - (IsRestricted ? _sums.FixedCount : 0);

    public CrossProducts Sums => _sums;

    /// <summary>The Cholesky factor of the last call.</summary>
    public SkylineMatrix Factor => _factor;

    /// <summary>The penalised residual sum of squares of the last call.</summary>
    public double PenalisedSquares => _factor.Diagonal(_factor.Size - 1) is var corner ? corner * corner : 0;

    /// <summary>The criterion with the residual variance at its best.</summary>
    public double Value(double[] parameters)
    {
        Prepare(parameters);
        return LogDeterminants(parameters) + ResidualRows * (1 + Math.Log(2 * Math.PI * PenalisedSquares / ResidualRows));
    }

    /// <summary>The criterion's gradient at the point of the last call of <see cref="Value"/>, the residual variance at its best.</summary>
    public double[] Gradient(double[] parameters) => Reverse(parameters, 2, 2.0 * ResidualRows / _factor.Diagonal(_factor.Size - 1));

    /// <summary>The gradient where the residual variance is given; the last call of <see cref="Value"/> was at this point.</summary>
    public double[] GradientAt(double[] parameters, double residualVariance) => Reverse(parameters, 2, 2 * _factor.Diagonal(_factor.Size - 1) / residualVariance);

    /// <summary>The gradient of the penalised residual sum of squares alone.</summary>
    public double[] GradientOfSquares(double[] parameters) => Reverse(parameters, 0, 2 * _factor.Diagonal(_factor.Size - 1));

    private double TakenRatio(double[] parameters) => _sums.Taken < 0 ? 0 : Square(parameters[Factors.Index(_sums.Taken, 0, 0)]);

    // The sums of products less what the levels take from them that are taken out, each column in units of its factor.
    private void Scale(double[] parameters, SkylineMatrix into)
    {
        for (var column = 0; column < _scale.Length; column++)
            if (_termOfColumn[column] is var term and >= 0) _scale[column] = parameters[Factors.Index(term, 0, 0)];
        var left = LeftOver(TakenRatio(parameters));
        for (var row = 0; row < into.Size; row++)
        {
            var target = into.Row(row);
            Dense.Multiply(target, _scale[row], left.AsSpan(into.Origin(row) + into.First(row), target.Length), _scale.AsSpan(into.First(row), target.Length));
        }
    }

    private double[] LeftOver(double ratio)
    {
        if (ratio == 0) return _sums.Matrix.Values;
        _sums.Matrix.Values.CopyTo(_left.AsSpan());
        foreach (var (rows, _, products) in _sums.TakenByRows) Dense.AddScaled(_left, -ratio / (1 + ratio * rows), products);
        return _left;
    }

    private void Prepare(double[] parameters)
    {
        Scale(parameters, _factor);
        if (_slopes.Any) _slopes.Turn(_factor, parameters);
        var values = _factor.Values;
        for (var row = 0; row < _sums.RandomCount; row++) values[_factor.Origin(row) + row] += 1;
        _factor.Factor(_leastPivot);
    }

    private double LogDeterminants(double[] parameters)
    {
        double sum = 0;
        var rows = _sums.RandomCount + (IsRestricted ? _sums.FixedCount : 0);
        for (var row = 0; row < rows; row++) sum += Math.Log(_factor.Diagonal(row));
        sum *= 2;
        if (TakenRatio(parameters) is var ratio and > 0)
            foreach (var (rowsOfLevel, levels, _) in _sums.TakenByRows) sum += levels * Math.Log(1 + ratio * rowsOfLevel);
        return sum;
    }

    private double[] Reverse(double[] parameters, double onDeterminants, double onCorner)
    {
        var slope = new double[Factors.Count];
        Array.Clear(_bar.Values);
        var determinants = _sums.RandomCount + (IsRestricted ? _sums.FixedCount : 0);
        for (var row = 0; row < determinants; row++) _bar.Values[_bar.Origin(row) + row] = onDeterminants / _factor.Diagonal(row);
        _bar.Values[^1] = onCorner;
        _factor.Reverse(_bar);
        if (_slopes.Any)
        {
            var before = _factor.Alike();
            Scale(parameters, before);
            _slopes.Reverse(before, _bar, parameters, slope);
        }
        var scaleBar = new double[_scale.Length];
        var left = LeftOver(TakenRatio(parameters));
        for (var row = 0; row < _bar.Size; row++)
        {
            var (first, length) = (_bar.First(row), _bar.Row(row).Length);
            // The call adds to the same cell, so that it comes before the sum.
            var own = Dense.ReverseMultiply(_bar.Row(row), _scale[row], left.AsSpan(_bar.Origin(row) + first, length), _scale.AsSpan(first, length), scaleBar.AsSpan(first, length));
            scaleBar[row] += own;
        }
        for (var column = 0; column < scaleBar.Length; column++)
            if (_termOfColumn[column] is var term and >= 0) slope[Factors.Index(term, 0, 0)] += scaleBar[column];
        if (_sums.Taken >= 0) ReverseTaken(parameters, onDeterminants / 2, slope);
        return slope;
    }

    // Uses up the derivatives with respect to the matrix.
    private void ReverseTaken(double[] parameters, double onDeterminant, double[] slope)
    {
        for (var row = 0; row < _bar.Size; row++)
        {
            var bars = _bar.Row(row);
            Dense.Multiply(bars, _scale[row], bars, _scale.AsSpan(_bar.First(row), bars.Length));
        }
        var ratio = TakenRatio(parameters);
        double ratioBar = 0;
        foreach (var (rows, levels, products) in _sums.TakenByRows)
        {
            var whole = 1 + ratio * rows;
            ratioBar += onDeterminant * levels * rows / whole - Dense.Dot(_bar.Values, products) / (whole * whole);
        }
        var index = Factors.Index(_sums.Taken, 0, 0);
        slope[index] += 2 * parameters[index] * ratioBar;
    }

    private static double Square(double value) => value * value;
}
