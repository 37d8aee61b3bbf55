using System.Globalization;

namespace Tamis.Tasting;

/// <summary>How often one answer was given to a question of steps or words.</summary>
/// <param name="Tasting">The tasting.</param>
/// <param name="Attribute">What was asked.</param>
/// <param name="Trial">The trial that was tasted.</param>
/// <param name="Answer">The step of the scale, or the word.</param>
/// <param name="Count">How many servings were given it.</param>
/// <param name="ServingCount">How many servings of the trial were answered at all.</param>
public sealed record AnswerCount(string Tasting, SensoryAttribute Attribute, string Trial, string Answer, int Count, int ServingCount)
{
    /// <summary>The part of the answered servings that were given this answer, 0 to 1.</summary>
    public double Share => ServingCount > 0 ? (double)Count / ServingCount : 0;
}

/// <summary>Counts answers that are not averaged.</summary>
public static class AnswerCounts
{
    /// <summary>For every just-right attribute, how many servings of each trial were given each step; steps that nobody gave count 0.</summary>
    public static IReadOnlyList<AnswerCount> JustRight(TastingLog log) =>
        [.. from answers in log.Scores.Where(score => score.Attribute.Kind == AttributeKind.JustRight).GroupBy(score => (score.Serving.Tasting, score.Attribute, score.Serving.Trial))
            from step in Enumerable.Range((int)answers.Key.Attribute.LowPoints, (int)(answers.Key.Attribute.HighPoints - answers.Key.Attribute.LowPoints) + 1)
            select new AnswerCount(answers.Key.Tasting, answers.Key.Attribute, answers.Key.Trial, step.ToString(CultureInfo.InvariantCulture),
                answers.Count(score => (int)score.Points == step), answers.Count())];

    /// <summary>For every list of words, how many servings of each trial each word was ticked for; words that nobody ticked count 0.</summary>
    public static IReadOnlyList<AnswerCount> Words(TastingLog log) =>
        [.. from answers in log.Ticks.GroupBy(ticks => (ticks.Serving.Tasting, ticks.Attribute, ticks.Serving.Trial))
            from word in answers.Key.Attribute.Words
            select new AnswerCount(answers.Key.Tasting, answers.Key.Attribute, answers.Key.Trial, word,
                answers.Count(ticks => ticks.Words.Contains(word)), answers.Count())];
}
