using Tamis.Desserts;
using Tamis.Losses;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Every step of the tree: what was changed in grams, share, ratio, method and kitchen figures, and what each score did, as tasted and as a formula.</summary>
    public static Html ScoresAgainstFormula(Dessert dessert)
    {
        if (dessert.Effects is not { } effects) return NoScores();
        var steps = effects.Effects.GroupBy(effect => effect.Step.To.Name).ToArray();
        if (steps.Length == 0) return Notes.Small(Html.Of($"With a parent in trials.csv this page would say what each change did to the scores."));
        var looked = effects.Effects.Count(effect => effect.Formula?.Range is not null);
        return Notes.Paragraph(Makes(effects))
            + Notes.Small(Html.Of($"{Says.English.ManyLooks(looked)} What is marked “stands” would not, in nineteen of twenty such trees."))
            + Html.Join(steps.Select(group => StepBlock(dessert, effects, [.. group], open: Names.Same(group.Key, dessert.Candidate))));
    }

    /// <summary>What one step changed and what the scores did.</summary>
    public static Html Step(Dessert dessert, string trial)
    {
        if (dessert.Effects is not { } effects) return NoScores();
        StepEffect[] own = [.. effects.Effects.Where(effect => Names.Same(effect.Step.To.Name, trial))];
        return own.Length == 0 ? Notes.Small(Html.Of($"{trial} has no parent to compare with.")) : StepBlock(dessert, effects, own, open: true);
    }

    private static Html Makes(StepEffects effects)
    {
        var models = effects.Models.Where(model => model.WhyNot.Length == 0).ToArray();
        if (models.Length == 0) return Html.Join(effects.Models.Select(model => Html.Text(Capital(model.WhyNot))), " ");
        var comparisons = models.Max(model => model.MakeComparisons);
        var one = effects.OneMake.Count == 0 ? Html.Empty
            : Html.Of($" {AndAll(effects.OneMake)} {(effects.OneMake.Count == 1 ? "was" : "were")} tasted from one make only: what is seen may belong to that batch. Make {(effects.OneMake.Count == 1 ? "it" : "them")} again and serve the second make beside the first.");
        var sure = comparisons == 0 ? Html.Of($"No trial was tasted from two makes in a way that tells one from the other, so formula and batch cannot be parted anywhere here: each interval is of the batches that were served.")
            : Html.Of($"A formula is judged over its makes: an interval “of the formula” is wider where makes differ. {comparisons} {(comparisons == 1 ? "comparison tells" : "comparisons tell")} one make from another in these tastings, so how far makes differ is known {(comparisons < 6 ? "badly" : "fairly")}{(models.All(model => model.Spread.Where(part => part.From == SpreadFrom.Make).All(part => part.Share < 0.005)) ? "; as far as they tell, makes differ no more than plates do" : "")}.");
        return sure + one;
    }

    private static Html StepBlock(Dessert dessert, StepEffects all, IReadOnlyList<StepEffect> effects, bool open)
    {
        var step = effects[0].Step;
        var heading = $"{step.To.Name} from {step.From.Name}: {ChangesInWords(step).ToPlainText()}";
        List<Html> parts = [ChangeTable(dessert, step), .. Remarks(step, step.To, dessert.Steps).Take(1).Where(_ => step.IsConfounded).Select(remark => Notes.LookAt(remark))];
        if (step.Difference is { IsNone: true } && step.Method.Count == 0) parts.Add(Notes.Small(Html.Of($"Nothing was changed: what differs is the batch, the day or the lot.")));
        if (all.OneMake.Contains(step.To.Name)) parts.Add(Notes.LookAt(Html.Of($"{step.To.Name} was tasted from one make. {Says.English.OneMake()} A second make of {step.To.Name} beside the first would part them.")));
        parts.Add(EffectTable(effects));
        return Notes.Folded(heading, Html.Join(parts), open);
    }

    private static Html ChangeTable(Dessert dessert, TrialStep step)
    {
        var (from, to) = (dessert.Trial(step.From.Name), dessert.Trial(step.To.Name));
        List<Row> rows = [];
        foreach (var change in step.Changes)
            foreach (var line in change.Lines)
            {
                rows.Add(new($"{line.Line} in the {change.Component}", "mass", Figures.Mass(line.FromGrams).Text, Figures.Mass(line.ToGrams).Text));
                rows.Add(new("", "share of what goes in", Figures.Share(line.FromShare).Text, Figures.Share(line.ToShare).Text));
                if (RatioOf(dessert, from, change.Component, line.Line) is var before && RatioOf(dessert, to, change.Component, line.Line) is var after && (before ?? after) is { } known)
                    rows.Add(new("", $"to {string.Join(" and ", known.Base)}", Figures.Part(before?.Ratio).Text, Figures.Part(after?.Ratio).Text));
            }
        foreach (var (component, factor) in step.Difference.ScaledComponents) rows.Add(new(component, "size of the batch", "1", Figures.Part(factor).Text));
        foreach (var moved in step.Difference.SharesOnly.Where(line => line.Line is not "water" && Figures.Share(line.ToShare) != Figures.Share(line.FromShare) && (line.FromShare + line.ToShare) > 0).OrderByDescending(line => Math.Abs(line.ToShare - line.FromShare)).Take(3))
            rows.Add(new($"{moved.Line} in the {moved.Component}", "share moved, mass as before", Figures.Share(moved.FromShare).Text, Figures.Share(moved.ToShare).Text));
        foreach (var loss in step.Difference.Losses) rows.Add(new($"{loss.Loss}, {loss.Component}", "leaves", Typeset.Text(loss.From ?? "nothing"), Typeset.Text(loss.To ?? "nothing")));
        foreach (var moved in step.Difference.Steps) rows.Add(new($"{moved.Line} in the {moved.Component}", "goes in at step", string.Join(" and ", moved.FromSteps), string.Join(" and ", moved.ToSteps)));
        foreach (var method in step.Method) rows.Add(new($"{method.Component}, step {method.Step}", "method", Typeset.Text(method.From?.Do ?? "nothing"), Typeset.Text(method.To?.Do ?? "nothing")));
        foreach (var figure in FigureDifference.Between(from, to))
            rows.Add(new($"{figure.Component}", $"{figure.Figure.Name}, worked out", FigureText(figure, figure.From), FigureText(figure, figure.To)));
        return rows.Count == 0 ? Html.Empty
            : new DataTable($"What was changed from {step.From.Name} to {step.To.Name}", [Column.Words("What"), Column.Words("in"), Column.Words(step.From.Name), Column.Words(step.To.Name)], rows).ToHtml();
    }

    private static string FigureText(FigureDifference difference, double? value) => value is { } known ? Figures.Number(known, difference.Figure.Decimals, difference.Figure.Unit).Text : "none";

    private static (double Ratio, IReadOnlyList<string> Base)? RatioOf(Dessert dessert, Batch batch, string component, string line)
    {
        if (batch.Find(component) is not { MassInGrams: > 0 }) return null;
        var ratios = dessert.RatiosOf(batch.Trial, component);
        return ratios.Base.Contains(line, Names.Comparer) && ratios.Base.Count == 1 ? null : (ratios.Of(line), ratios.Base);
    }

    private static Html EffectTable(IReadOnlyList<StepEffect> effects)
    {
        var step = effects[0].Step;
        var known = effects.Where(effect => effect.Formula?.Range is not null).ToArray();
        if (known.Length == 0)
            return Notes.Paragraph(step.Comparisons.Count > 0 ? StandingOf(step) : Says.English.NoCommonTasting(step.To.Name, step.From.Name));
        // An interval longer than the scale says only that makes are too little known; drawn, it would press all others into a dot.
        bool IsOpen(StepEffect effect) => effect.Formula!.Range!.Value.Width > effect.Attribute.HighPoints - effect.Attribute.LowPoints;
        var axis = DotPanel.AxisAround(known.Where(effect => !IsOpen(effect)).Select(effect => new DotRow("", effect.Formula!.Points, effect.Formula.Range)));
        return new DataTable($"What the scores did from {step.From.Name} to {step.To.Name}",
            [Column.Words("Scale"), Column.Words("tasted in"), Column.Numbers("as tasted"), Column.Numbers("of the formula"), Column.Numbers("95 % interval"), Column.Words($"{Figures.Difference(axis.Low, 0).Text} to {Figures.Difference(axis.High, 0).Text}"), Column.Words("")],
            [.. known.OrderBy(effect => effect.Attribute.Kind == AttributeKind.Liking ? 0 : 1).Select(effect =>
            {
                var difference = new Difference(effect.Formula!.Points, effect.Formula.Range);
                var tasted = step.Comparisons.Where(each => each.Attribute == effect.Attribute && each.DifferencePoints is not null).ToArray();
                return new Row(effect.Attribute.Name, string.Join("; ", tasted.Select(each => string.Join(" and ", each.Tastings))),
                    Num.Said(string.Join("; ", tasted.Select(each => Figures.Difference(each.DifferencePoints, 1).Text))),
                    Figures.Difference(difference.Points, 1), Num.Said(IsOpen(effect) ? "wider than the scale" : difference.Shown(Figures).Range), IsOpen(effect) ? "" : Marks.Range(difference, axis),
                    IsOpen(effect) ? "open: too few makes" : effect.StandsAmongAll ? "stands" : difference.Finding is Finding.Gain or Finding.Loss ? "may be chance" : difference.Finding == Finding.AtEdge ? "at the edge" : "");
            })])
        { IsWide = true, LeastRem = 42 }.ToHtml();
    }
}
