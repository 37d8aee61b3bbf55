using Markdig;
using Markdig.Renderers;

namespace Tamis.Views;

/// <summary>Turns Markdown into HTML. Raw HTML in it is text: it may have come from a file.</summary>
public static class MarkdownView
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().DisableHtml().UsePipeTables().UseAutoIdentifiers().Build();

    /// <summary>The Markdown as HTML.</summary>
    public static Html Render(string markdown) => Html.Trusted(SafeAddresses(Markdown.Parse(markdown, Pipeline)).ToHtml(Pipeline));

    /// <summary>A sentence of Markdown as HTML, to stand within a paragraph of something else.</summary>
    public static Html RenderSentence(string markdown)
    {
        using StringWriter writer = new();
        HtmlRenderer renderer = new(writer) { ImplicitParagraph = true };
        Pipeline.Setup(renderer);
        renderer.Render(SafeAddresses(Markdown.Parse(markdown, Pipeline)));
        return Html.Trusted(writer.ToString().TrimEnd());
    }

    /// <summary>A sentence of Markdown without its marks, where there is room for text alone.</summary>
    public static string ToText(string markdown) => Markdown.ToPlainText(markdown, Pipeline).Trim();

    // An address may lead beside the page or into it, nowhere else: a page makes no request and runs no script from a text.
    private static Markdig.Syntax.MarkdownDocument SafeAddresses(Markdig.Syntax.MarkdownDocument document)
    {
        foreach (var link in Markdig.Syntax.MarkdownObjectExtensions.Descendants<Markdig.Syntax.Inlines.LinkInline>(document))
            if (!IsSafe(link.Url, link.IsImage)) link.Url = "#";
        foreach (var link in Markdig.Syntax.MarkdownObjectExtensions.Descendants<Markdig.Syntax.Inlines.AutolinkInline>(document))
            if (!IsSafe(link.Url, isImage: false)) link.Url = "#";
        return document;
    }

    private static bool IsSafe(string? address, bool isImage)
    {
        if (address is null) return true;
        var scheme = address.IndexOf(':', StringComparison.Ordinal);
        var isRelative = !address.StartsWith("//", StringComparison.Ordinal) && (scheme < 0 || address[..scheme].IndexOfAny(['/', '?', '#']) >= 0);
        return isRelative || !isImage && Uri.TryCreate(address, UriKind.Absolute, out var absolute) && absolute.Scheme is "https" or "http" or "mailto";
    }
}
