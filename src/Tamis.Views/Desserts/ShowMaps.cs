using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The trials of every tasting by their intensities, and whether a map of preferences can be drawn.</summary>
    public static Html TrialMaps(Dessert dessert)
    {
        if (dessert.Tastings is not { } log) return NoScores();
        var maps = log.Sessions.Where(session => session is { IsBench: false, Test: null }).Select(session => TrialMap.Of(log, session)).OfType<TrialMap>().ToArray();
        var policy = TastingPolicy.Kit;
        var most = log.Sessions.Select(session => log.Scores.Where(score => score.Attribute.Kind == AttributeKind.Liking && Names.Same(score.Serving.Tasting, session.Name)).Select(score => score.Serving.Assessor).Distinct().Count()).DefaultIfEmpty(0).Max();
        var preferences = most < policy.FewestForMap
            ? Notes.Small(Html.Of($"No map of preferences: it would show the {most} people who happened to come. From about {policy.FewestForMap} on one can look for groups that like different things (common practice, no source)."))
            : Html.Join(log.Sessions.Select(session => PreferenceMap.Of(log, session)).OfType<PreferenceMap>().Select(map => Preferences(map, dessert.Candidate)));
        SensoryAttribute[] lists = [.. log.Attributes.Where(attribute => attribute.Words.Count > 0)];
        var words = Html.Join(from session in log.Sessions where !session.IsBench from attribute in lists let map = WordMap.Of(log, session, attribute) where map is not null select WordMapChart.Of(map, dessert.Candidate));
        if (words.IsEmpty && lists.Length > 0) words = Notes.Small(Html.Of($"No map of ticked words: it needs three trials and three words that were ticked, by {policy.FewestAssessors} people or more, and words that go with one trial more than with another."));
        return maps.Length == 0
            ? Notes.Small(Html.Of($"No map: it needs three trials scored on two intensities by {policy.FewestAssessors} people or more.")) + words + preferences
            : Beside(Html.Join(maps.Select(map => AttributeMap.Of(map, dessert.Candidate, InWords(map)).ToHtml()))) + Beside(words) + preferences;
    }

    // On paper two maps stand side by side: a page for each would be half empty.
    private static Html Beside(Html maps) => Html.Of($"<div class=\"maps wide\">{maps}</div>\n");

    private static Html Preferences(PreferenceMap map, string chosen)
    {
        var lead = map.Groups.Count == 1 ? Html.Of($"The {map.People} people who scored every trial of {map.Session.Name} are not parted into groups.")
            : Html.Of($"The {map.People} people who scored every trial of {map.Session.Name} fall into {map.Groups.Count} groups: {string.Join("; ", map.Groups.Select(group => $"{group.People} like {group.MeanLiking.MaxBy(each => each.Points).Trial} best"))}. Groups are found, not given: ask again before a product is built on one.");
        return Notes.Paragraph(lead) + PreferenceMapChart.Of(map, chosen) + new DataTable($"Mean liking by group, {map.Session.Name}", [Column.Words("Group"), Column.Numbers("people"), .. map.Groups[0].MeanLiking.Select(each => Column.Numbers(each.Trial))],
            [.. map.Groups.Select((group, at) => new Row([$"group {at + 1}", Figures.Count(group.People), .. group.MeanLiking.Select(each => (Cell)Figures.OneDecimal(each.Points))]))]) { Fits = true }.ToHtml();
    }

    private static Html InWords(TrialMap map)
    {
        var strongest = map.Scales.OrderByDescending(scale => Math.Abs(scale.Across)).First();
        return Html.Of($"Trials that lie close were scored alike; a scale points to the trials that have more of it. Across is mostly {strongest.Attribute.Name}. An ellipse is where a trial would lie, in 95 of 100 tastings by people like these: <b>where two ellipses overlap, the map does not part the trials.</b> Across lies {Figures.WholeShare(map.Shares.Across).Text} of what differs, upwards {Figures.WholeShare(map.Shares.Up).Text}.");
    }
}
