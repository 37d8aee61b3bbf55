using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>How sure each declared figure is, against the authority's tolerance, and what to have analysed first.</summary>
    public static Html PanelCertainty(Dessert dessert, string trial, string rules) => Guarded(trial, "panel", () =>
    {
        var certainty = DessertPanels.CertaintyOf(dessert, trial, rules);
        var drawn = certainty.Drawn();
        var variation = DessertPanels.VariationOf(dessert, trial);
        var table = new DataTable($"How sure the figures are, {KitData.Rules(rules).Title}",
            [Column.Words("Figure"), Column.Numbers("Declared"), Column.Words("In 95 of 100 cases"), Column.Words("Accepted"), Column.Numbers("Outside"), Column.Numbers("By drawing"), Column.Words("Analyse first")],
            [.. certainty.Figures.Select((figure, at) => new Row([
                figure.Line.Key,
                Num.Said(figure.Line.Declared),
                figure.Number.StandardUncertainty > 0 && figure.SpreadShare * 100 >= KitData.Rules(rules).KnownSpreadPercent ? $"{Plain(figure.Range.Low)} to {Plain(figure.Range.High)} {figure.Line.Unit}" : $"the spread is known for {Percent(figure.SpreadShare)} of the amount",
                figure.Tolerance is { } tolerance ? Accepted(tolerance, figure) : "no tolerance is listed",
                Num.Said(figure.OutsideProbability is { } outside ? Percent(outside) : "none"),
                Num.Said(drawn[at].Outside is { } share ? Percent(share) : "none"),
                figure.Shares.Count > 0 ? $"{figure.Shares[0].Ingredient} ({Percent(figure.Shares[0].Share)} of the variance)" : "nothing: no spread is known"]))])
        {
            IsWide = true,
            Caption = Html.Text("Outside is the chance that one official sample falls outside the authority's tolerance about the declared figure, by propagation of the spreads and by 100,000 draws."),
            Notes = [Html.Text(variation.IsStated
                ? $"Weighing ±{Plain(variation.WeighingGrams)} g a line, water that leaves ±{Plain(variation.WaterLossPercent)} %, trim and bowl ±{Plain(variation.LeftBehindPercent)} %, as dessert.csv has them."
                : "Nobody stated how weighing, drying and trimming vary: rows weighing_g, drying_percent and left_behind_percent of dessert.csv do. Until then they count as exact and the chances are too small."),
                Html.Text("The uncertainty of a laboratory's measurement is part of the tolerance and is not added here.")],
        };
        return table.ToHtml();
    });

    private static string Accepted(Tolerance tolerance, FigureCertainty figure)
    {
        var (low, high) = (tolerance.Lowest(figure.Declared), tolerance.Highest(figure.Declared));
        return (double.IsFinite(low), double.IsFinite(high)) switch
        {
            (true, true) => $"{Plain(low)} to {Plain(high)} {figure.Line.Unit}",
            (true, _) => $"{Plain(low)} {figure.Line.Unit} or more",
            (_, true) => $"{Plain(high)} {figure.Line.Unit} or less",
            _ => "anything",
        };
    }

    private static string Percent(double share) => share switch
    {
        0 => "0\u202f%",
        < 0.001 => "under 0.1\u202f%",
        > 0.999 and < 1 => "over 99.9\u202f%",
        _ => $"{(share * 100).ToString(share < 0.1 ? "0.0" : "0", CultureInfo.InvariantCulture)}\u202f%",
    };
}
