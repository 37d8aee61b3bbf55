using Tamis.App.Pages;

namespace Tamis.App.Tests.Pages;

public class PageFiguresTests
{
    [Theory]
    [InlineData("""<p>x <span data-figure="rye">59 %</span></p>""", "59 %")]
    [InlineData("""<td class="num" data-figure="rye">12<i>.5</i></td>""", "12.5")]
    [InlineData("""<span data-figure="rye">a <span>b</span> <span>c <span>d</span></span></span> e</span>""", "a b c d")]
    [InlineData("""<td data-figure="rye">130 g<span class="from">formula.csv, row 2, column T1</span></td>""", "130 g")]
    [InlineData("""<div data-figure="rye">a &amp; b &lt;c&gt;</div>""", "a & b <c>")]
    [InlineData("<p data-figure=\"rye\">two\n  lines, 5\u202fg</p>", "two lines, 5\u202fg")]
    [InlineData("""<s data-figure="rye"><span>1</span><section>2</section></s>""", "12")]
    public void Read_OneFigure_IsItsTextWithoutItsOrigin(string markup, string text) =>
        Assert.Equal([KeyValuePair.Create("rye", text)], PageFigures.Read(markup));

    [Fact]
    public void Read_SameNameAgain_GetsANumber() =>
        Assert.Equal(["a & b", "a & b (2)"], PageFigures.Read("""<b data-figure="a &amp; b">1</b><b data-figure="a &amp; b">2</b>""").Keys);

    [Fact]
    public void Read_NoFigure_IsNothing() => Assert.Empty(PageFigures.Read("<p>data-figure</p>"));
}
