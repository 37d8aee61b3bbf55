using System.Globalization;
using System.Text;

namespace Tamis.Physics;

/// <summary>Whole words in names, accents aside: <c>purée</c> holds <c>puree</c>, <c>buttermilk</c> does not hold <c>butter</c>.</summary>
internal static class NameWords
{
    /// <summary>Whether a name holds a word or several in a row.</summary>
    public static bool Hold(string name, string words) => $" {Key(name)} ".Contains($" {Key(words)} ", StringComparison.Ordinal);

    /// <summary>Whether a name begins with some words, or with the beginning of the last of them.</summary>
    public static bool BeginsWith(string name, string words) => Key(name).StartsWith(Key(words), StringComparison.Ordinal);

    /// <summary>Whether two names are the same but for case, blanks, hyphens and accents.</summary>
    public static bool Same(string left, string right) => Key(left) == Key(right);

    /// <summary>The form under which two spellings are the same.</summary>
    public static string Key(string text)
    {
        StringBuilder plain = new(text.Length);
        foreach (var letter in text.Normalize(NormalizationForm.FormD))
            if (CharUnicodeInfo.GetUnicodeCategory(letter) != UnicodeCategory.NonSpacingMark) plain.Append(char.IsLetterOrDigit(letter) || letter is '%' or '_' ? letter : ' ');
        return Names.Key(plain.ToString());
    }
}
