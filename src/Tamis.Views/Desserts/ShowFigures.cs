using Tamis.Desserts;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What the scores did as kitchen figures rose over the whole tree: sweetness, water activity, fat, dose of a gelling agent.</summary>
    public static Html ScoresAgainstFigures(Dessert dessert)
    {
        var effects = dessert.FigureEffects.Where(effect => effect.Effect.Range is not null).ToArray();
        if (effects.Length == 0) return Notes.Small(Html.Of($"No figure of a component takes three values or more over the trials that were scored, so nothing can be set against the scores along the tree."));
        var shown = effects.Where(effect => DifferenceOf(effect).Finding is Finding.Gain or Finding.Loss).OrderBy(effect => effect.StandsAmongAll ? 0 : 1).ThenByDescending(effect => Math.Abs(effect.Effect.Points)).ToArray();
        var figures = effects.Select(effect => (effect.Component, effect.Figure)).Distinct().Count();
        var lead = Html.Of($"{figures} figures that the kit works out of the formulas take three values or more over the scored trials. Each is set against every scale by itself, a straight line from its lowest to its highest value with trials as the unit. {Says.English.ManyLooks(effects.Length)}");
        if (shown.Length == 0) return Notes.Paragraph(lead) + Notes.Paragraph(Html.Of($"None moves with a score so far that its interval leaves zero."));
        var table = new DataTable("Scores along the figures of the tree",
            [Column.Words("Figure"), Column.Words("from lowest to highest"), Column.Words("scale"), Column.Numbers("points"), Column.Numbers("95 % interval"), Column.Words("chance"), Column.Words("moved together with")],
            [.. shown.Select(effect => new Row($"{effect.Figure.Name} of the {effect.Component}",
                $"{Figures.Number(effect.Low, effect.Figure.Decimals).Text} to {Figures.Number(effect.High, effect.Figure.Decimals, effect.Figure.Unit).Text}", effect.Effect.Attribute.Name,
                Figures.Difference(effect.Effect.Points, 1), Num.Said(DifferenceOf(effect).Shown(Figures).Range), effect.StandsAmongAll ? "stands" : "may be chance",
                effect.MovesWith.Count == 0 ? "" : effect.MovesWith.Count <= 2 ? string.Join("; ", effect.MovesWith) : $"{effect.MovesWith[0]} and {effect.MovesWith.Count - 1} more"))])
        { IsWide = true, IsLong = true, LeastRem = 48, Notes = [Html.Of($"Figures that moved together cannot be told apart: a score that follows one of them follows all. A line through trials is a hint where to look, and the step by step comparison above is the stronger evidence.")] };
        return Notes.Paragraph(lead) + table.ToHtml();
    }

    private static Difference DifferenceOf(FigureEffect effect) => new(effect.Effect.Points, effect.Effect.Range);
}
