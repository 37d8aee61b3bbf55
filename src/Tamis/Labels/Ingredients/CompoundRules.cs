using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>What a law asks of one kind of compound ingredient: a row of <c>compounds.csv</c>.</summary>
/// <param name="Kind">The kind, as <c>compound-foods.csv</c> and <c>compound-words.csv</c> of the composition table have it.</param>
/// <param name="AsksForList">Whether the law makes a compound of what is a single food elsewhere, such as flour with vitamins; otherwise it lets the compound stand without its own list.</param>
/// <param name="BelowPercent">Below what share of the finished mass it holds, in per cent; null for any share.</param>
/// <param name="Together">The word of the group whose ingredients count together for that share (<c>cheeses</c>); empty where each counts by itself.</param>
/// <param name="NamesAdditives">Whether additives of a compound that stands without its list are named all the same.</param>
/// <param name="ConsistsOf">What the law has put in, in words; empty where the row asks for no list.</param>
/// <param name="Origin">Where the rule comes from.</param>
public sealed record CompoundRule(string Kind, bool AsksForList, double? BelowPercent, string Together, bool NamesAdditives, string ConsistsOf, RuleOrigin Origin);

/// <summary>That a compound may stand without its own list.</summary>
/// <param name="NamesAdditives">Whether its additives are named all the same.</param>
/// <param name="Origin">The rule.</param>
public sealed record CompoundLeave(bool NamesAdditives, RuleOrigin Origin);

/// <summary>Which compounds a law lets stand without a list of their own, and which foods it makes compounds of.</summary>
public sealed class CompoundRules
{
    private const string File = "compounds.csv";

    private static readonly Dictionary<string, bool> Asks = new(Names.Comparer) { ["list"] = true, ["no list"] = false };

    private static readonly Dictionary<string, bool> Named = new(Names.Comparer) { ["named"] = true };

    private CompoundRules(IReadOnlyList<CompoundRule> all) => All = all;

    /// <summary>The rows, in the order of the file.</summary>
    public IReadOnlyList<CompoundRule> All { get; }

    /// <summary>The rules of a rule set; none where it has no <c>compounds.csv</c>.</summary>
    /// <exception cref="TableException">A cell cannot be read.</exception>
    public static CompoundRules Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>That a compound may stand without its own list, by the row of its kind or by the limit of <c>ingredient-list.csv</c>; null where its list must be opened.</summary>
    /// <param name="list">The rules of the list, with their limit.</param>
    /// <param name="name">Its name on the label.</param>
    /// <param name="kind">Its kind; empty where nobody states it.</param>
    /// <param name="sharePercent">Its share of the finished mass, in per cent.</param>
    /// <param name="togetherPercent">The share of all that counts together with it (<see cref="CountedWith"/>), in per cent; its own where null.</param>
    public CompoundLeave? LeaveOf(ListRules list, string name, string kind, double sharePercent, double? togetherPercent = null) =>
        All.FirstOrDefault(rule => !rule.AsksForList && Names.Same(rule.Kind, kind) && (rule.BelowPercent is not { } below || (rule.Together.Length > 0 ? togetherPercent ?? sharePercent : sharePercent) < below)) is { } row ? new(row.NamesAdditives, row.Origin)
        : list.MaySummarise(name, sharePercent) || kind.Length > 0 && list.MaySummarise(kind, sharePercent) ? new(true, list.Origins["compound_limit_percent"])
        : null;

    /// <summary>The kinds whose shares count together with those of a kind, itself among them; none where each counts by itself.</summary>
    public IReadOnlyList<string> CountedWith(string kind) => All.FirstOrDefault(rule => Names.Same(rule.Kind, kind) && rule.Together.Length > 0) is { } row
        ? [.. All.Where(rule => Names.Same(rule.Together, row.Together)).Select(rule => rule.Kind)] : [];

    /// <summary>What makes a compound of an ingredient, in words: what is stated of it, or the law; null where it is a single food, or nobody says.</summary>
    public string? WhyCompound(CompoundStatement? stated) =>
        stated is null ? null
        : stated.IsCompound ? $"{stated.Kind}: {stated.ConsistsOf}; {Of(stated.Source)}"
        : All.FirstOrDefault(rule => rule.AsksForList && Names.Same(rule.Kind, stated.Kind)) is { } law ? $"{law.Kind}, by law with {law.ConsistsOf}; {law.Origin}"
        : null;

    private static string Of(Source source) => source.Evidence == Evidence.Memory ? $"{source}, from memory" : source.ToString();

    private static CompoundRules Read(RuleFolder folder, List<CellProblem> problems) =>
        new([.. folder.RowsIfAny(File, ["kind", "asks", "below_percent", "together", "additives", "consists_of"], problems).Select(row =>
        {
            var asks = row.Choice("asks", Asks);
            return new CompoundRule(row.Cells.Required("kind"), asks, row.Cells.Percent("below_percent"), row.Cells.Text("together") ?? "", row.Cells.Choice("additives", Named) ?? false,
                asks ? row.Cells.Required("consists_of") : "", row.Origin());
        })]);
}
