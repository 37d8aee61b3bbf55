using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>The words of a nutrition panel and of the particulars beside it in the languages of a rule set: <c>panel-words.csv</c> of its folder. A further language is a further column.</summary>
public sealed class PanelTerms
{
    private const string File = "panel-words.csv";

    private readonly IReadOnlyDictionary<(string Word, string Language), string> _terms;

    private PanelTerms(IReadOnlyDictionary<(string, string), string> terms, IReadOnlyList<string> languages) => (_terms, Languages) = (terms, languages);

    /// <summary>The languages that have a column, by their codes.</summary>
    public IReadOnlyList<string> Languages { get; }

    /// <summary>The words of a rule set; none where its folder has no such file.</summary>
    /// <exception cref="TableException">A cell cannot be read; all problems at once.</exception>
    public static PanelTerms Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>A word in a language; null where the file has no term.</summary>
    /// <param name="word">The key of the word: a figure's key, or <c>title</c>.</param>
    /// <param name="language">The language's code.</param>
    public string? In(string word, string language) => _terms.GetValueOrDefault((Names.Key(word), Names.Key(language)));

    /// <summary>Whether the file has the word in any language.</summary>
    public bool Has(string word) => Languages.Any(language => In(word, language) is not null);

    private static PanelTerms Read(RuleFolder folder, List<CellProblem> problems)
    {
        var rows = folder.RowsIfAny(File, ["word"], problems);
        string[] languages = rows is [] ? [] : [.. rows[0].Cells.Row.Sheet.Besides(["word", .. RuleRow.OriginColumns])];
        Dictionary<(string, string), string> terms = [];
        foreach (var row in rows)
        {
            row.Origin();
            var word = Names.Key(row.Cells.Required("word"));
            foreach (var language in languages)
                if (row.Cells.Text(language) is { } term && !terms.TryAdd((word, Names.Key(language)), term)) row.Cells.Note("word", "each word once");
        }
        return new(terms, languages);
    }
}
