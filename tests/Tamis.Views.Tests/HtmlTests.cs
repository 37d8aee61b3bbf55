namespace Tamis.Views.Tests;

public class HtmlTests
{
    private const string Hostile = "<img src=x onerror=alert(1)>";

    [Fact]
    public void Of_TextHole_IsEscapedBetweenTagsAndInAttributes()
    {
        var html = Html.Of($"<p title=\"{Hostile + "\" onclick='x'"}\">{Hostile}</p>");

        Assert.Equal("<p title=\"&lt;img src=x onerror=alert(1)&gt;&quot; onclick=&#39;x&#39;\">&lt;img src=x onerror=alert(1)&gt;</p>", html.Markup);
    }

    [Fact]
    public void Of_HtmlHoleOrListOfThem_IsPutInAsItIs() =>
        Assert.Equal("<ul><li>a</li><li>b</li></ul>", Html.Of($"<ul>{((string[])["a", "b"]).Select(name => Html.Of($"<li>{name}</li>"))}</ul>").Markup);

    [Fact]
    public void Of_NumberHole_IsWrittenTheSameOnEveryMachine() => Assert.Equal("1.5", Html.Of($"{1.5}").Markup);

    [Fact]
    public void Of_NullHole_IsEmpty() => Assert.Equal("<p></p>", Html.Of($"<p>{null}</p>").Markup);

    [Fact]
    public void Default_IsNothing()
    {
        Html nothing = default;

        Assert.True(nothing.IsEmpty);
        Assert.Equal("", nothing.Markup);
    }

    [Fact]
    public void ToPlainText_Table_HasALineARowAndATabBetweenCells()
    {
        var html = Html.Of($"<h2>Title &amp; more</h2><table><tr><th>flour</th><td>150<i>.5</i></td></tr></table><script>var x = 1;</script><style>p {{ }}</style>");

        Assert.Equal("Title & more\nflour\t150.5", html.ToPlainText());
    }

    [Fact]
    public void ToPlainText_Drawing_ReadsOutTitleAndDescriptionOnly() =>
        Assert.Equal("Firmness\nless is softer", Html.Of($"<svg><title>Firmness</title><desc>less is softer</desc><text>0</text></svg>").ToPlainText());
}
