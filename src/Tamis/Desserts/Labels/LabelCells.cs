using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Looks at what <c>dessert.csv</c> asks of a label before anybody draws one: markets and languages, claims, forms of sale, kinds of food and of date, pack and portion.</summary>
public static class LabelCells
{
    /// <summary>Every cell that a label could not be drawn up from, over all trials, in the order of the sheet; each once, as the first rule set misses it.</summary>
    /// <param name="dessert">A dessert whose sheets can be read.</param>
    public static IReadOnlyList<CellProblem> Problems(Dessert dessert) =>
        Once(dessert.Batches.SelectMany(batch => ProblemsOf(dessert, batch.Trial, null)));

    /// <summary>Every cell that the label of one trial could not be drawn up from under some rule sets.</summary>
    /// <param name="dessert">A dessert whose sheets can be read.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="rules">The folder names of the rule sets.</param>
    /// <param name="further">What else the label is drawn up from: what cannot be read there is named with the rest.</param>
    public static IReadOnlyList<CellProblem> Problems(Dessert dessert, string trial, IEnumerable<string> rules, params Action[] further) =>
        Once(ProblemsOf(dessert, dessert.Trial(trial).Trial, [.. rules.Select(KitData.Rules)]).Concat(further.SelectMany(Tried)));

    /// <summary>The rule sets of the markets that a label is for; none where the rows <c>market</c> cannot be read or name none of them.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="market">Countries or rule sets, parted by semicolons.</param>
    public static IReadOnlyList<string> RulesOf(Dessert dessert, string trial, string market)
    {
        IReadOnlyList<Market> markets = [];
        Tried(() => markets = dessert.Markets(trial));
        var asked = market.Split(';', StringSplitOptions.TrimEntries);
        return [.. markets.Where(each => asked.Any(word => Names.Same(each.Country, word) || Names.Same(each.Rules, word))).Select(each => each.Rules).Distinct(Names.Comparer)];
    }

    /// <summary>Reads one thing after the other and gathers every cell that cannot be read, each once.</summary>
    /// <param name="reads">What reads them.</param>
    public static IReadOnlyList<CellProblem> Tried(IEnumerable<Action> reads) => Once(reads.SelectMany(Tried));

    // One cell is named once, as the first rule set misses it; what stands in no row is told apart by what is asked for.
    private static IReadOnlyList<CellProblem> Once(IEnumerable<CellProblem> problems) =>
        [.. problems.DistinctBy(problem => (problem.File, problem.Row, problem.Column, problem.Row > 0 ? "" : problem.Expected)).OrderBy(problem => problem.Row)];

