using Tamis.Statistics;
using Tamis.Statistics.Models;

namespace Tamis.Tasting;

/// <summary>What the scores of a tasting log say of its trials.</summary>
/// <remarks>
/// Where the report of a tasting has a pair of trials, its difference, interval and verdict are taken: one answer to one question, on whatever page.
/// Where it has none the assessor is the unit: several servings of a trial to one assessor are averaged first and count once, whatever their number, and
/// differences are taken within assessors, by assessor and trial as effects of a linear model of one tasting; assessors who lack some trials
/// count through those that they scored. Bench tastings take words only and give no figure here.
/// </remarks>
public sealed class TastingAnalysis
{
    private readonly TastingPolicy _policy;
    private readonly Func<string, TastingReport>? _reports;
    private readonly Dictionary<(string Tasting, string Attribute), ScoreCells> _cells;
    private readonly Dictionary<(string Tasting, string Attribute), BlockModel?> _models = [];
    private readonly Dictionary<string, string> _trialSpellings = new(Names.Comparer);
    private readonly TastingSession[] _sessions;
    private IReadOnlyList<TrialMean>? _means;
    private readonly Dictionary<string, HashSet<string>> _trials;
    private readonly ILookup<(string Tasting, string Trial), int?> _makes;

    /// <summary>Prepares the analysis of a log.</summary>
    /// <param name="log">What is analysed.</param>
    /// <param name="policy">The customs by which a verdict is reached; the kit's own where null.</param>
    /// <param name="reports">The report of a tasting by its name; where null, nothing but differences within assessors is looked at.</param>
    public TastingAnalysis(TastingLog log, TastingPolicy? policy = null, Func<string, TastingReport>? reports = null)
    {
        Log = log;
        _reports = reports;
        _policy = policy ?? TastingPolicy.Kit;
        _sessions = [.. log.Sessions.Where(session => !session.IsBench)];
        _trials = _sessions.ToDictionary(session => session.Name, session => log.TrialsIn(session.Name).ToHashSet());
        _cells = log.Scores.GroupBy(score => (score.Serving.Tasting, score.Attribute.Name)).ToDictionary(marks => marks.Key, marks => new ScoreCells(marks));
        _makes = log.Tasted.ToLookup(serving => (serving.Tasting, serving.Trial), serving => serving.Make);
        foreach (var serving in log.Servings) _trialSpellings.TryAdd(serving.Trial, serving.Trial);
    }

    /// <summary>What is analysed.</summary>
    public TastingLog Log { get; }

    /// <summary>The scales on which trials are compared: liking and intensity.</summary>
    public IEnumerable<SensoryAttribute> Scales => Log.Attributes.Where(attribute => attribute.IsScale);

    /// <summary>The mean of every trial on every scale in every tasting that asked for it, with its interval over the assessors.</summary>
    public IReadOnlyList<TrialMean> Means() => _means ??=
        [.. from session in _sessions
            from attribute in Scales
            where _cells.ContainsKey((session.Name, attribute.Name))
            from trial in _cells[(session.Name, attribute.Name)].All.GroupBy(cell => cell.Trial).OrderBy(cells => cells.Key, StringComparer.Ordinal)
            select Mean(session, attribute, [.. trial])];

    /// <summary>Compares two trials on one attribute: in every tasting that served both and asked, else through a control, else in words.</summary>
    /// <returns>One comparison a tasting; exactly one where no tasting served both and asked.</returns>
    public IReadOnlyList<TrialComparison> Compare(string trial, string against, SensoryAttribute attribute)
    {
        trial = Spelt(trial);
        against = Spelt(against);
        TastingSession[] together = [.. _sessions.Where(session => _trials[session.Name].Contains(trial) && _trials[session.Name].Contains(against))];
        TastingSession[] asked = [.. together.Where(session => CellsOf(session, attribute) is { } cells && cells.Has(trial) && cells.Has(against))];
        if (asked.Length > 0) return [.. asked.Select(session => Within(session, trial, against, attribute))];
        if (Linked(trial, against, attribute) is { } linked) return [linked];
        return [new(trial, against, attribute, together.Length > 0 ? Verdict.NotAsked : Verdict.NeverTogether) { Tastings = [.. together.Select(session => session.Name)] }];
    }

    /// <summary>Compares every trial of a tree with its parent on every scale, and counts the looks.</summary>
    /// <param name="parents">The parent of each trial, null for a first one; in the order in which they are to be told.</param>
    public TreeComparison CompareTree(IReadOnlyDictionary<string, string?> parents)
    {
        TrialComparison[] comparisons = [.. from pair in parents
                                            where pair.Value is not null
                                            from attribute in Scales
                                            from comparison in Compare(pair.Key, pair.Value!, attribute)
                                            select comparison];
        return new(comparisons, LooksOf(comparisons));
    }

    /// <summary>How often chance had its turn in a list of comparisons: once a scale of a tasting whose intervals hold for all its pairs together, else once a comparison.</summary>
    public Looks LooksOf(IEnumerable<TrialComparison> comparisons)
    {
        var looked = comparisons.Where(comparison => comparison.IsLook).ToArray();
        var count = looked.Count(comparison => comparison.StandsAmongAll is null)
            + looked.Where(comparison => comparison.StandsAmongAll is not null).Select(comparison => (comparison.Tastings[0], comparison.Attribute)).Distinct().Count();
        return new(count, count * (1 - _policy.ConfidenceShare));
    }

    private string Spelt(string trial) => _trialSpellings.GetValueOrDefault(trial, trial);

