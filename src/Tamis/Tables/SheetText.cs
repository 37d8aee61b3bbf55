using System.Text;

namespace Tamis.Tables;

/// <summary>How the text of a file is stored as bytes.</summary>
public enum SheetEncoding
{
    /// <summary>UTF-8, with or without a byte order mark.</summary>
    Utf8,
    /// <summary>UTF-16, little end first, with its mark.</summary>
    Utf16,
    /// <summary>UTF-16, big end first, with its mark.</summary>
    Utf16BigEndian,
    /// <summary>Windows-1252, as older spreadsheets save in western Europe.</summary>
    Windows1252,
}

/// <summary>The text of a file and how it was stored.</summary>
internal sealed record DecodedText(string Text, SheetEncoding Encoding, bool HasByteOrderMark);

/// <summary>From bytes to text.</summary>
internal static class SheetText
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    // What files that are no text begin with, and what a cook would call them.
    private static readonly (byte[] Start, string What)[] Foreign =
    [
        ([0x50, 0x4B, 0x03, 0x04], "a spreadsheet’s own format (xlsx or ods)"),
        ([0xD0, 0xCF, 0x11, 0xE0], "a spreadsheet’s own format (xls)"),
        ("%PDF"u8.ToArray(), "a PDF"),
        ("{\\rtf"u8.ToArray(), "a word processor’s file"),
    ];

    /// <summary>The encoding that writes text the same way again.</summary>
    public static Encoding EncodingFor(SheetEncoding encoding) => encoding switch
    {
        SheetEncoding.Utf16 => new UnicodeEncoding(bigEndian: false, byteOrderMark: true),
        SheetEncoding.Utf16BigEndian => new UnicodeEncoding(bigEndian: true, byteOrderMark: true),
        SheetEncoding.Windows1252 => Windows1252,
        _ => Utf8,
    };

    /// <summary>What to say of a file whose letters had to be read by the western code page.</summary>
    public const string OldLetters = "letters of Windows-1252 (not UTF-8): look whether the accents are right";

    /// <summary>Whether bytes are text of the western code page, for want of anything better.</summary>
    public static bool IsWindows1252(ReadOnlySpan<byte> bytes) => !bytes.StartsWith(Encoding.Unicode.Preamble) && !bytes.StartsWith(Encoding.BigEndianUnicode.Preamble) && !System.Text.Unicode.Utf8.IsValid(bytes);

    /// <summary>Reads bytes as text; null with a problem where they are no text.</summary>
    public static DecodedText? Decode(string file, ReadOnlySpan<byte> bytes, List<CellProblem> problems)
    {
        if (bytes.StartsWith(Encoding.UTF8.Preamble)) return Utf8OrElse(bytes[3..], hasMark: true);
        if (bytes.StartsWith(Encoding.Unicode.Preamble)) return new(Encoding.Unicode.GetString(bytes[2..]), SheetEncoding.Utf16, true);
        if (bytes.StartsWith(Encoding.BigEndianUnicode.Preamble)) return new(Encoding.BigEndianUnicode.GetString(bytes[2..]), SheetEncoding.Utf16BigEndian, true);
        foreach (var (start, what) in Foreign)
        {
            if (!bytes.StartsWith(start)) continue;
            problems.Add(Whole($"this is {what}, not a CSV file; open it and save as CSV"));
            return null;
        }
        if (bytes.Contains((byte)0))
        {
            problems.Add(Whole("this is not a text file; open it in the spreadsheet and save as CSV (UTF-8)"));
            return null;
        }
        var decoded = Utf8OrElse(bytes, hasMark: false);
        if (decoded.Text.AsSpan().TrimStart() is ['<', ..])
        {
            problems.Add(Whole("this is a web page or XML, not a CSV file; open it and save as CSV"));
            return null;
        }
        return decoded;

        CellProblem Whole(string sentence) => new(file, 0, "", "", sentence);
    }

    // Accents must survive: what is no UTF-8 was saved by a spreadsheet in its western code page.
    private static DecodedText Utf8OrElse(ReadOnlySpan<byte> bytes, bool hasMark)
    {
        try
        {
            return new(Utf8.GetString(bytes), SheetEncoding.Utf8, hasMark);
        }
        catch (DecoderFallbackException)
        {
            return new(Windows1252.GetString(bytes), SheetEncoding.Windows1252, false);
        }
    }

    private static Encoding Windows1252 => CodePagesEncodingProvider.Instance.GetEncoding(1252, EncoderFallback.ExceptionFallback, DecoderFallback.ReplacementFallback)
        ?? throw new InvalidOperationException("The runtime lacks the code page 1252.");
}
