using System.Globalization;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The panel of few figures that the kitchen asks for: <c>panel_form</c> of <c>dessert.csv</c>.</summary>
/// <param name="Form">The form that it asks for.</param>
/// <param name="Limit">The row that lets it stand; null where none does, and the full panel stands.</param>
/// <param name="Because">Why none does, in words; empty where one does.</param>
public sealed record TrialLimitedPanel(string Form, LimitedPanel? Limit, string Because)
{
    /// <summary>What the kitchen asks for, held against a rule set; null where it asks for no panel of few figures.</summary>
    /// <exception cref="TableException">The cell asks for a form of panel that no rule set has, or what it hangs on cannot be read.</exception>
    public static TrialLimitedPanel? Asked(Dessert dessert, string trial, RuleSet rules)
    {
        if (DessertPanels.PanelFormOf(dessert, trial) is not { } form || form is DessertPanels.Full or DessertPanels.Short) return null;
        LimitedPanel[] rows = [.. RowsOf(dessert, trial, rules).Where(row => Names.Same(row.Form, form))];
        return Array.Find(rows, row => WhyNot(dessert, trial, rules, row) is null) is { } lawful ? new(form, lawful, "")
            : new(form, null, rows.Length == 0 ? $"{rules.Title}: the kit’s rules have no such panel" : string.Join("; or ", rows.Select(row => $"{WhyNot(dessert, trial, rules, row)} ({row.Origin})")));
    }

    /// <summary>The panels of few figures that a rule set lets stand for a trial, whether or not the kitchen asks for one.</summary>
    /// <exception cref="TableException">What they hang on cannot be read.</exception>
    public static IReadOnlyList<LimitedPanel> Offered(Dessert dessert, string trial, RuleSet rules) =>
        [.. RowsOf(dessert, trial, rules).Where(row => WhyNot(dessert, trial, rules, row) is null).DistinctBy(row => row.Form, Names.Comparer)];

    private static IReadOnlyList<LimitedPanel> RowsOf(Dessert dessert, string trial, RuleSet rules) => LimitedPanels.Of(rules, LabelAsked.Day(dessert, trial)).All;

    // What keeps a row from holding; null where it holds.
    private static string? WhyNot(Dessert dessert, string trial, RuleSet rules, LimitedPanel row)
    {
        var facts = dessert.Facts;
        if (row.Sold.Count > 0)
        {
            if (facts.Text("form_of_sale", trial) is null) return "how it is sold is not known: a row form_of_sale in dessert.csv";
            if (LabelAsked.FormOfSale(dessert, trial, SaleRules.Of(rules, LabelAsked.Day(dessert, trial))) is var sold && !row.Sold.Contains(sold, Names.Comparer)) return $"only for what is sold {string.Join(" or ", row.Sold)}, and it is sold {sold}";
        }
        if (row.For.Count > 0)
        {
            if (LabelAsked.Category(dessert, trial, rules) is not { } category) return "what kind of food it is is not known: a row food_category in dessert.csv";
            if (!row.For.Contains(category.Name, Names.Comparer)) return $"only for {string.Join(" or ", row.For)}";
        }
        if (row.Says is { } says)
        {
            if (facts.Text(says.Key, trial) is null) return $"a row {says.Key} in dessert.csv, {says}";
            if (facts.Number(says.Key, trial) is not { } said) throw new TableException([facts.Problem(says.Key, trial, $"a number in {says.Unit}")]);
            if (!says.Test.Passes((decimal)said, says.Limit)) return string.Create(CultureInfo.InvariantCulture, $"only where {says.Key} is {says}, and dessert.csv says {said}");
        }
        return !row.IsWithClaims && DessertClaims.Asked(dessert, trial, rules.Name).Where(each => each.Verdict.State != ClaimState.NotAClaim).Select(each => each.Verdict.Asked).ToArray() is { Length: > 0 } claims
            ? $"the pack makes a nutrition claim ({string.Join(", ", claims)}), and that asks for the full panel" : null;
    }
}
