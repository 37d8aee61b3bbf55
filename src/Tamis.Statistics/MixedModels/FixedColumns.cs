using System.Runtime.CompilerServices;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.MixedModels;

/// <summary>A column of fixed effects: the product of indicators of levels and of numbers.</summary>
/// <param name="Name">The coefficient's name.</param>
/// <param name="Term">The index of its term; −1 for the intercept.</param>
/// <param name="Levels">The level of each factor that it indicates.</param>
/// <param name="Numbers">The numbers that it multiplies.</param>
internal sealed record FixedColumn(string Name, int Term, IReadOnlyDictionary<string, int> Levels, IReadOnlyList<ModelVariable> Numbers);

/// <summary>
/// The columns of a model's fixed part, of which a row has at most one other than zero in each term. The coding is that of
/// <see cref="LinearFit"/>: the first level is the reference wherever the term's margin is in the model.
/// </summary>
internal sealed class FixedColumns
{
    private readonly List<TermCode> _codes = [];

    public FixedColumns(ModelFormula formula, ModelData data, int[] rows)
    {
        Formula = formula;
        if (formula.HasIntercept) Add(new([]), -1);
        for (var i = 0; i < formula.Terms.Count; i++) Add(formula.Terms[i], i);

        void Add(ModelTerm term, int index)
        {
            List<(string Factor, int Skip)> factors = [];
            List<ModelVariable> numbers = [];
            foreach (var variable in term.Variables)
            {
                if (!data.IsFactor(variable.Column)) { numbers.Add(variable); continue; }
                if (variable.Power != 1) throw new ArgumentException($"'{variable}' takes the power of a factor; only a number has powers.", nameof(formula));
                if (!Factors.ContainsKey(variable.Column)) Factors[variable.Column] = data.Coded(variable.Column).Of(rows);
                var margin = term.Without(variable);
                factors.Add((variable.Column, (margin.Variables.Count == 0 ? formula.HasIntercept : formula.Terms.Contains(margin)) ? 1 : 0));
            }
            foreach (var number in numbers.Where(number => !Numbers.ContainsKey(number)))
            {
                Numbers[number] = Powers(data.Numbers(number.Column), rows, number.Power);
                Means[number.Column] = Powers(data.Numbers(number.Column), rows, 1).Average();
            }
            _codes.Add(new(Columns.Count, [.. factors.Select(one => (Factors[one.Factor].Codes, one.Skip, Factors[one.Factor].Levels.Length - one.Skip))], Product(numbers)));
            Columns.AddRange(ColumnsOf(term, index, factors, numbers));
        }
    }

    public ModelFormula Formula { get; }

    public List<FixedColumn> Columns { get; } = [];

    /// <summary>The levels that occur of each factor, and each row's.</summary>
    public Dictionary<string, (string[] Levels, int[] Codes)> Factors { get; } = new(StringComparer.Ordinal);

    /// <summary>The numbers, a value each row.</summary>
    public Dictionary<ModelVariable, double[]> Numbers { get; } = [];

    /// <summary>The mean of each column of numbers over the rows.</summary>
    public Dictionary<string, double> Means { get; } = new(StringComparer.Ordinal);

    /// <summary>The columns other than zero of a row.</summary>
    /// <returns>How many were written.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public int Row(int row, Span<int> columns, Span<double> values)
    {
        var count = 0;
        foreach (var code in _codes)
        {
            var (column, stride) = (code.First, 1);
            foreach (var (codes, skip, width) in code.Factors)
            {
                var level = codes[row] - skip;
                if (level < 0) { column = -1; break; }
                column += stride * level;
                stride *= width;
            }
            if (column < 0) continue;
            columns[count] = column;
            values[count++] = code.Product is null ? 1 : code.Product[row];
        }
        return count;
    }

    /// <summary>The most columns that a row can have.</summary>
    public int WidthOfRow => _codes.Count;

    private IEnumerable<FixedColumn> ColumnsOf(ModelTerm term, int index, List<(string Factor, int Skip)> factors, List<ModelVariable> numbers)
    {
        List<Dictionary<string, int>> products = [new(StringComparer.Ordinal)];
        foreach (var (factor, skip) in factors)
            products = [.. from level in Enumerable.Range(skip, Factors[factor].Levels.Length - skip)
                           from product in products
                           select new Dictionary<string, int>(product, StringComparer.Ordinal) { [factor] = level }];
        return products.Select(levels => new FixedColumn(Name(levels), index, levels, numbers));

        string Name(Dictionary<string, int> levels) => index < 0 ? ModelColumn.Intercept : string.Join(':', term.Variables.Select(variable =>
            levels.TryGetValue(variable.Column, out var level) ? variable.Column + Factors[variable.Column].Levels[level] : variable.ToString()));
    }

    private double[]? Product(List<ModelVariable> numbers) => numbers switch
    {
        [] => null,
        [var only] => Numbers[only],
        _ => [.. Enumerable.Range(0, Numbers[numbers[0]].Length).Select(row => numbers.Aggregate(1.0, (product, number) => product * Numbers[number][row]))],
    };

    internal static double[] Powers(IReadOnlyList<double> values, int[] rows, int power)
    {
        var result = new double[rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            result[i] = values[rows[i]];
            for (var k = 1; k < power; k++) result[i] *= values[rows[i]];
        }
        return result;
    }

    // The product's numbers are null where the term has none.
    private sealed record TermCode(int First, (int[] Codes, int Skip, int Width)[] Factors, double[]? Product);
}
