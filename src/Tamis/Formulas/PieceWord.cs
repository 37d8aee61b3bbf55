namespace Tamis.Formulas;

/// <summary>The words for pieces, one and many.</summary>
public static class PieceWord
{
    private static readonly Dictionary<string, string> Irregular = new(StringComparer.Ordinal)
    {
        ["leaves"] = "leaf",
        ["loaves"] = "loaf",
        ["halves"] = "half",
        ["knives"] = "knife",
        ["pies"] = "pie",
        ["cookies"] = "cookie",
        ["brownies"] = "brownie",
    };

    /// <summary>One of what a word or two name in the plural: <c>leaves</c> → <c>leaf</c>, <c>egg yolks</c> → <c>egg yolk</c>.</summary>
    public static string Singular(string words)
    {
        var space = words.LastIndexOf(' ');
        return words[..(space + 1)] + One(words[(space + 1)..]);
    }

    /// <summary>Many of what a word or two name: <c>leaf</c> → <c>leaves</c>; a word that is many already stays.</summary>
    public static string Plural(string words)
    {
        var space = words.LastIndexOf(' ');
        return words[..(space + 1)] + Many(words[(space + 1)..]);
    }

    /// <summary>Whether two words name the same kind of piece, one or many.</summary>
    public static bool Same(string left, string right) =>
        Names.Same(left, right) || Singular(Names.Key(left)) == Singular(Names.Key(right));

    /// <summary>The words of a name, each as one piece: <c>bay leaves (fresh)</c> has bay, leaf and fresh.</summary>
    public static IReadOnlySet<string> WordsOf(string name) =>
        name.Split([' ', ',', '(', ')', '-'], StringSplitOptions.RemoveEmptyEntries).Select(word => Singular(Names.Key(word))).ToHashSet(Names.Comparer);

    private static string One(string word) =>
        Irregular.TryGetValue(word, out var one) ? one
        : word.Length < 4 || !word.EndsWith('s') || word.EndsWith("ss", StringComparison.Ordinal) || word.EndsWith("us", StringComparison.Ordinal) ? word
        : word.EndsWith("ies", StringComparison.Ordinal) ? word[..^3] + "y"
        : word.EndsWith("ches", StringComparison.Ordinal) || word.EndsWith("shes", StringComparison.Ordinal) || word.EndsWith("sses", StringComparison.Ordinal)
            || word.EndsWith("xes", StringComparison.Ordinal) || word.EndsWith("oes", StringComparison.Ordinal) ? word[..^2]
        : word[..^1];

    private static string Many(string word) =>
        Irregular.FirstOrDefault(pair => pair.Value == word).Key is { } irregular ? irregular
        : word.Length == 0 || One(word) != word ? word
        : word.EndsWith("ch", StringComparison.Ordinal) || word.EndsWith("sh", StringComparison.Ordinal) || word.EndsWith("ss", StringComparison.Ordinal) || word.EndsWith('x') ? word + "es"
        : word.EndsWith('y') && word.Length > 1 && !"aeiou".Contains(word[^2], StringComparison.Ordinal) ? word[..^1] + "ies"
        : word + "s";
}
