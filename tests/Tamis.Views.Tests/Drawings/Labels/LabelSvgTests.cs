using System.Globalization;
using System.Xml.Linq;
using AngleSharp.Html.Parser;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Views.Tests.Drawings.Labels;

public class LabelSvgTests
{
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));

    private static LabelDrawing Irish => DessertLabel.Drawn(Loaf, "V1b", "IE");

    [Fact]
    public void Svg_OfAFinishedLabel_IsOneMillimetreAUnitAndHoldsNothingElse()
    {
        var svg = XDocument.Parse(LabelPrint.Svg(Irish)).Root!;

        Assert.Equal(("185mm", "75mm", "0 0 185 75"), (svg.Attribute("width")!.Value, svg.Attribute("height")!.Value, svg.Attribute("viewBox")!.Value));
        Assert.Equal(["title", "desc", "rect", "g"], svg.Elements().Select(element => element.Name.LocalName));
        Assert.Equal(Irish.Marks.OfType<TextMark>().Select(mark => mark.Text), svg.Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value));
    }

    [Fact]
    public void Page_OfAFinishedLabel_HasTheSizeOfTheFace() => Assert.Contains("@page { size: 185mm 75mm; margin: 0 }", LabelPrint.Page(Irish), StringComparison.Ordinal);

    [Fact]
    public void Print_OfADraft_RefusedWithItsReasons()
    {
        var draft = DessertLabel.Drawn(Loaf, "V1", "US");

        Assert.Contains("trans fat", Assert.Throws<InvalidOperationException>(() => LabelPrint.Svg(draft)).Message, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => LabelPrint.Page(draft));
    }

    [Fact]
    public void Show_OfADraft_HasThatWordAcrossItAndAScale()
    {
        var page = new HtmlParser().ParseDocument(Show.LabelDrawing(Loaf, "V1", "US").Markup);

        Assert.Equal("DRAFT", page.QuerySelector(".label-draft")!.TextContent);
        Assert.Equal("50\u00a0mm", page.QuerySelector(".label-scale-words")!.TextContent);
        Assert.Null(new HtmlParser().ParseDocument(Show.LabelDrawing(Loaf, "V1b", "IE").Markup).QuerySelector(".label-draft"));
    }

    // A line on the edge of a picture is cut in half by a screen.
    [Theory]
    [InlineData("IE")]
    [InlineData("US")]
    public void Show_OnAScreen_NoLineTouchesTheEdgeOfThePicture(string market)
    {
        var svg = new HtmlParser().ParseDocument(Show.LabelDrawing(Loaf, "V1", market).Markup).QuerySelector("svg.label-drawing")!;
        var view = svg.GetAttribute("viewBox")!.Split(' ').Select(Number).ToArray();
        var edge = svg.QuerySelector(".label-edge")!;
        double Of(string name) => Number(edge.GetAttribute(name)!);

        Assert.True(view[0] < Of("x") - Of("stroke-width") && view[1] < Of("y") - Of("stroke-width"));
        Assert.True(view[0] + view[2] > Of("x") + Of("width") + Of("stroke-width") && view[1] + view[3] > Of("y") + Of("height") + Of("stroke-width"));
        Assert.Equal($"{view[2].ToString(CultureInfo.InvariantCulture)}mm", svg.GetAttribute("width"));

        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Show_AnUnknownMarket_SaysWhichThereAre() => Assert.Contains("IE, eu, en", Show.LabelDrawing(Loaf, "V1", "NO").ToPlainText(), StringComparison.Ordinal);

    [Fact]
    public void Show_SeveralFaces_DrawsEachUnderItsNameAndSaysOnceWhatHoldsForThePack()
    {
        var folder = Directory.CreateTempSubdirectory("tamis-faces-").FullName;
        try
        {
            foreach (var name in (string[])["store", "travel-loaf"])
            {
                Directory.CreateDirectory(Path.Combine(folder, name));
                foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{name}"))) File.Copy(file, Path.Combine(folder, name, Path.GetFileName(file)));
            }
            var sheet = Path.Combine(folder, "travel-loaf", "dessert.csv");
            File.WriteAllLines(sheet, [.. File.ReadAllLines(sheet).Where(line => !line.StartsWith("face,", StringComparison.Ordinal)), "face,185 x 75: name; net quantity,,", "face,185 x 65: rest,,"]);
            var page = new HtmlParser().ParseDocument(Show.LabelDrawing(Dessert.Open(Path.Combine(folder, "travel-loaf")), "V1", "US").Markup);

            Assert.Equal(["Face 1, 185 × 75\u202fmm, 138.8\u202fcm²", "Face 2, 185 × 65\u202fmm, 120.3\u202fcm²"], page.QuerySelectorAll("h3").Select(head => head.TextContent));
            Assert.Equal(2, page.QuerySelectorAll("svg.label-drawing").Length);
            Assert.Contains("text alone", page.Body!.TextContent, StringComparison.Ordinal);
            Assert.DoesNotContain("without the panel", page.Body.TextContent, StringComparison.Ordinal);
            Assert.Single(System.Text.RegularExpressions.Regex.Matches(page.Body.TextContent, "trans fat: known for"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Svg_TextFromSheets_IsEscaped()
    {
        var content = DessertLabel.ContentOf(Loaf, "V1b", "IE");
        var hostile = content with { Languages = [new("en\"><script>", [LabelParagraph.Of("name", "<script>alert(1)</script>")])] };

        Assert.DoesNotContain("<script>", LabelPrint.Svg(LabelDrawing.Of(hostile)), StringComparison.Ordinal);
    }
}
