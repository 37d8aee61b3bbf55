using Tamis.Desserts;
using Tamis.Statistics.Designs;
using Tamis.Tasting;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>How a tasting is set out, in a sentence.</summary>
    internal static Html PlanInWords(TastingPreparation preparation)
    {
        var (plan, session) = (preparation.Plan, preparation.Session);
        var assessors = plan.Servings.Select(serving => serving.Assessor).Distinct().Count();
        var each = plan.Servings.GroupBy(serving => serving.Assessor).Select(group => group.Count()).Distinct().Order().ToArray();
        string[] trials = [.. plan.Codes.Select(trial => trial.Trial)];
        var repeats = plan.Codes.Max(trial => trial.Codes.Count);
        return Html.Of($"<strong>{assessors} assessors, {(each.Length == 1 ? $"{each[0]} plates each" : $"{each[0]} to {each[^1]} plates each")}</strong>: {string.Join(", ", trials)}{(session.Control is { } control ? $"; {control} is the control" : "")}{(session.Test is { } test ? $"; a {test.Word} test" : "")}{(repeats > 1 ? "; a trial that is served again comes under another code" : "")}. {plan.Servings.Count} plates in all{(session.Seed is { } seed ? $", set out with the seed {seed}" : "")}.");
    }

    /// <summary>How evenly a plan spreads places and neighbours, in words and counts.</summary>
    public static Html Balance(TastingPlan plan)
    {
        var balance = plan.Balance;
        if (balance.Places.Count == 0 || balance.Places[0].Counts.Count == 0) return Notes.Paragraph(Html.Of($"servings.csv gives no places: nothing says in which order the plates came."));
        var words = plan.Session.Test is null ? Html.Of($"{Pairs(plan, balance)}{Places(balance)} {Neighbours(balance)}") : Places(balance);
        return Notes.Paragraph(words)
            + new DataTable("How often each trial stands in each place",
                [Column.Words("Trial"), .. balance.Places[0].Counts.Select((_, place) => Column.Numbers($"place {place + 1}"))],
                [.. balance.Places.Select(row => new Row([row.Trial, .. row.Counts.Select(count => (Cell)Figures.Count(count))]))])
            { Caption = Html.Of($"How often each trial stands in each place") }.ToHtml()
            + (plan.Session.Test is not null ? Html.Empty : new DataTable("How often each trial comes straight after another",
                [Column.Words("Trial"), .. balance.Trials.Select(trial => Column.Numbers($"after {trial}"))],
                [.. balance.Neighbours.Select(row => new Row([row.Trial, .. row.Before.Select(count => (Cell)Figures.Count(count))]))])
            { Caption = Html.Of($"How often each trial comes straight after another: what a strong one leaves on the tongue") }.ToHtml());
    }

    // Said only where not everybody gets every trial.
    private static Html Pairs(TastingPlan plan, PlanBalance balance)
    {
        var sets = plan.Servings.GroupBy(serving => serving.Assessor).Select(own => own.Select(serving => serving.Trial).Distinct().Count()).ToArray();
        var (trials, each) = (balance.Trials.Count, sets.Max());
        if (each == trials || sets.Min() < each) return Html.Empty;
        if (balance.Together.Fewest == balance.Together.Most) return Html.Of($"Not everybody gets every trial, but every two trials meet before {balance.Together.Most} assessors: balanced incomplete blocks. ");
        var better = IncompleteBlocks.NearestCount(trials, each, sets.Length);
        return Html.Of($"Two trials meet before {balance.Together.Fewest} to {balance.Together.Most} assessors, so some pairs are compared more surely than others. {(better == sets.Length
            ? $"The numbers allow a plan in which all pairs meet equally often, so a balanced one may exist, but none was found. "
            : $"With {sets.Length} assessors and {each} of {trials} trials each it cannot be even; with {better} it could. ")}");
    }

    private static Html Places(PlanBalance balance) => balance.IsPlaceBalanced
        ? Html.Of($"Every trial stands equally often in every place.")
        : Html.Of($"A trial stands {Times(balance.PlaceSpread)} in a place{(balance.PlaceSpread.Most - balance.PlaceSpread.Fewest > 1 ? "; the first place is often scored higher, so more assessors or another number of them would be fairer" : ", which is as even as this number of assessors allows or near it")}.");

    private static Html Neighbours(PlanBalance balance) => balance.IsNeighbourBalanced
        ? Html.Of($"Every trial comes equally often straight after every other.")
        : Html.Of($"A trial comes {Times(balance.NeighbourSpread)} straight after another.");

    private static string Times((int Fewest, int Most) spread) => spread.Fewest == spread.Most ? $"{spread.Most} times" : $"{spread.Fewest} to {spread.Most} times";
}
