using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>A reserved name in a text.</summary>
/// <param name="Name">The name.</param>
/// <param name="Words">The words that stand there.</param>
/// <param name="Rest">The other words of the text, by which a food may be told: <c>chips</c> of <c>chocolate chips</c>.</param>
public sealed record NameInText(ReservedName Name, string Words, IReadOnlyList<string> Rest);

/// <summary>The reserved names of a rule set: <c>reserved-names.csv</c>, with how their figures are worked out in <c>name-figures.csv</c> beside the rule sets.</summary>
public sealed class ReservedNames
{
    /// <summary>The file of a rule set.</summary>
    public const string File = "reserved-names.csv";

    private ReservedNames(IReadOnlyList<ReservedName> all) => All = all;

    /// <summary>Every name, in the order of the file, with all conditions whatever their days.</summary>
    public IReadOnlyList<ReservedName> All { get; }

    /// <summary>The names of a rule set on a day; with no day, the conditions that have no end.</summary>
    /// <exception cref="TableException">A file is missing or a cell cannot be read.</exception>
    public static ReservedNames Of(RuleSet rules, DateOnly? day = null) => rules.Folder.Table(Read).On(day);

    /// <summary>A name by one of its words.</summary>
    /// <exception cref="KeyNotFoundException">No name has this word; the message names near ones.</exception>
    public ReservedName this[string word] => All.FirstOrDefault(each => each.Words.Contains(word, Names.Comparer))
        ?? throw new KeyNotFoundException($"No reserved name is called '{word}'; near ones: {string.Join(", ", Names.Nearest(word, All.SelectMany(each => each.Words)))}.");

    /// <summary>The reserved names that stand in a text. The longest is taken and no word twice; a word that is part of a longer one that means something else does not count.</summary>
    public IReadOnlyList<NameInText> In(string text)
    {
        var words = WordsOf(text);
        var taken = new bool[words.Length];
        List<(int At, NameInText Found)> found = [];
        foreach (var (name, said, isName) in All.SelectMany(each => each.Words.Select(word => (each, word, true)).Concat(each.NotIn.Select(word => (each, word, false)))).OrderByDescending(each => WordsOf(each.Item2).Length).ThenBy(each => each.Item3))
        {
            var wanted = WordsOf(said);
            for (var at = 0; at + wanted.Length <= words.Length; at++)
            {
                if (!Enumerable.Range(0, wanted.Length).All(i => !taken[at + i] && IsWord(words[at + i], wanted[i]))) continue;
                for (var i = 0; i < wanted.Length; i++) taken[at + i] = true;
                if (isName) found.Add((at, new(name, said, [])));
            }
        }
        string[] rest = [.. words.Where((word, at) => !taken[at] && word.Length > 2)];
        return [.. found.OrderBy(each => each.At).Select(each => each.Found with { Rest = rest })];
    }

    // A plural is the same name; a hyphen parts words as a blank does.
    private static bool IsWord(string word, string wanted) => word == wanted || word == wanted + "s";

    internal static string[] WordsOf(string text) => Names.Key(new([.. text.Select(letter => char.IsLetterOrDigit(letter) || letter == '\'' ? letter : ' ')])).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private ReservedNames On(DateOnly? day) => new([.. All.Select(name => name with { Conditions = [.. name.Conditions.Where(condition => condition.InForce.On(day))] }).Where(name => name.Conditions.Count > 0)]);

    private static ReservedNames Read(RuleFolder folder, List<CellProblem> problems)
    {
        var figures = folder.SharedRows("name-figures.csv", ["figure", "word", "from", "supply"], problems).Select(NameFigure.Read).OfType<NameFigure>()
            .DistinctBy(figure => figure.Key, Names.Comparer).ToDictionary(figure => figure.Key, Names.Comparer);
        List<ReservedName> names = [];
        foreach (var row in folder.RowsIfAny(File, ["name", "words", "not_in", "figure", "test", "limit", "unit", "basis", "not_listed", "not_for"], problems))
        {
            var name = row.Cells.Required("name");
            var notListed = row.Cells.Words("not_listed");
            var condition = new NameCondition
            {
                Figure = notListed.Count > 0 ? null : row.Cells.Named("figure", figures),
                Test = notListed.Count > 0 ? LimitTest.NotListed : row.Choice("test", LimitTests.Words),
                Limit = notListed.Count > 0 ? 0 : row.RequiredDecimal("limit"),
                Unit = row.Cells.Text("unit") ?? "", Basis = row.Cells.Text("basis") ?? "", NotListed = notListed, NotFor = row.Cells.Words("not_for"),
                Origin = row.Origin(), InForce = row.InForce(),
            };
            if (notListed.Count == 0 && row.Cells.Text("figure") is null) row.Cells.Note("figure", "a figure of name-figures.csv, or words under not_listed");
            // The words of a name stand in its first row.
            var at = names.FindIndex(each => Names.Same(each.Name, name));
            if (at >= 0) names[at] = names[at] with { Conditions = [.. names[at].Conditions, condition] };
            else names.Add(new(name, [name, .. row.Cells.Words("words")], row.Cells.Words("not_in"), [condition]));
        }
        return new(names);
    }
}
