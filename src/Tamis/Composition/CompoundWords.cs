using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Tells by the words of a name what a food is that no table states it of, such as one of an imported table: <c>compound-words.csv</c>, a column a language.</summary>
/// <remarks>The longest term that a name holds counts. A star before a term lets it end a longer word, for languages that write compounds as one: <c>*schokolade</c> is in <c>Milchschokolade</c>.</remarks>
public sealed class CompoundWords
{
    /// <summary>The file's name.</summary>
    public const string File = "compound-words.csv";

    private static readonly string[] Fixed = ["kind", "compound", "consists_of", "unless", "source", "notes"];

    private readonly IReadOnlyList<(string Term, CompoundStatement Statement, IReadOnlyList<string> Unless)> _terms;

    private CompoundWords(IEnumerable<(string Term, CompoundStatement Statement, IReadOnlyList<string> Unless)> terms) => _terms = [.. terms.OrderByDescending(each => each.Term.Length)];

    /// <summary>No words: nothing is told by a name.</summary>
    public static CompoundWords None { get; } = new([]);

    /// <summary>What the first of the names says that says anything; null where none does.</summary>
    public CompoundStatement? In(params IEnumerable<string?> names) =>
        names.OfType<string>().Select(name => _terms.FirstOrDefault(each => Holds(name, each.Term) && !each.Unless.Any(word => Holds(name, word))).Statement).FirstOrDefault(found => found is not null);

    internal static CompoundWords Read(IEnumerable<RowReader> rows)
    {
        List<(string, CompoundStatement, IReadOnlyList<string>)> terms = [];
        foreach (var row in rows)
        {
            var statement = CompoundFoods.Statement(row, row.Required("kind"), new(row.Required("source"), Evidence.Practice));
            foreach (var language in row.Row.Sheet.Besides(Fixed))
                terms.AddRange(row.Words(language).Select(term => (term, statement, row.Words("unless"))));
        }
        return new(terms);
    }

    private static bool Holds(string name, string term) => term[0] != '*' ? Names.Holds(name, term) : Names.HoldsEnding(name, term[1..]);
}
