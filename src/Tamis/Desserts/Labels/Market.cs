using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Where a product is sold: a country, the rules that hold there, the language of its pack. A row <c>market</c> of <c>dessert.csv</c>: <c>IE; EU; en</c>.</summary>
/// <param name="Country">The country's code.</param>
/// <param name="Rules">The rule set, by its folder's name.</param>
/// <param name="Language">The language's code.</param>
/// <param name="Origin">The cell.</param>
public sealed record Market(string Country, string Rules, string Language, Source Origin)
{
    /// <summary>The market in words: <c>IE, eu, en</c>.</summary>
    public override string ToString() => $"{Country}, {Rules}, {Language}";

    /// <summary>The markets of a trial.</summary>
    /// <exception cref="TableException">A row does not hold a country, a rule set that the kit has and a language; every one is named.</exception>
    internal static IReadOnlyList<Market> Of(DessertFacts facts, string trial)
    {
        List<CellProblem> problems = [];
        List<Market> markets = [];
        var known = KitData.RuleSetNames;
        foreach (var (value, row) in facts.RowsOf("market", trial))
        {
            var parts = value.Split(';', StringSplitOptions.TrimEntries);
            if (parts.Length != 3 || parts.Any(part => part.Length == 0)) problems.Add(row.Problem("value", "a country; a rule set; a language, such as IE; EU; en"));
            else if (known.FirstOrDefault(name => Names.Same(name, parts[1])) is not { } rules) problems.Add(row.Problem("value", $"a rule set that the kit has: {string.Join(", ", known)}"));
            else markets.Add(new(parts[0], rules, parts[2].ToLowerInvariant(), row.Origin("value")));
        }
        return problems is [] ? markets : throw new TableException(problems);
    }
}
