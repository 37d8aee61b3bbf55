namespace Tamis.Statistics.Models;

/// <summary>A coefficient of a fitted model.</summary>
/// <param name="Name">The column's name, a factor's name followed by its level, or <c>(Intercept)</c>.</param>
/// <param name="Estimate">The estimate in units of the response over those of the column; NaN where earlier columns hold this one already.</param>
/// <param name="StandardError">Its standard error; NaN where there is no estimate or no residual degree of freedom.</param>
public sealed record Coefficient(string Name, double Estimate, double StandardError);

/// <summary>A line of an analysis of variance.</summary>
/// <param name="Term">The term as in the expanded model.</param>
/// <param name="Degrees">Its degrees of freedom, after what earlier terms hold.</param>
/// <param name="SumOfSquares">Its sequential (type 1) sum of squares.</param>
/// <param name="F">Its mean square over the residual mean square; NaN where one of them has no degree of freedom.</param>
/// <param name="P">The probability of a larger F if the term did nothing; NaN where F is.</param>
public sealed record AnovaLine(string Term, int Degrees, double SumOfSquares, double F, double P)
{
    /// <summary>Sum of squares over degrees of freedom.</summary>
    public double MeanSquare => SumOfSquares / Degrees;
}

/// <summary>A combination of coefficients with its doubt.</summary>
/// <param name="Value">The estimate.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="Degrees">The residual degrees of freedom behind it.</param>
public readonly record struct Estimate(double Value, double StandardError, double Degrees)
{
    /// <summary>The interval by Student's t.</summary>
    /// <param name="confidence">Above 0 and below 1.</param>
    public ConfidenceLimits Limits(double confidence = 0.95)
    {
        var half = Tails.StudentTwoSided(confidence, Degrees) * StandardError;
        return new(Value - half, Value + half);
    }
}

/// <summary>A linear model fitted by least squares.</summary>
public sealed class LinearFit
{
    private readonly DesignMatrix _design;
    private readonly OrderedQr _qr;
    private readonly double[] _estimates;

    private LinearFit(ModelFormula formula, DesignMatrix design)
    {
        (Formula, _design) = (formula, design);
        // With an intercept the fit of the deviations is the same fit, and values that agree in their leading digits keep the others.
        var mean = SampleSummary.Of(design.Response).Mean;
        double[] deviations = [.. design.Response.Select(value => value - mean)];
        _qr = new(design.Columns.ConvertAll(column => column.Values), formula.HasIntercept ? deviations : design.Response);
        _estimates = _qr.Coefficients();
        if (formula.HasIntercept) _estimates[0] += mean;
        var left = deviations.Sum();
        TotalSumOfSquares = deviations.Sum(value => value * value) - left * left / deviations.Length;
        ResidualSumOfSquares = _qr.ResidualSumOfSquares;
        Coefficients = [.. design.Columns.Select((column, j) => new Coefficient(column.Name, _estimates[j], ResidualStandardDeviation * UnitErrorOf(j)))];
        Anova = [.. formula.Terms.Select(AnovaOf)];
    }

    /// <summary>The model.</summary>
    public ModelFormula Formula { get; }

    /// <summary>How many rows were used: those that lack no value of the model.</summary>
    public int RowCount => _design.Rows.Length;

    /// <summary>The coefficients, in the order of the model.</summary>
    public IReadOnlyList<Coefficient> Coefficients { get; }

    /// <summary>Sequential sums of squares, one line a term, in the order of the model.</summary>
    public IReadOnlyList<AnovaLine> Anova { get; }

    /// <summary>The sum of squares about the mean, whether the model has an intercept or not.</summary>
    public double TotalSumOfSquares { get; }

    /// <summary>What the model leaves unexplained.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Rows less coefficients that could be told.</summary>
    public int ResidualDegrees => RowCount - _qr.Rank;

    /// <summary>The square root of the residual mean square, in units of the response; NaN without a residual degree of freedom.</summary>
    public double ResidualStandardDeviation => ResidualDegrees > 0 ? Math.Sqrt(ResidualSumOfSquares / ResidualDegrees) : double.NaN;

