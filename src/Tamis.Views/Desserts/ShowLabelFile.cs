using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>One product under several rule sets side by side: each law's own words with what it prints, and the amount before rounding.</summary>
    public static Html PanelsCompared(Dessert dessert, string trial, params string[] rules) => Guarded(trial, "panel", () =>
    {
        NutritionPanel[] panels = [.. (rules.Length > 0 ? rules : [.. KitData.RuleSetNames]).Select(name => DessertPanels.Of(dessert, trial, name))];
        return Compared($"{trial} under {panels.Length} rule sets", [.. panels.Select(panel => (panel.Rules.Title, panel))]);
    });

    /// <summary>One rule set over trials: what each prints, and the amount before rounding.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="rules">The rule set's folder name.</param>
    /// <param name="trials">The trials; none for all whose masses are known.</param>
    public static Html PanelOverTrials(Dessert dessert, string rules, params string[] trials) => Guarded(dessert.Name, "panel", () =>
    {
        string[] names = trials.Length > 0 ? trials : [.. dessert.Batches.Where(batch => batch.Whole is { FinishedGrams: > 0 }).Select(batch => batch.Trial)];
        return Compared($"{dessert.Name} by the rules of {KitData.Rules(rules).Title}, {names.Length} trials", [.. names.Select(name => (name, DessertPanels.Of(dessert, name, rules)))]);
    });

    private static Html Compared(string name, (string Head, NutritionPanel Panel)[] panels)
    {
        var kinds = panels.SelectMany(each => each.Panel.Lines).Select(KindOf).Distinct().ToArray();
        return new DataTable(name, [Column.Words("Content"), .. panels.Select(each => Column.Words(each.Head))],
            [.. panels.Any(each => each.Panel.AsOf is not null) ? [new Row(["rules of", .. panels.Select(each => (Cell)(each.Panel.AsOf is { } day ? day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture) : "no end"))])] : Array.Empty<Row>(),
             new Row(["basis", .. panels.Select(each => (Cell)(each.Panel.IsDraft ? $"{each.Panel.Basis.Words}; a draft" : each.Panel.Basis.Words))]),
             .. kinds.Select(kind => new Row([kind, .. panels.Select(each => PrintedCell([.. each.Panel.Lines.Where(line => KindOf(line) == kind)]))]))])
        { IsWide = true, LeastRem = 12 + panels.Length * 8, Caption = Html.Text("Under each printed text the amount before rounding. An empty cell: this law does not ask for the figure, or it is not known well enough to be offered.") }.ToHtml();
    }

    private static Cell PrintedCell(PanelLine[] lines) => ((Cell)string.Join("; ", lines.Select(Printed))) with
    {
        From = lines.Length == 0 ? null : string.Join("; ", lines.Select(line => line.IsKnownWell ? $"{Significant(line.Amount.Known)} {line.Unit}" : line.CoverageInWords)),
    };

    /// <summary>What a reformulation changes on the pack: every printed text that is another.</summary>
    public static Html PackChanges(Dessert dessert, string from, string to, string rules, string language = "en") => Guarded(to, "label", () =>
    {
        var (before, after) = (Desserts.LabelRecords.SectionsOf(dessert, from, rules, language), Desserts.LabelRecords.SectionsOf(dessert, to, rules, language));
        var changes = RecordDifference.Between(before, after).Where(change => change.IsPrinted).ToArray();
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
            ? Notes.Small(Html.Of($"No label has been signed yet. The program’s command <em>sign</em> freezes one: formula, documents, contents, rules, panel, list, signer and day."))
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

    /// <summary>What the sheets, documents, contents and rules have become since a record was signed, and which printed texts would be others.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="record">The record's file name in the folder <c>records</c>, with or without its ending.</param>
    public static Html RecordDifferences(Dessert dessert, string record) => Guarded(record, "record", () =>
    {
        var records = Desserts.LabelRecords.Of(dessert);
        var found = records.FirstOrDefault(each => Names.Same(each.File, record) || Names.Same(Path.GetFileNameWithoutExtension(each.File), record));
        return found.Record is null
            ? Notes.LookAt(Html.Of($"There is no record {record}; {(records.Count == 0 ? "none has been signed yet" : $"there are: {string.Join(", ", records.Select(each => each.File))}")}."))
            : RecordOf(dessert, found.File, found.Record);
    });

    private static Html RecordOf(Dessert dessert, string file, LabelRecord record)
    {
        var lead = Notes.Lead(Html.Of($"<strong>{record.Trial}, {TitleOf(record.Rules)}, signed by {record.Signer} on {record.SignedOn.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}.</strong> {file}: {(record.IsUnchanged ? "the file is as it was signed" : "the file was changed after it was signed")}."));
        var all = Desserts.LabelRecords.Since(dessert, record);
        RecordDifference[] differences = [.. all.Where(difference => !difference.IsNotInRecord)];
        string[] unknown = [.. all.Where(difference => difference.IsNotInRecord).Select(difference => difference.Section.ToLowerInvariant())];
        var older = unknown.Length == 0 ? Html.Empty
            : Notes.Small(Html.Of($"Not in this record, which was signed before the kit wrote it down: {AndAll(unknown)}. Nobody can say from it whether that has changed; sign again to have it in."));
        if (differences.Length == 0) return lead + Notes.Small(Html.Text("Nothing that it rests on has changed since.")) + older;
        var printed = differences.Count(difference => difference.IsPrinted);
        return lead + new DataTable($"What has changed since {record.Trial} was signed", [Column.Words("What"), Column.Words("Then"), Column.Words("Now"), Column.Words("Where")],
            [.. differences.OrderByDescending(difference => difference.IsPrinted).Select(difference => new Row([$"{difference.Section}: {difference.Key}", Or(difference.Then), Or(difference.Now), WhereOf(difference)]))])
        { IsWide = true, Caption = Html.Text(printed == 0 ? "Nothing that is printed is another." : $"{printed} printed {(printed == 1 ? "text is" : "texts are")} another: the pack is not what would be printed now.") }.ToHtml() + older;
    }

    private static string WhereOf(RecordDifference difference) => !difference.IsPrinted ? difference.Source
        : difference.Source.Length > 0 ? $"on the pack; {difference.Source}" : "on the pack";

    private static string TitleOf(string rules) => KitData.RuleSetNames.Any(name => Names.Same(name, rules)) ? KitData.Rules(rules).Title : rules;

    private static string KindOf(PanelLine line) => line.IsEnergy ? "energy" : line.Content;

    private static string Printed(PanelLine line) => $"{(line.IsAmountInTerm ? line.Term : $"{line.Term} {line.Printed}")}{(line.Percent is { } percent ? $" ({percent.Text})" : "")}";

    private static string Or(string text) => text.Length > 0 ? text : "none";
}
