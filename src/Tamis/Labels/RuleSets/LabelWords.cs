using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Words that laws prescribe for a label, in several languages: <c>words.csv</c> beside the rule sets. A further language is a further column.</summary>
public sealed class LabelWords
{
    private const string File = "words.csv", BeforeColon = "#:";

    private readonly Terms _terms;
    private readonly Dictionary<string, int> _places;

    private LabelWords(Terms terms)
    {
        _terms = terms;
        _places = terms.Words.Select((word, place) => (word, place)).ToDictionary(each => each.word, each => each.place, Names.Comparer);
    }

    /// <summary>The words, in English.</summary>
    public IReadOnlyList<string> All => _terms.Words;

    /// <summary>The languages that have a column, by their codes; English is the language of the rows.</summary>
    public IReadOnlyList<string> Languages => ["en", .. _terms.Languages];

    /// <summary>A word in a language; null where the file has no term.</summary>
    /// <param name="word">The word in English.</param>
    /// <param name="language">The language's code: <c>fr</c>.</param>
    public string? In(string word, string language) => Names.Same(language, "en") ? word : _terms.In(word, language);

    /// <summary>Words with a colon behind them, set as the language sets it: <c>ingrédients :</c> with a space that does not break. A language whose row is blank sets it as English does.</summary>
    /// <param name="words">The words before it.</param>
    /// <param name="language">The language's code.</param>
    public string Colon(string words, string language) => (In(BeforeColon, language) ?? BeforeColon).Replace("#", words);

    /// <summary>A class of additives in the singular, and whether it was written in the plural; null where the word is no class.</summary>
    public (string Class, bool IsPlural)? ClassOf(string word)
    {
        if (!_places.TryGetValue(word, out var place)) return null;
        // Each class stands in the file in the singular and behind it in the plural; an acidity regulator is no plural of the acids before it.
        var isPlural = place > 0 && All[place].StartsWith(All[place - 1], StringComparison.Ordinal);
        return (isPlural ? All[place - 1] : All[place], isPlural);
    }

    /// <summary>A class of additives in the plural.</summary>
    /// <param name="singular">The class as <see cref="ClassOf"/> gives it.</param>
    public string PluralOf(string singular) => All[_places[singular] + 1];

    /// <summary>The words of the kit that hold the folder.</summary>
    public static LabelWords Of(RuleFolder folder) => folder.Table(Read);

    private static LabelWords Read(RuleFolder folder, List<CellProblem> problems) =>
        new(Terms.Read([.. folder.SharedRows(File, ["word"], problems).Select(row => row.Cells)], RuleRow.OriginColumns));
}
