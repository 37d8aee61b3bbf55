using Tamis.Statistics.Comparisons;
using Tamis.Statistics.Models;

namespace Tamis.Statistics.MixedModels;

/// <summary>A mixed model fitted to data.</summary>
public sealed class MixedFit
{
    private readonly ModelData _data;
    private readonly FixedColumns _design;
    private readonly FixedRank _rank;
    private readonly MixedCriterion _criterion;
    private readonly VarianceSearch _search;
    private readonly double[] _solution;
    private readonly double[] _estimates;
    private readonly Lazy<Satterthwaite> _sureness;

    internal MixedFit(MixedFormula formula, ModelData data, int rowCount, FixedColumns design, FixedRank rank, MixedCriterion criterion, VarianceSearch search, double origin)
    {
        (Formula, _data, RowCount, _design, _rank, _criterion, _search) = (formula, data, rowCount, design, rank, criterion, search);
        ResidualVariance = criterion.PenalisedSquares / criterion.ResidualRows;
        _solution = FixedPart.Solve(criterion);
        _estimates = _solution[criterion.Sums.RandomCount..];
        if (formula.Fixed.HasIntercept) _estimates[0] += origin;
        _sureness = new(() => Satterthwaite.Of(criterion, search.Parameters, [.. Enumerable.Range(0, search.Parameters.Length).Where(i => !search.FixedAtZero[i])]));
        Components = [.. Enumerable.Range(0, formula.Random.Count).SelectMany(ComponentsOf)];
        Remarks = [.. RemarksOf()];
    }

    /// <summary>The model.</summary>
    public MixedFormula Formula { get; }

    /// <summary>How many rows were used: those that lack no value of the model.</summary>
    public int RowCount { get; }

    /// <summary>How many rows were left out because they lack a value.</summary>
    public int LeftOutCount => _data.RowCount - RowCount;

    /// <summary>Whether the restricted likelihood was made largest.</summary>
    public bool IsRestricted => _criterion.IsRestricted;

    /// <summary>−2 log likelihood with all constants, restricted where <see cref="IsRestricted"/> says so (log det XᵀX is not subtracted).</summary>
    public double Criterion => _search.Value;

    /// <summary>The log likelihood, restricted where <see cref="IsRestricted"/> says so.</summary>
    public double LogLikelihood => -Criterion / 2;

    /// <summary>How many parameters were estimated: fixed effects, variances, correlations.</summary>
    public int ParameterCount => _rank.Kept.Length + _search.Parameters.Length + 1;

    /// <summary>Akaike's criterion, −2 log likelihood + 2 parameters.</summary>
    public double Akaike => Criterion + 2 * ParameterCount;

    /// <summary>The variance within all levels, in the squared unit of the response.</summary>
    public double ResidualVariance { get; }

    /// <summary>The variance of each random effect, in the order of the model.</summary>
    public IReadOnlyList<VarianceComponent> Components { get; }

    /// <summary>What a reader has to know: variances of nil, effects that cannot be told, a search that did not end.</summary>
    public IReadOnlyList<string> Remarks { get; }

    /// <summary>Whether a variance is nil or a correlation ±1, so that a simpler model fits as well.</summary>
    public bool IsSingular => _search.FixedAtZero.Any(nil => nil);

    /// <summary>The fixed effects, in the order of the model.</summary>
    public IReadOnlyList<FixedEffect> FixedEffects => field ??= [.. _design.Columns.Select((column, j) =>
    {
        var place = Array.IndexOf(_rank.Kept, j);
        return new FixedEffect(column.Name, place < 0 ? null : EstimateOf(Unit(place)));
    })];

    /// <summary>The test of each fixed term; a term of which nothing can be told is left out.</summary>
    public IReadOnlyList<FixedTest> Tests => field ??= [.. Formula.Fixed.Terms.Select(TestOf).OfType<FixedTest>()];

    /// <summary>The fixed effect of this name.</summary>
    /// <exception cref="ArgumentException">The model has none of this name.</exception>
    public FixedEffect FixedEffect(string name) => FixedEffects.FirstOrDefault(one => string.Equals(one.Name, name, StringComparison.Ordinal))
        ?? throw new ArgumentException($"The model has no fixed effect '{name}'; it has {string.Join(", ", FixedEffects.Select(one => one.Name))}.", nameof(name));

