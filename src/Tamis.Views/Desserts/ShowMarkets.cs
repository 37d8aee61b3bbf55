using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>One view for each set of rules and language of a trial's markets, under its own heading, in the order of the sheet.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="show">What is shown of a market.</param>
    public static Html EachMarket(Dessert dessert, string trial, Func<Market, Html> show) =>
        Each(dessert, trial, market => (market.Rules, market.Language), market => $"{KitData.Rules(market.Rules).Title}, {market.Language}", show);

    /// <summary>One view for each set of rules of a trial's markets, under its own heading, in the order of the sheet.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="show">What is shown of a rule set, by the name of its folder.</param>
    public static Html EachRuleSet(Dessert dessert, string trial, Func<string, Html> show) =>
        Each(dessert, trial, market => (market.Rules, ""), market => KitData.Rules(market.Rules).Title, market => show(market.Rules));

    /// <summary>One view for each country of a trial's markets, with all its languages, under its own heading, in the order of the sheet.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="show">What is shown of a country.</param>
    public static Html EachCountry(Dessert dessert, string trial, Func<string, Html> show) =>
        Each(dessert, trial, market => (market.Country, ""), market => market.Country, market => show(market.Country));

    private static Html Each(Dessert dessert, string trial, Func<Market, (string, string)> key, Func<Market, string> title, Func<Market, Html> show) => Guarded(trial, "market", () =>
        dessert.Markets(trial) is { Count: > 0 } markets
            ? Html.Join(markets.DistinctBy(key).Select(market => Html.Of($"<h3>{title(market)}</h3>") + show(market)))
            : Notes.Small(Html.Of($"{trial} has no market: a row <em>market</em> in dessert.csv, such as IE; EU; en, says where it is sold, by which rules and in which language.")));
}
