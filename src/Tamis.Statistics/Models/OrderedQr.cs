namespace Tamis.Statistics.Models;

/// <summary>A Householder factorisation that takes columns strictly in their order and sets aside those that earlier ones already hold.</summary>
/// <remarks>
/// The order matters for sequential sums of squares, so that columns may not be pivoted, as the libraries' rank-revealing factorisations do.
/// Columns are scaled by powers of two first, which costs no digit (Golub and Van Loan, Matrix Computations, 5.2 and 5.3).
/// </remarks>
internal sealed class OrderedQr
{
    // What is left of a column that earlier columns hold exactly is rounding, about 1e-15 of it; collinear data of practice leave 1e-6.
    private const double HeldShare = 1e-10;

    private readonly double[][] _columns;
    private readonly double[] _scale;
    private readonly double[] _effects;

    public OrderedQr(IReadOnlyList<double[]> columns, double[] response)
    {
        _scale = [.. columns.Select(column => PowerOfTwoNear(Norm(column, 0)))];
        _columns = [.. columns.Select((column, j) => column.Select(value => value / _scale[j]).ToArray())];
        _effects = [.. response];
        Position = new int[columns.Count];
        for (var j = 0; j < columns.Count; j++)
        {
            var whole = Norm(_columns[j], 0);
            var left = Norm(_columns[j], Rank);
            if (left <= HeldShare * whole)
            {
                Position[j] = -1;
                continue;
            }
            Reflect(j, left);
            Position[j] = Rank++;
        }
    }

    /// <summary>How many columns add something to those before them.</summary>
    public int Rank { get; private set; }

    /// <summary>The place of each column among those that count; −1 where earlier columns hold it already.</summary>
    public int[] Position { get; }

    /// <summary>The response turned into the columns' directions; behind <see cref="Rank"/> stands what they leave unexplained.</summary>
    public IReadOnlyList<double> Effects => _effects;

    public double ResidualSumOfSquares => _effects.Skip(Rank).Sum(effect => effect * effect);

    /// <summary>Solves for the coefficients, NaN for a column that earlier ones hold.</summary>
    public double[] Coefficients()
    {
        var solved = BackSubstitute(_effects);
        return [.. Position.Select((place, j) => place < 0 ? double.NaN : solved[place] / _scale[j])];
    }

    /// <summary>
    /// The length of a combination of coefficients in units of the residual standard deviation: its standard error is this times that.
    /// NaN where the data cannot tell the combination.
    /// </summary>
    public double UnitError(IReadOnlyList<double> weights)
    {
        var wanted = new double[Rank];
        for (var j = 0; j < Position.Length; j++)
            if (Position[j] >= 0) wanted[Position[j]] = weights[j] / _scale[j];
        return IsEstimable(weights, wanted) ? Length(wanted) : double.NaN;
    }

    /// <summary>The same for one coefficient that counts, with those that do not count left out of the model.</summary>
    public double UnitErrorOfKept(int column)
    {
        var wanted = new double[Rank];
        wanted[Position[column]] = 1 / _scale[column];
        return Length(wanted);
    }

    // Forward substitution with the transposed triangle.
    private double Length(double[] wanted)
    {
        for (var i = 0; i < Rank; i++)
        {
            for (var k = 0; k < i; k++) wanted[i] -= Kept[i][k] * wanted[k];
            wanted[i] /= Kept[i][i];
        }
        return Math.Sqrt(wanted.Sum(value => value * value));
    }

    // A column that is held equals a combination of the kept ones; what is asked must treat it as that combination.
    private bool IsEstimable(IReadOnlyList<double> weights, double[] kept)
    {
        var size = weights.Select((weight, j) => Math.Abs(weight / _scale[j])).Append(0).Max();
        return Enumerable.Range(0, Position.Length).Where(j => Position[j] < 0).All(j =>
        {
            var combination = BackSubstitute(_columns[j]);
            return Math.Abs(weights[j] / _scale[j] - kept.Zip(combination, (a, b) => a * b).Sum()) <= 1e-7 * size;
        });
    }

    private double[][] Kept => field ??= [.. Enumerable.Range(0, Position.Length).Where(j => Position[j] >= 0).Select(j => _columns[j])];

    private double[] BackSubstitute(double[] right)
    {
        var solved = right[..Rank];
        for (var i = Rank - 1; i >= 0; i--)
        {
            solved[i] /= Kept[i][i];
            for (var k = 0; k < i; k++) solved[k] -= Kept[i][k] * solved[i];
        }
        return solved;
    }

    private void Reflect(int j, double norm)
    {
        var column = _columns[j];
        var mirror = column[Rank..];
        var diagonal = mirror[0] > 0 ? -norm : norm;
        mirror[0] -= diagonal;
        var length = mirror.Sum(value => value * value);
        column[Rank] = diagonal;
        Array.Clear(column, Rank + 1, column.Length - Rank - 1);
        for (var k = j + 1; k < _columns.Length; k++) Mirror(_columns[k]);
        Mirror(_effects);

        void Mirror(double[] vector)
        {
            double product = 0;
            for (var i = 0; i < mirror.Length; i++) product += mirror[i] * vector[Rank + i];
            var factor = 2 * product / length;
            for (var i = 0; i < mirror.Length; i++) vector[Rank + i] -= factor * mirror[i];
        }
    }

    private static double Norm(double[] values, int from)
    {
        double sum = 0;
        for (var i = from; i < values.Length; i++) sum += values[i] * values[i];
        return Math.Sqrt(sum);
    }

    private static double PowerOfTwoNear(double norm) => norm > 0 ? Math.ScaleB(1, (int)Math.Round(Math.Log2(norm))) : 1;
}