    /// <summary>A weighted sum of fixed effects, or <see langword="null"/> where the data cannot tell it.</summary>
    /// <param name="weights">The weight of each effect by its name; those not named weigh nothing.</param>
    /// <exception cref="ArgumentException">A name is no fixed effect of the model.</exception>
    public Estimate? Contrast(IReadOnlyDictionary<string, double> weights)
    {
        foreach (var name in weights.Keys) FixedEffect(name);
        return Told([.. _design.Columns.Select(column => weights.GetValueOrDefault(column.Name))]);
    }

    /// <summary>The levels of a fixed factor that occur, sorted.</summary>
    /// <exception cref="ArgumentException">The fixed part has no such factor.</exception>
    public IReadOnlyList<string> Levels(string factor) => _design.Factors.TryGetValue(factor, out var levels)
        ? levels.Levels
        : throw new ArgumentException($"The fixed part has no factor '{factor}'; it has {string.Join(", ", _design.Factors.Keys)}.", nameof(factor));

    /// <summary>
    /// The mean of a level, all combinations of the other factors weighing the same and numbers at their mean; <see langword="null"/> where the
    /// data cannot tell it.
    /// </summary>
    /// <exception cref="ArgumentException">The fixed part has no such factor, or the factor no such level.</exception>
    public Estimate? Mean(string factor, string level) => Told(MeanWeights(factor, level));

    /// <summary>The mean of one level less that of another, or <see langword="null"/> where the data cannot tell it.</summary>
    /// <exception cref="ArgumentException">The fixed part has no such factor, or the factor no such level.</exception>
    public Estimate? Difference(string factor, string first, string second) =>
        Told([.. MeanWeights(factor, first).Zip(MeanWeights(factor, second), (one, other) => one - other)]);

    /// <summary>Every level less every later one, adjusted for there being so many; what the data cannot tell is left out.</summary>
    /// <exception cref="ArgumentException">The fixed part has no such factor.</exception>
    public IReadOnlyList<PairwiseDifference> PairwiseDifferences(string factor)
    {
        var levels = Levels(factor);
        double[][] means = [.. levels.Select(level => MeanWeights(factor, level))];
        return [.. from i in Enumerable.Range(0, levels.Count)
                   from j in Enumerable.Range(i + 1, levels.Count - i - 1)
                   let difference = Told([.. means[i].Zip(means[j], (one, other) => one - other)])
                   where difference is not null
                   select new PairwiseDifference(levels[i], levels[j], difference.Value, levels.Count)];
    }

    /// <summary>The correlation of two effects of a random term; <see langword="null"/> where one of them does not vary.</summary>
    /// <exception cref="ArgumentException">The model has no such grouping or effect.</exception>
    public double? Correlation(string group, string effect, string with)
    {
        foreach (var (term, index) in Formula.Random.Select((term, i) => (term, i)).Where(pair => Models.LinearFit.SameTerm(pair.term.Group, group)))
        {
            string[] effects = [.. term.Effects];
            var (i, j) = (Array.IndexOf(effects, effect), Array.IndexOf(effects, with));
            if (i < 0 || j < 0) continue;
            var covariance = _criterion.Factors.Covariance(_search.Parameters, index);
            return covariance[i, i] > 0 && covariance[j, j] > 0 ? covariance[i, j] / Math.Sqrt(covariance[i, i] * covariance[j, j]) : null;
        }
        throw new ArgumentException($"No random term of {group} has the effects '{effect}' and '{with}'; there are {string.Join(", ", Formula.Random)}.", nameof(group));
    }

    /// <summary>What each level of a random term is predicted to add.</summary>
    /// <exception cref="ArgumentException">The model has no such term.</exception>
    public IReadOnlyList<RandomEffect> RandomEffects(RandomTerm term)
    {
        var index = IndexOf(term);
        return Predictions.Of(_criterion, _search.Parameters, _solution, index);
    }

    /// <summary>The model against the same without one of its random terms, both by this fit's likelihood; <see langword="null"/> where the simpler one has no fit or no random term.</summary>
    /// <exception cref="ArgumentException">The model has no such term.</exception>
    public LikelihoodRatio? TestOf(RandomTerm term)
    {
        IndexOf(term);
        var simpler = Formula.Without(term);
        var degrees = term.EffectCount * (term.EffectCount + 1) / 2;
        if (simpler is not null) return MixedModel.Fit(simpler, _data, IsRestricted).Fit is { } fit ? Ratio(fit.Criterion, degrees) : null;
        var squares = _rank.ResidualSquares / _criterion.ResidualRows;
        return Ratio(_criterion.ResidualRows * (1 + Math.Log(2 * Math.PI * squares)) + (IsRestricted ? LogDeterminant() : 0), degrees);
    }

