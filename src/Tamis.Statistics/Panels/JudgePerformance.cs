using Tamis.Statistics.Models;

namespace Tamis.Statistics.Panels;

/// <summary>One score.</summary>
/// <param name="Judge">Who scored.</param>
/// <param name="Item">What was scored.</param>
/// <param name="Session">The number of the session, rising with time.</param>
/// <param name="Value">The score.</param>
public sealed record JudgedScore(string Judge, string Item, int Session, double Value);

/// <summary>How one judge scores beside the panel. A figure that the scores cannot tell is null.</summary>
/// <param name="Judge">Who.</param>
/// <param name="Repeatability">The standard deviation of scores of the same item, pooled over items, in units of the score.</param>
/// <param name="Discrimination">The analysis of variance of the judge's own scores over items: F is large where items are told apart.</param>
/// <param name="Agreement">The correlation of the judge's means by item with the means of all others, −1 to 1.</param>
/// <param name="ScaleUse">The slope of the judge's means on those of the others: 1 uses the scale as they do, above 1 more of it.</param>
/// <param name="Drift">The change of scores from session to session, items being equal.</param>
public sealed record JudgePerformance(string Judge, double? Repeatability, AnovaLine? Discrimination, double? Agreement, double? ScaleUse, Estimate? Drift)
{
    /// <summary>All judges, in the order of their names.</summary>
    /// <param name="scores">Scores of one attribute; those that are no finite number are left out.</param>
    public static IReadOnlyList<JudgePerformance> Of(IReadOnlyList<JudgedScore> scores)
    {
        var judges = scores.Where(score => double.IsFinite(score.Value)).GroupBy(score => score.Judge, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.ToArray(), StringComparer.Ordinal);
        var means = judges.ToDictionary(
            judge => judge.Key,
            judge => judge.Value.GroupBy(score => score.Item, StringComparer.Ordinal).ToDictionary(item => item.Key, item => item.Average(score => score.Value), StringComparer.Ordinal),
            StringComparer.Ordinal);
        return [.. ModelData.SortedLevels(judges.Keys).Select(judge => Of(judge, judges[judge], means))];
    }

    private static JudgePerformance Of(string judge, JudgedScore[] own, Dictionary<string, Dictionary<string, double>> means)
    {
        var data = ModelData.Empty.WithNumbers("score", [.. own.Select(score => score.Value)]).WithFactor("item", [.. own.Select(score => score.Item)])
            .WithNumbers("session", [.. own.Select(score => (double)score.Session)]);
        var byItem = LinearFit.Of(ModelFormula.Parse("score ~ item"), data);
        var (agreement, slope) = Beside(means[judge], [.. means.Where(other => other.Key != judge).Select(other => other.Value)]);
        return new(
            judge,
            byItem.ResidualDegrees > 0 ? byItem.ResidualStandardDeviation : null,
            byItem.AnovaFor("item") is { Degrees: > 0 } line && double.IsFinite(line.F) ? line : null,
            agreement, slope, DriftOf(data));
    }

    private static Estimate? DriftOf(ModelData data)
    {
        var fit = LinearFit.Of(ModelFormula.Parse("score ~ item + session"), data);
        return fit.ResidualDegrees > 0 ? fit.Contrast(new Dictionary<string, double> { ["session"] = 1 }) : null;
    }

    // Two points always lie on a line; a correlation says something from three items on.
    private static (double? Correlation, double? Slope) Beside(Dictionary<string, double> own, Dictionary<string, double>[] others)
    {
        (double Panel, double Own)[] pairs = [.. own
            .Select(item => (Own: item.Value, Panel: others.Where(other => other.ContainsKey(item.Key)).Select(other => other[item.Key]).ToArray()))
            .Where(pair => pair.Panel.Length > 0).Select(pair => (pair.Panel.Average(), pair.Own))];
        if (pairs.Length < 3) return (null, null);
        var (panelMean, ownMean) = (pairs.Average(pair => pair.Panel), pairs.Average(pair => pair.Own));
        var panel = pairs.Sum(pair => (pair.Panel - panelMean) * (pair.Panel - panelMean));
        var self = pairs.Sum(pair => (pair.Own - ownMean) * (pair.Own - ownMean));
        var both = pairs.Sum(pair => (pair.Panel - panelMean) * (pair.Own - ownMean));
        if (!(panel > 0)) return (null, null);
        return (self > 0 ? both / Math.Sqrt(panel * self) : null, both / panel);
    }
}
