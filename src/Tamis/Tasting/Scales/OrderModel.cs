using MathNet.Numerics.Distributions;
using Tamis.Statistics.Comparisons;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;
using Tamis.Statistics.OrdinalModels;

namespace Tamis.Tasting;

/// <summary>Two trials by the order of their marks alone.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Against">The trial that it is compared with.</param>
/// <param name="HigherShare">Of plates of the two side by side before one person, the share in which the first would be put higher, 0 to 1; a half where they are alike.</param>
/// <param name="Range">Its interval, wide enough for all pairs together.</param>
/// <param name="Verdict">What can be said of it, by the interval as printed in whole per cent.</param>
public sealed record OrderPair(string Trial, string Against, double HigherShare, Interval Range, Verdict Verdict)
{
    /// <summary>The same pair, the other way round.</summary>
    public OrderPair Turned => this with { Trial = Against, Against = Trial, HigherShare = 1 - HigherShare, Range = Interval.Between(1 - Range.High, 1 - Range.Low) };
}

/// <summary>The marks of one question of one tasting taken as an order of boxes and nothing more: that 4 lies above 3, and not by how much.</summary>
/// <remarks>
/// A cumulative-link model with normal link: box ≤ j where a hidden impression = trial + place + what came just before (where <see cref="CarryOver"/> evens it out) + assessor + error lies below threshold j; assessors are a sample
/// of people (McCullagh 1980, Journal of the Royal Statistical Society B 42; Hedeker and Gibbons 1994, Biometrics 50). The share of plates put higher is
/// Φ(difference / √2). Intervals are Wald's with the studentized range for all pairs, its degrees of freedom those that assessors and trials leave of the marks:
/// with the normal's they would be too narrow in a small panel. Marks on a line are cut into tenths of the line.
/// </remarks>
public sealed record OrderModel
{
    private const string Box = "box", Trial = "trial", Assessor = "assessor";
    private const int Points = 7, PartsOfALine = 10;

    /// <summary>The tasting.</summary>
    public required string Tasting { get; init; }

    /// <summary>What was asked.</summary>
    public required SensoryAttribute Attribute { get; init; }

    /// <summary>Why nothing can be said, as a sentence; empty where the model was fitted.</summary>
    public string WhyNot { get; init; } = "";

    /// <summary>Whether marks on a line were cut into tenths of it.</summary>
    public bool IsCut { get; init; }

    /// <summary>Every trial against every later one; empty without a fit.</summary>
    public IReadOnlyList<OrderPair> Pairs { get; init; } = [];

    /// <summary>Whether a question is one whose marks are an order first of all: boxes, steps about just right, and liking however it is asked.</summary>
    public static bool IsFor(SensoryAttribute attribute) => attribute.Kind is AttributeKind.JustRight or AttributeKind.Liking || attribute is { IsScale: true, Form: ScaleForm.Boxes };

    /// <summary>Two trials in the order asked; null where one was not scored.</summary>
    public OrderPair? PairOf(string trial, string against) =>
        Pairs.FirstOrDefault(pair => Names.Same(pair.Trial, trial) && Names.Same(pair.Against, against))
        ?? Pairs.FirstOrDefault(pair => Names.Same(pair.Trial, against) && Names.Same(pair.Against, trial))?.Turned;

    /// <summary>Fits the model.</summary>
    /// <param name="log">The tastings.</param>
    /// <param name="session">The tasting.</param>
    /// <param name="attribute">A question for which <see cref="IsFor"/> holds.</param>
    /// <param name="policy">The kit's customs.</param>
    public static OrderModel Of(TastingLog log, TastingSession session, SensoryAttribute attribute, TastingPolicy policy)
    {
        Score[] scores = [.. log.ScoresOf(session.Name, attribute)];
        var isCut = attribute is { IsScale: true, Form: ScaleForm.Line };
        OrderModel bare = new() { Tasting = session.Name, Attribute = attribute, IsCut = isCut };
        string[] trials = [.. scores.Select(score => score.Serving.Trial).Distinct().Order(StringComparer.Ordinal)];
        var assessors = scores.Select(score => score.Serving.Assessor).Distinct().Count();
        if (trials.Length < 2 || assessors < policy.FewestAssessors) return bare with { WhyNot = $"{attribute.Name} was asked of too few people or trials for an order to be read." };
        var degrees = scores.Length - assessors - (trials.Length - 1);
        if (degrees < 1) return bare with { WhyNot = $"Hardly any assessor marked two trials for {attribute.Name}: their order cannot be read." };
        // Names of levels go through numbers of fixed width, so that a trial is never taken for a number or split.
        string Level(string trial) => Array.IndexOf(trials, trial).ToString("000", System.Globalization.CultureInfo.InvariantCulture);
        var order = OrderTerms.Of(log, session, scores, policy);
        var outcome = OrdinalModel.Parse($"{Box} ~ {Trial}{order.Formula} + (1 | {Assessor})", OrdinalLink.Probit, Points).Fit(order.AddTo(ModelData.Empty
            .WithNumbers(Box, [.. scores.Select(score => isCut ? Math.Round((score.Points - attribute.LowPoints) / (attribute.HighPoints - attribute.LowPoints) * PartsOfALine, MidpointRounding.AwayFromZero) : score.Points)])
            .WithFactor(Trial, [.. scores.Select(score => Level(score.Serving.Trial))])
            .WithFactor(Assessor, [.. scores.Select(score => score.Serving.Assessor)]), Level));
        if (outcome.Fit is not { } fit) return bare with { WhyNot = WhyNotOf(attribute, scores) };
        var reach = StudentizedRange.Quantile(policy.ConfidenceShare, trials.Length, degrees) / Math.Sqrt(2);
        return bare with
        {
            Pairs = [.. from i in Enumerable.Range(0, trials.Length)
                        from j in Enumerable.Range(i + 1, trials.Length - i - 1)
                        let difference = Difference(fit, Level(trials[i]), Level(trials[j]))
                        where difference is { StandardError: > 0 }
                        select PairOf(trials[i], trials[j], difference, reach)],
        };
    }

    // The first level is the reference and has no coefficient; one that nothing links to it has none either, and no difference.
    private static OrdinalCoefficient? Difference(OrdinalFit fit, string level, string against)
    {
        Dictionary<string, double> weights = [];
        foreach (var (name, weight) in (ReadOnlySpan<(string, double)>)[(level, 1), (against, -1)])
            if (name != "000")
            {
                if (!fit.Coefficients.Any(one => one.Name == Trial + name)) return null;
                weights[Trial + name] = weight;
            }
        return fit.Contrast(weights);
    }

    private static OrderPair PairOf(string trial, string against, OrdinalCoefficient difference, double reach)
    {
        double Share(double apart) => Normal.CDF(0, 1, apart / Math.Sqrt(2));
        var (low, high) = (Share(difference.Estimate - reach * difference.StandardError), Share(difference.Estimate + reach * difference.StandardError));
        return new(trial, against, Share(difference.Estimate), Interval.Between(low, high), Verdicts.Of(100 * (low - 0.5), 100 * (high - 0.5), 1));
    }

    private static string WhyNotOf(SensoryAttribute attribute, Score[] scores) =>
        scores.Select(score => score.Points).Distinct().Count() == 1 ? $"Every mark of {attribute.Name} is the same: there is no order in them."
            : $"The order of the marks of {attribute.Name} parts the trials without a single exception, or there are too few marks for so many boxes: no interval can be put to it.";
}
