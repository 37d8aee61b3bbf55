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
        EachMarket(dessert, trial, (market, _) => show(market));

    /// <summary>The same where what does not hang on the language need not be said again in the next one.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="show">What is shown of a market, and whether it is the first of its rule set; a market of which nothing is shown has no heading.</param>
    public static Html EachMarket(Dessert dessert, string trial, Func<Market, bool, Html> show)
    {
        HashSet<string> seen = [];
        return Each(dessert, trial, market => (market.Rules, market.Language), market => $"{KitData.Rules(market.Rules).Title}, {market.Language}", market => show(market, seen.Add(market.Rules)));
    }

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
            ? Html.Join(markets.DistinctBy(key).Select(market => show(market) is { Markup.Length: > 0 } shown ? Html.Of($"<h3>{title(market)}</h3>") + shown : Html.Empty))
            : Notes.Small(Html.Of($"{trial} has no market: a row <em>market</em> in dessert.csv, such as IE; EU; en, says where it is sold, by which rules and in which language.")));
}
