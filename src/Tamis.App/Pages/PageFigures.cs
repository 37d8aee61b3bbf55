using System.Net;
using System.Text.RegularExpressions;

namespace Tamis.App.Pages;

/// <summary>Finds the figures that a page marks for comparison: elements with <c>data-figure="name"</c>.</summary>
internal static partial class PageFigures
{
    private const string Attribute = "data-figure=\"";

    /// <summary>The text of each marked figure by its name, in the order of the page.</summary>
    /// <param name="markup">Markup as the kit's views write it: every attribute quoted, every element closed.</param>
    /// <remarks>Where a sheet's cell is named under a figure, that is left out: a row that moved down is no other figure.
    /// A name that comes again on the page gets a number.</remarks>
    public static IReadOnlyDictionary<string, string> Read(string markup)
    {
        var figures = new Dictionary<string, string>();
        for (var at = markup.IndexOf(Attribute, StringComparison.Ordinal); at >= 0; at = markup.IndexOf(Attribute, at + 1, StringComparison.Ordinal))
        {
            var nameStart = at + Attribute.Length;
            var name = WebUtility.HtmlDecode(markup[nameStart..markup.IndexOf('"', nameStart)]);
            var key = name;
            for (var again = 2; figures.ContainsKey(key); again++) key = $"{name} ({again})";
            figures[key] = Text(Inside(markup, at));
        }
        return figures;
    }

    // What stands between the tags of the element whose opening tag holds the given place.
    private static string Inside(string markup, int place)
    {
        var open = markup.LastIndexOf('<', place);
        var element = markup[(open + 1)..(open + 1 + markup.AsSpan(open + 1).IndexOfAny(" \n>"))];
        var start = markup.IndexOf('>', place) + 1;
        var tags = new Regex($@"<(?<end>/)?{Regex.Escape(element)}(?=[\s>])");
        var depth = 1;
        for (var tag = tags.Match(markup, start); tag.Success; tag = tag.NextMatch())
        {
            depth += tag.Groups["end"].Success ? -1 : 1;
            if (depth == 0) return markup[start..tag.Index];
        }
        throw new FormatException($"The element <{element}> with a marked figure is never closed.");
    }

    private static string Text(string markup) => Blanks().Replace(WebUtility.HtmlDecode(Tag().Replace(Origin().Replace(markup, ""), "")), " ").Trim();

    [GeneratedRegex("""<span class="from">[^<]*</span>""")]
    private static partial Regex Origin();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"[\s-[\u202f\u00a0]]+")]
    private static partial Regex Blanks();
}
