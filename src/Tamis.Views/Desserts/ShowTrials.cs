using Tamis.Desserts;
using Tamis.Losses;
using Tamis.Tasting;
using Tamis.Trials;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What to make, how sure, what is not shown and what would settle it: the candidate against the first trial and against its parent.</summary>
    public static Html Verdict(Dessert dessert)
    {
        var candidate = dessert.Candidate;
        var line = dessert.LineOf(candidate).ToArray();
        if (line.Length < 2) return Notes.Lead(Html.Of($"{candidate} stands alone: with trials.csv this page would say what it was changed from, and with a tasting what that did."));
        if (dessert.Analysis is null)
            return Notes.Lead(Html.Of($"{candidate} was changed from {line[1]}. Nobody has scored it: with attributes.csv, servings.csv and scores.csv this page would say which is better, and how sure."));

        string[] others = [.. new[] { line[^1], line[1] }.Distinct(Names.Comparer)];
        TrialStep[] steps = [.. others.Select(other => TrialStep.Between(dessert, other, candidate))];
        var liking = steps.Select(step => Best(step.Comparisons.Where(each => each.Attribute.Kind == AttributeKind.Liking))).OfType<TrialComparison>().ToArray();
        var lead = liking.FirstOrDefault(Stands) ?? liking.FirstOrDefault(each => each.Verdict == Tasting.Verdict.Shown) ?? liking.FirstOrDefault();
        return (lead is null ? Html.Empty : Notes.Lead(lead.Verdict == Tasting.Verdict.Shown && !Stands(lead) ? Sentence(lead) + IfAlone(lead.Attribute.Name) : Sentence(lead)))
            + Notes.Verdict(
                [.. steps.SelectMany(step => step.Comparisons).Where(each => Stands(each) && each != lead).Select(Sentence)],
                [.. NotShown(steps[^1])],
                [.. steps.SelectMany(step => step.Comparisons).Where(each => each.Verdict == Tasting.Verdict.AtEdge && each != lead).Select(Sentence), .. Alone(dessert, [.. steps.SelectMany(step => step.Comparisons)], lead)],
                [.. WouldSettle(dessert, steps[^1])])
            + Caveats(dessert, steps[^1]);
    }

    // What stands when chance is counted over all scales of the tasting, as the page of tastings counts it.
    private static bool Stands(TrialComparison comparison) => comparison is { Verdict: Tasting.Verdict.Shown, StandsAmongAll: not false };

    private static IEnumerable<Html> Alone(Dessert dessert, IReadOnlyList<TrialComparison> comparisons, TrialComparison? lead)
    {
        var alone = comparisons.Where(each => each.Verdict == Tasting.Verdict.Shown && !Stands(each)).ToArray();
        foreach (var each in alone.Where(each => each != lead)) yield return Sentence(each);
        foreach (var tasting in alone.GroupBy(each => each.Tastings[0]))
            if (dessert.ReportOf(tasting.Key) is var report)
                yield return Alone([.. report.Scales.Where(scale => tasting.Any(each => each.Attribute == scale.Attribute))], report.Scales.Count);
    }

    /// <summary>Which trial came from which, what each changed, and what that gained and lost.</summary>
    public static Html Tree(Dessert dessert)
    {
        if (dessert.Log is not { } log) return Notes.Small(Says.English.MissingSheet("trials.csv", "which trial came from which"));
        var steps = dessert.Steps;
        var looks = dessert.Analysis?.LooksOf(steps.SelectMany(step => step.Comparisons)).Count ?? 0;
        var note = looks == 0 ? Html.Empty : Notes.Note(
            Html.Of($"Each trial hangs from the one it was changed from. The signed figures are points of the scale against that parent in the tasting where both were served. A figure stands here only if its 95 % interval, wide enough for all pairs of trials of its scale together, leaves zero or ends at it. {Says.English.ManyScales(looks)} “If asked alone” marks what chance may have done among all scales that were asked then."),
            "How to read it.");
        return note + TrialTree.Of([.. log.Trials.Where(trial => trial.Parent is null).Select(trial => Node(dessert, log, trial, steps))]);
    }

    private static TrialNode Node(Dessert dessert, TrialLog log, Trial trial, IReadOnlyList<TrialStep> steps)
    {
        var step = steps.FirstOrDefault(each => Names.Same(each.To.Name, trial.Name));
        return new(trial.Name, step is null ? Html.Text(trial.Question.Length > 0 ? trial.Question : "first trial") : ChangesInWords(step))
        {
            Effects = step is null ? [] : [.. EffectsOf(step)],
            Said = Html.Join([.. Remarks(step, trial, steps)], " "),
            IsChosen = Names.Same(trial.Name, dessert.Candidate),
            Children = [.. log.ChildrenOf(trial.Name).Select(child => Node(dessert, log, child, steps))],
        };
    }

    private static IEnumerable<Effect> EffectsOf(TrialStep step)
    {
        foreach (var attribute in step.Comparisons.Where(each => each.Verdict is Tasting.Verdict.Shown or Tasting.Verdict.AtEdge).GroupBy(each => each.Attribute.Name))
        {
            var several = attribute.Count() > 1 || step.Comparisons.Count(each => each.Attribute.Name == attribute.Key && each.IsLook) > 1;
            var figures = attribute.Select(each => Html.Of($"{Figures.Difference(each.DifferencePoints, 1).InText}{(several ? $" in {string.Join(" and ", each.Tastings)}" : "")}{(each.Verdict == Tasting.Verdict.AtEdge ? ", at the edge" : Stands(each) ? "" : ", if asked alone")}"));
            var shown = attribute.FirstOrDefault(Stands);
            yield return new(Html.Of($"{attribute.Key} {Html.Join(figures, ", ")}"), shown is null ? Finding.AtEdge : shown.DifferencePoints > 0 ? Finding.Gain : Finding.Loss);
        }
        if (step.Comparisons.Count > 0 && !step.Comparisons.Any(each => each.Verdict is Tasting.Verdict.Shown or Tasting.Verdict.AtEdge))
            yield return new(StandingOf(step), Finding.NotShown);
    }

    // Why no figure stands beside a trial: said once for all attributes.
    private static Html StandingOf(TrialStep step)
    {
        var first = step.Comparisons[0];
        return step.Comparisons.All(each => each.Verdict == Tasting.Verdict.NeverTogether) ? Says.English.NoCommonTasting(step.To.Name, step.From.Name)
            : step.Comparisons.All(each => each.Verdict is Tasting.Verdict.TooFew or Tasting.Verdict.NeverTogether) ? Says.English.TooFew(step.Comparisons.Max(each => each.AssessorCount))
            : Html.Of($"against {step.From.Name} nothing stands out in {step.Comparisons.Select(each => each.Attribute.Name).Distinct().Count()} attributes{(first.Through is { } control ? $", by way of {control}" : "")}");
    }

    private static IEnumerable<Html> Remarks(TrialStep? step, Trial trial, IReadOnlyList<TrialStep> steps)
    {
        if (step is { IsConfounded: true, Changes: [var first, var second, ..] })
        {
            var undone = steps.FirstOrDefault(each => Names.Same(each.From.Name, trial.Name) && each.Changes is [var only] && step.Changes.Any(change => SameLine(change, only)));
            string[] alone = [.. step.Changes.Select(change => steps.FirstOrDefault(each => each != step && each != undone && each.Changes is [var only] && SameLine(change, only))?.To.Name).OfType<string>()];
            yield return undone is null && alone.Length == step.Changes.Count
                ? Html.Of($"{Capital(NameOf(first))} and {NameOf(second)} moved together in {trial.Name}; each was changed alone in {string.Join(" and ", alone)}.")
                : Says.English.TwoChanges(Capital(NameOf(first)), NameOf(second), trial.Name, undone?.To.Name);
        }
        if (trial.MadeOn.Count == 1) yield return Says.English.OneMake();
        if (trial.Outcome.Length > 0) yield return Html.Text(trial.Outcome);
    }

    /// <summary>What a cook changed, in the words of the sheet.</summary>
    private static Html ChangesInWords(TrialStep step)
    {
        List<string> words = [.. step.Difference.ScaledComponents.Select(scaled => $"{scaled.Component} made {Figures.Part(scaled.Factor).Text} times as large")];
        foreach (var group in step.Changes.GroupBy(change => change.Component))
            words.Add($"{group.Key}: {string.Join(", ", group.Select(InWords))}");
        words.AddRange(step.Difference.Losses.Where(loss => step.Changes.Count == 0).Select(loss => $"{loss.Component}: {loss.Loss} {loss.From ?? "nothing"} to {loss.To ?? "nothing"}"));
        return Html.Text(words.Count == 0 ? step.Method.Count > 0 ? "weighed the same, done otherwise" : $"weighed as {step.From.Name}" : string.Join("; ", words));
    }

    private static string InWords(Change change)
    {
        var leading = change.Leading;
        return change.Kind switch
        {
            ChangeKind.Added => $"{leading.Line} added, {Figures.Mass(leading.ToGrams).Text}",
            ChangeKind.Removed => $"{leading.Line} left out",
            ChangeKind.Replaced or ChangeKind.Swapped when leading.FromGrams <= 0 =>
                $"{And(change.Lines.Where(line => line.ToGrams > 0))} for {And(change.Lines.Where(line => line.ToGrams <= 0))}",
            ChangeKind.Swapped => $"{leading.Line} {FromTo(leading)}, {change.Lines[1].Line} {FromTo(change.Lines[1])}",
            ChangeKind.Together => $"{leading.Line} {FromTo(leading)}, {string.Join(", ", change.Lines.Skip(1).Select(line => line.Line))} with it",
            _ => $"{leading.Line} {FromTo(leading)}",
        };
    }

    private static string FromTo(LineDifference line)
    {
        if (line is { FromPieces.Length: > 0, ToPieces.Length: > 0 }) return $"{line.FromPieces} to {line.ToPieces}";
        // Both ends to the place that the finer one was weighed to.
        var decimals = new[] { line.FromGrams, line.ToGrams }.All(grams => Math.Abs(grams - Math.Round(grams)) < 1e-9) ? 0 : 1;
        return $"{Figures.Number(line.FromGrams, decimals).Figure} to {Figures.Number(line.ToGrams, decimals, "g").Text}";
    }

    private static bool SameLine(Change one, Change other) => Names.Same(one.Component, other.Component) && Names.Same(one.Leading.Line, other.Leading.Line);

    private static string And(IEnumerable<LineDifference> lines) => string.Join(" and ", lines.Select(line => line.Line));

    private static string NameOf(Change change) => $"{change.Leading.Line} in the {change.Component}";

    private static Difference? DifferenceOf(TrialComparison comparison) =>
        comparison.DifferencePoints is { } points ? new(points, comparison.Range) : null;

    private static Html Sentence(TrialComparison comparison) => comparison.Verdict switch
    {
        Tasting.Verdict.NeverTogether => Says.English.NoCommonTasting(comparison.Trial, comparison.Against),
        Tasting.Verdict.TooFew => Says.English.TooFew(comparison.AssessorCount),
        Tasting.Verdict.NotAsked => Html.Of($"{Capital(comparison.Attribute.Name)} was not asked when {comparison.Trial} and {comparison.Against} were tasted together."),
        _ when DifferenceOf(comparison) is { } difference => Says.English.Of(comparison.Attribute.Name, comparison.Attribute.Kind == AttributeKind.Liking,
            comparison.Trial, comparison.Against, difference, (int)Math.Round(comparison.Attribute.HighPoints)),
        _ => Html.Of($"The scores of {comparison.Trial} and {comparison.Against} give no spread, so nothing says how sure a difference is."),
    };

    // The surest of several tastings: the narrowest interval.
    private static TrialComparison? Best(IEnumerable<TrialComparison> comparisons) =>
        comparisons.OrderBy(each => each.Range?.Width ?? double.MaxValue).FirstOrDefault();

    private static IEnumerable<Html> NotShown(TrialStep step)
    {
        if (Best(step.Comparisons.Where(each => each is { Verdict: Tasting.Verdict.NotShown, Attribute.Kind: AttributeKind.Liking })) is not { } liking)
        {
            if (step.Comparisons.Count > 0 && step.Comparisons.All(each => each.Verdict is Tasting.Verdict.NeverTogether or Tasting.Verdict.TooFew)) yield return StandingOf(step);
            yield break;
        }
        yield return Sentence(liking);
        if (liking.SmallestGapPoints is { } gap) yield return Says.English.SmallestSeen(gap);
    }

    private static IEnumerable<Html> WouldSettle(Dessert dessert, TrialStep step)
    {
        if (Best(step.Comparisons.Where(each => each is { Verdict: Tasting.Verdict.NotShown or Tasting.Verdict.AtEdge, Attribute.Kind: AttributeKind.Liking })) is { } liking
            && liking.WithinAssessorPoints is > 0 and { } spread && GapWorthSeeing(liking.Attribute) is var gap && ServingsNeeded.ToSee(spread, gap, TastingPolicy.Kit) is { } servings)
            yield return Says.English.WouldSettle(step.To.Name, step.From.Name, servings) + Html.Of($" That sees a gap of {Figures.Part(gap).Text} {(gap == 1 ? "point" : "points")} in {Figures.WholeShare(TastingPolicy.Kit.WantedPowerShare).Text} of such tastings.");
        else if (dessert.Analysis is not null && step.Comparisons.Count > 0 && step.Comparisons.All(each => each.Verdict == Tasting.Verdict.NeverTogether))
            yield return Html.Of($"{step.To.Name} and {step.From.Name} side by side in one tasting.");
    }

    private static Html Caveats(Dessert dessert, TrialStep step)
    {
        List<Html> caveats = [];
        if (step.IsConfounded)
            caveats.Add(Notes.LookAt(Html.Of($"{Capital(string.Join(" and ", step.Changes.Select(NameOf)))} moved together between {step.From.Name} and {step.To.Name}: no score can be laid to one of them alone.")));
        if (dessert.LoggedTrial(step.To.Name).MadeOn.Count == 1) caveats.Add(Notes.LookAt(Html.Of($"{step.To.Name}: {Says.English.OneMake()}")));
        return Html.Join(caveats);
    }
}
