using System.Net;
using System.Text;

namespace Tamis.Views;

/// <summary>Turns the kit's own markup into plain text, so that both always have the same sections.</summary>
internal static class PlainText
{
    private static readonly HashSet<string> Blocks =
    [
        "p", "div", "section", "header", "footer", "nav", "main", "aside", "h1", "h2", "h3", "h4", "ul", "ol", "li", "dl", "dt", "dd", "table", "caption",
        "thead", "tbody", "tfoot", "tr", "figure", "figcaption", "details", "summary", "pre", "br", "title", "desc", "svg", "form", "blockquote",
    ];

    private static readonly HashSet<string> Cells = ["td", "th", "dd"];

    private static readonly HashSet<string> Silent = ["script", "style"];

    /// <summary>The text of well-formed markup: a line a block, a tab between the cells of a row, nothing of scripts and styles.</summary>
    public static string Of(string markup)
    {
        var text = new StringBuilder(markup.Length);
        string? silent = null;
        var drawing = 0;
        var readable = false;
        for (var at = 0; at < markup.Length;)
        {
            var open = markup.IndexOf('<', at);
            if (open < 0) open = markup.Length;
            if (silent is null && (drawing == 0 || readable)) text.Append(WebUtility.HtmlDecode(markup[at..open]));
            if (open == markup.Length) break;
            var close = markup.IndexOf('>', open);
            if (close < 0) break;
            var tag = markup[(open + 1)..close];
            var closing = tag.StartsWith('/');
            var name = tag.Trim('/').Split(' ', 2)[0].ToLowerInvariant();
            at = close + 1;

            if (silent is not null) silent = closing && name == silent ? null : silent;
            else if (!closing && Silent.Contains(name)) silent = name;
            if (silent is not null) continue;

            if (name == "svg") drawing += closing ? -1 : 1;
            // Of a drawing only its title and its description are read out: the figures stand in the table beside it.
            if (drawing > 0 && name is "title" or "desc") readable = !closing;
            if (Cells.Contains(name) && !closing) text.Append('\t');
            else if (Blocks.Contains(name)) text.Append('\n');
        }
        return string.Join('\n', text.ToString().Split('\n')
            .Select(line => string.Join('\t', line.Split('\t').Select(cell => string.Join(' ', cell.Split([' ', '\r'], StringSplitOptions.RemoveEmptyEntries)))).Trim('\t'))
            .Where(line => line.Length > 0));
    }
}
