using System.Globalization;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The claims that a trial asks for, with condition, figure and margin; refused where a condition fails, with what would carry it.</summary>
    public static Html Claims(Dessert dessert, string trial, string rules) => Guarded(trial, "claims", () =>
    {
        var asked = DessertClaims.Asked(dessert, trial, rules);
        var set = KitData.Rules(rules);
        if (asked.Count == 0) return Notes.Small(Html.Of($"{trial} asks for no claim: a row <em>claim</em> in dessert.csv does."));
        List<(string, Html)> lines = [];
        foreach (var (verdict, origin) in asked)
        {
            lines.Add((WordOf(verdict.State), Html.Of($"<strong>{verdict.Asked}</strong>: {SentenceOf(verdict, set)} <small>{origin.ToString()}</small>")));
            if (verdict.State == ClaimState.Fails && DessertClaims.Repairs(dessert, trial, rules, verdict) is { Count: > 0 } swaps)
                lines.Add(("Look at", Html.Of($"By the figures alone {string.Join(", or ", swaps.Select(SwapInWords))} would carry it{(swaps.Any(HasOtherMass) ? ", with the same dry matter and baked to the same mass" : "")}. Whether it still rises and tastes is for a trial.")));
        }
        return Notes.Verdict(lines) + ConditionTable(asked.Select(each => each.Verdict), $"Claims asked for, {set.Title}");
    });

    /// <summary>The claims that may be made of a trial, whether or not anybody asked.</summary>
    public static Html ClaimsAvailable(Dessert dessert, string trial, string rules) => Guarded(trial, "claims", () =>
    {
        var available = ClaimCheck.Available(DessertClaims.FoodOf(dessert, trial, rules));
        return available.Count == 0
            ? Notes.Small(Html.Of($"By its figures {trial} meets the conditions of no claim of {KitData.Rules(rules).Title}."))
            : ConditionTable(available, $"Claims that the figures of {trial} would carry, {KitData.Rules(rules).Title}") + Notes.Small(Html.Text("A claim also needs what no figure says; a competent person decides, and local law prevails."));
    });

    /// <summary>A comparative claim of one trial against another.</summary>
    public static Html ComparedClaim(Dessert dessert, string from, string to, string rules, string claim) => Guarded(to, "comparison", () =>
    {
        var verdict = ClaimCheck.Of(DessertClaims.FoodOf(dessert, to, rules, from), claim);
        return Notes.Verdict([(WordOf(verdict.State), Html.Of($"<strong>{claim}</strong>, {to} against {from}: {SentenceOf(verdict, KitData.Rules(rules))}"))]) + ConditionTable([verdict], $"{claim}: {to} against {from}");
    });

    /// <summary>What the published schemes of a government for the front of a pack give, with their working.</summary>
    public static Html FrontOfPack(Dessert dessert, string trial, string rules) => Guarded(trial, "front-of-pack figures", () =>
    {
        var schemes = TrialFrontOfPack.Of(dessert, trial, rules);
        if (schemes.Count == 0) return Notes.Small(Html.Of($"The rules of {KitData.Rules(rules).Title} have no scheme for the front of a pack here."));
        var symbol = TrialSymbol.Of(dessert, trial, rules);
        return Html.Join(schemes.Select(scheme => new DataTable($"{scheme.Title}, {KitData.Rules(rules).Title}",
            [Column.Words("Figure"), Column.Numbers("Amount"), Column.Words("Given"), Column.Words("Why")],
            [.. scheme.Figures.Select(figure => new Row([figure.Word, figure.Amount is { } amount ? Num.Said($"{ClaimCheck.Plain(amount)}\u202f{figure.Unit}") : Num.Said("not known"), figure.Given,
                figure.Origin is { } origin ? Html.Of($"{figure.Why} <small>{origin.ToString()}</small>") : Html.Text(figure.Why)]))])
        { IsWide = true, Caption = Html.Text(scheme.Verdict) }.ToHtml()))
            + (symbol.IsNeeded == true ? Notes.Small(Html.Of($"{Capital(symbol.Words)}. The kit draws no symbol: the authority’s own artwork is set there{(symbol.Artwork is { } cell ? Html.Of($", as the sheet says{Marks.From(cell)}") : Html.Empty)}.")) : Html.Empty);
    });

    private static string SwapInWords(ClaimSwap swap) => $"{WholeGrams(swap.MassGrams)} of {swap.Out} as {(HasOtherMass(swap) ? $"{WholeGrams(swap.InGrams)} of " : "")}{swap.In}";

    private static bool HasOtherMass(ClaimSwap swap) => swap.InGrams != swap.MassGrams;

    private static string WholeGrams(double grams) => $"{grams.ToString("0", CultureInfo.InvariantCulture)}\u202fg";

    private static Html ConditionTable(IEnumerable<ClaimVerdict> verdicts, string title)
    {
        Row[] rows = [.. verdicts.SelectMany(verdict => verdict.Conditions.Select(result => new Row([
            verdict.Rule!.Name,
            Typeset.Text(ClaimCheck.LimitInWords(result.Condition)),
            Typeset.Text(result.Words),
            result.Margin is { } margin ? Num.Said($"{(margin < 0 ? "\u2212" : "")}{ClaimCheck.Plain(Math.Abs(margin))}") : Num.Said("none"),
            result.Range is { } range ? $"{ClaimCheck.Plain(range.Low)} to {ClaimCheck.Plain(range.High)}" : "the data give none",
            Html.Of($"<small>{result.Condition.Origin.ToString()}</small>")])))];
        return rows.Length == 0 ? Html.Empty : new DataTable(title, [Column.Words("Claim"), Column.Words("Condition"), Column.Words("Found"), Column.Numbers("Margin"), Column.Words("Range"), Column.Words("Rule")], rows) { IsWide = true }.ToHtml();
    }

    private static string WordOf(ClaimState state) => state switch
    {
        ClaimState.Holds => "Holds",
        ClaimState.HoldsWithinItsRange => "At the edge",
        ClaimState.Fails => "Refused",
        ClaimState.CannotBeSaid => "Not known",
        _ => "No claim",
    };

    private static string SentenceOf(ClaimVerdict verdict, RuleSet rules) => Typeset.Text(verdict.State switch
    {
        ClaimState.NotAClaim => $"no nutrition claim of {rules.Title}{(verdict.Nearest.Count > 0 ? $"; near ones: {string.Join(", ", verdict.Nearest)}" : "")}. A word in the name of a food is judged by the law on names.",
        ClaimState.HoldsWithinItsRange => $"its figures meet the conditions, but their range reaches over a limit: {Found(verdict)}.{NeedsOf(verdict)}",
        ClaimState.Holds => $"{Found(verdict)}.{NeedsOf(verdict)}",
        ClaimState.Fails => $"may not be made: {Found(verdict)}.",
        _ => $"cannot be said: {Found(verdict)}.",
    });

    private static string Found(ClaimVerdict verdict) => verdict.Conditions.Count == 0 ? "no condition is for this kind of food"
        : string.Join("; ", verdict.Conditions.Select(result => result.Condition.Comparison == ClaimComparison.NoneAdded ? result.Words : $"{result.Words}, where {ClaimCheck.LimitInWords(result.Condition)} is asked"));

    private static string NeedsOf(ClaimVerdict verdict) => verdict.Rule is { Needs.Count: > 0 } rule ? $" Besides: {string.Join("; ", rule.Needs)}." : "";
}
