using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace Tamis.Views.Tests;

/// <summary>Reads markup back as a browser would.</summary>
internal static class Markup
{
    /// <summary>A name that would run as a script, break out of an attribute, close a script element, or speak Plotly's small markup, if it were not escaped.</summary>
    public const string Hostile = "<img src=x onerror=alert(1)>\"'></script><!--<a href=\"https://example.org\">%{x}</a>&amp;";

    private static readonly HtmlParser Parser = new();

    public static IHtmlDocument Read(Html html) => Parser.ParseDocument($"<!DOCTYPE html><body>{html.Markup}");

    public static IHtmlDocument Read(string page) => Parser.ParseDocument(page);

    /// <summary>Fails if anything in it came to life that a text from a file should not have.</summary>
    public static void IsQuiet(IHtmlDocument document)
    {
        Assert.Empty(document.QuerySelectorAll("img, iframe, object, embed, link[rel=stylesheet]"));
        Assert.All(document.QuerySelectorAll("script"), script => Assert.Equal("application/json", script.GetAttribute("type")));
        foreach (var element in document.All)
            foreach (var attribute in element.Attributes)
                Assert.False(attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase), $"{element.LocalName} has {attribute.Name}");
        Assert.DoesNotContain(document.QuerySelectorAll("a"), link => link.GetAttribute("href") is { } href && href.Contains("example.org", StringComparison.Ordinal));
    }
}
