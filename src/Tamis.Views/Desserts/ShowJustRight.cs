using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>How often each trial was found too little, just right or too much, and what that costs in liking.</summary>
    public static Html JustRight(Dessert dessert, string tasting)
    {
        var (log, session) = SessionOf(dessert, tasting);
        var counts = AnswerCounts.JustRight(log).Where(count => count.Tasting == session.Name).ToArray();
        if (counts.Length == 0) return Html.Empty;
        SensoryAttribute[] asked = [.. counts.Select(count => count.Attribute).Distinct()];
        var table = new DataTable("Just right, by trial",
            [Column.Words("Trial"), .. asked.Select(attribute => Column.Words(attribute.Name))],
            [.. counts.Select(count => count.Trial).Distinct().OrderBy(trial => TrialOrder(dessert, trial)).Select(trial => new Row([trial,
                .. asked.Select(attribute => (Cell)Thirds(counts.Where(count => count.Trial == trial && count.Attribute == attribute), attribute))]))])
        { IsWide = true, LeastRem = 36, Caption = Html.Of($"Just right? How many found it too little, <b>just right</b>, too much") };
        var penalties = Penalty.Of(log, session, TastingPolicy.Kit);
        return table.ToHtml() + (penalties.Count == 0 ? Html.Empty : Notes.Paragraph(Html.Join(penalties.Select(InWords), " ")));
    }

    private static Html Thirds(IEnumerable<AnswerCount> counts, SensoryAttribute attribute)
    {
        var middle = (attribute.LowPoints + attribute.HighPoints) / 2;
        var all = counts.Select(count => (Step: double.Parse(count.Answer, System.Globalization.CultureInfo.InvariantCulture), count.Count, count.ServingCount)).ToArray();
        if (all.Length == 0) return Html.Of($"not asked");
        var (low, right, high) = (all.Where(each => each.Step < middle).Sum(each => each.Count), all.Where(each => each.Step == middle).Sum(each => each.Count), all.Where(each => each.Step > middle).Sum(each => each.Count));
        return Html.Of($"<span class=\"n\">{low} · <b>{right}</b> · {high}</span> of {all[0].ServingCount}");
    }

    private static Html InWords(Penalty penalty)
    {
        var side = penalty.IsTooMuch ? penalty.Attribute.HighWord : penalty.Attribute.LowWord;
        var said = side.Length > 0 ? $"{penalty.Attribute.Name}: “{side}” or nearly so" : $"{penalty.Attribute.Name}: {(penalty.IsTooMuch ? "too much" : "too little")}";
        var who = Html.Of($"{Capital(said)} on {penalty.Count} of {penalty.AnsweredCount} plates ({Figures.WholeShare(penalty.Share).Text})");
        if (penalty.Points is not { } points || penalty.Range is not { } range) return Html.Of($"{who}; the scores do not tell what that costs.");
        var difference = new Difference(points, range);
        return difference.Finding switch
        {
            Finding.Loss => Html.Of($"{who}: those plates are liked less than the ones found just right, by {Figures.Estimate(-points, Interval.Between(-range.High, -range.Low), decimals: 1).InText} points."),
            Finding.Gain => Html.Of($"{who}: those plates are liked better, by {difference.Shown(Figures).InText} points; so it is not a fault to mend."),
            _ => Html.Of($"{who}: what it costs in liking is open, {difference.Shown(Figures).InText}."),
        };
    }

    /// <summary>How often each word was ticked for each trial.</summary>
    public static Html TickedWords(Dessert dessert, string tasting)
    {
        var (log, session) = SessionOf(dessert, tasting);
        var tables = AnswerCounts.Words(log).Where(count => count.Tasting == session.Name).GroupBy(count => count.Attribute.Name).ToArray();
        return Html.Join(tables.Select(counts =>
        {
            string[] trials = [.. counts.Select(count => count.Trial).Distinct().OrderBy(trial => TrialOrder(dessert, trial))];
            var servings = counts.GroupBy(count => count.Trial).ToDictionary(group => group.Key, group => group.First().ServingCount);
            var table = new DataTable($"{Capital(counts.Key)}, ticked by trial",
                [Column.Words("Word"), .. trials.Select(trial => Column.Numbers(trial, $"of {servings[trial]}"))],
                [.. counts.GroupBy(count => count.Answer).OrderByDescending(word => word.Sum(count => count.Share)).Select(word => new Row([word.Key,
                    .. trials.Select(trial => (Cell)Figures.Count(word.First(count => count.Trial == trial).Count))]))])
            { LeastRem = 8 + trials.Length * 3 };
            return Notes.Folded($"{Capital(counts.Key)}: how often each word was ticked", table.ToHtml());
        }));
    }

    /// <summary>What was said at the bench, counted by trial: notes, not evidence.</summary>
    public static Html AtTheBench(Dessert dessert)
    {
        if (dessert.Tastings is not { } log || !log.Sessions.Any(session => session.IsBench)) return Notes.Small(Html.Of($"Nothing was tasted at the bench: a tasting of kind bench in tastings.csv takes words of two to five people."));
        var counts = dessert.RemarkWords.Count(log);
        return Html.Join(counts.GroupBy(count => count.Tasting).Select(bench =>
        {
            var people = bench.Max(count => count.TastedBy);
            return Notes.LookAt(Html.Of($"{(people == 1 ? "One person" : $"{people} people")} at the bench ({bench.Key}): notes, not evidence. They say what to ask in the next tasting, not what is so."))
                + new DataTable($"What was said in {bench.Key}",
                    [Column.Words("Trial"), Column.Words("said by two or more"), Column.Words("said by one"), Column.Numbers("people")],
                    [.. bench.GroupBy(count => count.Trial).OrderBy(trial => TrialOrder(dessert, trial.Key)).Select(trial => new Row(trial.Key,
                        string.Join(", ", trial.Where(count => count is { People: > 1, Code: not null }).Select(count => $"{count.Code} ({count.People})")),
                        string.Join(", ", trial.Where(count => count is { People: 1, Code: not null }).Select(count => count.Code)),
                        Figures.Count(trial.First().TastedBy)))])
                { Notes = [Html.Of($"Remarks are counted by the words of {(dessert.SheetsFound.Contains("remark_words.csv") ? "your remark_words.csv" : "the kit’s list; a remark_words.csv in your store takes its place")}; a word with “not” or “no” before it does not count.")] }.ToHtml();
        }));
    }
}
