namespace Tamis.Statistics.MixedModels;

/// <summary>
/// The parameters of a mixed model: for each random term the lower triangle of a factor T with T Tᵀ the covariance of a level's effects over the
/// residual variance; one number, the ratio of standard deviations, for an intercept alone.
/// </summary>
internal sealed class RelativeFactor
{
    private readonly int[] _start;
    private readonly int[] _size;

    public RelativeFactor(RandomLevels[] random)
    {
        _size = [.. random.Select(term => term.EffectCount)];
        _start = new int[random.Length + 1];
        for (var i = 0; i < random.Length; i++) _start[i + 1] = _start[i] + _size[i] * (_size[i] + 1) / 2;
    }

    public int Count => _start[^1];

    public int TermCount => _size.Length;

    public int Size(int term) => _size[term];

    /// <summary>The index of an entry of a term's triangle, column by column.</summary>
    public int Index(int term, int row, int column) => _start[term] + column * _size[term] - column * (column - 1) / 2 + row - column;

    public bool IsDiagonal(int parameter)
    {
        var term = Array.FindLastIndex(_start, start => start <= parameter);
        return Enumerable.Range(0, _size[term]).Any(i => Index(term, i, i) == parameter);
    }

    /// <summary>All terms as sure as the residual and uncorrelated.</summary>
    public double[] Start()
    {
        var parameters = new double[Count];
        for (var term = 0; term < TermCount; term++)
            for (var i = 0; i < _size[term]; i++) parameters[Index(term, i, i)] = 1;
        return parameters;
    }

    /// <summary>Changes the sign of columns whose diagonal is below zero, which leaves T Tᵀ as it is.</summary>
    public void MakeDiagonalPositive(double[] parameters)
    {
        for (var term = 0; term < TermCount; term++)
            for (var column = 0; column < _size[term]; column++)
                if (parameters[Index(term, column, column)] < 0)
                    for (var row = column; row < _size[term]; row++) parameters[Index(term, row, column)] *= -1;
    }

    /// <summary>T Tᵀ of a term.</summary>
    public double[,] Covariance(double[] parameters, int term)
    {
        var size = _size[term];
        var covariance = new double[size, size];
        for (var i = 0; i < size; i++)
            for (var j = 0; j < size; j++)
                for (var k = 0; k <= Math.Min(i, j); k++)
                    covariance[i, j] += parameters[Index(term, i, k)] * parameters[Index(term, j, k)];
        return covariance;
    }
}
