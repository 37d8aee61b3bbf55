using Tamis.Statistics.Panels;
using Tamis.Statistics;

namespace Tamis.Tasting;

/// <summary>How one assessor scored one scale beside the others of the same tastings.</summary>
/// <param name="Attribute">The scale.</param>
/// <param name="OwnPoints">The mean of the assessor's marks.</param>
/// <param name="OthersPoints">The mean of the others' marks of the same trials.</param>
/// <param name="TellsApart">Whether the assessor's own marks part the trials beyond his or her own unsteadiness; null where nothing was served again, so that nothing tells it.</param>
/// <param name="DriftPoints">The change of own marks from one tasting to the next, trials being equal, where it is beyond that unsteadiness; 0 where it is not, null where nothing tells it.</param>
public sealed record ScaleLevel(SensoryAttribute Attribute, double OwnPoints, double OthersPoints, bool? TellsApart, double? DriftPoints);

/// <summary>How an assessor agreed with the others in one tasting.</summary>
/// <param name="Tasting">The tasting.</param>
/// <param name="Agreement">The correlation of the assessor's marks with the mean of the others, each scale about its own mean, −1 to 1.</param>
/// <param name="Range">Its interval by Fisher's transformation; null below six marks.</param>
/// <param name="Count">How many marks are behind it: trials times scales.</param>
public sealed record TastingAgreement(string Tasting, double Agreement, Interval? Range, int Count);

/// <summary>How one assessor tastes: level, use of the scale, agreement with the others, repeats, tasting by tasting. Intensities only: what one likes is never wrong.</summary>
/// <remarks>The measures are those of ISO 11132 and ISO 8586 in their idea: repeatability from plates served again, agreement with the mean of the other
/// assessors, use of the scale as the slope of own differences on theirs.</remarks>
public sealed record AssessorRecord
{
    /// <summary>The assessor's id: for the feedback sheet that this person gets, and for no other page.</summary>
    public required string Assessor { get; init; }

    /// <summary>Level by scale.</summary>
    public required IReadOnlyList<ScaleLevel> Levels { get; init; }

    /// <summary>How far the assessor's differences between trials go, beside the others': 1 as far, under 1 less of the scale, over 1 more; null where the others see no differences.</summary>
    public double? ScaleUse { get; init; }

    /// <summary>Agreement in each tasting, in the order of the sheet: its course is the drift over sessions.</summary>
    public required IReadOnlyList<TastingAgreement> Agreements { get; init; }

    /// <summary>The standard deviation between plates of one trial in one tasting, in points; null where nothing was served again.</summary>
    public double? RepeatPoints { get; init; }

    /// <summary>The same of the others in the same tastings; null where nothing was served again.</summary>
    public double? OthersRepeatPoints { get; init; }

    /// <summary>Agreement over all tastings together; null without differences to agree on.</summary>
    public required TastingAgreement? Overall { get; init; }

    /// <summary>The agreement over all tastings, −1 to 1; null without one.</summary>
    public double? Agreement => Overall?.Agreement;

    /// <summary>The mean of own less others' level over the scales, in points.</summary>
    public double LevelPoints => Levels.Count == 0 ? 0 : Levels.Average(level => level.OwnPoints - level.OthersPoints);

    /// <summary>The records of everybody who scored an intensity beside two others or more, by id.</summary>
    public static IReadOnlyList<AssessorRecord> Of(TastingLog log, TastingPolicy? policy = null)
    {
        policy ??= TastingPolicy.Kit;
        var bench = log.Sessions.Where(session => session.IsBench).Select(session => session.Name).ToHashSet();
        Score[] scores = [.. log.Scores.Where(score => score.Attribute.Kind == AttributeKind.Intensity && !bench.Contains(score.Serving.Tasting))];
        return [.. scores.Select(score => score.Serving.Assessor).Distinct().Order(StringComparer.Ordinal).Select(assessor => OfOne(assessor, scores, log, policy)).OfType<AssessorRecord>()];
    }

