using Tamis.Desserts;
using Tamis.Losses;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Scores against what changed: one picture for each attribute that moved with a change, doses across, scores up, assessors faint behind the means.</summary>
    /// <remarks>Every tasting that served such a change is in the picture, also one in which nothing was seen; only what one tasting served side by side is joined by a line.
    /// A trial in which several things changed is drawn against the first of them and says so.</remarks>
    public static Html ScoresAgainstChanges(Dessert dessert)
    {
        if (dessert.Analysis is not { } analysis) return NoScores();
        var seen = dessert.Steps.Where(step => step.Changes.Count > 0)
            .SelectMany(step => step.Comparisons.Where(each => each.IsLook && each.Through is null).Select(each => (step, each))).ToArray();
        var panels = seen.GroupBy(pair => (pair.each.Attribute.Name, pair.step.Changes[0].Component, Line: Names.Key(pair.step.Changes[0].Leading.Line)))
            .Where(group => group.Any(pair => pair.each.Verdict == Tasting.Verdict.Shown))
            .Select(group => PanelOf(analysis, [.. group], dessert.Candidate)).OfType<ScorePanel>().ToArray();
        return panels.Length == 0
            ? Notes.Paragraph(Html.Of($"No score moved with a change so far that its interval leaves zero. The table of all differences follows."))
            : ScoreAgainstChange.Of(panels, Html.Of($"Dots are the means of the assessors with their 95 % interval, faint dots single assessors; a line joins what one tasting served side by side. The sentence under a picture compares within assessors, all pairs of trials of the scale together. {OneMakeEach(seen.Select(pair => pair.each))}")).ToHtml();
    }

    /// <summary>Every attribute against the change of one trial, whether it moved or not.</summary>
    public static Html ScoresAgainstChange(Dessert dessert, string trial)
    {
        if (dessert.Analysis is not { } analysis) return NoScores();
        if (dessert.Log?.Lineage.ParentOf(trial) is not { } parent) return Notes.Small(Html.Of($"{trial} has no parent to compare with."));
        var step = TrialStep.Between(dessert, parent, trial);
        ScorePanel[] panels = [.. step.Comparisons.GroupBy(each => each.Attribute.Name).Select(group => PanelOf(analysis, [.. group.Select(each => (step, each))], dessert.Candidate)).OfType<ScorePanel>()];
        return panels.Length == 0
            ? Notes.Paragraph(step.Comparisons.Count > 0 ? StandingOf(step) : Html.Of($"{trial} was not scored beside {parent}."))
            : (ScoreAgainstChange.Of(panels, Html.Of($"{trial} against {parent}, every attribute that was asked.")) with { IsDense = true }).ToHtml();
    }

    /// <summary>Every difference from a parent in every attribute, with its interval and what it was changed by.</summary>
    public static Html Effects(Dessert dessert)
    {
        if (dessert.Analysis is not { } analysis) return NoScores();
        var steps = dessert.Steps;
        var rows = steps.SelectMany(step => step.Comparisons.Where(each => each.IsLook).Select(each => (step, each, difference: DifferenceOf(each)!))).ToArray();
        if (rows.Length == 0) return Notes.Paragraph(Html.Of($"No trial was scored beside its parent yet."));
        var axis = DotPanel.AxisAround(rows.Select(row => new DotRow("", row.difference.Points, row.difference.Interval)));
        var table = new DataTable("Differences from the parent trial",
            [Column.Words("Trial"), Column.Words("attribute"), Column.Words("tasting"), Column.Numbers("difference"), Column.Numbers("95 % interval"),
             Column.Words($"{Figures.Difference(axis.Low, 0).Text} to {Figures.Difference(axis.High, 0).Text}"), Column.Numbers("assessors")],
            [.. rows.Select(row => new Row(
                $"{row.each.Trial} less {row.each.Against}", row.each.Attribute.Name, string.Join(" and ", row.each.Tastings) + (row.each.Through is { } control ? $", by way of {control}" : ""),
                ((Cell)Figures.Difference(row.difference.Points, 1)).Tracked($"{row.each.Trial} less {row.each.Against}, {row.each.Attribute.Name}, {string.Join(" and ", row.each.Tastings)}"),
                Num.Said(row.difference.Shown(Figures).Range), Marks.Range(row.difference, axis), Figures.Count(row.each.AssessorCount)))])
        { IsWide = true, IsLong = true, LeastRem = 46 };
        var looks = analysis.LooksOf(rows.Select(row => row.each));
        var silent = steps.Where(step => step.Comparisons.Count > 0 && !step.Comparisons.Any(each => each.IsLook)).Select(step => Notes.Small(Html.Of($"{step.To.Name}: {StandingOf(step)}")));
        return Notes.Paragraph(Html.Of($"The figures are those of the page of tastings: the place in the order of tasting is evened out, what was tasted just before where the order of serving allows it at small cost, and a 95 % interval is wide enough for all pairs of trials of its scale together. {Says.English.ManyScales(looks.Count)} What counts chance over all scales of a tasting too stands there."))
            + Notes.Folded($"All {rows.Length} differences", table.ToHtml()) + Html.Join(silent);
    }

    /// <summary>The mean of every trial in liking, or in the first attribute that was asked, tasting by tasting.</summary>
    public static Html Means(Dessert dessert) => dessert.Analysis is not { } analysis ? NoScores()
        : (analysis.Scales.FirstOrDefault(scale => scale.Kind == AttributeKind.Liking) ?? analysis.Scales.FirstOrDefault()) is { } scale ? Means(dessert, scale.Name)
        : Notes.Small(Html.Of($"No attribute with a scale was asked: liking or an intensity would be shown here."));

    /// <summary>The mean of every trial on one attribute, tasting by tasting.</summary>
    /// <exception cref="KeyNotFoundException">No scale has this name; the message names those there are.</exception>
    public static Html Means(Dessert dessert, string attribute)
    {
        if (dessert.Analysis is not { } analysis) return NoScores();
        if (!analysis.Scales.Any(each => Names.Same(each.Name, attribute)))
            throw new KeyNotFoundException($"No scale is called '{attribute}'; there are {string.Join(", ", analysis.Scales.Select(each => each.Name))}.");
        var means = analysis.Means().Where(mean => Names.Same(mean.Attribute.Name, attribute)).ToArray();
        if (means.Length == 0) return Notes.Small(Html.Of($"Nobody has scored {attribute} yet; at the bench there are words only."));
        var scale = means[0].Attribute;
        // By the model of the tasting where there is one: who lacked a trial, and when it came, does not shift its mean then.
        var models = means.Select(mean => mean.Tasting).Distinct().ToDictionary(tasting => tasting, tasting => dessert.ReportOf(tasting).Scales.FirstOrDefault(each => each.Attribute == scale && each.Means.Count > 0));
        DotPanel[] panels = [.. means.GroupBy(mean => mean.Tasting).Select(group => new DotPanel($"{Capital(scale.Name)} in {group.Key}",
            [.. group.Select(mean => (mean, estimate: models[group.Key]?.Means.FirstOrDefault(each => Names.Same(each.Trial, mean.Trial))))
                .Select(each => (each.mean, points: each.estimate?.Points ?? each.mean.MeanPoints, range: each.estimate is { } estimate ? estimate.Range : each.mean.Range)).OrderByDescending(each => each.points)
                .Select(each => new DotRow(each.mean.Trial, each.points, each.range) { IsChosen = Names.Same(each.mean.Trial, dessert.Candidate), People = each.mean.AssessorCount })],
            Interval.Between(scale.LowPoints, scale.HighPoints))
        { Description = $"Mean {scale.Name} of {group.Count()} trials in {group.Key} with intervals.", AxisTitle = scale is { LowWord.Length: > 0, HighWord.Length: > 0 } ? $"{scale.LowWord} to {scale.HighWord}" : "" })];
        return DotsWithIntervals.Of(panels, Html.Of($"Means with their 95 % intervals for people like these. {EvenedOutByTasting(models)} Between tastings they cannot be compared: other people, another day. {scale.Question}")).ToHtml();
    }

    private static string EvenedOutByTasting(IReadOnlyDictionary<string, ScaleModel?> models)
    {
        var alike = models.GroupBy(model => model.Value is { } scale ? EvenedOut([scale]) : "These are plain means of the assessors, as no model could be fitted.").ToArray();
        return string.Join(" ", alike.Select(group => alike.Length == 1 ? group.Key : $"{AndAll(group.Select(model => model.Key))}: {group.Key}"));
    }

    private static Html NoScores() => Notes.Small(Says.English.MissingSheet("attributes.csv, servings.csv and scores.csv", "how tasters scored each change"));

    private static Html OneMakeEach(IEnumerable<TrialComparison> comparisons) =>
        comparisons.All(each => each.TrialMakes.Count == 1 && each.AgainstMakes.Count == 1)
            ? Html.Of($"No tasting served two makes of a trial, so a difference may be of the batch and not of the formula.") : Html.Empty;

    private static ScorePanel? PanelOf(TastingAnalysis analysis, IReadOnlyList<(TrialStep Step, TrialComparison Comparison)> pairs, string candidate)
    {
        var (first, comparison) = pairs[0];
        if (first.Changes is not [var change, ..]) return null;
        var leading = change.Leading;
        ScoredSeries[] series = [.. pairs.Select(pair => SeriesOf(analysis, pair.Step, pair.Comparison, candidate)).OfType<ScoredSeries>()];
        if (series.Length == 0) return null;
        var most = series.SelectMany(each => each.Points).Max(point => point.Dose);
        return new($"{Capital(comparison.Attribute.Name)} and {leading.Line}", comparison.Attribute.Name, $"{leading.Line} in the {change.Component}, %", series)
        {
            ScalePoints = Interval.Between(comparison.Attribute.LowPoints, comparison.Attribute.HighPoints),
            DoseDecimals = most < 3 ? 2 : 1,
            Description = $"{Capital(comparison.Attribute.Name)} against {leading.Line} in the {change.Component}: {string.Join("; ", pairs.Select(pair => $"{pair.Step.From.Name} to {pair.Step.To.Name} in {string.Join(" and ", pair.Comparison.Tastings)}"))}.",
            Below = Html.Join(pairs.Select(pair => Below(pair.Step, pair.Comparison, pairs.Count > 1)), " "),
        };
    }

    private static Html Below(TrialStep step, TrialComparison comparison, bool several)
    {
        var where = several && comparison.Tastings.Count > 0 ? Html.Of($"<b>{string.Join(" and ", comparison.Tastings)}:</b> ") : Html.Empty;
        var others = step.Changes.Skip(1).Select(change => change.Leading.Line).Distinct(Names.Comparer).ToArray();
        return where + Sentence(comparison) + (others.Length == 0 ? Html.Empty
            : Html.Of($" In {step.To.Name} {string.Join(" and ", others)} moved too, so the score cannot be laid to {step.Changes[0].Leading.Line} alone."));
    }

    private static ScoredSeries? SeriesOf(TastingAnalysis analysis, TrialStep step, TrialComparison comparison, string candidate)
    {
        if (comparison.Through is not null || comparison.Points.Count == 0) return null;
        var leading = step.Changes[0].Leading;
        var tasting = comparison.Tastings[0];
        var means = analysis.Means().Where(mean => mean.Tasting == tasting && mean.Attribute == comparison.Attribute).ToArray();
        if (Dose(step.From.Name, leading.FromShare, each => each.AgainstPoints) is not { } from || Dose(step.To.Name, leading.ToShare, each => each.TrialPoints) is not { } to) return null;
        return new(tasting, [.. new[] { from, to }.OrderBy(dose => dose.Dose)]) { IsChosen = Names.Same(step.To.Name, candidate) };

        ScoredDose? Dose(string trial, double share, Func<AssessorPoints, double?> pick) =>
            means.FirstOrDefault(mean => Names.Same(mean.Trial, trial)) is { } mean
                ? new(trial, share * 100, mean.MeanPoints, mean.Range, [.. comparison.Points.Select(pick).OfType<double>()]) : null;
    }
}
