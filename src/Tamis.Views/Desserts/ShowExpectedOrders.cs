using Tamis.Desserts;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Whether marks rise in the orders that the kitchen stated before a tasting, beside whether people agree on any order at all.</summary>
    public static Html ExpectedOrders(Dessert dessert, string tasting)
    {
        var (log, session) = SessionOf(dessert, tasting);
        if (session.ExpectedOrders.Count == 0) return Html.Empty;
        var tests = TrendTest.Of(log, session);
        var unread = session.ExpectedOrders.Where(order => !tests.Any(test => Names.Same(test.Attribute.Name, order.Attribute)))
            .Select(order => Notes.Small(Html.Of($"An order was expected in {order.Attribute}, but fewer than two people marked every trial: nothing can be said of it.")));
        return Html.Join(tests.Select(test => Notes.Paragraph(InWords(test, tests.Count)))) + Html.Join(unread);
    }

    /// <summary>What is expected before anybody tastes, in a sentence; empty where nothing was stated.</summary>
    internal static Html Expectation(TastingSession session) => session.ExpectedOrders.Count == 0 ? Html.Empty
        : Notes.Paragraph(Html.Of($"Expected before anybody tastes, from least to most: {string.Join("; ", session.ExpectedOrders.Select(order => $"{order.Attribute} {string.Join(", ", order.Trials)}"))}. Keep it from the assessors."));

    private static Html InWords(TrendTest test, int orders)
    {
        var policy = TastingPolicy.Kit;
        var isRanking = test.Attribute.Kind == AttributeKind.Ranking;
        var lead = Html.Of($"<b>{Capital(test.Attribute.Name)}</b> was expected {(isRanking ? "to put" : "to rise")} {Along(test.Order, isRanking)}");
        if (test.AssessorCount < policy.FewestAssessors) return Html.Of($"{lead}. {Says.English.TooFew(test.AssessorCount)}");
        var among = orders > 1 ? Html.Of($", the {orders} expected orders of this tasting counted together") : Html.Empty;
        var along = Html.Of($"The {(isRanking ? "places" : "marks")} of {test.AlongCount} of {test.AssessorCount} people go that way more than against it");
        if (test.PAmongAll < policy.FalseAlarmShare)
            return Html.Of($"{lead}, and it does: if marks came in any order they would go along it as much in {Times(test.PAmongAll)}{among}. {along}. That is so of the whole row, not of every step in it{BesideAnyOrder(test, policy)}.");
        var isAgainst = test.MeanRanks.Select((rank, at) => (rank - test.MeanRanks.Average()) * at).Sum() < 0;
        return Html.Of($"{lead}, but that is not shown: {(isAgainst ? "on the whole the marks run the other way" : $"if marks came in any order they would go along it as much in {Times(test.PAmongAll)}{among}")}. {along}{BesideAnyOrder(test, policy)}.");
    }

    // Friedman's answer, which asks for no order, and what it means beside the other.
    private static string BesideAnyOrder(TrendTest test, TastingPolicy policy) => (test.AnyOrderP < policy.FalseAlarmShare, test.PAmongAll < policy.FalseAlarmShare) switch
    {
        (true, true) => $"; asked for no order beforehand, people agree on one too ({Times(test.AnyOrderP)} by chance)",
        (false, true) => $"; asked for no order beforehand, agreement is not shown ({Times(test.AnyOrderP)} by chance), so it hangs on the order having been stated first",
        (true, false) => $"; people do agree on an order, but on another one ({Times(test.AnyOrderP)} by chance)",
        _ => $"; nor do people agree on any other order ({Times(test.AnyOrderP)} by chance)",
    };

    private static string Along(IReadOnlyList<string> trials, bool isRanking) => isRanking ? $"{string.Join(", then ", trials)}"
        : trials.Count == 2 ? $"from {trials[0]} to {trials[1]}" : $"from {trials[0]} over {string.Join(" and ", trials.Skip(1).Take(trials.Count - 2))} to {trials[^1]}";
}
