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
        return table.ToHtml() + (penalties.Count == 0 ? Html.Empty : Penalties(penalties));
    }

    private static Html Thirds(IEnumerable<AnswerCount> counts, SensoryAttribute attribute)
    {
        var middle = (attribute.LowPoints + attribute.HighPoints) / 2;
        var all = counts.Select(count => (Step: double.Parse(count.Answer, System.Globalization.CultureInfo.InvariantCulture), count.Count, count.ServingCount)).ToArray();
        if (all.Length == 0) return Html.Of($"not asked");
        var (low, right, high) = (all.Where(each => each.Step < middle).Sum(each => each.Count), all.Where(each => each.Step == middle).Sum(each => each.Count), all.Where(each => each.Step > middle).Sum(each => each.Count));
        return Html.Of($"<span class=\"n\">{low} · <b>{right}</b> · {high}</span> of {all[0].ServingCount}");
    }

    // What is shown stands in words; what is open stands in the table, so that nobody takes it for a finding.
    private static Html Penalties(IReadOnlyList<Penalty> penalties)
    {
        var shown = penalties.Where(penalty => penalty is { Points: { } points, Range: { } range } && new Difference(points, range).Finding is Finding.Gain or Finding.Loss).Select(InWords).ToArray();
        var table = new DataTable("What too little or too much costs in liking",
            [Column.Words("Question"), Column.Words("found"), Column.Numbers("plates"), Column.Numbers("liked more or less", "points"), Column.Numbers("95 % interval")],
            [.. penalties.Select(penalty => new Row(penalty.Attribute.Name, Side(penalty), Num.Said($"{penalty.Count} of {penalty.AnsweredCount}"),
                penalty.Points is null ? Figures.NotKnown : Figures.Difference(penalty.Points, 1), Num.Said(penalty is { Points: { } points, Range: { } range } ? new Difference(points, range).Shown(Figures).Range : "")))])
        { Notes = [Html.Of($"Against the plates found just right, trials and assessors evened out; only what {Figures.WholeShare(TastingPolicy.Kit.PenaltyShare).Text} of the plates were found is weighed (common practice, no source). A link, not a cause: who dislikes a plate may find fault with all of it.")] };
        return (shown.Length == 0 ? Notes.Paragraph(Html.Of($"That any of it costs liking is not shown.")) : Notes.Paragraph(Html.Join(shown, " "))) + Notes.Folded("What too little or too much costs in liking", table.ToHtml());
    }

    private static string Side(Penalty penalty) => (penalty.IsTooMuch ? penalty.Attribute.HighWord : penalty.Attribute.LowWord) is { Length: > 0 } side ? $"{side}, or nearly so" : penalty.IsTooMuch ? "too much" : "too little";

    private static Html InWords(Penalty penalty)
    {
        var (points, range) = (penalty.Points!.Value, penalty.Range!.Value);
        return points < 0
            ? Html.Of($"{Capital(penalty.Attribute.Name)}: the {penalty.Count} of {penalty.AnsweredCount} plates found {Side(penalty)} are liked less than those found just right, by {Figures.Estimate(-points, Interval.Between(-range.High, -range.Low), decimals: 1).InText} points.")
            : Html.Of($"{Capital(penalty.Attribute.Name)}: the {penalty.Count} of {penalty.AnsweredCount} plates found {Side(penalty)} are liked better than those found just right, by {Figures.Estimate(points, range, decimals: 1).InText} points, so it is not a fault to mend.");
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
            var tests = TickTest.Of(log, session, counts.First().Attribute).ToDictionary(test => test.Word);
            var table = new DataTable($"{Capital(counts.Key)}, ticked by trial",
                [Column.Words("Word"), .. trials.Select(trial => Column.Numbers(trial, $"of {servings[trial]}")), Column.Words("")],
                [.. counts.GroupBy(count => count.Answer).OrderByDescending(word => word.Sum(count => count.Share)).Select(word => new Row([word.Key,
                    .. trials.Select(trial => (Cell)Figures.Count(word.First(count => count.Trial == trial).Count)), SaidOf(tests.GetValueOrDefault(word.Key))]))])
            { LeastRem = 12 + trials.Length * 3 };
            var shown = counts.GroupBy(count => count.Answer).Where(word => tests.GetValueOrDefault(word.Key)?.PAmongAll < TastingPolicy.Kit.FalseAlarmShare).Select(word => InWords(word, tests[word.Key])).ToArray();
            var lead = tests.Count == 0 ? Html.Of($"Not everybody had every trial, so the counts can be read but not tested.")
                : shown.Length > 0 ? Html.Join(shown, " ") : Html.Of($"No word stands out when all {counts.First().Attribute.Words.Count} are counted together.");
            return Notes.Folded($"{Capital(counts.Key)}: how often each word was ticked", Notes.Paragraph(lead) + table.ToHtml());
        }));
    }

    private static string SaidOf(TickTest? test) => test?.PAmongAll < TastingPolicy.Kit.FalseAlarmShare ? "differs" : test?.P < TastingPolicy.Kit.FalseAlarmShare ? "may be chance" : "";

    private static Html InWords(IGrouping<string, AnswerCount> word, TickTest test)
    {
        var pairs = test.Pairs.Where(pair => pair.ChanceAmongPairs < TastingPolicy.Kit.FalseAlarmShare).Select(pair => pair.OnlyFirst > pair.OnlySecond ? (More: pair.First, Less: pair.Second) : (More: pair.Second, Less: pair.First)).ToArray();
        var (most, least) = (word.MaxBy(count => count.Share)!, word.MinBy(count => count.Share)!);
        return pairs.Length > 0
            ? Html.Of($"“{Capital(word.Key)}” is ticked more for {string.Join(", and for ", pairs.GroupBy(pair => pair.More).Select(more => $"{more.Key} than for {string.Join(" and ", more.Select(pair => pair.Less))}"))}.")
            : Html.Of($"“{Capital(word.Key)}” is not ticked alike for all, most for {most.Trial} ({most.Count} of {most.ServingCount}) and least for {least.Trial} ({least.Count} of {least.ServingCount}), but no two trials can be named.");
    }

    /// <summary>What the rankings of a tasting show: who came first, and which places lie far enough apart.</summary>
    public static Html Rankings(Dessert dessert, string tasting)
    {
        var (log, session) = SessionOf(dessert, tasting);
        return Html.Join(log.Attributes.Where(attribute => attribute.Kind == AttributeKind.Ranking && log.Asked(session.Name, attribute)).Select(attribute =>
        {
            if (RankTest.Of(log, session, attribute, TastingPolicy.Kit) is not { } test)
                return Notes.Paragraph(Html.Of($"{Capital(attribute.Name)} was ranked, but fewer than two people ranked every trial: nothing can be summed."));
            var few = test.AssessorCount < TastingPolicy.Kit.FewestAssessors;
            var isShown = !few && test.P < TastingPolicy.Kit.FalseAlarmShare;
            var pairs = (from first in test.RankSums from second in test.RankSums where second.Sum - first.Sum >= test.GapNeeded select Html.Of($"{first.Trial} comes before {second.Trial}.")).ToArray();
            var lead = few ? Says.English.TooFew(test.AssessorCount)
                : !isShown ? Html.Of($"No order is shown: people who put plates in any order would agree as much in {Times(test.P)}.")
                : pairs.Length == 0 ? Html.Of($"People agree on an order more than by chance ({Times(test.P)}), but no two trials lie far enough apart to name them.") : Html.Join(pairs, " ");
            return Html.Of($"<p><b>{Capital(attribute.Name)}</b>, ranked by {test.AssessorCount}: {lead}</p>\n")
                + new DataTable($"{Capital(attribute.Name)}, places summed", [Column.Words("Trial"), Column.Numbers("sum of places"), Column.Numbers("mean place")],
                    [.. test.RankSums.Select(each => new Row(each.Trial, Figures.Number(each.Sum, 0), Figures.Number(each.Sum / test.AssessorCount, 1)))])
                { Fits = true, Notes = [Html.Of($"Two sums must lie {Figures.Number(Math.Ceiling(test.GapNeeded), 0).Text} apart, all pairs counted together.{(test.HasSeveralPlates ? " A trial that stood in a ranking several times counts by its mean place, and these means are ranked anew." : "")}")] }.ToHtml();
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
