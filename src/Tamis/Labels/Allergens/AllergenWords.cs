using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Where a word for an allergen stands in a text.</summary>
/// <param name="Substance">The substance.</param>
/// <param name="Start">The first letter.</param>
/// <param name="Length">How many letters.</param>
public readonly record struct AllergenSpan(string Substance, int Start, int Length);

/// <summary>How allergens are printed and found in several languages: <c>allergen-words.csv</c> beside the rule sets, in each language first the word to print.</summary>
public sealed class AllergenWords
{
    /// <summary>The file.</summary>
    public const string File = "allergen-words.csv";

    private readonly IReadOnlyList<(string Substance, string Language, IReadOnlyList<string> Words)> _all;

    private AllergenWords(IReadOnlyList<(string, string, IReadOnlyList<string>)> all) => _all = all;

    /// <summary>The substances that the file knows.</summary>
    public IReadOnlyCollection<string> Substances => [.. _all.Select(each => each.Substance).Distinct()];

    /// <summary>The word to print in a language; null where there is none.</summary>
    public string? Print(string substance, string language) =>
        _all.Where(each => each.Substance == substance && Names.Same(each.Language, language)).Select(each => each.Words.FirstOrDefault()).FirstOrDefault();

    /// <summary>The substance that a word of the kitchen means, in whatever language; null where nobody knows it.</summary>
    public string? SubstanceOf(string word) => _all.Where(each => Names.Same(each.Substance, word) || each.Words.Contains(word, Names.Comparer)).Select(each => each.Substance).FirstOrDefault();

    /// <summary>Where a text in a language names substances, from left to right; the longest word is taken, and no letter twice.</summary>
    /// <remarks>A word of four letters or more is found within another one (<c>Weizen</c> in <c>Weizenmehl</c>); a shorter one (<c>egg</c>, <c>Ei</c>) only by itself, with or without a plural's letter.</remarks>
    public IReadOnlyList<AllergenSpan> Find(string text, string language)
    {
        List<AllergenSpan> found = [];
        foreach (var (substance, word) in _all.Where(each => Names.Same(each.Language, language)).SelectMany(each => each.Words.Select(word => (each.Substance, word))).OrderByDescending(each => each.word.Length))
            for (var at = text.IndexOf(word, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(word, at + word.Length, StringComparison.OrdinalIgnoreCase))
            {
                AllergenSpan span = new(substance, at, word.Length);
                if ((word.Length >= 4 || StandsAlone(text, span)) && !found.Any(other => Overlap(other, span))) found.Add(span);
            }
        return [.. found.OrderBy(span => span.Start)];
    }

    internal static AllergenWords Read(RuleFolder folder, List<CellProblem> problems)
    {
        var rows = folder.SharedRows(File, ["substance", "en"], problems);
        string[] languages = rows is [] ? [] : [.. rows[0].Cells.Row.Sheet.Besides(["substance", .. RuleRow.OriginColumns])];
        return new([.. from row in rows from language in languages where row.Cells.Text(language) is not null select (row.Cells.Required("substance"), language, row.Cells.Words(language))]);
    }

    private static bool StandsAlone(string text, AllergenSpan span) =>
        (span.Start == 0 || !char.IsLetter(text[span.Start - 1])) && (span.Start + span.Length == text.Length || !char.IsLetter(text[span.Start + span.Length]));

    private static bool Overlap(AllergenSpan left, AllergenSpan right) => left.Start < right.Start + right.Length && right.Start < left.Start + left.Length;
}
