using CsCheck;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels.Layout;

public class LabelDrawingTests
{
    private const double MicrometreMillimetres = 0.001;

    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));

    public static TheoryData<string, string> Markets => new()
    {
        { "V1b", "IE" }, { "V1b", "IE; FR; DE" }, { "V1", "EU" }, { "V1", "GB" }, { "V1", "US" }, { "V2", "CA" }, { "V1", "AU" }, { "V3", "FR" },
    };

    [Theory]
    [MemberData(nameof(Markets))]
    public void Drawn_Demo_NoTwoTextsOverlapAndNothingLeavesTheFaceUnsaid(string trial, string market) => AssertSound(DessertLabel.Drawn(Loaf, trial, market));

    [Theory]
    [MemberData(nameof(Markets))]
    public void Drawn_Demo_NoPrintIsSmallerThanItsRule(string trial, string market)
    {
        var drawing = DessertLabel.Drawn(Loaf, trial, market);
        var sizes = drawing.Sizes.ToDictionary(size => size.Part, size => size.SizeMillimetres, Names.Comparer);

        Assert.All(drawing.Marks.OfType<TextMark>(), mark => Assert.True(mark.SizeMillimetres >= sizes[mark.Part] - MicrometreMillimetres, $"{mark.Part}: {mark.Text}"));
        Assert.NotEmpty(sizes);
    }

    // The demo's box is 75 mm high: too low for the upright panel and for that with the footnote beside it, and less than the 3 in of 21 CFR 101.9(d)(11)(iii).
    [Fact]
    public void Drawn_UprightPanelTooHigh_TakesTheNextLawfulFormAndSaysByHowMuch()
    {
        var drawing = DessertLabel.Drawn(Loaf, "V1", "US");

        Assert.Equal(["vertical", "vertical", "side by side", "side by side", "tabular"], drawing.Attempts.Select(attempt => attempt.Form!.Name));
        Assert.All(drawing.Attempts.SkipLast(1), attempt => Assert.True(attempt.OverHeightMillimetres > 0));
        Assert.Contains("mm too high", drawing.Attempts[0].ToString(), StringComparison.Ordinal);
        Assert.True(drawing.Layout.Fits);
    }

    // Article 37: what is told of one's own accord takes no room from what must be told. Portions and percentages go before the table does.
    [Fact]
    public void Drawn_ThreeLanguages_LeaveRoomForWhatIsAskedForAlone()
    {
        var drawing = DessertLabel.Drawn(Loaf, "V1b", "IE; FR; DE");

        Assert.True(drawing.Layout is { Form.Name: "table", IsShort: true, Fits: true });
        Assert.Equal(["per 100\u00a0g / pour 100\u00a0g / je 100\u00a0g"], drawing.Content.ShortPanel!.ColumnHeads);
        Assert.Empty(drawing.Content.ShortPanel.Footnotes);
        Assert.Equal(["en", "fr", "de"], drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "name").OrderBy(mark => mark.BaseLineMillimetres).Select(mark => mark.Language));
        Assert.Contains("may not take the room", string.Concat(drawing.Remarks), StringComparison.Ordinal);
    }

    // Article 34(2): a table, and running text where there is no room for one.
    [Fact]
    public void Of_SmallFace_LeavesRoomForRunningTextAlone()
    {
        var drawing = LabelDrawing.Of(DessertLabel.ContentOf(Loaf, "V1", "IE") with { Pack = PackShape.Box(70, 45, 30) });

        Assert.Equal("linear", drawing.Layout.Form!.Name);
        Assert.Contains("Only the largest face is drawn", string.Concat(drawing.Remarks), StringComparison.Ordinal);
    }

    // In French a space that does not break stands before a colon, in running text as in the list of ingredients.
    [Theory]
    [InlineData("FR", "pour 100\u00a0g\u00a0: ")]
    [InlineData("IE", "per 100\u00a0g: ")]
    public void Of_RunningText_SetsColonsAsItsLanguageDoes(string market, string head)
    {
        var drawing = LabelDrawing.Of(DessertLabel.ContentOf(Loaf, "V1", market) with { Pack = PackShape.Box(70, 45, 30) });

        Assert.Equal("linear", drawing.Layout.Form!.Name);
        Assert.Equal(head, drawing.Marks.OfType<TextMark>().First(mark => mark.Part == "column head").Text);
    }

    [Fact]
    public void Drawn_FiveLanguages_FitInNoLawfulFormAndAreADraft()
    {
        var drawing = DessertLabel.Drawn(Loaf, "V1", "EU");

        Assert.True(drawing.IsDraft);
        Assert.Contains(drawing.DraftReasons, reason => reason.StartsWith("No lawful layout fits", StringComparison.Ordinal));
    }

    [Fact]
    public void Drawn_Lines_StandInLawfulOrder()
    {
        var drawing = DessertLabel.Drawn(Loaf, "V1", "IE");
        var terms = drawing.Content.Panel!.Lines.Select(line => line.Term).ToArray();

        Assert.Equal(["Energy", "Fat", "of which saturates", "Carbohydrate", "of which sugars", "polyols", "Fibre", "Protein", "Salt"], terms);
        Assert.Equal(terms, drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "nutrient" && terms.Contains(mark.Text)).OrderBy(mark => mark.BaseLineMillimetres).Select(mark => mark.Text));
    }

    [Fact]
    public void Drawn_EmphasisedAllergens_StandInBoldTypeAndNothingElseOfTheListDoes()
    {
        var list = Loaf.IngredientList("V1", "eu", "en");
        var bold = DessertLabel.Drawn(Loaf, "V1", "IE").Marks.OfType<TextMark>().Where(mark => mark is { Part: "list", IsBold: true }).Select(mark => mark.Text.Trim());

        Assert.Equal(string.Join(' ', list.Runs.Where(run => run.IsEmphasised).Select(run => run.Text)), string.Join(' ', bold));
    }

    // Article 9(1) and Directive 2011/91/EU: the business and the lot stand on the pack of the version that is to be sold, and nobody wrote them for the first one.
    [Fact]
    public void Drawn_FinishedLabel_HasWhatItsFormOfSaleAsksFor()
    {
        var drawing = DessertLabel.Drawn(Loaf, "V1b", "IE");

        Assert.Empty(drawing.DraftReasons);
        Assert.Contains(drawing.Marks.OfType<TextMark>(), mark => mark.Text == "L 0412");
        Assert.Contains(DessertLabel.Drawn(Loaf, "V1", "IE").DraftReasons, reason => reason.StartsWith("Missing: name and address of the business", StringComparison.Ordinal));
    }

    [Fact]
    public void Drawn_Draft_SaysWhatIsMissing()
    {
        var drawing = DessertLabel.Drawn(Loaf, "V1", "US");

        Assert.True(drawing.IsDraft);
        Assert.Contains(drawing.DraftReasons, reason => reason.StartsWith("trans fat:", StringComparison.Ordinal));
    }

    // 21 CFR 101.9(d)(1)(iv): headings, calories, names that are not indented and percentages stand out, and no other information does.
    [Theory]
    [InlineData("150 x 130 x 60", "vertical")]
    [InlineData("185 x 75 x 65", "tabular")]
    [InlineData("95 x 80 x 10", "small linear")]
    public void Of_EachForm_HighlightsWhatTheLawHighlightsAndNothingElse(string box, string form)
    {
        var drawing = LabelDrawing.Of(DessertLabel.ContentOf(Loaf, "V1", "US") with { Pack = PackShape.Parse(box)! });
        string[] main = ["Total Fat", "Cholesterol", "Sodium", "Total Carbohydrate", "Protein"];
        TextMark[] panel = [.. drawing.Marks.OfType<TextMark>().Where(mark => mark.Part is "nutrient" or "vitamin" or "footnote")];

        Assert.Equal(form, drawing.Layout.Form!.Name);
        var bold = string.Join(' ', panel.Where(mark => mark.IsBold).Select(mark => mark.Text.Trim()));
        Assert.All(main, name => Assert.Contains(name, bold, StringComparison.Ordinal));
        Assert.DoesNotContain(main.Aggregate(bold, (text, name) => text.Replace(name, "", StringComparison.Ordinal)), char.IsLetter);
        Assert.All(drawing.Marks.OfType<TextMark>().Where(mark => mark.Part is "title" or "serving size" or "amount per" or "energy" or "energy figure" or "percent head"), mark => Assert.True(mark.IsBold, mark.Text));
    }

    // 21 CFR 101.7: ounces and grams; 320 g are 11.29 oz, and a quantity is not said larger than it is.
    [Fact]
    public void ContentOf_WhereTheLawWantsTwoSystems_SaysBoth() => Assert.Equal("Net Wt 11.2 oz (320 g)", DessertLabel.ContentOf(Loaf, "V1", "US").NetQuantity);

    [Fact]
    public void ContentOf_AnotherMarket_NamesThoseThatAreThere() =>
        Assert.Contains("IE, eu, en", Assert.Throws<TableException>(() => DessertLabel.ContentOf(Loaf, "V1", "NO")).Problems.Single().ToString(), StringComparison.Ordinal);

    [Fact]
    public void ContentOf_MarketsOfTwoLaws_Refused() => Assert.Throws<TableException>(() => DessertLabel.ContentOf(Loaf, "V1", "IE; US"));

    // Article 16(2) and Annex V(18): below 25 cm² no panel, below 10 cm² no list either.
    [Fact]
    public void Of_VerySmallPack_LeavesOffWhatTheLawLetsItLeaveOff()
    {
        var drawing = LabelDrawing.Of(DessertLabel.ContentOf(Loaf, "V1", "IE") with { Pack = PackShape.Surface(9) });

        Assert.DoesNotContain(drawing.Marks.OfType<TextMark>(), mark => mark.Part == "list");
        Assert.Contains(drawing.Attempts, attempt => attempt is { Arrangement: LabelArrangement.WithoutPanel, InWords: "text without the panel" });
        Assert.Contains("list of ingredients is left off", string.Concat(drawing.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PalePrint_IsADraft()
    {
        var pale = DessertLabel.ContentOf(Loaf, "V1", "IE") with { Colours = new(new(170, 170, 170), new(255, 255, 255)) };

        Assert.Contains(LabelDrawing.Of(pale).DraftReasons, reason => reason.StartsWith("The contrast of #aaaaaa on #ffffff is", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_AnyPack_FitsOrSaysByHowMuch()
    {
        LabelContent[] contents = [.. ((string[])["IE", "US"]).Select(market => DessertLabel.ContentOf(Loaf, "V1", market))];
        Gen.Select(Gen.Int[0, 1], Gen.Double[20, 300], Gen.Double[20, 300], Gen.Double[20, 100]).Sample((at, first, second, third) =>
            AssertSound(LabelDrawing.Of(contents[at] with { Pack = PackShape.Box(first, second, third) })), iter: 30);
    }

    internal static void AssertSound(LabelDrawing drawing)
    {
        var marks = drawing.Marks;
        if (drawing.Layout.Fits)
            Assert.All(marks, mark => Assert.True(
                mark.LeftMillimetres >= 0 && mark.TopMillimetres >= 0 && mark.RightMillimetres <= drawing.WidthMillimetres + MicrometreMillimetres && mark.BottomMillimetres <= drawing.HeightMillimetres + MicrometreMillimetres, mark.ToString()));
        else Assert.True(drawing.Layout.OverWidthMillimetres + drawing.Layout.OverHeightMillimetres > 0);
        TextMark[] texts = [.. marks.OfType<TextMark>()];
        for (var one = 0; one < texts.Length; one++)
            for (var other = one + 1; other < texts.Length; other++)
                Assert.False(Overlap(texts[one], texts[other]), $"'{texts[one].Text}' and '{texts[other].Text}' overlap on {drawing.Content.Pack}, {drawing.Layout.InWords}");
        Assert.All(marks.OfType<BarMark>(), bar => Assert.DoesNotContain(texts, text => Overlap(bar, text) && bar.ThicknessMillimetres > 0.5));
    }

    private static bool Overlap(LabelMark one, LabelMark other) =>
        Math.Min(one.RightMillimetres, other.RightMillimetres) - Math.Max(one.LeftMillimetres, other.LeftMillimetres) > MicrometreMillimetres
        && Math.Min(one.BottomMillimetres, other.BottomMillimetres) - Math.Max(one.TopMillimetres, other.TopMillimetres) > MicrometreMillimetres;
}
