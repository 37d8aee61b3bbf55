using CsCheck;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Tests.Labels.Layout;

/// <summary>Panels with their notes beside the lines: 21 CFR 101.9(d)(11).</summary>
public sealed class SideBoxPanelTests : IDisposable
{
    private const double PointMillimetres = 25.4 / 72;

    private static readonly string[] OneColumn = ["net_g,150", "portion_g,30"];
    private static readonly string[] TwoColumns = ["net_g,75", "portion_g,15"];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // The panel down to potassium is 89 mm high in the least type sizes, and the margins take 4 mm.
    [Theory]
    [InlineData("180 x 76 x 70", "tabular")]
    [InlineData("180 x 80 x 70", "tabular")]
    [InlineData("180 x 90 x 80", "tabular")]
    [InlineData("180 x 100 x 80", "side by side")]
    [InlineData("180 x 110 x 80", "side by side")]
    [InlineData("180 x 125 x 80", "vertical")]
    public void Of_BoxOfAnyHeight_DrawsWhole(string box, string form)
    {
        var drawing = Drawn(box, OneColumn);

        Assert.Empty(drawing.DraftReasons);
        Assert.Equal(form, drawing.Layout.Form!.Name);
        LabelDrawingTests.AssertSound(drawing);
    }

    // (d)(11)(i): the footnote stands to the right of the percentages, and a line sets it off.
    [Fact]
    public void Of_SideBySide_SetsTheFootnoteOffAtTheRight()
    {
        var drawing = Drawn("180 x 100 x 80", OneColumn);
        TextMark[] panel = [.. drawing.Marks.OfType<TextMark>().Where(mark => mark.Part is "title" or "servings" or "serving size" or "amount per" or "energy" or "energy figure" or "percent head" or "nutrient" or "vitamin")];
        TextMark[] notes = [.. drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "footnote")];
        var rule = Assert.Single(drawing.Marks.OfType<BarMark>(), bar => bar.ThicknessMillimetres > 10 * bar.WidthMillimetres);

        Assert.Equal(0.25 * PointMillimetres, rule.WidthMillimetres, 9);
        Assert.All(panel, mark => Assert.True(mark.RightMillimetres < rule.LeftMillimetres, mark.Text));
        Assert.All(notes, mark => Assert.True(mark.LeftMillimetres > rule.RightMillimetres, mark.Text));
        Assert.StartsWith("* The % Daily Value", string.Join(' ', notes.Select(mark => mark.Text)).Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.True(rule.TopMillimetres <= panel.Min(mark => mark.TopMillimetres) && rule.BottomMillimetres >= panel.Max(mark => mark.BottomMillimetres));
    }

    // (d)(8): listed in two columns, vitamin D and calcium stand on the first line, iron and potassium on the second.
    [Fact]
    public void Of_SideBySide_PairsTheVitamins()
    {
        var lines = Drawn("180 x 100 x 80", OneColumn).Marks.OfType<TextMark>().Where(mark => mark.Part == "vitamin")
            .GroupBy(mark => mark.BaseLineMillimetres).OrderBy(line => line.Key).Select(line => string.Join(' ', line.OrderBy(mark => mark.XMillimetres).Select(mark => mark.Text)).Replace('\u00a0', ' '));

        Assert.Equal(["Vitamin D 0 mcg 0% \u2022 Calcium 10 mg 0%", "Iron 1.1 mg 6% \u2022 Potassium 110 mg 2%"], lines);
    }

    // (d)(1)(iii), (d)(2), (d)(3): the least sizes are those of the upright panel; its heading alone need not be as wide as the panel.
    [Theory]
    [InlineData("title", 16)]
    [InlineData("servings", 10)]
    [InlineData("serving size", 10)]
    [InlineData("energy", 16)]
    [InlineData("energy figure", 22)]
    [InlineData("nutrient", 8)]
    [InlineData("vitamin", 8)]
    [InlineData("footnote", 6)]
    public void Of_SideBySide_IsPrintedInTheSizesOfTheUprightPanel(string part, double points) =>
        Assert.All(Drawn("180 x 100 x 80", OneColumn).Marks.OfType<TextMark>().Where(mark => mark.Part == part).DefaultIfEmpty(), mark => Assert.Equal(points, mark!.SizeMillimetres / PointMillimetres, 6));

