using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    private const int DessertsBesideEachOther = 4;

    /// <summary>The allergens of every dessert of a store, for the counter: a table that prints on A4 and on Letter.</summary>
    /// <param name="storeFolder">The store's folder.</param>
    /// <param name="rules">The rule set's folder name: <c>eu</c>.</param>
    /// <param name="language">The language of the words.</param>
    public static Html CounterAllergens(string storeFolder, string rules, string language = "en") => Guarded("the store", "counter table", () =>
    {
        var table = Tamis.Desserts.CounterAllergens.Of(storeFolder, rules, language);
        var words = LabelWords.Of(KitData.Rules(rules).Folder);
        var allergens = AllergenRules.Of(KitData.Rules(rules));
        string[] untold = [.. table.Groups.Where(group => allergens.GroupIn(group, language) is null)];
        var (contains, mayContain) = (words.In("contains", language) ?? "contains", words.In("may contain", language) ?? "may contain");
        if (table.Desserts.Count == 0 && table.Unread.Count == 0) return Notes.Small(Html.Of($"No folder beside this store holds a formula.csv: with one, this table would say which allergens are in its dessert."));
        var stopped = Html.Join(table.Unread.Select(each => Notes.StopsRelease(Html.Of($"{each.Folder} is not on the table: {each.Why}"))));
        var unlooked = Html.Join(table.Desserts.Where(each => each.NotLookedAt.Count > 0)
            .Select(each => Notes.StopsRelease(Html.Of($"{each.Dessert}: nobody has written down the allergens of {AndAll(each.NotLookedAt)}. Until then any of them may be in it."))));
        var tables = Html.Join(table.Desserts.Chunk(DessertsBesideEachOther).Select(some => new DataTable($"Allergens in {AndAll(some.Select(each => each.Dessert))}",
            [Column.Words("Allergen"), .. some.Select(each => Column.Words($"{each.Dessert} ({each.Trial})"))],
            [.. table.Groups.Select((group, at) => new Row([Capital(allergens.GroupIn(group, language) ?? group), .. some.Select(each => (Cell)CellOf(each.Cells[at], contains, mayContain))]))]) { IsWide = true, LeastRem = 12 + some.Length * 9 }.ToHtml()));
        var inEnglish = untold.Length == 0 ? Html.Empty : Notes.LookAt(Html.Of($"No term in '{language}' for {AndAll(untold)}: English stands, until {AllergenRules.GroupsFile} has one."));
        return stopped + unlooked + inEnglish + tables
            + Notes.Small(Html.Of($"By the law’s list, {KitData.Rules(rules).Title}: {allergens.All[0].Origin.ToString()}. <strong>{Capital(contains)}</strong> is what is in an ingredient; <em>{mayContain}</em> is what an ingredient’s document or the workshop says may have got in; a dash is a group that somebody looked for and did not find. The trial that the kitchen means to serve stands behind each name."))
            + Aid();
    });

    /// <summary>The allergens of every dessert of the store that a dessert belongs to.</summary>
    public static Html CounterAllergens(Dessert dessert, string rules = "eu", string language = "en") => dessert.StoreFolder is { } store
        ? CounterAllergens(store, rules, language) : Notes.Small(Says.English.MissingSheet("ingredients.csv", "the allergens of every dessert of the store"));

    private static Html CellOf(CounterCell cell, string contains, string mayContain) => cell.Mark switch
    {
        CounterMark.Contains => Html.Of($"<strong>{contains}</strong>{(cell.Substances.Count > 0 ? $" {string.Join(", ", cell.Substances)}" : "")}"),
        CounterMark.MayContain => Html.Of($"<em>{mayContain}</em> {string.Join(", ", cell.Substances)}"),
        CounterMark.NotLookedAt => Html.Of($"not looked at"),
        _ => Html.Of($"–"),
    };
}
