using Tamis.Statistics.Models;

namespace Tamis.Statistics.Panels;

/// <summary>One score.</summary>
/// <param name="Item">What was scored.</param>
/// <param name="Session">The number of the session, rising with time.</param>
/// <param name="Value">The score, finite.</param>
public readonly record struct JudgedScore(string Item, int Session, double Value);

/// <summary>What one judge's own scores of one attribute say of the judge. A figure that the scores cannot tell is null.</summary>
/// <param name="Discrimination">The analysis of variance of the scores over items: F is large where items are told apart beyond the judge's own unsteadiness.</param>
/// <param name="Drift">The change of scores from session to session, items being equal.</param>
public sealed record JudgePerformance(AnovaLine? Discrimination, Estimate? Drift)
{
    /// <summary>The performance of one judge.</summary>
    /// <param name="scores">The judge's scores of one attribute.</param>
    public static JudgePerformance Of(IReadOnlyCollection<JudgedScore> scores)
    {
        if (scores.Count == 0) return new(null, null);
        var data = ModelData.Empty.WithNumbers("score", [.. scores.Select(score => score.Value)]).WithFactor("item", [.. scores.Select(score => score.Item)])
            .WithNumbers("session", [.. scores.Select(score => (double)score.Session)]);
        var line = LinearFit.Of(ModelFormula.Parse("score ~ item"), data);
        var steady = LinearFit.Of(ModelFormula.Parse("score ~ item + session"), data);
        return new(
            line.ResidualDegrees > 0 && line.AnovaFor("item") is { Degrees: > 0 } items && double.IsFinite(items.F) && double.IsFinite(items.P) ? items : null,
            steady.ResidualDegrees > 0 ? steady.Contrast(new Dictionary<string, double> { ["session"] = 1 }) : null);
    }
}
