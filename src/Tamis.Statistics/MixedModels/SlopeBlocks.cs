namespace Tamis.Statistics.MixedModels;

/// <summary>Turns the columns of correlated effects, level by level, by their term's factor: M becomes Λᵀ M Λ, and derivatives come back.</summary>
internal sealed class SlopeBlocks(CrossProducts sums, RelativeFactor factor)
{
    private readonly (int Term, int Start)[] _blocks =
        [.. sums.BlockTerm.Zip(sums.BlockStart).Where(block => factor.Size(block.First) > 1 || !sums.Random[block.First].IsPlain)];

    public bool Any => _blocks.Length > 0;

    public void Turn(SkylineMatrix matrix, double[] parameters)
    {
        foreach (var (term, start) in _blocks)
        {
            var size = factor.Size(term);
            for (var row = start + size; row < matrix.Size; row++)
                if (matrix.First(row) <= start) TurnColumns(matrix, row, term, start, parameters);
        }
        foreach (var (term, start) in _blocks)
        {
            var size = factor.Size(term);
            // Row a of Tᵀ M holds rows a and later of M, so that rows from the first on can be replaced in place.
            for (var a = 0; a < size; a++)
                for (var column = matrix.First(start); column < start; column++)
                {
                    double sum = 0;
                    for (var b = a; b < size; b++) sum += parameters[factor.Index(term, b, a)] * matrix.Values[matrix.Origin(start + b) + column];
                    matrix.Values[matrix.Origin(start + a) + column] = sum;
                }
            var middle = Middle(matrix, start, size);
            for (var a = 0; a < size; a++)
                for (var column = 0; column <= a; column++)
                {
                    double sum = 0;
                    for (var b = a; b < size; b++)
                        for (var c = column; c < size; c++)
                            sum += parameters[factor.Index(term, b, a)] * middle[b, c] * parameters[factor.Index(term, c, column)];
                    matrix.Values[matrix.Origin(start + a) + start + column] = sum;
                }
        }
    }

    /// <summary>Adds to the derivatives of the parameters and turns those of the matrix back.</summary>
    /// <param name="before">The matrix before it was turned; used up.</param>
    /// <param name="bar">Derivatives with respect to the turned matrix.</param>
    /// <param name="parameters">The parameters.</param>
    /// <param name="slope">What the derivatives of the parameters are added to.</param>
    public void Reverse(SkylineMatrix before, SkylineMatrix bar, double[] parameters, double[] slope)
    {
        var half = before.Alike();
        before.Values.CopyTo(half.Values.AsSpan());
        foreach (var (term, start) in _blocks)
            for (var row = start + factor.Size(term); row < half.Size; row++)
                if (half.First(row) <= start) TurnColumns(half, row, term, start, parameters);
        foreach (var (term, start) in _blocks) ReverseRows(half, bar, parameters, slope, term, start);
        foreach (var (term, start) in _blocks)
        {
            var size = factor.Size(term);
            for (var row = start + size; row < bar.Size; row++)
            {
                if (bar.First(row) > start) continue;
                var values = before.Values.AsSpan(before.Origin(row) + start, size);
                var bars = bar.Values.AsSpan(bar.Origin(row) + start, size);
                for (var a = 0; a < size; a++)
                    for (var b = a; b < size; b++) slope[factor.Index(term, b, a)] += bars[a] * values[b];
                for (var b = size - 1; b >= 0; b--)
                {
                    double sum = 0;
                    for (var a = 0; a <= b; a++) sum += parameters[factor.Index(term, b, a)] * bars[a];
                    bars[b] = sum;
                }
            }
        }
    }

    private void ReverseRows(SkylineMatrix half, SkylineMatrix bar, double[] parameters, double[] slope, int term, int start)
    {
        var size = factor.Size(term);
        for (var column = bar.First(start); column < start; column++)
        {
            for (var a = 0; a < size; a++)
                for (var b = a; b < size; b++)
                    slope[factor.Index(term, b, a)] += bar.Values[bar.Origin(start + a) + column] * half.Values[half.Origin(start + b) + column];
            for (var b = size - 1; b >= 0; b--)
            {
                double sum = 0;
                for (var a = 0; a <= b; a++) sum += parameters[factor.Index(term, b, a)] * bar.Values[bar.Origin(start + a) + column];
                bar.Values[bar.Origin(start + b) + column] = sum;
            }
        }
        // The block on the diagonal holds no other parameter, so that its own derivatives end here.
        var middle = Middle(half, start, size);
        for (var a = 0; a < size; a++)
            for (var column = 0; column <= a; column++)
            {
                var derivative = bar.Values[bar.Origin(start + a) + start + column];
                for (var b = a; b < size; b++)
                    for (var c = column; c < size; c++)
                    {
                        slope[factor.Index(term, b, a)] += derivative * middle[b, c] * parameters[factor.Index(term, c, column)];
                        slope[factor.Index(term, c, column)] += derivative * middle[b, c] * parameters[factor.Index(term, b, a)];
                    }
            }
    }

    private void TurnColumns(SkylineMatrix matrix, int row, int term, int start, double[] parameters)
    {
        var size = factor.Size(term);
        var values = matrix.Values.AsSpan(matrix.Origin(row) + start, size);
        for (var a = 0; a < size; a++)
        {
            double sum = 0;
            for (var b = a; b < size; b++) sum += parameters[factor.Index(term, b, a)] * values[b];
            values[a] = sum;
        }
    }

    private static double[,] Middle(SkylineMatrix matrix, int start, int size)
    {
        var middle = new double[size, size];
        for (var b = 0; b < size; b++)
            for (var c = 0; c <= b; c++)
                middle[b, c] = middle[c, b] = matrix.Values[matrix.Origin(start + b) + start + c];
        return middle;
    }
}
