using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>What the form of sale of a trial asks for in a market: what is there, what is missing, what a competent person must say.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The rule set's folder name: <c>eu</c>.</param>
    /// <param name="language">The language of the pack.</param>
    /// <param name="day">The day whose rules count; with no day, those that have no end.</param>
    public static Html FormOfSale(Dessert dessert, string trial, string rules, string language = "en", DateOnly? day = null) => Guarded(trial, "checklist", () =>
    {
        var list = SaleChecklist.Of(dessert, trial, rules, language, day);
        var set = KitData.Rules(rules);
        if (list.Items.Count == 0) return Notes.LookAt(Html.Of($"{set.Title}: the kit’s rules say nothing of food sold {list.Form}."));
        var missing = list.Items.Count(item => item.State == SaleState.Missing);
        var open = list.Items.Count(item => item.State is SaleState.ForAPerson or SaleState.Lifted);
        var lead = Notes.Lead(Html.Of($"<strong>{trial}, sold {list.Form}, {set.Title}, {language}:</strong> {(missing == 0 ? "nothing that is asked for is missing" : $"{missing} of {list.Items.Count} things asked for {(missing == 1 ? "is" : "are")} missing")}{(open > 0 ? $"; {open} {(open == 1 ? "is" : "are")} for a competent person" : "")}."));
        return lead + new DataTable($"What food sold {list.Form} needs, {set.Title}",
            [Column.Words("Asked for"), Column.Words("State"), Column.Words("What there is, or what to supply"), Column.Words("Rule")],
            [.. list.Items.OrderBy(item => item.State).Select(item => new Row(
                Capital(item.Requirement.Particular), WordOf(item.State),
                Html.Of($"{Capital(Typeset.Text(item.Words))}{(item.Requirement.When.Length > 0 && item.State != SaleState.NotAskedFor ? $" ({item.Requirement.When})" : "")}{(item.Origin is { } origin ? Marks.From(origin) : Html.Empty)}"),
                Html.Of($"{item.Requirement.Origin.ToString()}{(item.Requirement.Exemptions.Count > 0 && item.State != SaleState.Lifted ? $". May be lifted: {Typeset.Text(string.Join("; ", item.Requirement.Exemptions))}" : "")}")))])
        { IsWide = true, IsLong = true, LeastRem = 44 }.ToHtml() + Aid();
    });

    /// <summary>What the form of sale of a trial asks for in one of its markets.</summary>
    public static Html FormOfSale(Dessert dessert, string trial, Market market) => FormOfSale(dessert, trial, market.Rules, market.Language);

    private static string WordOf(SaleState state) => state switch
    {
        SaleState.Missing => "missing",
        SaleState.ForAPerson => "for a competent person",
        SaleState.There => "there",
        SaleState.Lifted => "lifted, if it holds",
        _ => "not asked for",
    };
}
