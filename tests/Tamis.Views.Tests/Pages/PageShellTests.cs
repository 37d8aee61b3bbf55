using System.Globalization;
using System.Text.RegularExpressions;

namespace Tamis.Views.Tests.Pages;

public partial class PageShellTests
{
    public static TheoryData<string> Names => [.. Samples.Pages.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Render_Page_FetchesNothing(string name)
    {
        var document = Markup.Read(PageShell.Render(Samples.Pages[name]));

        foreach (var element in document.All)
        {
            foreach (var attribute in (string[])["src", "href", "action", "poster", "data", "srcset"])
                if (element.GetAttribute(attribute) is { } address)
                    Assert.False(address.Contains("//", StringComparison.Ordinal), $"{element.LocalName} points to {address}");
            if (element.GetAttribute("style") is { } style) Assert.DoesNotContain("url(", style, StringComparison.Ordinal);
        }
        Assert.All(document.QuerySelectorAll("style"), style =>
        {
            Assert.DoesNotContain("url(", style.TextContent, StringComparison.Ordinal);
            Assert.DoesNotContain("@import", style.TextContent, StringComparison.Ordinal);
        });
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Render_Page_HasItsFrame(string name)
    {
        var page = Samples.Pages[name];
        var document = Markup.Read(PageShell.Render(page));

        Assert.Equal("en", document.DocumentElement.GetAttribute("lang"));
        Assert.Equal(page.Title, document.Title);
        Assert.Equal("#text", document.QuerySelector("a.skip")!.GetAttribute("href"));
        Assert.Equal(name + ".html", document.QuerySelector("nav [aria-current=page]")!.GetAttribute("href"));
        Assert.Single(document.QuerySelectorAll("main#text h1"));
        Assert.Contains("the person who signs", document.QuerySelector("footer")!.TextContent, StringComparison.Ordinal);
        string[] ids = [.. document.QuerySelectorAll("[id]").Select(element => element.Id!)];
        Assert.Equal(ids.Distinct(), ids);
    }

    [Fact]
    public void Render_WithAChart_HasTheScriptOnceAndWithoutNone()
    {
        var chart = Markup.Read(PageShell.Render(Samples.Pages["chef"])).QuerySelectorAll("script:not([type])").ToArray();
        Assert.Single(chart, script => script.TextContent.Contains("plotly.js v2.28.0", StringComparison.Ordinal));
        Assert.Single(Markup.Read(PageShell.Render(Samples.Pages["chef"])).QuerySelectorAll("#chart-style"));
        Assert.Empty(Markup.Read(PageShell.Render(Samples.Pages["label"])).QuerySelectorAll("script"));
    }

    [Fact]
    public void Render_ScriptBeside_PointsToTheFileThatIsWritten()
    {
        var folder = Directory.CreateTempSubdirectory("pages");
        try
        {
            var document = Markup.Read(PageShell.Render(Samples.Pages["chef"] with { ChartScript = ChartScript.Beside }));
            PageShell.WriteScript(folder.FullName);

            var script = document.QuerySelector("script[src]")!.GetAttribute("src")!;
            Assert.True(new FileInfo(Path.Combine(folder.FullName, script)).Length > 3_000_000);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Render_AnotherCulture_GivesTheSameBytes(string name)
    {
        var here = PageShell.Render(Samples.Pages[name]);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.True(here == PageShell.Render(Samples.Make(name)), "another culture writes another page");
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ToPlainText_Page_HasTheSameSectionsAsTheHtml(string name)
    {
        var main = Samples.Pages[name].Main;
        var lines = main.ToPlainText().Split('\n');

        Assert.All(Markup.Read(main).QuerySelectorAll("h1, h2, h3, caption, dt, figcaption"), heading =>
            Assert.Contains(Blanks().Replace(heading.TextContent, " ").Trim(), lines.Select(line => line.Trim())));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Render_Page_ShowsNothingThatAReaderShouldNotSee(string name)
    {
        var document = Markup.Read(PageShell.Render(Samples.Pages[name]));
        foreach (var script in document.QuerySelectorAll("script, style").ToArray()) script.Remove();
        var text = document.DocumentElement.TextContent;

        Assert.All((string[])["NaN", "null", "E-0", "Tamis.", "significant", "N/A", "Infinity"], word => Assert.DoesNotContain(word, text, StringComparison.Ordinal));
        Assert.DoesNotMatch(@"(?<![\p{L}\d])-\d", text);
        Assert.DoesNotMatch(@"\d{4,}\.\d{4,}", text);
    }

    [GeneratedRegex(@"[ \n\t]+")]
    private static partial Regex Blanks();
}
