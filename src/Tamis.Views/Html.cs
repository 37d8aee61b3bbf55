using System.Globalization;
using System.Text;

namespace Tamis.Views;

/// <summary>Markup that is safe to show: every hole of its template was escaped unless it was <see cref="Html"/> already.</summary>
/// <remarks><c>default</c> is nothing at all. A notebook shows it by itself, as HTML and as plain text.</remarks>
[TypeFormatterSource(typeof(ViewFormatters<Html>), PreferredMimeTypes = ["text/html", "text/plain"])]
public readonly record struct Html : IView
{
    private readonly string? markup;

    private Html(string markup) => this.markup = markup;

    /// <summary>The markup as it is written to a page.</summary>
    public string Markup => markup ?? "";

    /// <summary>Nothing.</summary>
    public static Html Empty => default;

    /// <summary>Whether there is nothing to show.</summary>
    public bool IsEmpty => Markup.Length == 0;

    /// <summary>Fills a template. Each hole is escaped for text and for quoted attributes; <see cref="Html"/> holes and lists of them are put in as they are; a null hole is empty.</summary>
    /// <remarks>Quote every attribute; never put a hole in a script, a style sheet or the scheme of an address.</remarks>
    public static Html Of(FormattableString template) => new(template.ToString(Escaping.Instance));

    /// <summary>Text, escaped.</summary>
    public static Html Text(string? text) => new(Escape(text ?? ""));

    /// <summary>Markup of the kit's own resources and writers; never for text that came from a file.</summary>
    internal static Html Trusted(string markup) => new(markup);

    /// <summary>Several pieces, one after the other.</summary>
    public static Html Join(IEnumerable<Html> pieces, string separator = "") =>
        new(string.Join(Escape(separator), pieces.Select(piece => piece.Markup)));

    /// <summary>Two pieces, one after the other.</summary>
    public static Html operator +(Html left, Html right) => new(left.Markup + right.Markup);

    Html IView.ToHtml() => this;

    /// <summary>The same content for a reader without HTML: a line a block, a tab between cells.</summary>
    public string ToPlainText() => PlainText.Of(Markup);

    /// <inheritdoc cref="ToPlainText"/>
    public override string ToString() => ToPlainText();

    /// <summary>The same markup with the line ends of every system alike, so that pages have the same bytes everywhere.</summary>
    internal Html WithUnixLineEnds() => new(Markup.ReplaceLineEndings("\n"));

    /// <summary>Escapes text so that it can stand between tags and inside quoted attributes.</summary>
    internal static string Escape(string text)
    {
        if (text.AsSpan().IndexOfAny("<>&\"'") < 0) return text;
        var escaped = new StringBuilder(text.Length + 16);
        foreach (var character in text)
        {
            _ = character switch
            {
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '&' => escaped.Append("&amp;"),
                '"' => escaped.Append("&quot;"),
                '\'' => escaped.Append("&#39;"),
                _ => escaped.Append(character),
            };
        }
        return escaped.ToString();
    }

    private sealed class Escaping : IFormatProvider, ICustomFormatter
    {
        public static readonly Escaping Instance = new();

        public object? GetFormat(Type? formatType) => formatType == typeof(ICustomFormatter) ? this : null;

        public string Format(string? format, object? arg, IFormatProvider? formatProvider) => arg switch
        {
            null => "",
            Html html => html.Markup,
            IEnumerable<Html> pieces => Join(pieces).Markup,
            IFormattable value => Escape(value.ToString(format, CultureInfo.InvariantCulture)),
            _ => Escape(arg.ToString() ?? ""),
        };
    }
}
