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
        var (variation, set) = (KitchenVariations.Of(dessert, trial), KitData.Rules(rules));
        var sample = certainty.Figures.Select(figure => figure.Tolerance?.Sample).FirstOrDefault(taken => taken is { Units: > 1 } or { Analyses: > 1 });
        Row[] rows = [.. certainty.Figures.Select((figure, at) => new Row([
            figure.Line.Unit is "kJ" or "kcal" ? $"{figure.Line.Key}, {figure.Line.Unit}" : figure.Line.Key,
            Num.Said(figure.Line.Declared),
            figure.IsRangeKnown ? $"{ClaimCheck.Plain(figure.Range.Low)} to {ClaimCheck.Plain(figure.Range.High)} {figure.Line.Unit}" : $"the spread is known for {Percent(figure.SpreadShare)} of the amount",
            figure.Accepted is var (low, high) ? AcceptedText(low, high, figure.Line.Unit) : "no tolerance is listed",
            Chance(figure, figure.OutsideProbability),
            Chance(figure, drawn[at].Outside),
            .. sample is null ? [] : (Cell[])[Chance(figure, figure.SampleProbability)],
            figure.Shares.Count > 0 ? $"{figure.Shares[0].Ingredient} ({Percent(figure.Shares[0].Share)} of the variance)" : "nothing: no spread is known"]))];
        return new DataTable($"How sure the figures are, {set.Title}",
            [Column.Words("Figure"), Column.Numbers("Declared"), Column.Words("In 95 of 100 cases"), Column.Words("Accepted"), Column.Numbers("Outside"), Column.Numbers("By drawing"),
             .. sample is null ? [] : (Column[])[Column.Numbers("Official sample")], Column.Words("Analyse first")], rows)
        {
            IsWide = true,
            Caption = Html.Text("Outside is the chance that the analysis of one pack falls outside what the authority accepts about the declared figure, by propagation of the spreads and by 100,000 draws; not known where the spread of too much of the amount is not."
                + (sample is { } taken ? $" The authority puts {taken.Units} packs of one make together{(taken.Analyses > 1 ? $" and takes the mean of {taken.Analyses} analyses" : "")}: contents and the drying of the make are shared by all of them and are not averaged out." : "")),
            Notes =
            [
                Html.Text(variation.IsStated ? $"As the kitchen varies: {string.Join("; ", variation.Origins)}." : "Nobody stated how weighing, drying and trimming vary: rows weighing_g, drying_percent, piece_drying_percent and left_behind_percent of dessert.csv do, and for drying the yields of several makes in measured.csv. Until then they count as exact and the chances are too small."),
                Html.Text(variation.MeasurementPercent > 0
                    ? "The laboratory’s uncertainty is part of each result; where a tolerance allows for it on top, twice the standard uncertainty is added."
                    : "The uncertainty of a laboratory’s measurement is not stated (analysis_percent of dessert.csv) and counts as none."),
                .. Tolerances.Of(set).None.Select(none => Html.Text($"{(none.Figure == "all" ? "All figures" : $"{none.Figure}, {none.Unit}")}: {none.Origin.Note} ({none.Origin}).")),
                .. certainty.Figures.Select(figure => figure.Tolerance?.Origin).OfType<RuleOrigin>().Select(origin => origin.ToString()).Distinct().Take(1).Select(origin => Html.Text($"Tolerances: {origin}.")),
            ],
        }.ToHtml();
    });

    // Where the spread of a part of the amount is not known the chance is larger than what is known of it, and no chance at all is none to be offered.
    private static Num Chance(FigureCertainty figure, double? outside) => Num.Said(outside switch
    {
        null => "none",
        { } chance when figure.IsRangeKnown => Percent(chance),
        >= 0.0005 and var least => $"at least {Percent(least)}",
        _ => "not known",
    });

    private static string AcceptedText(double low, double high, string unit) => (double.IsFinite(low) && low > 0, double.IsFinite(high)) switch
    {
        (true, true) => $"{ClaimCheck.Plain(low)} to {ClaimCheck.Plain(high)} {unit}",
        (true, _) => $"{ClaimCheck.Plain(low)} {unit} or more",
        (_, true) => $"{ClaimCheck.Plain(high)} {unit} or less",
        _ => "anything",
    };

    private static string Percent(double share) => share switch
    {
        0 => "0\u202f%",
        < 0.001 => "under 0.1\u202f%",
        > 0.999 and < 1 => "over 99.9\u202f%",
        _ => $"{(share * 100).ToString(share < 0.1 ? "0.0" : "0", CultureInfo.InvariantCulture)}\u202f%",
    };
}
