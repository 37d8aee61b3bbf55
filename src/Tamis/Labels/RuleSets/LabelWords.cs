using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Words that laws prescribe for a label, in several languages: <c>words.csv</c> beside the rule sets. A further language is a further column.</summary>
public sealed class LabelWords
{
    private const string File = "words.csv";

    private readonly IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> _byLanguage;

    private LabelWords(IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> byLanguage, IReadOnlyList<string> words) => (_byLanguage, All) = (byLanguage, words);

    /// <summary>The words, in English.</summary>
    public IReadOnlyList<string> All { get; }

    /// <summary>The languages that have a column, by their codes; English is the language of the rows.</summary>
    public IReadOnlyList<string> Languages => ["en", .. _byLanguage.Keys];

    /// <summary>A word in a language; null where the file has no term.</summary>
    /// <param name="word">The word in English.</param>
    /// <param name="language">The language's code: <c>fr</c>.</param>
    public string? In(string word, string language) =>
        Names.Same(language, "en") ? word : _byLanguage.GetValueOrDefault(language)?.GetValueOrDefault(word);

    /// <summary>The words of the kit that hold the folder.</summary>
    public static LabelWords Of(RuleFolder folder) => folder.Table(Read);

    private static LabelWords Read(RuleFolder folder, List<CellProblem> problems)
    {
        var rows = folder.SharedRows(File, ["word"], problems);
        string[] languages = rows is [] ? [] : [.. rows[0].Cells.Row.Sheet.Besides(["word", .. RuleRow.OriginColumns])];
        Dictionary<string, IReadOnlyDictionary<string, string>> byLanguage = new(Names.Comparer);
        foreach (var language in languages)
        {
            Dictionary<string, string> terms = new(Names.Comparer);
            foreach (var row in rows)
                if (row.Cells.Text(language) is { } term && !terms.TryAdd(row.Cells.Required("word"), term)) row.Cells.Note("word", "each word once");
            byLanguage.Add(language, terms);
        }
        return new(byLanguage, [.. rows.Select(row => row.Cells.Row["word"])]);
    }
}
