using Tamis.Statistics.Models;

namespace Tamis.Statistics.MixedModels;

/// <summary>What came of fitting a mixed model: a fit, or why there is none.</summary>
/// <param name="Fit">The fit; null where the data cannot carry the model.</param>
/// <param name="Reason">Why there is no fit, in words; empty where there is one.</param>
public sealed record MixedOutcome(MixedFit? Fit, string Reason)
{
    /// <summary>The fit.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message says why.</exception>
    public MixedFit Required => Fit ?? throw new InvalidOperationException(Reason);
}

/// <summary>Fits mixed models by restricted or full maximum likelihood.</summary>
public static class MixedModel
{
    /// <summary>Fits a model to the rows that lack no value of it.</summary>
    /// <param name="formula">The model.</param>
    /// <param name="data">The data: numbers, and factors for all groupings.</param>
    /// <param name="restricted">Restricted likelihood, which variances are judged by; full likelihood compares fixed parts.</param>
    /// <returns>The fit, or why the data cannot carry the model: one level, as many levels as rows, no spread, too few rows.</returns>
    /// <exception cref="ArgumentException">A column is missing or of the wrong kind.</exception>
    public static MixedOutcome Fit(MixedFormula formula, ModelData data, bool restricted = true)
    {
        if (data.IsFactor(formula.Fixed.Response))
            throw new ArgumentException($"The response '{formula.Fixed.Response}' is a factor; a mixed model needs a number.", nameof(data));
        var rows = data.CompleteRows(formula.Columns);
        if (rows.Length == 0) return new(null, $"No row has all of {string.Join(", ", formula.Columns)}.");
        RandomLevels[] random = [.. formula.Random.Select(term => RandomLevels.Of(term, data, rows))];
        if (WhyNot(random, rows.Length) is { } reason) return new(null, reason);
        var design = new FixedColumns(formula.Fixed, data, rows);
        var values = data.Numbers(formula.Fixed.Response);
        double[] response = [.. rows.Select(row => values[row])];
        // With an intercept the deviations give the same fit and keep the digits in which they differ.
        var origin = formula.Fixed.HasIntercept ? response.Average() : 0;
        for (var row = 0; row < response.Length; row++) response[row] -= origin;
        var rank = FixedRank.Of(design, response);
        if (rows.Length <= rank.Kept.Length)
            return new(null, $"There are {rows.Length} rows for {rank.Kept.Length} fixed effects; nothing is left to judge them by.");
        if (rank.ResidualSquares <= 1e-20 * Math.Max(response.Sum(value => value * value), origin * origin * response.Length))
            return new(null, formula.Fixed.Terms.Count == 0 || response.All(value => Math.Abs(value) <= 1e-12 * Math.Abs(origin))
                ? $"All values of {formula.Fixed.Response} are equal; there is no spread to judge anything by."
                : $"The fixed effects explain {formula.Fixed.Response} without remainder; there is no spread to judge them by.");
        return Search(formula, data, rows, random, design, rank, response, origin, restricted);
    }

    private static MixedOutcome Search(
        MixedFormula formula, ModelData data, int[] rows, RandomLevels[] random, FixedColumns design, FixedRank rank, double[] response, double origin, bool restricted)
    {
        var criterion = new MixedCriterion(new(random, design, rank.Kept, response), rows.Length, restricted);
        var search = VarianceSearch.Run(criterion, criterion.Factors.Start());
        if (search.Parameters.Any(parameter => Math.Abs(parameter) >= VarianceSearch.LargestFactor))
            return new(null, $"Within the levels of {string.Join(", ", formula.Random)} no spread is left; the residual variance is nil and nothing can be judged by it.");
        return new(new(formula, data, rows.Length, design, rank, criterion, search, origin), "");
    }

    private static string? WhyNot(RandomLevels[] random, int rowCount)
    {
        foreach (var term in random)
        {
            if (term.Count == 1) return $"{term.Term.Group} has one level only; how much it varies cannot be told.";
            if (term.Count == rowCount && term.Term.HasIntercept)
                return $"{term.Term.Group} has a level for every row; how much it varies cannot be told from the residual.";
        }
        for (var i = 0; i < random.Length; i++)
            for (var j = i + 1; j < random.Length; j++)
                if (random[i].Count == random[j].Count && random[i].Term.Effects.Intersect(random[j].Term.Effects).Any()
                    && random[i].Level.Zip(random[j].Level).Distinct().Count() == random[i].Count)
                    return $"{random[i].Term.Group} and {random[j].Term.Group} have the same levels; their variances cannot be told apart.";
        return null;
    }
}
