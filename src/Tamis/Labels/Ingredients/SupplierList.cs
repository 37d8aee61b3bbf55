using System.Globalization;
using System.Text.RegularExpressions;

namespace Tamis.Labels;

/// <summary>A part of a supplier's list of ingredients.</summary>
/// <param name="Name">Its name, without its percentage.</param>
/// <param name="Percent">The percentage beside it; null where there is none.</param>
/// <param name="Class">The additive class before it (<c>emulsifier</c>), in the singular; null where there is none.</param>
/// <param name="Parts">What stands in brackets behind it.</param>
public sealed record SupplierPart(string Name, double? Percent, string? Class, IReadOnlyList<SupplierPart> Parts);

/// <summary>Reads a supplier's list of ingredients: <c>sugar, cocoa powder 14 %, emulsifiers: lecithins (rapeseed), E 476; natural flavouring</c>.</summary>
/// <remarks>Commas and semicolons part the list, but not within brackets nor within a number. A class in the plural goes on over commas as long as additives follow, and to a semicolon at most; one in the singular names one additive.</remarks>
public static partial class SupplierList
{
    /// <summary>The same text for lists that hold the same, in whatever order and spelling of names.</summary>
    internal static string KeyOf(IReadOnlyList<SupplierPart> parts) =>
        string.Join(", ", parts.Select(part => $"{part.Class} {Names.Key(part.Name)} {part.Percent} ({KeyOf(part.Parts)})").Order(StringComparer.Ordinal));

    /// <summary>A list without the ingredient's own name before the brackets, as a pack may be copied: <c>wheat flour (wheat flour, calcium carbonate)</c>. That name is printed already.</summary>
    internal static IReadOnlyList<SupplierPart> Unwrapped(IReadOnlyList<SupplierPart> parts, string name) => parts is [{ Parts: [_, ..] inner } only] && Names.Same(only.Name, name) ? inner : parts;

    /// <summary>Reads a list.</summary>
    /// <param name="text">The list.</param>
    /// <param name="additives">The additives that it may name.</param>
    /// <param name="words">The words of classes.</param>
    /// <param name="unknown">Receives what stands behind a class and is no known additive.</param>
    public static IReadOnlyList<SupplierPart> Read(string text, Additives additives, LabelWords words, ICollection<string> unknown)
    {
        List<SupplierPart> parts = [];
        foreach (var stretch in Parted(text, ';'))
        {
            string? current = null;
            var isPlural = false;
            foreach (var written in Parted(stretch, ','))
            {
                var item = written;
                if (item.IndexOf(':') is var colon and > 0 && words.ClassOf(item[..colon].Trim()) is { } found)
                {
                    (current, isPlural) = (found.Class, found.IsPlural);
                    item = item[(colon + 1)..].Trim();
                    if (additives.Find(NameOf(item)) is null) unknown.Add(item);
                }
                else if (current is not null && (!isPlural || additives.Find(NameOf(item)) is null)) current = null;
                parts.Add(PartOf(item, current, additives, words, unknown));
            }
        }
        return parts;
    }

    private static SupplierPart PartOf(string written, string? additiveClass, Additives additives, LabelWords words, ICollection<string> unknown)
    {
        var open = written.IndexOfAny(['(', '[']);
        var inner = open > 0 && written.LastIndexOfAny([')', ']']) is var close && close > open ? written[(open + 1)..close] : null;
        var outer = inner is null ? written : written[..open] + written[(open + inner.Length + 2)..];
        var percent = Percentage().Match(outer);
        var share = percent.Success ? double.Parse(percent.Groups[1].Value.Replace(',', '.'), CultureInfo.InvariantCulture) : (double?)null;
        var name = (percent.Success ? outer.Remove(percent.Index, percent.Length) : outer).Trim();
        return new(name, share, additiveClass, inner is null ? [] : Read(inner, additives, words, unknown));
    }

    private static string NameOf(string written) => PercentageAtEnd().Replace(written.IndexOfAny(['(', '[']) is var open and > 0 ? written[..open] : written, "").Trim();

    private static List<string> Parted(string text, char separator)
    {
        List<string> parts = [];
        var (start, depth) = (0, 0);
        for (var at = 0; at <= text.Length; at++)
        {
            if (at < text.Length && text[at] is '(' or '[') depth++;
            if (at < text.Length && text[at] is ')' or ']') depth--;
            var isWithinNumber = separator == ',' && at > 0 && at + 1 < text.Length && char.IsAsciiDigit(text[at - 1]) && char.IsAsciiDigit(text[at + 1]);
            if (at < text.Length && (text[at] != separator || depth > 0 || isWithinNumber)) continue;
            if (text[start..at].Trim() is { Length: > 0 } part) parts.Add(part);
            start = at + 1;
        }
        return parts;
    }

    [GeneratedRegex(@"\s*(\d+(?:[.,]\d+)?)\s*%")]
    private static partial Regex Percentage();

    [GeneratedRegex(@"\s*\d+(?:[.,]\d+)?\s*%\s*$")]
    private static partial Regex PercentageAtEnd();
}
