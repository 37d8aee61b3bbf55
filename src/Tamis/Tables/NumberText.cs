using System.Globalization;

namespace Tamis.Tables;

/// <summary>Numbers as people and spreadsheets write them. A text means the same under both decimal marks, or one of them refuses it.</summary>
public static class NumberText
{
    private const string Groupers = " \u00a0\u202f'\u2019";

    /// <summary>Reads a number.</summary>
    /// <param name="text">The text, blanks at its ends forgiven.</param>
    /// <param name="decimalMark">Point or comma, as the file has it.</param>
    /// <param name="value">The number, finite.</param>
    /// <param name="expected">What was expected, in words, where it is none.</param>
    /// <remarks>Thousands may be grouped by blanks or apostrophes, and by the other mark only where nothing can be mistaken
    /// (<c>1.234,5</c> with a decimal comma): <c>1.234</c> in a file with decimal commas is refused, it may be meant either way.</remarks>
    public static bool TryParse(string text, char decimalMark, out double value, out string expected)
    {
        value = double.NaN;
        expected = "";
        var other = decimalMark == '.' ? ',' : '.';
        var plain = text.Trim().Replace('\u2212', '-');
        if (plain.Length == 0 || plain.Any(character => char.IsLetter(character) && character is not ('e' or 'E')) || !plain.Any(char.IsAsciiDigit))
        {
            expected = "a number";
            return false;
        }
        if (!Ungroup(plain, decimalMark, other, out var digits))
        {
            expected = plain.Count(character => character == other) == 1 && !plain.Contains(decimalMark)
                ? $"a number with a decimal {Word(decimalMark)}, as the rest of the file has it: write {plain.Replace(other, decimalMark)}, or the whole number without '{other}' if thousands are meant"
                : "a number";
            return false;
        }
        if (double.TryParse(digits, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out value) && double.IsFinite(value)) return true;
        value = double.NaN;
        expected = "a number";
        return false;
    }

    /// <summary>The place of the last digit of a written number: 0.1 for <c>3.4</c>, 1 for <c>33</c>; 0 for one written with an exponent.</summary>
    internal static double Step(string text, char decimalMark)
    {
        var plain = text.Trim();
        if (plain.AsSpan().IndexOfAny('e', 'E') >= 0) return 0;
        var mark = plain.LastIndexOf(decimalMark);
        return mark < 0 ? 1 : Math.Pow(10, mark + 1 - plain.Length);
    }

    /// <summary>The shortest text that reads back as the same number.</summary>
    public static string Write(double value, char decimalMark) => value.ToString("R", CultureInfo.InvariantCulture).Replace('.', decimalMark);

    /// <summary>Point or comma said in a word.</summary>
    internal static string Word(char decimalMark) => decimalMark == ',' ? "comma" : "point";

    // Takes the thousands' marks out and leaves a decimal point; false where a mark stands where it may mean two things.
    private static bool Ungroup(string text, char mark, char other, out string digits)
    {
        digits = text;
        var start = text[0] is '-' or '+' ? 1 : 0;
        var end = text.AsSpan().IndexOfAny('e', 'E') is var e and >= 0 ? e : text.Length;
        var decimals = text.IndexOf(mark, StringComparison.Ordinal) is var m and >= 0 && m < end ? m : end;
        var whole = text[start..decimals];
        var used = whole.Where(character => !char.IsAsciiDigit(character)).Distinct().ToArray();
        if (used.Length > 1 || used.Length == 1 && used[0] != other && !Groupers.Contains(used[0])) return false;
        if (used is [var grouper])
        {
            var groups = whole.Split(grouper);
            if (groups[0].Length is 0 or > 3 || groups.Skip(1).Any(group => group.Length != 3)) return false;
            if (grouper == other && groups.Length == 2 && decimals == end) return false;
            whole = string.Concat(groups);
        }
        var fraction = decimals < end ? text[(decimals + 1)..end] : "";
        if (!fraction.All(char.IsAsciiDigit)) return false;
        digits = string.Concat(text[..start], whole, fraction.Length > 0 ? "." + fraction : "", text[end..]);
        return true;
    }

    /// <summary>The mark that a cell proves, or 0: a number alone, before one unit word, or the ends of a range. Three digits behind a single mark prove nothing.</summary>
    internal static char TellingMark(ReadOnlySpan<char> text)
    {
        var i = 0;
        while (i < text.Length && text[i] is '-' or '+' or '<' or '~' or ' ' or '\u2212') i++;
        var proof = '\0';
        for (var number = 0; number < 2; number++)
        {
            if (!Number(text, ref i, out var mark)) return '\0';
            if (mark != '\0') proof = mark;
            if (i < text.Length && text[i] is '-' or '\u2013') i++;
            else break;
        }
        while (i < text.Length && text[i] is ' ' or '\u00a0' or '\u202f') i++;
        while (i < text.Length && (char.IsLetter(text[i]) || text[i] is '%' or '°' or '/')) i++;
        return i == text.Length ? proof : '\0';
    }

    private static bool Number(ReadOnlySpan<char> text, ref int i, out char proof)
    {
        proof = '\0';
        var start = i;
        int marks = 0, lastMark = -1, digits = 0;
        var mixed = false;
        for (; i < text.Length && (char.IsAsciiDigit(text[i]) || text[i] is '.' or ','); i++)
        {
            if (char.IsAsciiDigit(text[i])) { digits++; continue; }
            mixed |= lastMark >= 0 && text[i] != text[lastMark];
            marks++;
            lastMark = i;
        }
        if (digits == 0 || lastMark == i - 1) return false;
        if (marks == 0) return true;
        var behind = i - lastMark - 1;
        var before = lastMark - start;
        // One mark with other than three digits behind it, or with 0 or four digits before it, cannot part thousands.
        if (mixed || marks == 1 && (behind != 3 || before is 0 or > 3 || text[start] == '0')) proof = text[lastMark];
        else if (marks > 1) proof = text[lastMark] == '.' ? ',' : '.';
        if (marks > 1 && !mixed && (behind != 3 || before > 11)) return false;
        return true;
    }
}
