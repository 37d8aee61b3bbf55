using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The audit file of a panel: each printed figure with its lines, foods, sources, losses, factors, raw sum, rule, article and printed text, as tables to print.</summary>
    public static Html PanelWorking(Dessert dessert, string trial, string rules) => Guarded(trial, "panel", () =>
    {
        var panel = DessertPanels.Of(dessert, trial, rules);
        var draft = panel.IsDraft ? Html.Join(panel.DraftReasons.Select(reason => Notes.StopsRelease(Html.Text(reason)))) : Html.Empty;
        return Notes.Small(Html.Of($"{dessert.Name}, {trial}; {panel.Rules.Title}, {panel.Basis.Words}. Masses are as weighed in, less what stayed in bowl and trim. What leaves as water takes nothing else along. This is an aid: a competent person signs, and local law prevails."))
            + draft + Html.Join(panel.Lines.Select(line => WorkingOf(panel, FigureLedger.Of(line))));
    });

    private static Html WorkingOf(NutritionPanel panel, FigureLedger ledger)
    {
        var line = ledger.Line;
        var giving = ledger.Lines.Where(each => each.Gives is not 0).ToArray();
        var left = ledger.Lines.Count - giving.Length;
        Row[] lines =
        [
            .. giving.Select(each => new Row([
                ((Cell)each.Ingredient) with { From = each.Weighed.ToString() },
                Num.Said(Significant(each.MassGrams)),
                ((Cell)each.Content) with { From = each.Source?.ToString() },
                Num.Said(each.Per100Grams is { } content ? $"{Significant(content)}\u202f{each.Unit}" : "not known"),
                Num.Said(Significant(each.Factor)),
                Num.Said(each.Gives is { } gives ? Significant(gives) : "not known")])),
            new Row(["in the whole", Num.Said(Significant(panel.Mixture.WeighedInGrams)), line.CoverageInWords, Num.Said(""), Num.Said(""), Num.Said(Significant(ledger.InWhole))]) { Kind = RowKind.Total },
        ];
        return Notes.Folded($"{line.Term}: {line.Declared}", new DataTable($"What {line.Key} is summed from", [Column.Words("Line"), Column.Numbers("Weighed in", "g"), Column.Words("Content"), Column.Numbers("In 100 g"), Column.Numbers("Factor"), Column.Numbers("Gives", line.Unit)], lines)
        {
            IsWide = true,
            Notes =
            [
                .. giving.Where(each => each.Factor != 1).Select(each => $"{Significant(each.Factor)}: {each.FactorSource}").Distinct().Select(factor => Html.Text($"Factor {factor}.")),
                .. left == 0 ? [] : (Html[])[Html.Text($"{left} {(left == 1 ? "content" : "contents")} of zero {(left == 1 ? "is" : "are")} left out here; the file label-working.csv has {(left == 1 ? "it" : "them")}.")],
            ],
        }.ToHtml() + StepsOf(panel, ledger), open: true);
    }

    private static Html StepsOf(NutritionPanel panel, FigureLedger ledger)
    {
        var line = ledger.Line;
        List<Row> steps =
        [
            new(["water that left", Num.Said($"{Significant(panel.Mixture.WaterLostGrams)}\u202fg"), "the formula sheet’s rows of what leaves"]),
            new(["finished mass", Num.Said($"{Significant(panel.Mixture.FinishedGrams)}\u202fg"), "weighed in, less the water that left"]),
            new([$"{panel.Basis.Words}, not rounded", Num.Said($"{Significant(line.Amount.Known)}\u202f{line.Unit}"), $"{Significant(ledger.InWhole)} × {Significant(panel.BasisGrams)} / {Significant(panel.Mixture.FinishedGrams)}"]),
        ];
        if (line.Spread is { } spread)
            steps.Add(new(["range, to first order", Num.Said($"{Significant(spread.Range.Low)} to {Significant(spread.Range.High)}\u202f{line.Unit}"), line.Range is null ? $"{spread.InWords}: less than a range is shown for" : spread.InWords]));
        if (line.Reference is { } reference)
            steps.Add(new(["reference value", Num.Said($"{Significant(reference.Value)}\u202f{reference.Unit}"), reference.Origin.ToString()]));
        if (line.Percent is { } percent)
            steps.Add(new([$"of the reference value, {(line.Reference?.PercentFrom == PercentFrom.Declared ? "from the amount as declared" : "from the amount before rounding")}", Num.Said(percent.Text), $"{percent.Band.InWords}: {percent.Band.Origin}"]));
        steps.Add(line.Rounded is { } rounded
            ? new(["declared", Num.Said(rounded.Text), $"{rounded.Band.InWords}: {rounded.Band.Origin}{(rounded.Alternatives.Count > 0 ? $"; as lawful: {string.Join(", ", rounded.Alternatives)}" : "")}"]) { Kind = RowKind.Total }
            : new(["declared", Num.Said("not declared"), $"{line.CoverageInWords}; {panel.Rules.KnownSharePercent.ToString(CultureInfo.InvariantCulture)}\u202f% is asked for"]) { Kind = RowKind.Total });
        return new DataTable($"From the sum to the printed text, {line.Key}", [Column.Words("Step"), Column.Numbers("Figure"), Column.Words("Rule or reckoning")], steps) { IsWide = true }.ToHtml();
    }

    // Four figures are what a reader follows a sum with; grams keep their whole number.
    private static string Significant(double number) => Math.Abs(number) >= 1000
        ? number.ToString("0", CultureInfo.InvariantCulture)
        : double.Parse(number.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).ToString("0.######", CultureInfo.InvariantCulture).Replace('-', '\u2212');
}
