using System.Text.RegularExpressions;

namespace Tamis.Views;

/// <summary>Sets a cook's own sentence as a page sets its own: a real minus, squares raised, and no line's end between a number and its unit.</summary>
public static partial class Typeset
{
    /// <summary>The sentence, set; its words stay as they were written.</summary>
    public static string Text(string text) => Unit().Replace(Square().Replace(Minus().Replace(text, "\u2212"), "$1²"), "$1" + Num.UnitSpace + "$2");

    [GeneratedRegex(@"(?<=^|[\s(;,])-(?=\d)")]
    private static partial Regex Minus();

    [GeneratedRegex(@"(?<=\d )([cm]m)2\b")]
    private static partial Regex Square();

    [GeneratedRegex(@"(\d) (°C|%|g|kg|[cm]m²?|ml|min|h|s)(?!\w)")]
    private static partial Regex Unit();
}
