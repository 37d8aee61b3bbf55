namespace Tamis.Statistics.Models;

/// <summary>The columns of numbers that a formula makes of data.</summary>
/// <remarks>
/// A factor is coded by treatment contrasts (first level = reference) in a term whose margin without that factor is in the model, and by
/// one indicator a level where the margin is missing, as in <c>0 + recipe</c>. In an interaction the levels of the first factor run fastest.
/// </remarks>
internal sealed class DesignMatrix
{
    private readonly Dictionary<string, string[]> _levels = [];

    public DesignMatrix(ModelFormula formula, ModelData data)
    {
        if (data.IsFactor(formula.Response))
            throw new ArgumentException($"The response '{formula.Response}' is a factor; least squares needs a number.", nameof(data));
        Rows = data.CompleteRows(formula.Columns);
        var numbers = data.Numbers(formula.Response);
        Response = [.. Rows.Select(row => numbers[row])];
        if (formula.HasIntercept) Columns.Add(new(ModelColumn.Intercept, -1, [.. Rows.Select(_ => 1.0)]));
        for (var i = 0; i < formula.Terms.Count; i++)
            Columns.AddRange(TermColumns(formula, formula.Terms[i], data).Select(column => new ModelColumn(column.Name, i, column.Values)));
    }

    /// <summary>The rows of the data that were used: those that lack no value of the model.</summary>
    public int[] Rows { get; }

    public double[] Response { get; }

    public List<ModelColumn> Columns { get; } = [];

    private List<(string Name, double[] Values)> TermColumns(ModelFormula formula, ModelTerm term, ModelData data)
    {
        List<(string Name, double[] Values)> product = [("", [.. Rows.Select(_ => 1.0)])];
        foreach (var variable in term.Variables)
        {
            var coded = VariableColumns(formula, term, variable, data);
            product = [.. from right in coded from left in product
                          select (left.Name.Length == 0 ? right.Name : $"{left.Name}:{right.Name}", Product(left.Values, right.Values))];
        }
        return product;
    }

    private List<(string Name, double[] Values)> VariableColumns(ModelFormula formula, ModelTerm term, ModelVariable variable, ModelData data)
    {
        if (!data.IsFactor(variable.Column))
        {
            var numbers = data.Numbers(variable.Column);
            return [(variable.ToString(), [.. Rows.Select(row => PowerOf(numbers[row], variable.Power))])];
        }
        if (variable.Power != 1)
            throw new ArgumentException($"'{variable}' takes the power of a factor; only a number has powers.", nameof(formula));
        var factor = data.Factor(variable.Column);
        if (!_levels.TryGetValue(variable.Column, out var levels))
            _levels[variable.Column] = levels = ModelData.SortedLevels(Rows.Select(row => factor[row]!));
        var margin = term.Without(variable);
        var hasMargin = margin.Variables.Count == 0 ? formula.HasIntercept : formula.Terms.Contains(margin);
        return [.. levels.Skip(hasMargin ? 1 : 0).Select(level =>
            (variable.Column + level, Rows.Select(row => string.Equals(factor[row], level, StringComparison.Ordinal) ? 1.0 : 0.0).ToArray()))];
    }

    // Repeated multiplication is exact while the powers of whole numbers are; Math.Pow need not be.
    private static double PowerOf(double value, int power)
    {
        var result = value;
        for (var i = 1; i < power; i++) result *= value;
        return result;
    }

    private static double[] Product(double[] left, double[] right) => [.. left.Zip(right, (a, b) => a * b)];
}

/// <summary>One column of a design matrix.</summary>
/// <param name="Name">The coefficient's name.</param>
/// <param name="Term">The index of the term that it belongs to; −1 for the intercept.</param>
/// <param name="Values">One number a row.</param>
internal sealed record ModelColumn(string Name, int Term, double[] Values)
{
    public const string Intercept = "(Intercept)";
}
