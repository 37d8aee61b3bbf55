using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A substance that a law wants named.</summary>
/// <param name="GroupNumber">The number of its group in the law's list; empty where the law's list has none.</param>
/// <param name="Group">The group as the law calls it: <c>cereals containing gluten</c>.</param>
/// <param name="Substance">The substance, by the word of <c>allergen-words.csv</c>: <c>rye</c>.</param>
/// <param name="Printed">The word to print in English where it is not the usual one; null otherwise.</param>
/// <param name="ThresholdMgPerKg">From how much in the finished food it must be named; null where any amount counts.</param>
/// <param name="CountsAtThreshold">Whether exactly that much counts.</param>
/// <param name="Exempt">Names of ingredients in which it need not be named.</param>
/// <param name="Required">Words of which one must stand in the list, in whatever language; empty where any word of <c>allergen-words.csv</c> names it.</param>
/// <param name="Summary">The words of the statement of what a food contains, in English, where they are not the printed one; empty otherwise.</param>
/// <param name="IsByKind">Whether the law wants its kind named, such as the species of a fish, and not the whole group.</param>
/// <param name="Origin">Where the row came from.</param>
public sealed record AllergenRule(string GroupNumber, string Group, string Substance, string? Printed, double? ThresholdMgPerKg, bool CountsAtThreshold, IReadOnlyList<string> Exempt,
    IReadOnlyList<string> Required, IReadOnlyList<string> Summary, bool IsByKind, RuleOrigin Origin)
{
    /// <summary>Whether a word that was found in a list names the substance as the law wants it named.</summary>
    public bool IsNamedBy(string word) => Required.Count == 0 || Required.Any(required => word.Contains(required, StringComparison.OrdinalIgnoreCase));

    /// <summary>Whether so much in a kilogram of the finished food must be named.</summary>
    public bool Counts(double mgPerKg) => ThresholdMgPerKg is not { } threshold || mgPerKg > threshold || CountsAtThreshold && mgPerKg >= threshold;

    /// <summary>The exempt name that an ingredient's name holds; null where the ingredient is not exempt.</summary>
    public string? ExemptIn(string ingredient) => Exempt.FirstOrDefault(exempt => ingredient.Contains(exempt, StringComparison.OrdinalIgnoreCase));
}

/// <summary>The allergens of a rule set: <c>allergens.csv</c>, with the words under which they are met.</summary>
public sealed class AllergenRules
{
    private static readonly Dictionary<string, bool> AtThreshold = new(Names.Comparer) { ["at least"] = true, ["more than"] = false };

    /// <summary>The file of the groups' names in other languages, beside the rule sets.</summary>
    public const string GroupsFile = "allergen-groups.csv";

    /// <summary>The file of the names of kinds, such as species of fish, beside the rule sets.</summary>
    public const string KindsFile = "allergen-kinds.csv";

    private readonly Terms _groups;
    private readonly ILookup<(string Substance, string Language), string> _kinds;

    private AllergenRules(IReadOnlyList<AllergenRule> all, AllergenWords words, Terms groups, ILookup<(string Substance, string Language), string> kinds) =>
        (All, Words, _groups, _kinds) = (all, words, groups, kinds);

    /// <summary>Every substance in the order of the law's list.</summary>
    public IReadOnlyList<AllergenRule> All { get; }

    /// <summary>How each substance is printed and found.</summary>
    public AllergenWords Words { get; }

    /// <summary>The groups in the order of the law's list.</summary>
    public IReadOnlyList<string> Groups => [.. All.Select(rule => rule.Group).Distinct()];

    /// <summary>The allergens of a rule set.</summary>
    /// <exception cref="TableException">A file is missing or a cell cannot be read.</exception>
    public static AllergenRules Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>The rule for a word of the kitchen's sheets (<c>rye</c>, <c>almonds</c>); null where this law's list does not have it.</summary>
    public AllergenRule? For(string word) => Words.SubstanceOf(word) is { } substance ? All.FirstOrDefault(rule => rule.Substance == substance) : null;

    /// <summary>A substance as it is printed in a language, by a word that the law takes where there is one; null where there is no term.</summary>
    public string? Print(AllergenRule rule, string language) => Names.Same(language, "en") && rule.Printed is { } printed ? printed
        : Words.WordsOf(rule.Substance, language).FirstOrDefault(rule.IsNamedBy) ?? Words.Print(rule.Substance, language);

    /// <summary>The kinds of a substance that a text in a language names: <c>cod</c> in <c>fish gelatine (cod)</c>.</summary>
    public IReadOnlyList<string> KindsIn(AllergenRule rule, string text, string language) => [.. _kinds[(rule.Substance, Names.Key(language))].Where(kind => Names.Holds(Words.WithoutExceptions(rule.Substance, text, language), kind))];

    /// <summary>What stands for a substance in the statement of what a food contains; null where there is no term.</summary>
    public IReadOnlyList<string>? Summarise(AllergenRule rule, string language) =>
        Names.Same(language, "en") && rule.Summary.Count > 0 ? rule.Summary : Print(rule, language) is { } printed ? [printed] : null;

    /// <summary>Where a text in a language names substances as this law wants them named; a substance that is on no list of it by any word.</summary>
    public IReadOnlyList<AllergenSpan> Named(string text, string language) =>
        [.. Words.Find(text, language).Where(span => All.FirstOrDefault(rule => rule.Substance == span.Substance) is not { } rule || rule.IsNamedBy(text.Substring(span.Start, span.Length)))];

    /// <summary>A group of <see cref="Groups"/> in a language; null where there is no term.</summary>
    public string? GroupIn(string group, string language) => Names.Same(language, "en") ? group : _groups.In(group, language);

    private static AllergenRules Read(RuleFolder folder, List<CellProblem> problems)
    {
        var words = AllergenWords.Read(folder, problems);
        AllergenRule[] all = [.. folder.Rows("allergens.csv", ["group_no", "group", "substance", "printed", "threshold_mg_kg", "threshold", "exempt"], problems).Select(row =>
        {
            var substance = row.Cells.Required("substance");
            if (!words.Substances.Contains(substance)) row.Cells.Note("substance", $"a substance of {AllergenWords.File}, such as {string.Join(" or ", Names.Nearest(substance, words.Substances))}");
            var threshold = row.Cells.Number("threshold_mg_kg", 0);
            return new AllergenRule(row.Cells.Text("group_no") ?? "", row.Cells.Required("group"), substance, row.Cells.Text("printed"), threshold,
                threshold is not null && row.Choice("threshold", AtThreshold), row.Cells.Words("exempt"), row.Cells.Words("required"), row.Cells.Words("summary"),
                row.Cells.Text("by_kind") is not null && row.YesOrNo("by_kind"), row.Origin());
        })];
        var kinds = from row in folder.SharedRows(KindsFile, ["substance", "en"], problems)
                    from term in row.ByLanguage(["substance"])
                    from kind in row.Cells.Words(term.Key)
                    select (Key: (Substance: row.Cells.Required("substance"), Language: Names.Key(term.Key)), kind);
        return new(all, words, Terms.Read([.. folder.SharedRows(GroupsFile, ["word"], problems).Select(row => row.Cells)], RuleRow.OriginColumns), kinds.ToLookup(each => each.Key, each => each.kind));
    }
}
