using System.Text.RegularExpressions;
using Tamis.Tables;

namespace Tamis.Labels;

/// <summary>Where a word for an allergen stands in a text.</summary>
/// <param name="Substance">The substance.</param>
/// <param name="Start">The first letter.</param>
/// <param name="Length">How many letters.</param>
public readonly record struct AllergenSpan(string Substance, int Start, int Length);

/// <summary>How allergens are printed and found in several languages: <c>allergen-words.csv</c> beside the rule sets, in each language first the word to print; and <c>allergen-word-exceptions.csv</c>, the phrases in which such a word means something else.</summary>
public sealed partial class AllergenWords
{
    /// <summary>The file.</summary>
    public const string File = "allergen-words.csv";

    /// <summary>The file of phrases in which a word means something else.</summary>
    public const string ExceptionsFile = "allergen-word-exceptions.csv";

    // Every name on a pack is searched for every word: the words of a language are put in order once.
    private readonly ILookup<string, (string Substance, string Word)> _longestFirst;
    private readonly IReadOnlyDictionary<string, string> _substances;
    private readonly ILookup<(string Substance, string Language), string> _inOrder;

    private readonly ILookup<(string Substance, string Language), Regex> _exceptions;

    private AllergenWords(IReadOnlyList<(string Substance, string Language, IReadOnlyList<string> Words)> all, IEnumerable<(string Substance, string Language, Regex Phrase)> exceptions)
    {
        _exceptions = exceptions.ToLookup(each => (each.Substance, Names.Key(each.Language)), each => each.Phrase);
        var words = all.SelectMany(each => each.Words.Select(word => (each.Substance, each.Language, Word: word))).ToArray();
        Substances = [.. all.Select(each => each.Substance).Distinct()];
        _longestFirst = words.OrderByDescending(each => each.Word.Length).ToLookup(each => each.Language, each => (each.Substance, each.Word), Names.Comparer);
        _substances = Substances.Select(substance => (Word: substance, Substance: substance)).Concat(words.Select(each => (each.Word, each.Substance)))
            .DistinctBy(each => each.Word, Names.Comparer).ToDictionary(each => each.Word, each => each.Substance, Names.Comparer);
        _inOrder = words.ToLookup(each => (each.Substance, Names.Key(each.Language)), each => each.Word);
    }

    /// <summary>The substances that the file knows.</summary>
    public IReadOnlyCollection<string> Substances { get; }

    /// <summary>The word to print in a language; null where there is none.</summary>
    public string? Print(string substance, string language) => WordsOf(substance, language).FirstOrDefault();

    /// <summary>Every word for a substance in a language, the one to print first.</summary>
    public IEnumerable<string> WordsOf(string substance, string language) => _inOrder[(substance, Names.Key(language))];

    /// <summary>The substance that a word of the kitchen means, in whatever language; null where nobody knows it.</summary>
    public string? SubstanceOf(string word) => _substances.GetValueOrDefault(word);

    /// <summary>Where a text in a language names substances, from left to right; the longest word is taken, and no letter twice.</summary>
    /// <remarks>A word of four letters or more is found within another one (<c>Weizen</c> in <c>Weizenmehl</c>); a shorter one (<c>egg</c>, <c>Ei</c>) only by itself, with or without a plural's letter.
    /// Nothing is found in a phrase that means something else (<c>Buchweizen</c>), and only of the substance that the phrase is no name of: <c>almond milk</c> names almonds.</remarks>
    public IReadOnlyList<AllergenSpan> Find(string text, string language)
    {
        List<AllergenSpan> found = [];
        foreach (var (substance, word) in _longestFirst[language])
        {
            if (!text.Contains(word, StringComparison.OrdinalIgnoreCase)) continue;
            var meant = WithoutExceptions(substance, text, language);
            for (var at = meant.IndexOf(word, StringComparison.OrdinalIgnoreCase); at >= 0; at = meant.IndexOf(word, at + word.Length, StringComparison.OrdinalIgnoreCase))
            {
                AllergenSpan span = new(substance, at, word.Length);
                if ((word.Length >= 4 || StandsAlone(meant, span)) && !found.Any(other => Overlap(other, span))) found.Add(span);
            }
        }
        return [.. found.OrderBy(span => span.Start)];
    }

    /// <summary>A text of the same length, with commas in place of each phrase in which a word for the substance means something else.</summary>
    internal string WithoutExceptions(string substance, string text, string language) =>
        _exceptions[(substance, Names.Key(language))].Aggregate(text, (left, phrase) => phrase.Replace(left, match => new(',', match.Length)));

    internal static AllergenWords Read(RuleFolder folder, List<CellProblem> problems)
    {
        (string, string, IReadOnlyList<string>)[] words = [.. from row in folder.SharedRows(File, ["substance", "en"], problems)
            from term in row.ByLanguage(["substance"])
            select (row.Cells.Required("substance"), term.Key, row.Cells.Words(term.Key))];
        List<(string, string, Regex)> exceptions = [];
        string[] fixedColumns = ["exception", "substance", "before_words"];
        foreach (var row in folder.SharedRows(ExceptionsFile, [.. fixedColumns, "en"], problems))
        {
            row.Cells.Required("exception");
            row.Origin();
            var (substance, isBeforeWords) = (row.Cells.Required("substance"), row.YesOrNo("before_words"));
            if (!words.Any(each => each.Item1 == substance)) row.Cells.Note("substance", $"a substance of {File}, such as {string.Join(" or ", Names.Nearest(substance, words.Select(each => each.Item1).Distinct()))}");
            foreach (var language in row.ByLanguage(fixedColumns).Keys)
                exceptions.AddRange(row.Cells.Words(language).Select(phrase => (substance, language, PhraseOf(phrase, isBeforeWords))));
        }
        return new(words, exceptions);
    }

    // Where the phrase may not stand before other words (almond milk chocolate), anything but the end of the name undoes it, and the word counts.
    private static Regex PhraseOf(string phrase, bool isBeforeWords)
    {
        var inner = string.Join(@"[ \t\u00a0-]+", Gap().Split(phrase).Select(part => Apostrophe().Replace(Regex.Escape(part), "['’]")));
        return new($@"(?<!\p{{L}}){inner}{(isBeforeWords ? "" : @"s?(?![ \t\u00a0'’-]*\p{L})")}", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
    }

    [GeneratedRegex(@"[ -]+")]
    private static partial Regex Gap();

    [GeneratedRegex("['’]")]
    private static partial Regex Apostrophe();

    private static bool StandsAlone(string text, AllergenSpan span) =>
        (span.Start == 0 || !char.IsLetter(text[span.Start - 1])) && (span.Start + span.Length == text.Length || !char.IsLetter(text[span.Start + span.Length]));

    private static bool Overlap(AllergenSpan left, AllergenSpan right) => left.Start < right.Start + right.Length && right.Start < left.Start + left.Length;
}
