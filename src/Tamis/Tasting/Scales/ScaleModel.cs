using Tamis.Statistics.Designs;
using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Tasting;

/// <summary>One scale of one tasting by a mixed model: trials and places as fixed effects, assessors as a sample of people.</summary>
/// <remarks>points = trial + place + what came just before (<see cref="CarryOver"/>) + assessor + assessor within trial (where a trial was served to one assessor again) + plate, fitted by restricted maximum
/// likelihood; degrees of freedom by Satterthwaite. Assessors who lack some trials count for what they scored. What the data cannot carry is said in <see cref="WhyNot"/>.</remarks>
public sealed record ScaleModel
{
    private const string Points = "points", Trial = "trial", Assessor = "assessor";

    /// <summary>The tasting.</summary>
    public required string Tasting { get; init; }

    /// <summary>The scale.</summary>
    public required SensoryAttribute Attribute { get; init; }

    /// <summary>Why nothing can be said, as a sentence; empty where the model was fitted.</summary>
    public string WhyNot { get; init; } = "";

    /// <summary>How many assessors and servings are behind it.</summary>
    public required (int Assessors, int Servings) Count { get; init; }

    /// <summary>How many marks are missing of those that could have been given.</summary>
    public required int MissingCount { get; init; }

    /// <summary>The mean of every trial, places evened out, and what came just before where <see cref="CarryOver"/> says so; empty without a fit.</summary>
    public IReadOnlyList<EstimatedMean> Means { get; init; } = [];

    /// <summary>Every trial against every later one, adjusted for there being so many pairs.</summary>
    public IReadOnlyList<TrialPair> Pairs { get; init; } = [];

    /// <summary>Where the spread of the marks comes from.</summary>
    public IReadOnlyList<SpreadPart> Spread { get; init; } = [];

    /// <summary>The probability that trials which do not differ would look so different; null without a fit.</summary>
    public double? TrialP { get; init; }

    /// <summary>The same counted against all scales that were asked (Holm 1979); null without a fit. Set by <see cref="TastingReport"/>.</summary>
    public double? TrialPAmongAll { get; init; }

    /// <summary>What a plate that came one place later was scored more, in points, with its interval; null where places are not known or do not vary.</summary>
    public (double Points, Interval Range)? LaterPlace { get; init; }

    /// <summary>Whether what was tasted just before is evened out of means and differences.</summary>
    public CarryOver CarryOver { get; init; } = new(CarryOverStanding.OrderUnknown, null);

    /// <summary>The probability that what came before makes no difference and would look so; null where it cannot be told.</summary>
    public double? CarryOverP { get; init; }

    /// <summary>The same as a share of false calls: of scales called below a limit, no larger share than the limit is called by chance on average (Benjamini and Hochberg 1995); null without a fit.</summary>
    public double? FalseShareAmongAll { get; init; }

    /// <summary>The probability that assessors who use the scale alike would look so different, by twice the gain in log likelihood (on the safe side: a variance cannot fall below nil); null without a fit.</summary>
    public double? AssessorsP { get; init; }

    /// <summary>The standard deviation from plate to plate, in points; null without a fit.</summary>
    public double? PlatePoints { get; init; }

    /// <summary>The standard deviation of one serving about what trial and assessor explain, in points: from plate to plate, and what an assessor finds in single trials; null without a fit.</summary>
    public double? ServingPoints => PlatePoints is { } plate ? Math.Sqrt(plate * plate + Math.Pow(OwnPoints, 2)) : null;

    /// <summary>The standard deviation of what an assessor finds in single trials and finds again, in points; 0 where nothing tells it.</summary>
    public double OwnPoints => Spread.FirstOrDefault(part => part.From == SpreadFrom.AssessorInTrial)?.Points ?? 0;

    /// <summary>How it was laid out: assessors, trials, how many of them each assessor scored and how often; null without a fit.</summary>
    public CrossedDesign? Design { get; init; }

    /// <summary>Two trials in the order asked; null without a fit, or where one was not scored.</summary>
    public TrialPair? PairOf(string trial, string against) =>
        Pairs.FirstOrDefault(pair => Names.Same(pair.Trial, trial) && Names.Same(pair.Against, against))
        ?? Pairs.FirstOrDefault(pair => Names.Same(pair.Trial, against) && Names.Same(pair.Against, trial))?.Turned;

    /// <summary>Whether trials differ beyond what chance would give among all scales that were asked.</summary>
    public bool IsShown(TastingPolicy policy) => (TrialPAmongAll ?? TrialP) < policy.FalseAlarmShare;

    /// <summary>Fits the model.</summary>
    /// <param name="log">The tastings.</param>
    /// <param name="session">The tasting.</param>
    /// <param name="attribute">A scale of liking or intensity.</param>
    /// <param name="policy">The kit's customs.</param>
    public static ScaleModel Of(TastingLog log, TastingSession session, SensoryAttribute attribute, TastingPolicy policy) => Of(log, session, attribute, policy, new());

