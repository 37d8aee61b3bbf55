namespace Tamis.Tables;

/// <summary>Keeps text from becoming a formula when a spreadsheet opens a file, and takes the guard off again.</summary>
/// <remarks>The characters are those of OWASP's page on CSV injection, with their full-width forms. The guard is the apostrophe by which
/// spreadsheets mark a cell as text. A plain number (<c>-5</c>) needs none. <c>Off(On(text))</c> is <c>text</c> for every text.</remarks>
public static class FormulaGuard
{
    private const char Mark = '\'';

    /// <summary>The text as it may be written to a file.</summary>
    public static string On(string text) => IsNeeded(text) ? Mark + text : text;

    /// <summary>The text of a cell without the guard that <see cref="On"/> put before it.</summary>
    public static string Off(string cell) => cell is [Mark, ..] && IsNeeded(cell[1..]) ? cell[1..] : cell;

    private static bool IsNeeded(string text)
    {
        if (text.Length == 0 || char.IsLetterOrDigit(text[0])) return false;
        if (text.AsSpan().TrimStart(Mark) is ['\t' or '\r', ..]) return true;
        return text.AsSpan().TrimStart(" \t\r\n\u00a0'") is ['=' or '+' or '-' or '@' or '\uff1d' or '\uff0b' or '\uff0d' or '\uff20', ..] && !IsPlainNumber(text);
    }

    private static bool IsPlainNumber(ReadOnlySpan<char> text)
    {
        var digits = text[0] is '+' or '-' ? text[1..] : text;
        var mark = digits.IndexOfAny('.', ',');
        return mark < 0 ? AreDigits(digits) : AreDigits(digits[..mark]) && AreDigits(digits[(mark + 1)..]);
    }

    private static bool AreDigits(ReadOnlySpan<char> text) => text.Length > 0 && !text.ContainsAnyExceptInRange('0', '9');
}
