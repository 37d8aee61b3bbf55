namespace Tamis.Tables;

/// <summary>Words in several languages: a row a word, a column a language, so a further language is a further column.</summary>
public sealed class Terms
{
    private readonly IReadOnlyDictionary<(string Word, string Language), string> _terms;

    private Terms(IReadOnlyDictionary<(string, string), string> terms, IReadOnlyList<string> words, IReadOnlyList<string> languages) => (_terms, Words, Languages) = (terms, words, languages);

    /// <summary>No words.</summary>
    public static Terms None { get; } = new(new Dictionary<(string, string), string>(), [], []);

    /// <summary>The words as the column <c>word</c> has them, in the order of the file.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>The languages that have a column, by their codes.</summary>
    public IReadOnlyList<string> Languages { get; }

    /// <summary>Reads the rows of a file: a column <c>word</c>, then one a language.</summary>
    /// <param name="rows">The rows, all of one sheet; a word that two rows have is a problem.</param>
    /// <param name="others">The columns that are neither.</param>
    public static Terms Read(IReadOnlyList<RowReader> rows, IEnumerable<string> others)
    {
        if (rows is []) return None;
        var languages = rows[0].Row.Sheet.Besides([WordColumn, .. others]);
        Dictionary<(string, string), string> terms = [];
        HashSet<string> words = new(Names.Comparer);
        foreach (var row in rows)
        {
            if (row.Required(WordColumn) is not { Length: > 0 } word) continue;
            if (!words.Add(word)) row.Note(WordColumn, "a word that no other row has");
            foreach (var (language, term) in ByLanguage(row, languages)) terms.TryAdd((Names.Key(word), Names.Key(language)), term);
        }
        return new(terms, [.. words], languages);
    }

    /// <summary>What a row says in each language that it has a term in.</summary>
    public static IReadOnlyDictionary<string, string> ByLanguage(RowReader row, IEnumerable<string> languages) =>
        languages.Where(language => row.Text(language) is not null).ToDictionary(language => language, row.Required, Names.Comparer);

    /// <summary>A word in a language; null where there is no term.</summary>
    /// <param name="word">The word, as the column <c>word</c> has it.</param>
    /// <param name="language">The language's code: <c>fr</c>.</param>
    public string? In(string word, string language) => _terms.GetValueOrDefault((Names.Key(word), Names.Key(language)));

    private const string WordColumn = "word";
}