    /// <summary>This model against a part of it with fewer fixed effects, both by full likelihood.</summary>
    /// <exception cref="ArgumentException">One of them was fitted by restricted likelihood, they differ in rows, or the other is not smaller.</exception>
    public LikelihoodRatio Against(MixedFit smaller)
    {
        if (IsRestricted || smaller.IsRestricted) throw new ArgumentException("Fixed parts are compared by full likelihood; fit both with restricted: false.", nameof(smaller));
        if (smaller.RowCount != RowCount) throw new ArgumentException($"The models were fitted to {RowCount} and {smaller.RowCount} rows; compare them on the same.", nameof(smaller));
        if (smaller.ParameterCount >= ParameterCount) throw new ArgumentException("The other model is not smaller.", nameof(smaller));
        return Ratio(smaller.Criterion, ParameterCount - smaller.ParameterCount);
    }

    private LikelihoodRatio Ratio(double smaller, int degrees)
    {
        var chiSquare = Math.Max(0, smaller - Criterion);
        return new(chiSquare, degrees, Tails.ChiSquareAbove(chiSquare, degrees));
    }

    // log det XᵀX: what restricted likelihood adds where there is no random effect left.
    private double LogDeterminant()
    {
        double[] none = new double[_search.Parameters.Length];
        _criterion.Value(none);
        double sum = 0;
        for (var row = 0; row < _criterion.Sums.FixedCount; row++) sum += 2 * Math.Log(_criterion.Factor.Diagonal(_criterion.Sums.RandomCount + row));
        _criterion.Value(_search.Parameters);
        return sum;
    }

    private FixedTest? TestOf(ModelTerm term) =>
        TypeThree.Test(term.ToString(), [.. CellWeights.Type3(_design, term).Select(_rank.Reduced).OfType<double[]>()], _estimates, _sureness.Value);

    private Estimate? Told(double[] weights) => _rank.Reduced(weights) is { } reduced ? EstimateOf(reduced) : null;

    private Estimate EstimateOf(double[] reduced) =>
        new(Dense.Dot(reduced, _estimates), Math.Sqrt(Math.Max(0, _sureness.Value.Covariance(reduced, reduced))), _sureness.Value.Degrees(reduced));

    private double[] MeanWeights(string factor, string level)
    {
        var index = Levels(factor).ToList().IndexOf(level);
        return index >= 0
            ? CellWeights.Mean(_design, new Dictionary<string, int> { [factor] = index })
            : throw new ArgumentException($"'{factor}' has no level '{level}'; it has {string.Join(", ", Levels(factor))}.", nameof(level));
    }

    private double[] Unit(int place)
    {
        var unit = new double[_estimates.Length];
        unit[place] = 1;
        return unit;
    }

    private int IndexOf(RandomTerm term)
    {
        for (var i = 0; i < Formula.Random.Count; i++)
            if (Formula.Random[i] == term) return i;
        throw new ArgumentException($"The model has no random term {term}; it has {string.Join(", ", Formula.Random)}.", nameof(term));
    }

    private IEnumerable<VarianceComponent> ComponentsOf(int index)
    {
        var covariance = _criterion.Factors.Covariance(_search.Parameters, index);
        return Formula.Random[index].Effects.Select((effect, i) => new VarianceComponent(Formula.Random[index].Group, effect, _criterion.Sums.Random[index].Count, ResidualVariance * covariance[i, i]));
    }

    private IEnumerable<string> RemarksOf()
    {
        foreach (var component in Components.Where(component => component.Variance == 0))
            yield return $"The variance of {component.Group}{(component.Effect == ModelColumn.Intercept ? "" : $", slope of {component.Effect}")} is nil: its levels differ no more than the residual spread explains.";
        if (IsSingular && Components.All(component => component.Variance > 0))
            yield return "Two effects of a random term vary as one: their correlation is at its limit.";
        if (_rank.HeldAs.Count > 0)
            yield return $"{string.Join(", ", _rank.HeldAs.Keys.Order().Select(column => _design.Columns[column].Name))} cannot be told apart from earlier effects.";
        if (!_search.Converged) yield return "The search for the variances did not come to an end; take the figures as rough.";
        if (LeftOutCount > 0) yield return $"{LeftOutCount} of {_data.RowCount} rows lack a value and were left out.";
    }
}
