using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace Tamis.Views;

/// <summary>Turns the kit's own markup into plain text, so that both always have the same sections.</summary>
/// <remarks>Of a picture only its name and its description are read out: its figures stand in the table beside it. What is hidden from a screen reader is left out here too.</remarks>
internal static partial class PlainText
{
    private static readonly HashSet<string> Blocks =
    [
        "p", "div", "section", "header", "footer", "nav", "main", "aside", "h1", "h2", "h3", "h4", "ul", "ol", "li", "dl", "dt", "dd", "table", "caption",
        "thead", "tbody", "tfoot", "tr", "figure", "figcaption", "details", "summary", "pre", "br", "title", "desc", "svg", "form", "blockquote",
    ];

    private static readonly HashSet<string> Cells = ["td", "th", "dd"];

    /// <summary>What is being left out: a script, the inside of a picture, a mark for the eye.</summary>
    private sealed class Silence
    {
        private static readonly HashSet<string> Void = ["br", "img", "hr", "meta", "link", "input"];
        private string name = "";
        private int depth;
        private bool isReadOut;

        public bool IsOn => depth > 0 && !isReadOut;

        /// <summary>Whether the tag belongs to what is left out.</summary>
        public bool Hears(string tagName, bool closing, string tag)
        {
            if (depth > 0)
            {
                // The title and the description of a drawing are its words.
                if (name == "svg" && tagName is "title" or "desc") isReadOut = !closing;
                if (tagName == name && !tag.EndsWith('/')) depth += closing ? -1 : 1;
                return !(name == "svg" && tagName is "title" or "desc");
            }
            if (closing || Void.Contains(tagName)) return false;
            var isLeftOut = tagName is "script" or "style" or "svg" || IsPicture().IsMatch(tag) || tag.Contains("aria-hidden=\"true\"", StringComparison.Ordinal);
            if (isLeftOut) (name, depth) = (tagName, 1);
            return isLeftOut && !IsPicture().IsMatch(tag);
        }
    }

    /// <summary>The text of well-formed markup: a line a block, a tab between the cells of a row, nothing of scripts and styles.</summary>
    public static string Of(string markup)
    {
        var text = new StringBuilder(markup.Length);
        var silence = new Silence();
        for (var at = 0; at < markup.Length;)
        {
            var open = markup.IndexOf('<', at);
            if (open < 0) open = markup.Length;
            if (!silence.IsOn) text.Append(WebUtility.HtmlDecode(markup[at..open]));
            if (open == markup.Length) break;
            var close = markup.IndexOf('>', open);
            if (close < 0) break;
            var tag = markup[(open + 1)..close];
            at = close + 1;

            var name = tag.Trim('/').Split([' ', '\n'], 2)[0].ToLowerInvariant();
            var closing = tag.StartsWith('/');
            if (silence.Hears(name, closing, tag)) continue;
            if (!closing && IsPicture().IsMatch(tag) && name != "svg") text.Append(' ').Append(WebUtility.HtmlDecode(Name().Match(tag).Groups[1].Value)).Append(' ');
            else if (Cells.Contains(name) && !closing) text.Append('\t');
            else if (Blocks.Contains(name)) text.Append('\n');
            else if (name == "small" && !closing) text.Append(' ');
        }
        return string.Join('\n', text.ToString().Split('\n')
            .Select(line => string.Join('\t', line.Split('\t').Select(cell => string.Join(' ', cell.Split([' ', '\r'], StringSplitOptions.RemoveEmptyEntries)))).Trim('\t'))
            .Where(line => line.Length > 0));
    }

    [GeneratedRegex("role=\"img\"")]
    private static partial Regex IsPicture();

    [GeneratedRegex("aria-label=\"([^\"]*)\"")]
    private static partial Regex Name();
}
