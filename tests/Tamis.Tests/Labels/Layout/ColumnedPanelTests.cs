using CsCheck;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Tests.Labels.Layout;

/// <summary>Drawn panels with a second column for the whole package, or for one unit of it.</summary>
public sealed class ColumnedPanelTests : IDisposable
{
    private const double MicrometreMillimetres = 0.001;

    // 75 g are 250 % of the 30 g that are the reference amount of cookies.
    private static readonly string[] Package = ["net_g,75", "portion_g,15"];
    private static readonly string[] Units = ["net_g,150", "portion_g,75"];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // 21 CFR 101.9(e)(1), (2), (6): heads that say what the columns speak of, and in each the amount and the percentage.
    [Theory]
    [InlineData("150 x 130 x 60", "vertical")]
    [InlineData("290 x 75 x 60", "tabular")]
    public void Of_PackageOfTwoToThreeReferenceAmounts_HasBothColumnsInEveryForm(string box, string form)
    {
        var drawing = Drawn(box, Package);
        TextMark[] panel = [.. drawing.Marks.OfType<TextMark>()];

        Assert.Equal(form, drawing.Layout.Form!.Name);
        Assert.Empty(drawing.DraftReasons);
        Assert.Equal(["110", "260"], panel.Where(mark => mark.Part == "energy figure").OrderBy(mark => mark.XMillimetres).Select(mark => mark.Text));
        Assert.All(new[] { "Per serving", "Per container", "% DV*", "21\u00a0g", "52\u00a0g", "8%", "19%", "38%", "Includes Added Sugars" }, text => Assert.Contains(panel, mark => mark.Text == text.Replace("% ", "%\u00a0", StringComparison.Ordinal)));
        Assert.DoesNotContain(panel, mark => mark.Part == "amount per");
        LabelDrawingTests.AssertSound(drawing);
    }

    // 21 CFR 101.9(e): equal prominence. Each column is set alike, and what belongs to it stands on its two edges.
    [Fact]
    public void Of_TwoColumns_AreSetAlikeAndEachOnItsEdges()
    {
        var drawing = Drawn("150 x 130 x 60", Package);
        TextMark[] heads = [.. drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "column head").OrderBy(mark => mark.XMillimetres)];
        double[] ends = [.. heads.Select(mark => mark.RightMillimetres)];
        var figures = drawing.Marks.OfType<TextMark>().Where(mark => mark.Part is "energy figure" or "percent head" || mark.Text.EndsWith('%')).GroupBy(mark => mark.BaseLineMillimetres).ToArray();
        var amounts = drawing.Marks.OfType<TextMark>().Where(mark => mark.Part is "nutrient" or "vitamin" && char.IsDigit(mark.Text[0]) && !mark.Text.EndsWith('%')).GroupBy(mark => mark.BaseLineMillimetres).ToArray();

