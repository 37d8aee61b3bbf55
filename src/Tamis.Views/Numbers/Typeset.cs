using System.Text.RegularExpressions;

namespace Tamis.Views;

/// <summary>Sets a cook's own sentence as a page sets its own: a real minus, and no line's end between a number and its unit.</summary>
public static partial class Typeset
{
    /// <summary>The sentence, set; its words stay as they were written.</summary>
    public static string Text(string text) => Unit().Replace(Minus().Replace(text, "\u2212"), "$1" + Num.UnitSpace + "$2");

    [GeneratedRegex(@"(?<=^|[\s(;,])-(?=\d)")]
    private static partial Regex Minus();

    [GeneratedRegex(@"(\d) (°C|%|g|kg|mm|cm|ml|min|h|s)\b")]
    private static partial Regex Unit();
}
