using System.Globalization;
using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Every tasting: when, who, what, and what is missing.</summary>
    public static Html Tastings(Dessert dessert)
    {
        if (dessert.Tastings is not { } log) return NoScores();
        return Html.Join(log.Doubts.Select(doubt => Notes.LookAt(Html.Text(doubt.ToString())))) + new DataTable("The tastings",
            [Column.Words("Tasting"), Column.Words("day"), Column.Words("trials"), Column.Words("control"), Column.Numbers("assessors"), Column.Numbers("plates planned"), Column.Numbers("plates tasted")],
            [.. log.Sessions.Select(session => (session, planned: log.Servings.Count(serving => Names.Same(serving.Tasting, session.Name)), tasted: log.Tasted.Where(serving => Names.Same(serving.Tasting, session.Name)).ToArray()))
                .Select(each => new Row(each.session.IsBench ? $"{each.session.Name}, at the bench" : each.session.Name,
                    each.session.Date?.ToString("d MMMM yyyy", CultureInfo.InvariantCulture) ?? "", string.Join(", ", log.TrialsIn(each.session.Name).OrderBy(trial => TrialOrder(dessert, trial))), each.session.Control ?? "none",
                    Figures.Count(each.tasted.Select(serving => serving.Assessor).Distinct().Count()), Figures.Count(each.planned), Figures.Count(each.tasted.Length)))])
        { IsWide = true, LeastRem = 36 }.ToHtml();
    }

    /// <summary>Every tasting with scores, one after the other: verdict, differences, just right, words, how the marks spread.</summary>
    public static Html EachTasting(Dessert dessert) => dessert.Tastings is not { } log ? NoScores()
        : ChanceCounted() + Html.Join(log.Sessions.Where(session => session is { IsBench: false, Test: null } && log.TrialsIn(session.Name).Any()).Select(session =>
            Html.Of($"<h3>{Title(session)}</h3>\n") + TastingVerdict(dessert, session.Name) + Differences(dessert, session.Name) + OrderAlone(dessert, session.Name) + Rankings(dessert, session.Name) + ExpectedOrders(dessert, session.Name) + JustRight(dessert, session.Name) + TickedWords(dessert, session.Name) + Spread(dessert, session.Name)));

    private static Html ChanceCounted() => Notes.Folded("How chance is counted", Notes.Paragraph(Html.Of(
        $"Whoever asks twenty questions gets one answer by chance. Within a scale, intervals are wide enough for all pairs of trials together (Tukey and Kramer). Over the scales of a tasting, the most striking must be as many times rarer by chance as there are scales, the next as many times less one, and so on (Holm): so the risk of even one false “shown” stays under {Figures.WholeShare(TastingPolicy.Kit.FalseAlarmShare).Text}, however the scales hang together. A milder rule that lets one call in twenty be false (Benjamini and Hochberg) would show more; a kitchen acts on every call, so here it only says what to ask again first.")));

    /// <summary>What a tasting shows, how sure, what it does not show, and what would settle it.</summary>
    public static Html TastingVerdict(Dessert dessert, string tasting)
    {
        var (log, session) = SessionOf(dessert, tasting);
        var policy = TastingPolicy.Kit;
        var report = dessert.ReportOf(tasting);
        if (report.Scales.Count == 0) return Notes.Paragraph(Html.Of($"{session.Name} has no scores on a scale."));
        if (report.Scales.All(scale => scale.WhyNot.Length > 0)) return Html.Join(WhyNots(report.Scales).Select(Notes.Paragraph));
        var pairs = report.Scales.SelectMany(scale => PairsAround(scale, session).Select(pair => (scale, pair))).ToArray();
        var first = pairs.Where(each => each.scale.Attribute.Kind == AttributeKind.Liking && each.pair.Verdict == Tasting.Verdict.Shown).OrderBy(each => each.scale.IsShown(policy) ? 0 : 1).ThenByDescending(each => Math.Abs(each.pair.Points)).FirstOrDefault();
        var lead = first.pair is null ? Html.Empty : Sentence(first.scale, first.pair);
        var silent = report.Scales.Where(scale => scale.WhyNot.Length == 0 && scale.Pairs.All(pair => pair.Verdict is Tasting.Verdict.NotShown or Tasting.Verdict.TooFew)).ToArray();
        var edge = pairs.Where(each => each.pair.Verdict == Tasting.Verdict.AtEdge).Select(each => Sentence(each.scale, each.pair)).ToArray();
        var alone = pairs.Where(each => each.pair.Verdict == Tasting.Verdict.Shown && !each.scale.IsShown(policy)).ToArray();
        return Notes.Small(WhoAndWhen(log, session))
            + (lead.IsEmpty ? Html.Empty : Notes.Lead(first.scale.IsShown(policy) ? lead : lead + IfAlone(first.scale.Attribute.Name)))
            + Notes.Verdict(
                [.. pairs.Where(each => each.pair.Verdict == Tasting.Verdict.Shown && each.scale.IsShown(policy)).Select(each => Sentence(each.scale, each.pair)).Where(sentence => sentence != lead)],
                [.. silent.Where(scale => scale.Attribute.Kind == AttributeKind.Liking).SelectMany(scale => NotShown(scale, session)),
                 .. silent.Any(scale => scale.Attribute.Kind != AttributeKind.Liking) ? [Html.Of($"That trials differ in {AndWords(silent.Where(scale => scale.Attribute.Kind != AttributeKind.Liking).Select(scale => scale.Attribute.Name))}.")] : Array.Empty<Html>()],
                [.. edge, .. alone.Select(each => Sentence(each.scale, each.pair)).Where(sentence => sentence != lead), .. alone.Length == 0 ? Array.Empty<Html>() : [Alone([.. alone.Select(each => each.scale).Distinct()], report.Scales.Count)]],
                [.. Settling(report, session, policy)])
            + (report.Scales.SelectMany(scale => scale.Pairs).Where(pair => pair.Verdict == Tasting.Verdict.TooFew).SelectMany(pair => (string[])[pair.Trial, pair.Against]).CountBy(trial => trial).OrderByDescending(trial => trial.Value).Select(trial => trial.Key).ToArray() is { Length: > 0 } few
                ? Notes.Small(Html.Of($"Some pairs with {few[0]} were scored by fewer than {policy.FewestAssessors} people: notes, not evidence, and left out.")) : Html.Empty)
            + MadeOnce(log, session)
            + Html.Join(WhyNots(report.Scales).Select(why => Notes.Small(why)));
    }

    // One sentence for all scales that lack the same.
    private static IEnumerable<Html> WhyNots(IEnumerable<ScaleModel> scales) => scales.Where(scale => scale.WhyNot.Length > 0)
        .GroupBy(scale => scale.WhyNot.Replace(scale.Attribute.Name, "\u001f", StringComparison.Ordinal))
        .Select(alike => Html.Text(Capital(alike.Key.Replace("\u001f", AndAll(alike.Select(scale => scale.Attribute.Name)), StringComparison.Ordinal))));

    private static Html IfAlone(string scale) => Html.Of($" <span class=\"sure\" style=\"white-space:normal\">That stands if {scale} was the question.</span>");

    private static Html MadeOnce(TastingLog log, TastingSession session)
    {
        string[] once = [.. log.TrialsIn(session.Name).Where(trial => log.MakesOf(trial).Count == 1).Order(StringComparer.Ordinal)];
        return once.Length == 0 ? Html.Empty : Notes.LookAt(Html.Of($"{AndAll(once)} {(once.Length == 1 ? "was" : "were")} tasted from one make only: what is shown of {(once.Length == 1 ? "it" : "them")} may belong to that batch. A second make would part batch and formula."));
    }

    // Everything against the control, and of the other pairs those that stand out.
    private static IEnumerable<TrialPair> PairsAround(ScaleModel scale, TastingSession session)
    {
        var control = session.Control ?? scale.Means.FirstOrDefault()?.Trial;
        return scale.Pairs.Select(pair => Names.Same(pair.Trial, control) ? pair.Turned : pair)
            .Where(pair => Names.Same(pair.Against, control) || pair.Verdict is Tasting.Verdict.Shown);
    }

    private static Html Sentence(ScaleModel scale, TrialPair pair) => Says.English.Of(scale.Attribute.Name, scale.Attribute.Kind == AttributeKind.Liking, pair.Trial, pair.Against,
        new(pair.Points, pair.Range), (int)Math.Round(scale.Attribute.HighPoints));

    // What the pairs of one scale show is held against all scales that were asked: with many questions one of them stands out by chance.
    private static Html Alone(IReadOnlyList<ScaleModel> scales, int asked) =>
        Html.Of($"In {AndAll(scales.Select(scale => scale.Attribute.Name))} an interval leaves zero: it stands if that alone was the question. Among all {asked} scales that were asked, something as striking comes up by chance in {OneIn(scales.Max(scale => scale.TrialPAmongAll))} tastings.{AskAgain(scales)}");

    // Benjamini and Hochberg's rule asks less than Holm's: what passes it is worth the next tasting.
    private static string AskAgain(IReadOnlyList<ScaleModel> scales) =>
        scales.Where(scale => scale.FalseShareAmongAll < TastingPolicy.Kit.FalseAlarmShare).Select(scale => scale.Attribute.Name).ToArray() is { Length: > 0 } first && first.Length < scales.Count
            ? $" Ask {AndAll(first)} again first: of what stands out as much, no more than one in twenty is chance." : "";

    // 'one in eleven' says more at the bench than a probability.
    private static string OneIn(double? probability) => probability is not > 0.001 ? "hardly any" : probability >= 0.4 ? "about every second one of the" : $"one in {Math.Floor(1 / probability.Value).ToString("0", CultureInfo.InvariantCulture)}";

    private static IEnumerable<Html> NotShown(ScaleModel scale, TastingSession session)
    {
        var around = PairsAround(scale, session).Where(pair => pair is { Range: not null, Verdict: not Tasting.Verdict.TooFew }).ToArray();
        if (around.Length == 0) yield break;
        foreach (var pair in around.OrderByDescending(pair => Math.Abs(pair.Points)).Take(2)) yield return Sentence(scale, pair);
        yield return Says.English.SmallestSeen(around.Max(pair => pair.SmallestGapPoints!.Value));
    }

    private static IEnumerable<Html> Settling(TastingReport report, TastingSession session, TastingPolicy policy)
    {
        foreach (var scale in report.Scales.Where(scale => scale is { Attribute.Kind: AttributeKind.Liking, PlatePoints: > 0 }))
        {
            if (PairsAround(scale, session).All(pair => pair.Verdict == Tasting.Verdict.Shown && scale.IsShown(policy))) continue;
            var gap = GapWorthSeeing(scale.Attribute);
            if (ServingsNeeded.ToSee(scale, gap, policy) is not { } needed || ServingsNeeded.ToSee(scale.ServingPoints!.Value, gap, policy) is not { } sideBySide) continue;
            var had = scale.Means.Min(mean => mean.ServingCount);
            yield return Html.Of($"To see a gap of {Figures.Part(gap).Text} {(gap == 1 ? "point" : "points")} of {scale.Attribute.Name} in {Figures.WholeShare(policy.WantedPowerShare).Text} of such tastings, one set out like this with {scale.Means.Count} trials needs about {needed} servings of each; {(had >= needed ? $"there were {had}, so that a gap as large would most likely have been seen" : $"there were {had}, so about {needed - had} more")}.{(scale.Means.Count > 2 ? $" Two trials alone, side by side, need about {sideBySide}." : "")} Serve another make of each, or batch and formula stay mixed up.");
        }
    }

    private static double GapWorthSeeing(SensoryAttribute attribute) => TastingPolicy.Kit.GapWorthSeeingShare * (attribute.HighPoints - attribute.LowPoints);

    private static Html WhoAndWhen(TastingLog log, TastingSession session)
    {
        var tasted = log.Tasted.Where(serving => Names.Same(serving.Tasting, session.Name)).ToArray();
        var planned = log.Servings.Count(serving => Names.Same(serving.Tasting, session.Name));
        List<string> parts = [$"{tasted.Select(serving => serving.Assessor).Distinct().Count()} assessors", $"{tasted.Length} plates"];
        if (planned > tasted.Length) parts.Add(planned - tasted.Length == 1 ? "one planned plate was not tasted" : $"{planned - tasted.Length} planned plates were not tasted");
        if (session.PortionGrams is { } portion) parts.Add(Figures.Number(portion, 0, "g").Text);
        if (session.ServedCelsius is { } celsius) parts.Add($"at {Figures.Celsius(celsius).Text}");
        if (session.OutOfColdMinutes is { } minutes) parts.Add($"{Figures.Minutes(minutes).Text} out of the cold");
        if (session.Control is { } control) parts.Add($"{control} is the control");
        return Html.Of($"{string.Join(", ", parts)}.{(session.Notes.Length > 0 ? $" {Capital(Typeset.Text(session.Notes))}." : "")}");
    }

    private static string Title(TastingSession session) => session.Date is { } day ? $"{session.Name}, {day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}" : session.Name;

    private static string AndWords(IEnumerable<string> names) => names.ToArray() is var all && all.Length > 1 ? $"{string.Join(", ", all[..^1])} or {all[^1]}" : string.Concat(all);

    private static (TastingLog Log, TastingSession Session) SessionOf(Dessert dessert, string tasting)
    {
        var log = dessert.Tastings ?? throw new KeyNotFoundException("This dessert has no scores yet: attributes.csv, servings.csv and scores.csv would give them.");
        return (log, log.Session(tasting) ?? throw new KeyNotFoundException($"No tasting is called '{tasting}'; there are {string.Join(", ", log.Sessions.Select(session => session.Name))}."));
    }
}
