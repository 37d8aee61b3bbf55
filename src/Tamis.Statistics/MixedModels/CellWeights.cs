using Tamis.Statistics.Models;

namespace Tamis.Statistics.MixedModels;

/// <summary>Combinations of coefficients that stand for means over a grid of all levels, each level weighing the same.</summary>
/// <remarks>
/// A column is a product of indicators, so that its mean over the grid is the product of the factors' own means: 1/levels for a factor that is
/// averaged over, 1 or 0 for one that is held at a level, the difference of two such for a contrast (Searle, Speed and Milliken 1980, The
/// American Statistician 34). A number stands at its mean over the rows, a power at the power of that mean.
/// </remarks>
internal static class CellWeights
{
    /// <summary>The mean at given levels of some factors.</summary>
    public static double[] Mean(FixedColumns design, IReadOnlyDictionary<string, int> at) => [.. design.Columns.Select(column =>
        column.Levels.Aggregate(1.0, (product, pair) => product * At(design, at, pair.Key, pair.Value))
        * column.Numbers.Aggregate(1.0, (product, number) => product * Math.Pow(design.Means[number.Column], number.Power)))];

    /// <summary>The contrasts of a term that are nil if it does nothing on average over all other factors: type 3.</summary>
    public static IEnumerable<double[]> Type3(FixedColumns design, ModelTerm term)
    {
        string[] factors = [.. term.Variables.Where(variable => design.Factors.ContainsKey(variable.Column)).Select(variable => variable.Column)];
        ModelVariable[] numbers = [.. term.Variables.Where(variable => !design.Factors.ContainsKey(variable.Column))];
        List<Dictionary<string, int>> contrasts = [new(StringComparer.Ordinal)];
        foreach (var factor in factors)
            contrasts = [.. from contrast in contrasts
                            from level in Enumerable.Range(1, design.Factors[factor].Levels.Length - 1)
                            select new Dictionary<string, int>(contrast, StringComparer.Ordinal) { [factor] = level }];
        return contrasts.Select(contrast => (double[])[.. design.Columns.Select(column => SameNumbers(column.Numbers, numbers) ? Weight(column, contrast) : 0)]);

        // A constant differs between no two levels, so that a column without one of the term's factors has no part in the contrast.
        double Weight(FixedColumn column, Dictionary<string, int> contrast) => contrast.Keys.All(column.Levels.ContainsKey)
            ? column.Levels.Aggregate(1.0, (product, pair) => product * (contrast.TryGetValue(pair.Key, out var level)
                ? (pair.Value == level ? 1 : 0) - (pair.Value == 0 ? 1 : 0)
                : 1.0 / design.Factors[pair.Key].Levels.Length))
            : 0;
    }

    private static double At(FixedColumns design, IReadOnlyDictionary<string, int> at, string factor, int level) =>
        at.TryGetValue(factor, out var wanted) ? (level == wanted ? 1 : 0) : 1.0 / design.Factors[factor].Levels.Length;

    private static bool SameNumbers(IReadOnlyList<ModelVariable> left, IReadOnlyList<ModelVariable> right) => left.Count == right.Count && left.All(right.Contains);
}
