using Tamis.Statistics.MixedModels;
using Tamis.Statistics.Models;

namespace Tamis.Tasting;

/// <summary>What too little or too much of something costs in liking.</summary>
/// <param name="Attribute">The just-right question.</param>
/// <param name="IsTooMuch">Whether it is of those who found too much; else of those who found too little.</param>
/// <param name="Points">How much less those servings are liked than the ones found just right, in points of liking, trials and assessors evened out; null where nothing tells it.</param>
/// <param name="Range">Its interval; null where nothing says how sure it is.</param>
/// <param name="Count">How many servings were found so.</param>
/// <param name="AnsweredCount">How many were answered at all.</param>
public sealed record Penalty(SensoryAttribute Attribute, bool IsTooMuch, double? Points, Interval? Range, int Count, int AnsweredCount)
{
    private const string Liking = "liking", Found = "found", Trial = "trial", Assessor = "assessor", Right = "a right", Low = "low", High = "too much";

    /// <summary>The part of the servings that were found so, 0 to 1.</summary>
    public double Share => AnsweredCount > 0 ? (double)Count / AnsweredCount : 0;

    /// <summary>The penalties of every just-right question of a tasting that also asked for liking.</summary>
    /// <remarks>liking = found + trial + assessor, by a mixed model. A link, not a cause: who dislikes a tart may find fault with everything in it.</remarks>
    public static IReadOnlyList<Penalty> Of(TastingLog log, TastingSession session, TastingPolicy policy)
    {
        var liked = log.Scores.Where(score => score.Attribute.Kind == AttributeKind.Liking && Names.Same(score.Serving.Tasting, session.Name)).GroupBy(score => score.Serving).ToDictionary(group => group.Key, group => group.Average(score => score.Points));
        return liked.Count == 0 ? [] : [.. log.Attributes.Where(attribute => attribute.Kind == AttributeKind.JustRight).SelectMany(attribute => OfOne(log, session, attribute, liked, policy))];
    }

    private static IEnumerable<Penalty> OfOne(TastingLog log, TastingSession session, SensoryAttribute attribute, Dictionary<Serving, double> liked, TastingPolicy policy)
    {
        Score[] answers = [.. log.ScoresOf(session.Name, attribute).Where(score => liked.ContainsKey(score.Serving))];
        if (answers.Length == 0) yield break;
        var length = log.Attributes.Where(asked => asked.Kind == AttributeKind.Liking).Max(asked => asked.LengthPoints);
        var middle = (attribute.LowPoints + attribute.HighPoints) / 2;
        string[] found = [.. answers.Select(score => score.Points < middle ? Low : score.Points > middle ? High : Right)];
        var trials = answers.Select(score => score.Serving.Trial).Distinct().Count() > 1 ? $" + {Trial}" : "";
        var fit = MixedModel.Fit(MixedFormula.Parse($"{Liking} ~ {Found}{trials} + (1 | {Assessor})"), ModelData.Empty
            .WithNumbers(Liking, [.. answers.Select(score => liked[score.Serving])]).WithFactor(Found, found)
            .WithFactor(Trial, [.. answers.Select(score => score.Serving.Trial)]).WithFactor(Assessor, [.. answers.Select(score => score.Serving.Assessor)])).Fit;
        foreach (var side in (string[])[Low, High])
        {
            var count = found.Count(each => each == side);
            if (count < policy.PenaltyShare * answers.Length || count == 0) continue;
            var drop = fit is not null && fit.Levels(Found).Contains(side) && fit.Levels(Found).Contains(Right) ? fit.Difference(Found, side, Right) : null;
            yield return new(attribute, side == High, drop is { } known && double.IsFinite(known.Value) ? known.Value : null, drop is { } estimate ? Ranges.Of(estimate, policy, length) : null, count, answers.Length);
        }
    }
}
