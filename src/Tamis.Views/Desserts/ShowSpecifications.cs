using System.Globalization;
using Tamis.Desserts;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Every supplier's document that supersedes an older one: what it states otherwise, and every dessert of the store that it touches.</summary>
    /// <param name="dessert">Any dessert of the store.</param>
    public static Html SpecificationChanges(Dessert dessert)
    {
        if (dessert.StoreFolder is not { } store) return Notes.Small(Says.English.MissingSheet("specifications.csv", "what a newer document of a supplier changes, and which desserts it touches"));
        var changes = dessert.Specifications.Changes;
        if (changes.Count == 0) return Notes.Small(Html.Of($"No ingredient of the store has a second document yet: a newer row in specifications.csv shows here what it changes."));
        var desserts = IngredientReach.Desserts(store);
        return changes.Aggregate(Html.Empty, (all, change) => all + ChangeOf(change, IngredientReach.Of(change.Ingredient, desserts), dessert));
    }

    private static Html ChangeOf(SpecificationChange change, IngredientReach reach, Dessert dessert)
    {
        var lead = Notes.Lead(Html.Of($"<strong>{Capital(change.Ingredient)}:</strong> {change.To.InWords} supersedes {change.From.InWords}.{Marks.From(change.To.Row.Origin("document"))}"));
        List<(string, Html)> lines = [];
        if (change.To.Date is { } date && dessert.Store.AsOf is { } day && date > day)
            lines.Add(("Not yet", Html.Of($"It is later than the last make of {dessert.Name}, {day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}: its panel stands on {dessert.Specifications.On(change.Ingredient, day)!.InWords} until there is a later make.")));
        Add("Allergens", change.Allergens, "allergens", isGrave: true);
        Add("May contain", change.MayContain, "unintended allergens", isGrave: true);
        Add("List of ingredients", change.IngredientList, "the list of ingredients", isGrave: false);
        Add("Additives", change.Additives, "the additives in it", isGrave: false);
        if (change.HasOtherLegalName) lines.Add(("Legal name", Html.Of($"{Said(change.From.LegalName)} became {Said(change.To.LegalName)}.")));
        foreach (var use in reach.Uses) lines.Add(("Touches", Html.Of($"{use.Dessert}: {use.Component}, in {string.Join(", ", use.Trials)}.")));
        if (reach.Uses.Count == 0) lines.Add(("Touches", Html.Of($"no formula of the store.")));
        if (reach.Unread.Count > 0) lines.Add(("Look at", Html.Of($"The formula of {string.Join(", ", reach.Unread)} cannot be read, so that nobody can tell whether it is touched.")));
        return lead + Notes.Verdict(lines) + FiguresOf(change);

        void Add(string heading, ListChange list, string what, bool isGrave)
        {
            if (!list.IsAny) return;
            List<string> said = [];
            if (list.Added.Count > 0) said.Add($"added: {string.Join(", ", list.Added)}");
            if (list.Removed.Count > 0) said.Add($"no longer there: {string.Join(", ", list.Removed)}");
            if (list.IsSilentNow) said.Add($"the newer document is silent on {what}, and nothing is taken over from the older one: ask the supplier");
            lines.Add((heading, Html.Of($"{string.Join("; ", said)}.{(isGrave ? " Label and cautions change with it; local rules and the person who signs come first." : "")}")));
        }
    }

    private static Html FiguresOf(SpecificationChange change) => change.Figures.Count == 0 ? Notes.Small(Html.Of($"All figures are stated as before.")) : new DataTable($"Figures of {change.Ingredient} that the newer document states otherwise",
        [Column.Words("Figure, in 100 g where it is a mass"), Column.Words(change.From.Document), Column.Words(change.To.Document)],
        [.. change.Figures.Select(figure => new Row(ColumnInWords(figure.Column), Said(figure.From), Said(figure.To)))]) { LeastRem = 24 }.ToHtml();

    private static string Said(string text) => text.Length == 0 ? "not stated" : text;

    // A column is its word and its unit, as in energy_kj.
    private static string ColumnInWords(string column)
    {
        var words = Names.Key(column);
        if (words.EndsWith(" mg kg", StringComparison.Ordinal)) return $"{Capital(words[..^6])}, mg/kg";
        return words.LastIndexOf(' ') is var blank and > 0 && words[(blank + 1)..] is "g" or "mg" or "ug" or "kj" or "kcal" or "percent"
            ? $"{Capital(words[..blank])}, {words[(blank + 1)..] switch { "kj" => "kJ", "ug" => "µg", "percent" => "%", var unit => unit }}" : Capital(words);
    }
}
