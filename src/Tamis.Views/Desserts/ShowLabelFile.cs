using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The audit file of a panel: each printed figure with its ingredients, sources, losses, factors, raw sum, rule and article, as tables to print.</summary>
    public static Html PanelWorking(Dessert dessert, string trial, string rules) => Guarded(trial, "panel", () =>
    {
        var panel = DessertPanels.Of(dessert, trial, rules);
        return Notes.Small(Html.Of($"{dessert.Name}, {trial}; {panel.Rules.Title}, {panel.Basis.Words}. Masses are as weighed in, less what stayed in bowl and trim; {Plain(panel.Mixture.WaterLostGrams)} g of water left, {Plain(panel.Mixture.FinishedGrams)} g are finished."))
            + Html.Join(panel.Lines.Select(line => WorkingTable(panel, line)));
    });

    /// <summary>One product under several rule sets side by side: each law's own words with what it prints.</summary>
    public static Html PanelsCompared(Dessert dessert, string trial, params string[] rules) => Guarded(trial, "panel", () =>
    {
        NutritionPanel[] panels = [.. (rules.Length > 0 ? rules : [.. KitData.RuleSetNames]).Select(name => DessertPanels.Of(dessert, trial, name))];
        var kinds = panels.SelectMany(panel => panel.Lines).Select(KindOf).Distinct().ToArray();
        return new DataTable($"{trial} under {panels.Length} rule sets",
            [Column.Words("Content"), .. panels.Select(panel => Column.Words(panel.Rules.Title))],
            [new Row(["basis", .. panels.Select(panel => (Cell)panel.Basis.Words)]),
             .. kinds.Select(kind => new Row([kind, .. panels.Select(panel => (Cell)string.Join("; ", panel.Lines.Where(line => KindOf(line) == kind).Select(Printed)))]))])
        { IsWide = true, LeastRem = 12 + panels.Length * 8, Caption = Html.Text("An empty cell: this law does not ask for the figure, or it is not known well enough to be offered.") }.ToHtml();
    });

    /// <summary>What a reformulation changes on the pack: every printed text that is another.</summary>
    public static Html PackChanges(Dessert dessert, string from, string to, string rules, string language = "en") => Guarded(to, "label", () =>
    {
        var day = new DateOnly(2000, 1, 1);
        var changes = Desserts.LabelRecords.DrawUp(dessert, from, rules, language, "nobody", day).Against(Desserts.LabelRecords.DrawUp(dessert, to, rules, language, "nobody", day)).Where(change => change.IsPrinted).ToArray();
        return changes.Length == 0
            ? Notes.Small(Html.Of($"From {from} to {to} nothing that is printed changes, {KitData.Rules(rules).Title}."))
            : new DataTable($"What changes on the pack from {from} to {to}, {KitData.Rules(rules).Title}", [Column.Words("Printed"), Column.Words(from), Column.Words(to)],
                [.. changes.Select(change => new Row([$"{change.Section}: {change.Key}", Or(change.Then), Or(change.Now)]))])
            { IsWide = true }.ToHtml();
    });

    /// <summary>The signed labels of a dessert: whether the files are as they were signed, and what the sheets, documents, contents and rules have become since.</summary>
    public static Html LabelRecords(Dessert dessert) => Guarded(dessert.Name, "record", () =>
    {
        var records = Desserts.LabelRecords.Of(dessert);
        return records.Count == 0
            ? Notes.Small(Html.Text("No label has been signed yet. The program's command sign freezes one: formula, documents, contents, rules, panel, list, signer and day."))
            : Html.Join(records.Select(each => RecordOf(dessert, each.File, each.Record)));
    });

    /// <summary>Whether a label could be signed as things stand, and what hinders it.</summary>
    public static Html ReadyToSign(Dessert dessert, string trial, string rules, string language = "en") => Guarded(trial, "label", () =>
    {
        var hindrances = Desserts.LabelRecords.Hindrances(dessert, trial, rules, language);
        return hindrances.Count == 0
            ? Notes.Lead(Html.Of($"<strong>{trial} can be signed</strong> by the person who answers for the pack in {KitData.Rules(rules).Title}. This is an aid; local law prevails."))
            : Notes.Lead(Html.Of($"<strong>{trial} cannot be signed yet.</strong>")) + Notes.Verdict(hindrances.Select(hindrance => ("Mend", Html.Text(hindrance))));
    });

    private static Html RecordOf(Dessert dessert, string file, LabelRecord record)
    {
        var lead = Notes.Lead(Html.Of($"<strong>{record.Trial}, {KitData.Rules(record.Rules).Title}, signed by {record.Signer} on {record.SignedOn.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}.</strong> {file}: {(record.IsUnchanged ? "the file is as it was signed" : "the file was changed after it was signed")}."));
        var differences = Desserts.LabelRecords.Since(dessert, record);
        if (differences.Count == 0) return lead + Notes.Small(Html.Text("Nothing that it rests on has changed since."));
        var printed = differences.Count(difference => difference.IsPrinted);
        return lead + new DataTable($"What has changed since {record.Trial} was signed", [Column.Words("What"), Column.Words("Then"), Column.Words("Now"), Column.Words("Where")],
            [.. differences.OrderByDescending(difference => difference.IsPrinted).Select(difference => new Row([$"{difference.Section}: {difference.Key}", Or(difference.Then), Or(difference.Now), difference.IsPrinted ? "on the pack" : difference.Source]))])
        { IsWide = true, Caption = Html.Text(printed == 0 ? "Nothing that is printed is another." : $"{printed} printed texts are another: the pack is not what would be printed now.") }.ToHtml();
    }

    private static Html WorkingTable(NutritionPanel panel, PanelLine line)
    {
        Row[] rows = [.. line.Explain().Walk().Where(step => step.Depth > 0).Select(step => new Row([
            $"{new string('\u2003', step.Depth - 1)}{step.Step.Step}",
            double.IsNaN(step.Step.Value) ? Num.Said("") : Num.Said($"{Significant(step.Step.Value)}{(step.Step.Unit.Length > 0 ? $"\u202f{step.Step.Unit}" : "")}"),
            step.Step.Source.ToString()]))];
        return Notes.Folded($"{line.Term}: {line.Declared} ({line.CoverageInWords})", new DataTable($"How {line.Key} was worked out", [Column.Words("Step"), Column.Numbers("Figure"), Column.Words("Where from")], rows) { IsWide = true }.ToHtml());
    }

    private static string KindOf(PanelLine line) => line.IsEnergy ? "energy" : line.Content;

    private static string Printed(PanelLine line) => $"{(line.IsAmountInTerm ? line.Term : $"{line.Term} {line.Declared}")}{(line.Percent is { } percent ? $" ({percent.Text})" : "")}";

    private static string Or(string text) => text.Length > 0 ? text : "none";

    private static string Significant(double number) => number == 0 ? "0" : Math.Abs(number) >= 1000 ? number.ToString("0", CultureInfo.InvariantCulture) : double.Parse(number.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).ToString("0.######", CultureInfo.InvariantCulture);
}