    internal static ScaleModel Of(TastingLog log, TastingSession session, SensoryAttribute attribute, TastingPolicy policy, RangeQuantiles quantiles)
    {
        Score[] scores = [.. log.ScoresOf(session.Name, attribute)];
        var served = log.Servings.Count(serving => Names.Same(serving.Tasting, session.Name));
        ScaleModel bare = new()
        {
            Tasting = session.Name, Attribute = attribute, MissingCount = served - scores.Length,
            Count = (scores.Select(score => score.Serving.Assessor).Distinct().Count(), scores.Length),
        };
        if (Refused(scores, bare, policy) is { } reason) return bare with { WhyNot = reason };
        var order = OrderTerms.Of(log, session, scores, policy);
        var data = order.AddTo(DataOf(scores), trial => trial);
        var again = scores.GroupBy(score => (score.Serving.Assessor, score.Serving.Trial)).Any(group => group.Count() > 1) ? $" + (1 | {Assessor}:{Trial})" : "";
        var outcome = MixedModel.Fit(MixedFormula.Parse($"{Points} ~ {Trial}{order.Formula} + (1 | {Assessor}){again}"), data);
        // A design so sparse that assessor and trial have one mark each still has assessors as a sample.
        if (outcome.Fit is null && again.Length > 0) outcome = MixedModel.Fit(MixedFormula.Parse($"{Points} ~ {Trial}{order.Formula} + (1 | {Assessor})"), data);
        if (outcome.Fit is not { } fit) return bare with { WhyNot = $"The marks of {attribute.Name} cannot carry a comparison: {(IsToTheDigit(scores) ? "all assessors give the same, trial by trial, so nothing says how sure a difference is. Did one person fill in the sheet for all?" : Lowered(outcome.Reason))}" };
        // Who scored one trial only is not compared with himself: for a pair of trials he is no evidence.
        var people = scores.GroupBy(score => score.Serving.Assessor).SelectMany(own => own.Select(score => score.Serving.Trial).Distinct().ToArray() is { Length: var count } trials
            ? trials.Where(_ => count > 1) : []).CountBy(trial => trial).ToDictionary();
        foreach (var trial in fit.Levels(Trial)) people.TryAdd(trial, 0);
        return bare with
        {
            Means = [.. fit.Levels(Trial).Select(trial => EstimatedMean.Of(trial, fit.Mean(Trial, trial), scores.Count(score => score.Serving.Trial == trial), attribute, policy)).OfType<EstimatedMean>()],
            Pairs = [.. fit.PairwiseDifferences(Trial).Select(pair => TrialPair.Of(pair, attribute, policy, quantiles)).OfType<TrialPair>()
                .Select(pair => Math.Min(people[pair.Trial], people[pair.Against]) < policy.FewestAssessors ? pair with { Verdict = Verdict.TooFew } : pair)],
            Design = DesignOf(scores),
            Spread = SpreadPart.Of(fit),
            AssessorsP = Known(fit.TestOf(fit.Formula.Random[0])?.P),
            TrialP = Known(fit.Tests.FirstOrDefault(test => test.Term == Trial)?.P),
            LaterPlace = order.HasPlaces ? Slope(fit, attribute, policy) : null,
            CarryOver = order.CarryOver,
            CarryOverP = order.CarryOver.Standing switch
            {
                CarryOverStanding.EvenedOut => CarryOverPOf(fit),
                CarryOverStanding.CostsTooMuch => MixedModel.Fit(MixedFormula.Parse($"{Points} ~ {Trial}{OrderTerms.All} + (1 | {Assessor})"), data).Fit is { } tested ? CarryOverPOf(tested) : null,
                _ => null,
            },
            PlatePoints = Math.Sqrt(fit.ResidualVariance),
        };
    }

    private static CrossedDesign DesignOf(Score[] scores)
    {
        var trials = scores.Select(score => score.Serving.Trial).Distinct().Count();
        var own = scores.GroupBy(score => score.Serving.Assessor).Select(each => (Trials: each.Select(score => score.Serving.Trial).Distinct().Count(), Servings: each.Count())).ToArray();
        return new(own.Length, trials, Math.Clamp((int)Math.Round(own.Average(each => each.Trials)), 2, trials), Math.Max(1, (int)Math.Round(own.Average(each => (double)each.Servings / each.Trials))));
    }

    private static string? Refused(Score[] scores, ScaleModel bare, TastingPolicy policy)
    {
        if (scores.Length == 0) return $"{bare.Attribute.Name} was not asked in {bare.Tasting}.";
        if (bare.Count.Assessors == 1) return $"One assessor scored {bare.Attribute.Name}: that is a note of one person, and nothing says how others would score.";
        if (scores.Select(score => score.Serving.Trial).Distinct().Count() == 1) return $"One trial only was scored for {bare.Attribute.Name}: there is nothing to compare it with.";
        if (scores.Select(score => score.Points).Distinct().Count() == 1) return $"Every mark of {bare.Attribute.Name} is {scores[0].Points.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture)}: without any spread nothing says how sure that is. Is it the default of a form?";
        return bare.Count.Assessors < policy.FewestAssessors ? $"{bare.Count.Assessors} people scored {bare.Attribute.Name}: notes, not evidence." : null;
    }

    private static ModelData DataOf(Score[] scores) => ModelData.Empty
        .WithNumbers(Points, [.. scores.Select(score => score.Points)])
        .WithFactor(Trial, [.. scores.Select(score => score.Serving.Trial)])
        .WithFactor(Assessor, [.. scores.Select(score => score.Serving.Assessor)]);

    private static bool IsToTheDigit(Score[] scores) => scores.GroupBy(score => score.Serving.Trial).All(trial => trial.Select(score => score.Points).Distinct().Count() == 1);

    private static double? CarryOverPOf(MixedFit fit) => fit.Tests.FirstOrDefault(test => test.Term == OrderTerms.Before) is { DenominatorDegrees: > 3 } test ? Known(test.P) : null;

    private static (double, Interval)? Slope(MixedFit fit, SensoryAttribute attribute, TastingPolicy policy) =>
        fit.FixedEffect(OrderTerms.Place).Estimate is { } slope && Ranges.Of(slope, policy, attribute.LengthPoints) is { } range ? (slope.Value, range) : null;

    private static double? Known(double? value) => value is { } known && double.IsFinite(known) ? known : null;

    private static string Lowered(string sentence) => sentence.Length == 0 ? sentence : char.ToLowerInvariant(sentence[0]) + sentence[1..];
}
