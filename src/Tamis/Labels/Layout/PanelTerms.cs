using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>The words of a nutrition panel and of the particulars beside it in the languages of a rule set: <c>panel-words.csv</c> of its folder. A further language is a further column.</summary>
public sealed partial class PanelTerms
{
    private const string File = "panel-words.csv";

    private readonly Terms _terms;

    private PanelTerms(Terms terms) => _terms = terms;

    /// <summary>The languages that have a column, by their codes.</summary>
    public IReadOnlyList<string> Languages => _terms.Languages;

    /// <summary>The words of a rule set; none where its folder has no such file.</summary>
    /// <exception cref="TableException">A cell cannot be read; all problems at once.</exception>
    public static PanelTerms Of(RuleSet rules) => rules.Folder.Table(Read);

    /// <summary>A word in a language; null where the file has no term.</summary>
    /// <param name="word">The key of the word: a figure's key, or <c>title</c>.</param>
    /// <param name="language">The language's code.</param>
    public string? In(string word, string language) => _terms.In(word, language);

    /// <summary>Whether the file has the word in any language.</summary>
    public bool Has(string word) => Languages.Any(language => In(word, language) is not null);

    /// <summary>A text with the decimal mark of a language in its figures: <c>0,5 %</c>.</summary>
    /// <param name="text">The text, with points.</param>
    /// <param name="language">The language's code.</param>
    public string Marked(string text, string language) => In("decimal mark", language) is { } mark && mark != "." ? Point().Replace(text, mark) : text;

    private static PanelTerms Read(RuleFolder folder, List<CellProblem> problems)
    {
        var rows = folder.RowsIfAny(File, ["word"], problems);
        // A word that is printed is a rule like any other: it names its source.
        foreach (var row in rows) row.Origin();
        return new(Terms.Read([.. rows.Select(row => row.Cells)], RuleRow.OriginColumns));
    }

    [GeneratedRegex(@"(?<=\d)\.(?=\d)")]
    private static partial Regex Point();
}