    private static IEnumerable<CellProblem> ProblemsOf(Dessert dessert, string trial, RuleSet[]? asked)
    {
        var sets = KitData.RuleSetNames.Select(KitData.Rules).ToArray();
        IReadOnlyList<Market> markets = [];
        foreach (var problem in Tried(() => markets = dessert.Markets(trial))) yield return problem;
        RuleSet[] sold = markets.Count == 0 ? sets : [.. markets.Select(market => KitData.Rules(market.Rules)).Distinct()];

        string[] languages = [.. LabelWords.Of(sets[0].Folder).Languages.Concat(sold.SelectMany(set => PanelTerms.Of(set).Languages)).Distinct(Names.Comparer)];
        foreach (var (value, row) in dessert.Facts.RowsOf("market", trial))
            if (value.Split(';', StringSplitOptions.TrimEntries) is [_, _, var language] && !languages.Contains(language, Names.Comparer))
                yield return row.Problem("value", $"a language that the rules have words for: {string.Join(", ", languages)}; or a further file in data/rules/terms, which the command terms begins");

        foreach (var asks in DessertClaims.RowsOf(dessert, trial))
        {
            var (value, _, row) = asks;
            foreach (var problem in Tried(() => DessertClaims.OtherOf(dessert, asks))) yield return problem;
            if (!Array.Exists(sold, set => ClaimRules.Of(set).Find(value) is not null || ReservedNames.Of(set).In(value).Count > 0))
                yield return row.Problem("value", $"a claim that the rules know, such as {string.Join(" or ", sold.SelectMany(set => ClaimRules.Of(set).Nearest(value)).Distinct(Names.Comparer).Take(3).DefaultIfEmpty("source of fibre"))}");
        }

        string[] kinds = [.. sold.SelectMany(set => DateRules.Of(set).Marks).Select(mark => mark.Name).Distinct(Names.Comparer)];
        foreach (var (value, row) in dessert.Facts.RowsOf("date_kind", trial))
            if (kinds.Length > 0 && !kinds.Contains(value, Names.Comparer)) yield return row.Problem("value", $"one of: {string.Join(", ", kinds)}");

        // A law without a symbol prints without its artwork; check looks for the file whoever asks for it.
        if (asked is null || Array.Exists(asked, set => FrontOfPackRules.Of(set).HasSymbol))
            foreach (var (value, row) in dessert.Facts.RowsOf("symbol_artwork", trial))
                if (!TrialSymbol.IsThere(dessert, value)) yield return row.Problem("value", "the name of a file that stands beside the dessert or in its store: the authority’s own artwork of the symbol");

        foreach (var set in asked ?? sold)
        {
            if (dessert.Facts.RowsOf("form_of_sale", trial).Any())
                foreach (var problem in Tried(() => LabelAsked.FormOfSale(dessert, trial, SaleRules.Of(set)))) yield return problem;
            foreach (var problem in Tried(() => LabelAsked.Category(dessert, trial, set))) yield return problem;
            foreach (var problem in Tried(() => DessertPanels.ServingOf(dessert, trial, set))) yield return problem;
            // A slip is one whoever sells: under a law without such a column nothing else would read the row.
            if (ServingWords.Of(set).IsOtherAmountBrief is null)
                foreach (var problem in Tried(() => LabelAsked.OtherAmounts(dessert, trial, null))) yield return problem;
            if (dessert.Trial(trial).Whole is { FinishedGrams: > 0 })
                foreach (var problem in Tried([() => DessertPanels.VoluntaryOf(dessert, trial, set), () => TrialLimitedPanel.Asked(dessert, trial, set), () => DessertPanels.BasesOf(dessert, trial, set), () => Met(dessert, trial, set)])) yield return problem;
        }
        foreach (var problem in Tried(() => DessertPanels.HundredOf(dessert, trial))) yield return problem;
        foreach (var problem in Tried(() => DessertPanels.PanelFormOf(dessert, trial))) yield return problem;
        foreach (var problem in Tried(() => LabelAsked.Exemptions(dessert, trial))) yield return problem;
        foreach (var problem in Tried(() => LabelAsked.Day(dessert, trial))) yield return problem;
        foreach (var problem in Tried(() => LabelAsked.SwapBy(dessert, trial))) yield return problem;
        foreach (var problem in Tried([() => LabelAsked.SummarisesCompounds(dessert, trial), () => LabelAsked.NumbersAdditives(dessert, trial)])) yield return problem;
        if (dessert.Trial(trial).Whole is { FinishedGrams: > 0 })
            foreach (var problem in Tried(() => CookedMixture.Of(dessert, trial))) yield return problem;
        // Without a size nobody draws the pack, and that is no fault: only one that cannot be read is.
        if (LabelAsked.HasPack(dessert))
            foreach (var problem in Tried(() => LabelAsked.Faces(dessert, trial, LabelAsked.Pack(dessert, trial)))) yield return problem;
    }

    private static void Met(Dessert dessert, string trial, RuleSet rules)
    {
        if (ListedUses.UnmetEmphasis(dessert, trial, rules).ToArray() is { Length: > 0 } unmet) throw new TableException(unmet);
    }

    private static IReadOnlyList<CellProblem> Tried(Action read)
    {
        try
        {
            read();
            return [];
        }
        catch (TableException error)
        {
            return error.Problems;
        }
    }
}
