using MathNet.Numerics.LinearAlgebra;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.OrdinalModels;

/// <summary>What came of fitting a cumulative-link model: a fit, or why there is none.</summary>
/// <param name="Fit">The fit; null where the data cannot carry the model.</param>
/// <param name="Reason">Why there is no fit, in words; empty where there is one.</param>
public sealed record OrdinalOutcome(OrdinalFit? Fit, string Reason)
{
    /// <summary>The fit.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message says why.</exception>
    public OrdinalFit Required => Fit ?? throw new InvalidOperationException(Reason);
}

/// <summary>A model of ordered classes by cumulative links, with flexible thresholds and at most one random intercept.</summary>
/// <param name="Fixed">The response, a number whose values are the classes in their order, and the fixed terms.</param>
/// <param name="Group">The random intercept; null for none.</param>
/// <param name="Link">The link.</param>
/// <param name="QuadraturePoints">Points of the adaptive Gauss–Hermite quadrature, 1 (Laplace) to 50.</param>
/// <remarks>McCullagh (1980), Journal of the Royal Statistical Society B 42; Hedeker and Gibbons (1994), Biometrics 50.</remarks>
public sealed record OrdinalModel(ModelFormula Fixed, RandomTerm? Group, OrdinalLink Link, int QuadraturePoints = 10)
{
    // A standard deviation below this share of the link's scale changes no probability that a reader could see.
    private const double SmallestDeviation = 1e-3;

    /// <summary>Reads a model: <c>rating ~ temp + contact + (1 | judge)</c>, or without the random term.</summary>
    /// <exception cref="FormatException">The text is no such model; the message says why.</exception>
    public static OrdinalModel Parse(string text, OrdinalLink link, int quadraturePoints = 10)
    {
        if (!text.Contains('|', StringComparison.Ordinal)) return new(ModelFormula.Parse(text), null, link, quadraturePoints);
        var mixed = MixedFormula.Parse(text);
        return mixed.Random is [{ HasIntercept: true, Slopes.Count: 0 } only]
            ? new(mixed.Fixed, only, link, quadraturePoints)
            : throw new FormatException($"The model '{text}' has {string.Join(", ", mixed.Random)}; a model of ordered classes takes one random intercept, such as (1 | judge).");
    }

    /// <summary>All columns that the model names, the response first.</summary>
    public IEnumerable<string> Columns => Fixed.Columns.Concat(Group?.Grouping ?? []).Distinct();

    /// <summary>Fits the model to the rows that lack no value of it.</summary>
    /// <returns>The fit, or why the data cannot carry it: one class, one level, a class that separates perfectly.</returns>
    /// <exception cref="ArgumentException">A column is missing or of the wrong kind, or the model has no intercept.</exception>
    public OrdinalOutcome Fit(ModelData data)
    {
        if (!Fixed.HasIntercept) throw new ArgumentException("The thresholds take the intercept’s place; write the model without 0.", nameof(data));
        if (QuadraturePoints is < 1 or > 50) throw new ArgumentException($"The quadrature has {QuadraturePoints} points; 1 to 50 are of use.", nameof(data));
        var whole = data.CompleteRows(Columns).ToHashSet();
        if (whole.Count == 0) return new(null, $"No row has all of {string.Join(", ", Columns)}.");
        var design = new DesignMatrix(Fixed, data);
        int[] places = [.. Enumerable.Range(0, design.Rows.Length).Where(i => whole.Contains(design.Rows[i]))];
        double[] response = [.. places.Select(i => design.Response[i])];
        double[] classes = [.. response.Distinct().Order()];
        if (classes.Length < 2) return new(null, $"All values of {Fixed.Response} are equal; one class cannot be modelled.");
        var groups = Groups(data, [.. places.Select(i => design.Rows[i])]);
        if (groups.Length == 1) return new(null, $"{Group!.Group} has one level only; how much it varies cannot be told.");
        var named = design.Columns.ConvertAll(column => (column.Name, Values: places.Select(i => column.Values[i]).ToArray()));
        var qr = new OrderedQr(named.ConvertAll(column => column.Values), response);
        (string Name, double[] Values)[] kept = [.. named.Where((_, j) => j > 0 && qr.Position[j] >= 0)];
        int[] codes = [.. response.Select(value => Array.BinarySearch(classes, value))];
        var alone = Search(new(Link, codes, classes.Length, [.. kept.Select(column => column.Values)], [], 1), Start(codes, classes.Length, kept.Length), kept);
        if (Separated(alone, classes.Length, kept) is { } separated) return new(null, separated);
        if (groups.Length == 0) return Outcome(alone, classes, kept, response.Length, null, "");
        var mixed = Search(new(Link, codes, classes.Length, [.. kept.Select(column => column.Values)], groups, QuadraturePoints), [.. alone.Parameters, Math.Log(0.7)], kept);
        if (mixed.LogLikelihood <= alone.LogLikelihood + 1e-9 || Math.Exp(mixed.Parameters[^1]) < SmallestDeviation)
            return Outcome(alone, classes, kept, response.Length, 0, $"The levels of {Group!.Group} differ no more than chance makes them; their variance is nil.");
        if (Separated(mixed, classes.Length, kept) is { } apart) return new(null, apart);
        return Outcome(mixed, classes, kept, response.Length, Math.Exp(2 * mixed.Parameters[^1]), "");
    }