        Assert.Equal(2, heads.Length);
        Assert.True(figures.Length > 8 && amounts.Length > 10);
        Assert.All(figures, line => AssertNear(ends, line.Select(mark => mark.RightMillimetres)));
        Assert.All(amounts, line => AssertNear(amounts[0].Select(mark => mark.LeftMillimetres), line.Select(mark => mark.LeftMillimetres)));
        Assert.Equal(ends[1] - ends[0], amounts[0].Last().LeftMillimetres - amounts[0].First().LeftMillimetres, 6);
        Assert.All(figures.Concat(amounts), line => Assert.Single(line.Select(mark => (mark.SizeMillimetres, mark.IsBold)).Distinct()));
    }

    // 21 CFR 101.9(e)(6): the columns are separated by vertical lines, from their heads to the last line.
    [Fact]
    public void Of_TwoColumns_ArePartedByUprightRules()
    {
        var drawing = Drawn("150 x 130 x 60", Package);
        BarMark[] rules = [.. drawing.Marks.OfType<BarMark>().Where(bar => bar.ThicknessMillimetres > 10 * bar.WidthMillimetres).OrderBy(bar => bar.XMillimetres)];
        TextMark[] heads = [.. drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "column head").OrderBy(mark => mark.XMillimetres)];
        var last = drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "vitamin").Max(mark => mark.BaseLineMillimetres);

        Assert.Equal(2, rules.Length);
        Assert.Equal(0.25 * 25.4 / 72, rules[0].WidthMillimetres, 9);
        Assert.True(rules[0].RightMillimetres < heads[0].LeftMillimetres && heads[0].RightMillimetres < rules[1].LeftMillimetres && rules[1].RightMillimetres < heads[1].LeftMillimetres);
        Assert.All(rules, rule => Assert.True(rule.TopMillimetres <= heads[0].TopMillimetres && rule.BottomMillimetres >= last));
    }

    // 21 CFR 101.9(b)(12)(i)(A): what may use the tabular or linear display of small packages needs no second column, and those displays have none.
    [Fact]
    public void Of_SmallPackage_TriesItsOwnDisplaysWithoutTheSecondColumn()
    {
        var drawing = Drawn("95 x 80 x 10", Package);

        Assert.True(drawing.Layout is { Form.Name: "small linear", IsWithoutSecondColumn: true, Fits: true }, drawing.Layout.ToString());
        Assert.Equal("small linear without the second column, beside the text", drawing.Layout.InWords);
        Assert.DoesNotContain(drawing.Marks.OfType<TextMark>(), mark => mark.Text.Contains("container", StringComparison.Ordinal) && mark.Part == "column head");
        Assert.Contains(drawing.Marks.OfType<TextMark>(), mark => mark.Part == "amount per");
        Assert.Contains(drawing.Remarks, remark => remark.StartsWith("The second column is left off", StringComparison.Ordinal) && remark.Contains("(b)(12)(i)(A)", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_LargePackageWithoutRoom_IsADraftThatSaysByHowMuch()
    {
        var drawing = Drawn("130 x 75 x 70", Package);

        Assert.DoesNotContain(drawing.Attempts, attempt => attempt.IsWithoutSecondColumn);
        Assert.Contains(drawing.DraftReasons, reason => reason.StartsWith("No lawful layout fits", StringComparison.Ordinal) && reason.Contains("too high", StringComparison.Ordinal));
    }

    // 21 CFR 101.9(b)(2)(i)(D): of several units, each 250 % of the reference amount, the second column speaks of one.
    [Fact]
    public void Of_UnitsOfTwoToThreeReferenceAmounts_HaveAColumnForOne()
    {
        var drawing = Drawn("150 x 130 x 60", Units);

        Assert.Equal(["Per serving", "Per unit"], drawing.Content.Panel!.ColumnHeads);
        Assert.Equal(["90", "260"], drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "energy figure").OrderBy(mark => mark.XMillimetres).Select(mark => mark.Text));
    }

    // 21 CFR 101.9(c) and (f): what is left off is next to nothing in each column, and the statement stands under the panel.
    [Fact]
    public void Of_ShortPanelOfTwoColumns_LeavesOffWhatIsNextToNothingInBoth()
    {
        var drawing = Drawn("150 x 130 x 60", [.. Package, "panel_form,short"]);
        var words = string.Concat(drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "footnote").Select(mark => mark.Text + " "));

        Assert.StartsWith("Not a significant source of cholesterol, total sugars, added sugars,", words, StringComparison.Ordinal);
        Assert.DoesNotContain(drawing.Marks.OfType<TextMark>(), mark => mark.Text is "Cholesterol" or "Total Sugars" or "Calcium");
        Assert.Contains(drawing.Marks.OfType<TextMark>(), mark => mark is { Text: "Iron", Part: "vitamin" });
        LabelDrawingTests.AssertSound(drawing);
    }

    // Where the line after which the vitamins begin is itself left off, they still stand under their bar.
    [Fact]
    public void Of_ShortPanelWithoutTheLineBeforeTheVitamins_KeepsTheirSection()
    {
        var sugar = NutritionPanel.Of(LabelKit.Foods(0, ("SR28 19335", 100)), LabelKit.Canada, PanelBasis.Serving(8));
        var whole = PanelContent.Of([sugar], ["en", "fr"], new(10));
        var brief = ShortPanel.Of([sugar], []).Without(whole, ["en", "fr"]) with { Lines = [.. whole.Lines.Where(line => line.Key is "calories" or "carbohydrate" or "calcium")] };
        var drawing = LabelDrawing.Of(DessertLabel.ContentOf(Wafer(Package), "T1", "US") with { Rules = LabelKit.Canada, Panel = brief, ShortPanel = null, ServingPanel = null, Pack = PackShape.Box(300, 300, 300) });

        Assert.Equal(["vitamin"], drawing.Marks.OfType<TextMark>().Where(mark => mark.Text.StartsWith("Calcium", StringComparison.Ordinal)).Select(mark => mark.Part));
    }

    [Fact]
    public void Of_AnyPack_NoFormHasMoreColumnsThanTheLawLetsIt()
    {
        var content = DessertLabel.ContentOf(Wafer(Package), "T1", "US");
        Gen.Select(Gen.Double[20, 300], Gen.Double[20, 300], Gen.Double[5, 100]).Sample((first, second, third) =>
        {
            var drawing = LabelDrawing.Of(content with { Pack = PackShape.Box(first, second, third) });
            LabelDrawingTests.AssertSound(drawing);
            Assert.All(drawing.Attempts, attempt => Assert.True(attempt.Form?.MostColumns is not 1 || attempt.IsWithoutSecondColumn, attempt.ToString()));
        }, iter: 20);
    }

    private LabelDrawing Drawn(string box, string[] rows) => LabelDrawing.Of(DessertLabel.ContentOf(Wafer(rows), "T1", "US") with { Pack = PackShape.Parse(box)! });

    private Dessert Wafer(string[] rows) => WaferDessert.In(_folder.Path, rows);

    private static void AssertNear(IEnumerable<double> expected, IEnumerable<double> actual) =>
        Assert.All(expected.Zip(actual, (one, other) => Math.Abs(one - other)).Append(expected.Count() == actual.Count() ? 0 : 1), apart => Assert.True(apart < MicrometreMillimetres));
}