    private TrialMean Mean(TastingSession session, SensoryAttribute attribute, IReadOnlyList<ScoreCells.Cell> cells)
    {
        var summary = SampleSummary.Of([.. cells.Select(cell => cell.Points)]);
        var limits = summary.MeanLimits(_policy.ConfidenceShare);
        return new(session.Name, attribute, cells[0].Trial, cells.Count, cells.Sum(cell => cell.Servings), summary.Mean,
            limits is { } known ? Interval.Between(known.Low, known.High) : null);
    }

    private ScoreCells? CellsOf(TastingSession session, SensoryAttribute attribute) => _cells.GetValueOrDefault((session.Name, attribute.Name));

    private BlockModel? ModelOf(TastingSession session, SensoryAttribute attribute)
    {
        var key = (session.Name, attribute.Name);
        if (!_models.TryGetValue(key, out var model))
        {
            var cells = CellsOf(session, attribute)?.Comparable ?? [];
            _models[key] = model = cells.Count > 0 ? BlockModel.Of(cells.Select(cell => new BlockValue(cell.Assessor, cell.Trial, cell.Points))) : null;
        }
        return model;
    }

    private TrialComparison Within(TastingSession session, string trial, string against, SensoryAttribute attribute)
    {
        var cells = CellsOf(session, attribute)!;
        var estimate = EstimateOf(session, trial, against, attribute);
        var points = cells.Points(trial, against);
        return Reported(session, Judged(new(trial, against, attribute, Verdict.TooFew)
        {
            Tastings = [session.Name],
            AssessorCount = CountOf(cells, trial, against),
            BothCount = points.Count(point => point.TrialPoints is not null && point.AgainstPoints is not null),
            WithinAssessorPoints = Spread(session, attribute),
            Points = points,
        }, estimate));
    }

    private TrialComparison Reported(TastingSession session, TrialComparison within)
    {
        if (_reports?.Invoke(session.Name).Scales.FirstOrDefault(each => each.Attribute == within.Attribute) is not { WhyNot.Length: 0 } scale
            || scale.PairOf(within.Trial, within.Against) is not { Range: not null } pair) return within;
        return within with { DifferencePoints = pair.Points, Range = pair.Range, Verdict = pair.Verdict, WithinAssessorPoints = scale.ServingPoints, StandsAmongAll = scale.IsShown(_policy) };
    }

    // Trial − control in one tasting less other − control in another. The two tastings count as independent, even where assessors came to
    // both: what an assessor has to say of a control in common is left unused.
    private TrialComparison? Linked(string trial, string against, SensoryAttribute attribute)
    {
        var links = from first in _sessions
                    from second in _sessions
                    where first.Name != second.Name && first.Control is not null && Names.Same(first.Control, second.Control)
                    let control = Spelt(first.Control!)
                    let left = EstimateOf(first, trial, control, attribute)
                    let right = EstimateOf(second, against, control, attribute)
                    where left is { Degrees: > 0 } && right is { Degrees: > 0 }
                    let sum = Difference(left.Value, right.Value)
                    orderby sum.StandardError
                    select (first, second, control, sum);
        return links.Select(link => Judged(new(trial, against, attribute, Verdict.TooFew)
        {
            Tastings = [link.first.Name, link.second.Name],
            Through = link.control,
            AssessorCount = Math.Min(CountOf(CellsOf(link.first, attribute)!, trial, link.control), CountOf(CellsOf(link.second, attribute)!, against, link.control)),
            WithinAssessorPoints = Math.Max(Spread(link.first, attribute)!.Value, Spread(link.second, attribute)!.Value),
        }, link.sum)).FirstOrDefault();
    }

    // Welch (1947) and Satterthwaite (1946): the degrees of freedom of a sum of two independent estimates.
    private static Estimate Difference(Estimate left, Estimate right)
    {
        double first = left.StandardError * left.StandardError, second = right.StandardError * right.StandardError;
        var degrees = first + second > 0
            ? (first + second) * (first + second) / (first * first / left.Degrees + second * second / right.Degrees)
            : left.Degrees + right.Degrees;
        return new(left.Value - right.Value, Math.Sqrt(first + second), degrees);
    }

    private Estimate? EstimateOf(TastingSession session, string trial, string against, SensoryAttribute attribute) =>
        ModelOf(session, attribute) is { } model && model.Treatments.Contains(trial) && model.Treatments.Contains(against)
            ? model.Difference(trial, against)
            : null;

    private static int CountOf(ScoreCells cells, string trial, string against) =>
        Math.Min(cells.Comparable.Count(cell => cell.Trial == trial), cells.Comparable.Count(cell => cell.Trial == against));

    // The standard deviation within assessors; null without a degree of freedom.
    private double? Spread(TastingSession session, SensoryAttribute attribute) =>
        ModelOf(session, attribute) is { ResidualDegrees: > 0 } model ? model.ResidualStandardDeviation : null;

    private TrialComparison Judged(TrialComparison bare, Estimate? estimate)
    {
        bare = bare with { DifferencePoints = estimate?.Value, TrialMakes = Makes(bare.Trial), AgainstMakes = Makes(bare.Against) };
        if (estimate is not { Degrees: > 0 } known) return bare;
        if (known.StandardError <= Ranges.SmallestErrorShare * bare.Attribute.LengthPoints) return bare with { Verdict = Verdict.NoSpread, WithinAssessorPoints = null };
        var limits = known.Limits(_policy.ConfidenceShare);
        return bare with
        {
            Range = Interval.Between(limits.Low, limits.High),
            Verdict = bare.AssessorCount < _policy.FewestAssessors ? Verdict.TooFew : Verdicts.Of(limits.Low, limits.High, _policy.PrintedStepPoints),
        };

        int[] Makes(string trial) => [.. bare.Tastings.SelectMany(tasting => _makes[(tasting, trial)]).OfType<int>().Distinct().Order()];
    }
}