    // (d)(11)(ii): what is declared after potassium may move to the right, with its percentages under their heading.
    [Fact]
    public void Of_MoreVitamins_StandAtTheRightOverTheFootnote()
    {
        var content = Content("180 x 100 x 80", OneColumn);
        var more = content.Panel! with { Order = [.. content.Panel.Order.Where(key => key != "vitamin C"), "vitamin C"], Lines = [.. content.Panel.Lines, new("vitamin C", "Vitamin C", ["9 mg"], "10%", 0, false)] };
        var drawing = LabelDrawing.Of(content with { Panel = more });
        TextMark[] marks = [.. drawing.Marks.OfType<TextMark>()];
        var moved = marks.Single(mark => mark.Part == "vitamin" && mark.Text.StartsWith("Vitamin C", StringComparison.Ordinal));
        var rule = drawing.Marks.OfType<BarMark>().Single(bar => bar.ThicknessMillimetres > 10 * bar.WidthMillimetres);

        Assert.Equal("side by side", drawing.Layout.Form!.Name);
        Assert.True(moved.LeftMillimetres > rule.RightMillimetres && moved.BaseLineMillimetres < marks.Where(mark => mark.Part == "footnote").Min(mark => mark.BaseLineMillimetres));
        Assert.Equal(2, marks.Count(mark => mark.Part == "percent head"));
        LabelDrawingTests.AssertSound(drawing);
    }

    // (f)(4): what was left off as next to nothing is said at the bottom of the label; (d)(11)(i) moves the footnote alone.
    [Fact]
    public void Of_ShortPanel_KeepsItsStatementUnderTheLines()
    {
        var brief = Content("180 x 100 x 80", [.. OneColumn, "panel_form,short"]).Panel!;
        var statement = Assert.Single(brief.FootStatements);
        var content = Content("180 x 105 x 80", OneColumn);
        var drawing = LabelDrawing.Of(content with { Panel = content.Panel! with { Footnotes = brief.Footnotes, FootStatements = brief.FootStatements } });
        var rule = drawing.Marks.OfType<BarMark>().Single(bar => bar.ThicknessMillimetres > 10 * bar.WidthMillimetres);
        TextMark[] notes = [.. drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "footnote")];

        Assert.StartsWith("Not a significant source of", statement, StringComparison.Ordinal);
        Assert.Equal("side by side", drawing.Layout.Form!.Name);
        Assert.StartsWith("Not a significant source of", notes.Where(mark => mark.RightMillimetres < rule.LeftMillimetres).MinBy(mark => mark.BaseLineMillimetres)!.Text, StringComparison.Ordinal);
        Assert.StartsWith("*", notes.Where(mark => mark.LeftMillimetres > rule.RightMillimetres).MinBy(mark => mark.BaseLineMillimetres)!.Text, StringComparison.Ordinal);
        LabelDrawingTests.AssertSound(drawing);
    }

    // (e)(6): a second column of amounts in each line; the vitamins then stand one under the other.
    [Fact]
    public void Of_TwoColumns_BothStandSideBySide()
    {
        var drawing = Drawn("180 x 115 x 80", TwoColumns);

        Assert.Equal("side by side", drawing.Layout.Form!.Name);
        Assert.Empty(drawing.DraftReasons);
        Assert.Equal(["110", "260"], drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "energy figure").OrderBy(mark => mark.XMillimetres).Select(mark => mark.Text));
        LabelDrawingTests.AssertSound(drawing);
    }

    // (d)(11)(iii): under 3 in the tabular display is lawful; from there on only where the panel down to potassium is higher than the face.
    [Fact]
    public void Of_FaceWithRoomForThePanel_IsNotTabularForTheSakeOfTheText()
    {
        var content = Content("180 x 100 x 80", OneColumn);
        var wordy = content with { Languages = [.. content.Languages, new("en", [LabelParagraph.Of("text", string.Join(' ', Enumerable.Repeat("words that take room", 300)))])] };
        var drawing = LabelDrawing.Of(wordy);

        Assert.False(drawing.Layout.Fits);
        Assert.DoesNotContain(drawing.Attempts, attempt => attempt.Form?.Name == "tabular");
        Assert.Contains(LabelDrawing.Of(wordy with { Pack = PackShape.Box(180, 92, 80) }).Attempts, attempt => attempt.Form?.Name == "tabular");
    }

    [Theory]
    [InlineData("180 x 90 x 80", true)]
    [InlineData("180 x 76 x 70", false)]
    public void Of_TabularFrom3InOn_SaysOnWhichWordsItStands(string box, bool isSaid) =>
        Assert.Equal(isSaid, Drawn(box, OneColumn).Remarks.Any(remark => remark.Contains("have this reading looked at", StringComparison.Ordinal)));

    [Fact]
    public void Of_AnyFaceThatIsWideEnough_HasALawfulFormThatFits()
    {
        var content = Content("180 x 90 x 80", OneColumn);
        Gen.Select(Gen.Double[180, 260], Gen.Double[60, 180]).Sample((width, height) =>
        {
            var drawing = LabelDrawing.Of(content with { Pack = PackShape.Box(width, height, 60) });
            Assert.True(drawing.Layout.Fits, drawing.Layout.ToString());
            LabelDrawingTests.AssertSound(drawing);
        }, iter: 20);
    }

    private LabelDrawing Drawn(string box, string[] rows) => LabelDrawing.Of(Content(box, rows));

    private LabelContent Content(string box, string[] rows) => DessertLabel.ContentOf(WaferDessert.In(_folder.Path, rows), "T1", "US") with { Pack = PackShape.Parse(box)! };
}