    // The search goes by gaps between thresholds; what comes back has the thresholds, and the information of them by the chain rule.
    private OrdinalSearch Search(OrdinalLikelihood likelihood, double[] start, (string Name, double[] Values)[] columns)
    {
        var found = OrdinalSearch.Run(likelihood.At, likelihood.WithGaps(start),
            at => FirstBeyond(at, likelihood.ThresholdCount, columns) is not null || likelihood.HasGroups && Math.Exp(at[^1]) < SmallestDeviation);
        var thresholds = likelihood.ThresholdCount;
        // A threshold less the one before is the exponential of its gap, whose own slope is the gap: d(log gap) = (d upper − d lower) / gap.
        var slopes = Matrix<double>.Build.DenseIdentity(found.Parameters.Length);
        for (var j = 1; j < thresholds; j++) (slopes[j, j], slopes[j, j - 1]) = (Math.Exp(-found.Parameters[j]), -Math.Exp(-found.Parameters[j]));
        return found with { Parameters = likelihood.WithThresholds(found.Parameters), Information = slopes.TransposeThisAndMultiply(found.Information * slopes) };
    }

    private string? Separated(OrdinalSearch search, int classCount, (string Name, double[] Values)[] columns) =>
        FirstBeyond(search.Parameters, classCount - 1, columns) is { } name
            ? $"{name} separates the classes of {Fixed.Response} perfectly: its effect has no finite estimate. More answers, or fewer classes, would settle it."
            : search.IsSettled && Definite(search.Information) ? null : $"The search for the best fit of {Fixed.Response} did not settle; the answers are too few for the model.";

    // Only where the likelihood falls off on every side are there standard errors.
    private static bool Definite(Matrix<double> information) =>
        information.Enumerate().All(double.IsFinite) && information.Evd(Symmetricity.Symmetric).EigenValues.All(value => value.Real > 0);

    private string? FirstBeyond(double[] at, int thresholds, (string Name, double[] Values)[] columns)
    {
        for (var j = 0; j < columns.Length; j++)
            if (Math.Abs(at[thresholds + j]) * (columns[j].Values.Max() - columns[j].Values.Min()) > Link.Beyond) return columns[j].Name;
        return null;
    }

    // The thresholds that the shares of the classes alone would give.
    private double[] Start(int[] codes, int classCount, int columnCount) =>
        [.. Enumerable.Range(1, classCount - 1).Select(j => Link.Distance((double)codes.Count(code => code < j) / codes.Length)), .. new double[columnCount]];

    private int[][] Groups(ModelData data, int[] rows)
    {
        if (Group is null) return [];
        var levels = RandomLevels.Of(Group, data, rows);
        return [.. Enumerable.Range(0, rows.Length).GroupBy(i => levels.Level[i]).OrderBy(group => group.Key).Select(group => group.ToArray())];
    }

    private static OrdinalOutcome Outcome(OrdinalSearch search, double[] classes, (string Name, double[] Values)[] columns, int rowCount, double? variance, string note)
    {
        var covariance = search.Information.Inverse();
        var thresholds = classes.Length - 1;
        double Error(int j) => Math.Sqrt(covariance[j, j]);
        return new(new(
            rowCount,
            [.. Enumerable.Range(0, thresholds).Select(j => new OrdinalThreshold(classes[j], classes[j + 1], search.Parameters[j], Error(j)))],
            [.. columns.Select((column, j) => new OrdinalCoefficient(column.Name, search.Parameters[thresholds + j], Error(thresholds + j)))],
            search.LogLikelihood, variance, thresholds + columns.Length + (variance is null ? 0 : 1), note)
        { Covariance = covariance.SubMatrix(thresholds, columns.Length, thresholds, columns.Length) }, "");
    }
}
