using Tamis.Statistics.Discrimination;

namespace Tamis.Tasting;

/// <summary>What a test of same or different gave.</summary>
/// <param name="Session">The tasting.</param>
/// <param name="Test">The test.</param>
/// <param name="First">The first trial of the two.</param>
/// <param name="Second">The second; in a paired comparison the picks of it are counted.</param>
/// <param name="ByAssessor">How many sets each assessor got right, and how many were answered; never for a page beside an id.</param>
/// <param name="UnclearCount">Sets with more or fewer picks than were asked for: left out.</param>
public sealed record DifferenceResult(TastingSession Session, DifferenceTest Test, string First, string Second, IReadOnlyList<(string Assessor, int Right, int Answered)> ByAssessor, int UnclearCount)
{
    /// <summary>Whether one of the trials was served from more than one make.</summary>
    public bool HasSeveralMakes { get; init; }

    /// <summary>How many sets were answered.</summary>
    public int Answered => ByAssessor.Sum(each => each.Answered);

    /// <summary>How many were answered right; in a paired comparison, how often the second trial was picked.</summary>
    public int Right => ByAssessor.Sum(each => each.Right);

    /// <summary>Whether somebody answered several sets, so that sets are not as many people.</summary>
    public bool IsReplicated => ByAssessor.Any(each => each.Answered > 1);

    /// <summary>The chance of as many right answers or more by guessing; of as lopsided picks either way in a paired comparison. 1 where nobody answered.</summary>
    public double ChanceOfGuessing => Answered == 0 ? 1
        : Test == DifferenceTest.Paired ? Math.Min(1, 2 * Binomials.AtLeast(Math.Max(Right, Answered - Right), Answered, 0.5))
        : Binomials.AtLeast(Right, Answered, Test.Guess);

    /// <summary>The fewest right answers that call a difference at a risk of a false alarm; null where so few answers cannot call any.</summary>
    /// <param name="risk">The risk, above 0 and below 1.</param>
    public int? FewestRight(double risk = 0.05) => Binomials.FewestRight(Answered, Test.Guess, risk);

    /// <summary>The share of right answers with its exact interval (Clopper and Pearson 1934), 0 to 1; null where nobody answered.</summary>
    public (double Share, Interval Range)? RightShare(TastingPolicy policy) => Answered == 0 ? null
        : Binomials.Limits(Right, Answered, policy.ConfidenceShare) is var limits ? ((double)Right / Answered, Interval.Between(limits.Low, limits.High)) : null;

    /// <summary>The share of people who really tell the two apart, by what is beyond guessing, with its interval; 0 where guessing explains all. Null for a paired comparison and without answers.</summary>
    public (double Share, Interval Range)? Distinguishers(TastingPolicy policy)
    {
        if (Test == DifferenceTest.Paired || RightShare(policy) is not { } right) return null;
        return (Beyond(right.Share), Interval.Between(Beyond(right.Range.Low), Beyond(right.Range.High)));

        double Beyond(double share) => Math.Clamp((share - Test.Guess) / (1 - Test.Guess), 0, 1);
    }

    /// <summary>How far the two lie apart in standard deviations of one person's impression (d′), with its exact interval; an end may be infinite where all were right. Null for a paired comparison and without answers.</summary>
    /// <remarks>The limits of the share of right answers, taken through the model of the test: d′ rises with the share.</remarks>
    public (double Distance, double Low, double High)? Distance(TastingPolicy policy) => Test.Model is { } model && RightShare(policy) is { } right
        ? (model.DPrime(right.Share), model.DPrime(right.Range.Low), model.DPrime(right.Range.High)) : null;

    /// <summary>Whether so few were right that a share of people worth minding would hardly have been overlooked; null for a paired comparison and without answers.</summary>
    public bool? IsNearEnough(TastingPolicy policy) => Test.Model is { } model && Answered > 0 ? Right <= model.MostForSimilarity(Answered, policy.DistinguisherShare, policy.FalseAlarmShare) : null;

    /// <summary>How people differ from one another where they answered several sets; null where nobody did, or nothing can be told.</summary>
    public BetaBinomialFit? Spread => IsReplicated ? BetaBinomialFit.Of([.. ByAssessor.Select(each => (each.Right, each.Answered))]) : null;

    /// <summary>The results of every test of same or different in a log that somebody answered.</summary>
    public static IReadOnlyList<DifferenceResult> Of(TastingLog log) => [.. log.Sessions.Where(session => session.Test is not null).Select(session => Of(log, session)).OfType<DifferenceResult>()];

    private static DifferenceResult? Of(TastingLog log, TastingSession session)
    {
        var test = session.Test!;
        Serving[] served = [.. log.Servings.Where(serving => Names.Same(serving.Tasting, session.Name) && serving.Position is not null)];
        string[] trials = session.Trials.Count == 2 ? [.. session.Trials] : [.. served.Select(serving => serving.Trial).Distinct(Names.Comparer)];
        if (trials.Length != 2) return null;
        var picks = log.Scores.Where(score => score.Attribute.Kind == AttributeKind.Pick && score.Points > 0).Select(score => score.Serving).ToHashSet();
        List<(string, int, int)> results = [];
        var unclear = 0;
        foreach (var assessor in served.GroupBy(serving => serving.Assessor))
        {
            var (right, answered) = (0, 0);
            foreach (var set in assessor.OrderBy(serving => serving.Position).Chunk(test.SetSize))
            {
                int[] picked = [.. Enumerable.Range(0, set.Length).Where(place => picks.Contains(set[place]))];
                if (picked.Length == 0) continue;
                if (set.Length != test.SetSize || picked.Length != test.PicksEach) unclear++;
                else
                {
                    answered++;
                    if (test.IsRight([.. set.Select(serving => Names.Same(serving.Trial, trials[1]))], picked)) right++;
                }
            }
            if (answered > 0) results.Add((assessor.Key, right, answered));
        }
        return new(session, test, trials[0], trials[1], results, unclear) { HasSeveralMakes = trials.Any(trial => log.MakesOf(trial, session.Name).Count > 1) };
    }
}
