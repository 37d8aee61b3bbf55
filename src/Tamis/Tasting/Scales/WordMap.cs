using Tamis.Statistics.Maps;

namespace Tamis.Tasting;

/// <summary>A trial or a word on a map of ticked words.</summary>
/// <param name="Name">The trial or the word.</param>
/// <param name="Across">Where it lies across.</param>
/// <param name="Up">Where it lies upwards; 0 where two trials make one direction only.</param>
/// <param name="Count">How often it was ticked, or how many ticks the trial has.</param>
public sealed record MappedWord(string Name, double Across, double Up, int Count);

/// <summary>Trials and the words ticked for them: a word lies in the direction of the trials for which it was ticked more often than for others.</summary>
/// <param name="Session">The tasting.</param>
/// <param name="Attribute">The list of words.</param>
/// <param name="Trials">The trials.</param>
/// <param name="Words">The words that somebody ticked.</param>
/// <param name="Shares">The shares of all that differs along the two directions, 0 to 1.</param>
public sealed record WordMap(TastingSession Session, SensoryAttribute Attribute, IReadOnlyList<MappedWord> Trials, IReadOnlyList<MappedWord> Words, (double Across, double Up) Shares)
{
    /// <summary>The map of a list in a tasting; null with fewer than three trials, fewer than three words that were ticked, too few people, or where no word goes with a trial.</summary>
    public static WordMap? Of(TastingLog log, TastingSession session, SensoryAttribute attribute, TastingPolicy? policy = null)
    {
        Ticks[] ticks = [.. log.Ticks.Where(each => each.Attribute == attribute && Names.Same(each.Serving.Tasting, session.Name))];
        string[] trials = [.. ticks.Select(each => each.Serving.Trial).Distinct().Order(StringComparer.Ordinal)];
        string[] words = [.. attribute.Words.Where(word => ticks.Any(each => each.Words.Contains(word)))];
        if (trials.Length < 3 || words.Length < 3 || ticks.Select(each => each.Serving.Assessor).Distinct().Count() < (policy ?? TastingPolicy.Kit).FewestAssessors) return null;
        double[][] counts = [.. trials.Select(trial => words.Select(word => (double)ticks.Count(each => each.Serving.Trial == trial && each.Words.Contains(word))).ToArray())];
        if (CorrespondenceAnalysis.Of(counts) is not { } found) return null;
        MappedWord At(string name, IReadOnlyList<double> place, double count) => new(name, place[0], place.Count > 1 ? place[1] : 0, (int)count);
        return new(session, attribute, [.. trials.Select((trial, i) => At(trial, found.Rows[i], counts[i].Sum()))], [.. words.Select((word, j) => At(word, found.Columns[j], counts.Sum(row => row[j])))],
            (found.Share(0), found.Inertias.Count > 1 ? found.Share(1) : 0));
    }
}
