using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>The kitchen's own words in other languages: <c>words.csv</c> of the store. A further language is a further column.</summary>
public sealed class KitchenWords
{
    private readonly Terms _terms;

    private KitchenWords(Terms terms) => _terms = terms;

    /// <summary>A store without such a sheet.</summary>
    public static KitchenWords None { get; } = new(Terms.None);

    /// <summary>Reads the sheet: a column <c>word</c>, then one a language.</summary>
    public static KitchenWords Read(Sheet sheet, List<CellProblem> problems) =>
        sheet.Require(["word"], problems) ? new(Terms.Read([.. sheet.Rows.Select(row => new RowReader(row, problems))], ["notes"])) : None;

    /// <summary>A word in a language; null where the sheet has no term.</summary>
    public string? In(string word, string language) => _terms.In(word, language);

    /// <summary>A word as a pack in a language says it: the sheet's term, or in English the word itself; null where there is no term.</summary>
    public string? Said(string word, string language) => In(word, language) ?? (Names.Same(language, "en") ? word : null);
}
