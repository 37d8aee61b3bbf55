using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The kitchen's own words in other languages: <c>words.csv</c> of the store. A further language is a further column.</summary>
public sealed class KitchenWords
{
    private readonly Dictionary<(string Word, string Language), string> _terms;

    private KitchenWords(Dictionary<(string, string), string> terms) => _terms = terms;

    /// <summary>A store without such a sheet.</summary>
    public static KitchenWords None { get; } = new([]);

    /// <summary>Reads the sheet: a column <c>word</c>, then one a language.</summary>
    public static KitchenWords Read(Sheet sheet, List<CellProblem> problems)
    {
        Dictionary<(string, string), string> terms = [];
        if (!sheet.Require(["word"], problems)) return None;
        foreach (var row in sheet.Rows)
        {
            if (new RowReader(row, problems).Required("word") is not { Length: > 0 } word) continue;
            foreach (var language in sheet.Besides(["word", "notes"]))
                if (row[language] is { Length: > 0 } term && !terms.TryAdd((Names.Key(word), Names.Key(language)), term))
                    problems.Add(row.Problem("word", "a word that no other row has"));
        }
        return new(terms);
    }

    /// <summary>A word in a language; null where the sheet has no term.</summary>
    public string? In(string word, string language) => _terms.GetValueOrDefault((Names.Key(word), Names.Key(language)));

    /// <summary>A word as a pack in a language says it: the sheet's term, or in English the word itself; null where there is no term.</summary>
    public string? Said(string word, string language) => In(word, language) ?? (Names.Same(language, "en") ? word : null);
}
