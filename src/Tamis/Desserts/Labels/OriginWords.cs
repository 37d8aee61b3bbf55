using Tamis.Labels;

namespace Tamis.Desserts;

/// <summary>The place of origin as a pack says it, in the words of the rules (<c>panel-words.csv</c>, row <c>origin</c>): a bare name of a country says nothing.</summary>
internal static class OriginWords
{
    private const string Words = "origin", Said = "origin is said";

    /// <summary>The origin with its words; as it is where it begins with such words itself, or the rules have none in the language.</summary>
    /// <param name="rules">The rule set.</param>
    /// <param name="origin">The origin in the language: <c>Ireland</c>, or <c>Product of Ireland</c>.</param>
    /// <param name="language">The language's code.</param>
    public static string Of(RuleSet rules, string origin, string language)
    {
        var terms = PanelTerms.Of(rules);
        var begins = terms.In(Said, language)?.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [];
        return terms.In(Words, language) is not { } words || Array.Exists(begins, begin => BeginsWith(origin, begin)) ? origin : words.Replace("#", origin);
    }

    // A word must end where it does: Australia does not begin with the German word for 'from'.
    private static bool BeginsWith(string text, string begin) =>
        text.StartsWith(begin, StringComparison.OrdinalIgnoreCase) && (!char.IsLetter(begin[^1]) || text.Length == begin.Length || !char.IsLetter(text[begin.Length]));

    /// <summary>Whether the rules have words for it in a language.</summary>
    public static bool HasThem(RuleSet rules, string language) => PanelTerms.Of(rules).In(Words, language) is not null;
}