    private static AssessorRecord? OfOne(string assessor, Score[] scores, TastingLog log, TastingPolicy policy)
    {
        var confidence = policy.ConfidenceShare;
        var cells = scores.GroupBy(score => (score.Serving.Tasting, score.Attribute, score.Serving.Trial)).Select(group => (group.Key.Tasting, group.Key.Attribute,
                Own: group.Where(score => score.Serving.Assessor == assessor).Select(score => score.Points).ToArray(), Others: group.Where(score => score.Serving.Assessor != assessor).ToArray()))
            .Where(cell => cell.Own.Length > 0 && cell.Others.Select(score => score.Serving.Assessor).Distinct().Count() >= 2)
            .Select(cell => (cell.Tasting, cell.Attribute, Own: cell.Own.Average(), Others: cell.Others.Average(score => score.Points))).ToArray();
        if (cells.Length == 0) return null;
        // Each scale of each tasting about its own mean: what is left is how trials were told apart.
        var centred = cells.GroupBy(cell => (cell.Tasting, cell.Attribute)).Where(group => group.Count() > 1)
            .SelectMany(group => group.Select(cell => (cell.Tasting, Own: cell.Own - group.Average(each => each.Own), Others: cell.Others - group.Average(each => each.Others)))).ToArray();
        var squares = centred.Sum(pair => pair.Others * pair.Others);
        return new()
        {
            Assessor = assessor,
            Levels = [.. cells.GroupBy(cell => cell.Attribute).Select(group => LevelOf(group.Key, group.Average(cell => cell.Own), group.Average(cell => cell.Others)))],
            ScaleUse = squares > 1e-9 ? centred.Sum(pair => pair.Own * pair.Others) / squares : null,
            Agreements = [.. log.Sessions.Select(session => AgreementOf(session.Name, [.. centred.Where(pair => pair.Tasting == session.Name).Select(pair => (pair.Own, pair.Others))], confidence)).OfType<TastingAgreement>()],
            Overall = AgreementOf("", [.. centred.Select(pair => (pair.Own, pair.Others))], confidence),
            RepeatPoints = Repeats(scores.Where(score => score.Serving.Assessor == assessor)),
            OthersRepeatPoints = Repeats(scores.Where(score => score.Serving.Assessor != assessor)),
        };

        ScaleLevel LevelOf(SensoryAttribute attribute, double own, double others)
        {
            string[] tastings = [.. log.Sessions.Select(session => session.Name)];
            var performance = JudgePerformance.Of([.. scores.Where(score => score.Attribute == attribute && score.Serving.Assessor == assessor)
                .Select(score => new JudgedScore(score.Serving.Trial, Array.IndexOf(tastings, score.Serving.Tasting), score.Points))]);
            return new(attribute, own, others, performance.Discrimination is { } line ? line.P < policy.FalseAlarmShare : null,
                performance.Drift is { StandardError: > 0 } drift ? drift.Limits(confidence).Contains(0) ? 0 : drift.Value : null);
        }
    }

    private static TastingAgreement? AgreementOf(string tasting, IReadOnlyList<(double Own, double Others)> pairs, double confidence)
    {
        var (own, others) = (pairs.Sum(pair => pair.Own * pair.Own), pairs.Sum(pair => pair.Others * pair.Others));
        if (pairs.Count < 3 || own <= 1e-12 || others <= 1e-12) return null;
        var correlation = Math.Clamp(pairs.Sum(pair => pair.Own * pair.Others) / Math.Sqrt(own * others), -1, 1);
        if (pairs.Count < 6 || Math.Abs(correlation) >= 1) return new(tasting, correlation, null, pairs.Count);
        // Fisher (1921): artanh r is nearly normal with standard deviation 1/√(n − 3).
        var half = Tails.NormalTwoSided(confidence) / Math.Sqrt(pairs.Count - 3);
        return new(tasting, correlation, Interval.Between(Math.Tanh(Math.Atanh(correlation) - half), Math.Tanh(Math.Atanh(correlation) + half)), pairs.Count);
    }

    private static double? Repeats(IEnumerable<Score> scores)
    {
        var again = scores.GroupBy(score => (score.Serving.Tasting, score.Serving.Assessor, score.Serving.Trial, score.Attribute)).Where(group => group.Count() > 1)
            .Select(group => (Squares: group.Sum(score => Math.Pow(score.Points - group.Average(each => each.Points), 2)), Degrees: group.Count() - 1)).ToArray();
        return again.Length == 0 ? null : Math.Sqrt(again.Sum(cell => cell.Squares) / again.Sum(cell => cell.Degrees));
    }
}
