using Tamis.Tables;

namespace Tamis.Physics;

/// <summary>Two columns of a sheet as rising pairs, read between its rows.</summary>
internal sealed class ColumnTable
{
    private readonly double[] _x;
    private readonly double[] _y;

    private ColumnTable(double[] x, double[] y) => (_x, _y) = (x, y);

    /// <summary>The first and the last place.</summary>
    public Interval Range => Interval.Between(_x[0], _x[^1]);

    /// <summary>Reads two columns; rows where the second is blank are left out.</summary>
    /// <exception cref="TableException">A cell is no number, or the first column does not rise.</exception>
    public static ColumnTable Read(Sheet sheet, string x, string y)
    {
        List<CellProblem> problems = [];
        List<(double X, double Y)> rows = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            if (reader.Number(y) is not { } value) continue;
            var at = reader.RequiredNumber(x);
            if (rows.Count > 0 && at <= rows[^1].X) problems.Add(row.Problem(x, "a number above that of the row before"));
            rows.Add((at, value));
        }
        if (rows.Count < 4) problems.Add(new(sheet.File, 0, y, "", "four filled rows or more"));
        return problems.Count == 0 ? new([.. rows.Select(row => row.X)], [.. rows.Select(row => row.Y)]) : throw new TableException(problems);
    }

    /// <summary>Straight between the two nearest rows; NaN outside them.</summary>
    public double Linear(double x)
    {
        if (!Range.Contains(x)) return double.NaN;
        var i = Above(x);
        return _y[i - 1] + (_y[i] - _y[i - 1]) * (x - _x[i - 1]) / (_x[i] - _x[i - 1]);
    }

    /// <summary>On the cubic through the four nearest rows; NaN outside the table.</summary>
    public double Cubic(double x)
    {
        if (!Range.Contains(x)) return double.NaN;
        var first = Math.Clamp(Above(x) - 2, 0, _x.Length - 4);
        var sum = 0.0;
        for (var i = first; i < first + 4; i++)
        {
            var term = _y[i];
            for (var j = first; j < first + 4; j++)
                if (j != i) term *= (x - _x[j]) / (_x[i] - _x[j]);
            sum += term;
        }
        return sum;
    }

    private int Above(double x)
    {
        var i = Array.BinarySearch(_x, x);
        return Math.Clamp(i < 0 ? ~i : i, 1, _x.Length - 1);
    }
}
