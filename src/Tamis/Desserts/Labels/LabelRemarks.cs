using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What stops no label and is for somebody to look at before it is printed, from the sheets and not from the drawing.</summary>
public static class LabelRemarks
{
    /// <summary>What to look at for the pack of a trial in some markets.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="market">Countries or rule sets of the rows <c>market</c>, parted by semicolons.</param>
    /// <exception cref="TableException">The market or the masses are not known, or a sheet or a rule file cannot be read.</exception>
    public static IReadOnlyList<string> OfMarket(Dessert dessert, string trial, string market)
    {
        var markets = DessertLabel.MarketsOf(dessert, trial, market);
        return Of(dessert, trial, markets[0].Rules, markets.Select(each => each.Language));
    }

    /// <summary>What to look at for the label of a trial under a rule set, in the languages of its markets there; in English where it is sold in none.</summary>
    /// <exception cref="TableException">The masses are not known, or a sheet or a rule file cannot be read.</exception>
    public static IReadOnlyList<string> OfRules(Dessert dessert, string trial, string rules) =>
        Of(dessert, trial, rules, dessert.Markets(trial).Where(market => Names.Same(market.Rules, rules)).Select(market => market.Language).DefaultIfEmpty("en"));

    private static IReadOnlyList<string> Of(Dessert dessert, string trial, string rules, IEnumerable<string> languages) =>
    [
        .. languages.Distinct(Names.Comparer).SelectMany(language => dessert.IngredientList(trial, rules, language).Remarks).Where(remark => remark.IsOpen).Select(remark => remark.Words).Distinct(),
        .. OfOtherAmounts(dessert, trial, KitData.Rules(rules)),
    ];

    /// <summary>Rows <c>other_amount</c> that the panel of a trial has no column for: the law lets none stand, or there is no serving for it to stand beside.</summary>
    public static IReadOnlyList<string> OfOtherAmounts(Dessert dessert, string trial, RuleSet rules)
    {
        var why = ServingWords.Of(rules).IsOtherAmountBrief is null ? $"the rules {rules.Name} have no column for another amount of the food"
            : DessertPanels.ServingOf(dessert, trial, rules) is null ? "it stands beside a serving, and none is stated (portion_g)" : null;
        return why is null ? [] : [.. dessert.Facts.RowsOf("other_amount", trial).Select(each => $"The column for '{each.Value}' ({each.Row.Origin("value")}) is left off the panel: {why}.")];
    }
}
