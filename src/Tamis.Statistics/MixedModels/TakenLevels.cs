using System.Runtime.CompilerServices;

namespace Tamis.Statistics.MixedModels;

/// <summary>Gathers, level by level, the sums over a level's rows of all columns that are not nil there.</summary>
internal sealed class TakenLevels(int columnCount, int levelCount)
{
    private readonly double[] _sums = new double[columnCount];
    private readonly bool[] _met = new bool[columnCount];
    private readonly List<int> _touched = [], _columns = [];
    private readonly List<double> _values = [];
    private readonly double[] _rows = new double[levelCount];
    private readonly int[] _start = new int[levelCount + 1];

    /// <summary>Adds a row to the level that is open.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(int[] columns, double[] values, int count)
    {
        for (var i = 0; i < count; i++)
        {
            var column = columns[i];
            if (!_met[column])
            {
                _met[column] = true;
                _sums[column] = 0;
                _touched.Add(column);
            }
            _sums[column] += values[i];
        }
    }

    /// <summary>Closes the level that is open.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Close(int level, int rowCount)
    {
        _rows[level] = rowCount;
        _touched.Sort();
        for (var i = 0; i < _touched.Count; i++)
        {
            var column = _touched[i];
            _columns.Add(column);
            _values.Add(_sums[column]);
            _met[column] = false;
        }
        _touched.Clear();
        _start[level + 1] = _columns.Count;
    }

    /// <summary>Rows of each level, where its columns begin, these, their sums.</summary>
    public (double[] Rows, int[] Start, int[] Columns, double[] Sums) Whole() => (_rows, _start, [.. _columns], [.. _values]);
}
