using System.Globalization;

namespace Tamis.Statistics.Models;

/// <summary>Columns of equal length for a model: numbers, in which NaN is missing, and factors, in which null is missing.</summary>
public sealed class ModelData
{
    private readonly Dictionary<string, IReadOnlyList<double>> _numbers;
    private readonly Dictionary<string, FactorColumn> _factors;

    private ModelData(int rowCount, Dictionary<string, IReadOnlyList<double>> numbers, Dictionary<string, FactorColumn> factors) =>
        (RowCount, _numbers, _factors) = (rowCount, numbers, factors);

    /// <summary>Data without columns; the first column fixes the number of rows.</summary>
    public static ModelData Empty { get; } = new(-1, [], []);

    /// <summary>How many rows there are; −1 while there is no column.</summary>
    public int RowCount { get; }

    /// <summary>The same data with a column of numbers more.</summary>
    /// <exception cref="ArgumentException">The column is not as long as the others.</exception>
    public ModelData WithNumbers(string name, IReadOnlyList<double> values) =>
        new(CheckedCount(name, values.Count), new(_numbers) { [name] = values }, _factors);

    /// <summary>The same data with a factor more. Its levels are sorted, as numbers if all are numbers, else by character code.</summary>
    /// <exception cref="ArgumentException">The column is not as long as the others.</exception>
    public ModelData WithFactor(string name, IReadOnlyList<string?> levels) =>
        new(CheckedCount(name, levels.Count), _numbers, new(_factors) { [name] = new(levels) });

    internal bool IsFactor(string name) => _factors.ContainsKey(name);

    internal IReadOnlyList<double> Numbers(string name) => _numbers.TryGetValue(name, out var values) ? values : throw NoColumn(name);

    internal IReadOnlyList<string?> Factor(string name) => Coded(name).Values;

    internal FactorColumn Coded(string name) => _factors.TryGetValue(name, out var column) ? column : throw NoColumn(name);

    /// <summary>The rows in which none of these columns is missing.</summary>
    internal int[] CompleteRows(IEnumerable<string> columns)
    {
        var lacks = new bool[Math.Max(0, RowCount)];
        foreach (var name in columns)
        {
            if (IsFactor(name))
            {
                var codes = Coded(name).Codes;
                for (var row = 0; row < lacks.Length; row++) lacks[row] |= codes[row] < 0;
            }
            else
            {
                var numbers = Numbers(name);
                for (var row = 0; row < lacks.Length; row++) lacks[row] |= !double.IsFinite(numbers[row]);
            }
        }
        return [.. Enumerable.Range(0, lacks.Length).Where(row => !lacks[row])];
    }

    /// <summary>The different values as a factor's levels: as numbers if all are numbers, else by character code.</summary>
    public static string[] SortedLevels(IEnumerable<string> values)
    {
        string[] levels = [.. values.Distinct(StringComparer.Ordinal)];
        return levels.All(level => Number(level) is not null)
            ? [.. levels.OrderBy(Number).ThenBy(level => level, StringComparer.Ordinal)]
            : [.. levels.Order(StringComparer.Ordinal)];

        static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;
    }

    private int CheckedCount(string name, int count) => RowCount < 0 || RowCount == count
        ? count
        : throw new ArgumentException($"The column '{name}' has {count} rows, the others have {RowCount}.", nameof(count));

    private ArgumentException NoColumn(string name) =>
        new($"The model names '{name}'; the data have {string.Join(", ", _numbers.Keys.Concat(_factors.Keys).Order(StringComparer.Ordinal))}.");
}