    /// <summary>1 − residual over total sum of squares, the total always about the mean.</summary>
    public double RSquared => 1 - ResidualSumOfSquares / TotalSumOfSquares;

    /// <summary>The mean square of the whole regression over the residual mean square.</summary>
    public double RegressionF
    {
        get
        {
            var first = Formula.HasIntercept ? 1 : 0;
            var explained = Enumerable.Range(first, _qr.Rank - first).Sum(i => _qr.Effects[i] * _qr.Effects[i]);
            return explained / (_qr.Rank - first) / (ResidualSumOfSquares / ResidualDegrees);
        }
    }

    /// <summary>Fits a model to the rows that lack no value of it.</summary>
    /// <exception cref="ArgumentException">A column is missing, the response is a factor, or no row is complete.</exception>
    public static LinearFit Of(ModelFormula formula, ModelData data)
    {
        var design = new DesignMatrix(formula, data);
        if (design.Rows.Length == 0)
            throw new ArgumentException($"No row has all of {string.Join(", ", formula.Columns)}; there is nothing to fit.", nameof(data));
        return new(formula, design);
    }

    /// <summary>The coefficient of this name.</summary>
    /// <exception cref="ArgumentException">The model has none of this name.</exception>
    public Coefficient Coefficient(string name) => Coefficients.FirstOrDefault(one => string.Equals(one.Name, name, StringComparison.Ordinal))
        ?? throw new ArgumentException($"The model has no coefficient '{name}'; it has {string.Join(", ", Coefficients.Select(one => one.Name))}.", nameof(name));

    /// <summary>The line of the analysis of variance for a term, whatever the order of its variables.</summary>
    /// <exception cref="ArgumentException">The model has no such term.</exception>
    public AnovaLine AnovaFor(string term) => Anova.FirstOrDefault(line => SameTerm(line.Term, term))
        ?? throw new ArgumentException($"The model has no term '{term}'; it has {string.Join(", ", Anova.Select(line => line.Term))}.", nameof(term));

    /// <summary>A weighted sum of coefficients, or <see langword="null"/> where the data cannot tell it.</summary>
    /// <param name="weights">The weight of each coefficient by its name; those not named weigh nothing.</param>
    /// <exception cref="ArgumentException">A name is no coefficient of the model.</exception>
    public Estimate? Contrast(IReadOnlyDictionary<string, double> weights)
    {
        foreach (var name in weights.Keys) Coefficient(name);
        double[] vector = [.. _design.Columns.Select(column => weights.GetValueOrDefault(column.Name))];
        var unitError = _qr.UnitError(vector);
        if (double.IsNaN(unitError)) return null;
        var value = vector.Select((weight, j) => _qr.Position[j] < 0 ? 0 : weight * _estimates[j]).Sum();
        return new(value, ResidualStandardDeviation * unitError, ResidualDegrees);
    }

    private double UnitErrorOf(int j) => _qr.Position[j] < 0 ? double.NaN : _qr.UnitErrorOfKept(j);

    private AnovaLine AnovaOf(ModelTerm term, int index)
    {
        int[] places = [.. Enumerable.Range(0, _design.Columns.Count).Where(j => _design.Columns[j].Term == index && _qr.Position[j] >= 0).Select(j => _qr.Position[j])];
        var squares = places.Sum(place => _qr.Effects[place] * _qr.Effects[place]);
        var f = places.Length > 0 && ResidualDegrees > 0 ? squares / places.Length / (ResidualSumOfSquares / ResidualDegrees) : double.NaN;
        return new(term.ToString(), places.Length, squares, f, double.IsNaN(f) ? double.NaN : Tails.FAbove(f, places.Length, ResidualDegrees));
    }

    internal static bool SameTerm(string left, string right) => left.Split(':').ToHashSet(StringComparer.Ordinal).SetEquals(right.Split(':'));
}
