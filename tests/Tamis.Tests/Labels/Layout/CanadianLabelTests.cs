using CsCheck;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels.Layout;

/// <summary>What the Food and Drug Regulations (C.R.C., c. 870) ask of a drawn label beside type sizes: the border of the list, the columns of several amounts, the place of the nutrition symbol.</summary>
public sealed class CanadianLabelTests : IDisposable
{
    private const double MicrometreMillimetres = 0.001;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // B.01.008.2(2)(a), B.01.010.3(1)(a.2): a solid line around each list with the statement that follows it, and nothing else within.
    [Fact]
    public void Of_EachLanguage_HasItsListAndStatementAloneInABorder()
    {
        var drawing = Drawn("185 x 130 x 60");
        FrameMark[] borders = [.. Borders(drawing)];

        Assert.Empty(drawing.DraftReasons);
        Assert.Equal(["en", "fr"], borders.Select(border => Within(drawing, border).Select(text => text.Language).Distinct().Single()));
        Assert.All(borders, border => Assert.All(Within(drawing, border), text => Assert.Contains(text.Part, new[] { "list", "contains" })));
        Assert.Equal(drawing.Marks.OfType<TextMark>().Count(text => text.Part is "list" or "contains"), borders.Sum(border => Within(drawing, border).Count()));
        Assert.All(borders, border => Assert.Equal(0.5 * 25.4 / 72, border.ThicknessMillimetres, 9));
        Assert.Equal(["Contains:", "Contient\u00a0:"], borders.Select(border => Within(drawing, border).First(text => text.Part == "contains").Text.Trim()));
    }

    // B.01.008.2(1), (3), B.01.008.3(3), B.01.010.3(1): bold titles, capitals of ingredients and of what is contained, sugars and components in small letters, commas between.
    [Fact]
    public void List_OfTheDemo_IsWrittenAsTheSectionsAsk()
    {
        var list = Dessert.Open(KitFolder.Data("desserts/travel-loaf")).IngredientList("V2", "ca", "en");

        Assert.StartsWith("Ingredients: Sugars (honey, sugar), Rye flour, Eggs, Butter (milk), Wheat flour, Cocoa-flavoured chips with palm kernel fat (sugar, ", list.Text, StringComparison.Ordinal);
        Assert.Contains(", Diphosphates, Sodium carbonates, ", list.Text, StringComparison.Ordinal);
        Assert.Equal([new("Ingredients:", true), new(list.Text["Ingredients:".Length..], false)], list.Runs);
        Assert.Equal([new("Contains:", true), new(" Wheat, Eggs, Milk, Rye.", false)], list.ContainsStatement);
        // B.01.010.4(1)(f): bold only where it begins on the line before.
        Assert.Equal([new("May contain: hazelnuts, soy.", false)], list.MayContainStatement);
    }

    [Fact]
    public void List_OfRulesThatDoNotAsk_StaysAsItIsWritten() =>
        Assert.Equal(("Ingredients", false), (Dessert.Open(KitFolder.Data("desserts/travel-loaf")).IngredientList("V2", "us", "en").Heading, Dessert.Open(KitFolder.Data("desserts/travel-loaf")).IngredientList("V2", "us", "en").Runs[0].IsEmphasised));

    // B.01.008.1(1)(e), (3): one height and one leading in the list and in the statement; the height of the nutrients of a table in 8 point.
    [Fact]
    public void Of_ListAndStatement_AreOfOneHeightAndLeading()
    {
        var drawing = Drawn("185 x 130 x 60");
        TextMark[] lines = [.. drawing.Marks.OfType<TextMark>().Where(text => text.Part is "list" or "contains" && text.Language == "en")];
        double[] baseLines = [.. lines.Select(text => text.BaseLineMillimetres).Distinct().Order()];

        Assert.Equal(8 * 25.4 / 72, Assert.Single(lines.Select(text => text.SizeMillimetres).Distinct()), 9);
        Assert.True(lines[0].SizeMillimetres * Typeface.Kit.XHeightRatio >= 1.4);
        Assert.True(baseLines.Length > 1);
        Assert.All(baseLines.Zip(baseLines.Skip(1)), pair => Assert.Equal(3.2, pair.Second - pair.First, 9));
        Assert.Single(drawing.Marks.OfType<TextMark>().Where(text => text.Part == "nutrient").Select(text => text.SizeMillimetres).Append(lines[0].SizeMillimetres).Distinct());
    }

    // B.01.008.1(1)(a), B.01.450(2): solid black on white or on a neutral ground of at most a 5 % tint. 243 of 255 is a tint of 4.7 %, 242 one of 5.1 %.
    [Theory]
    [InlineData("#ffffff", "#000000", false)]
    [InlineData("#f3f3f3", "#000000", false)]
    [InlineData("#f2f2f2", "#000000", true)]
    [InlineData("#e8d9b0", "#3a2a10", true)]
    [InlineData("#ffffff", "#000040", true)]
    public void Of_ColouredPack_ListAndTableStandBlackOnWhite(string ground, string ink, bool isOwn)
    {
        var drawing = Drawn("185 x 130 x 60", new(LabelColour.Parse(ink)!.Value, LabelColour.Parse(ground)!.Value));
        GroundMark[] grounds = [.. drawing.Marks.OfType<GroundMark>()];
        var parts = drawing.Marks.OfType<TextMark>().ToLookup(text => text.Ink is not null, text => text.Part);

        Assert.Equal(isOwn ? 3 : 0, grounds.Length);
        Assert.All(grounds, each => Assert.Equal(LabelColour.Parse("#ffffff"), each.Colour));
        Assert.Equal(isOwn, parts[true].Contains("list") && parts[true].Contains("contains") && parts[true].Contains("nutrient") && parts[true].Contains("title"));
        Assert.DoesNotContain(parts[true], part => part is "name" or "text" or "net quantity");
        Assert.All(drawing.Marks.OfType<TextMark>().Where(text => text.Ink is not null), text => Assert.Contains(grounds, each => Holds(each, text)));
        Assert.Equal(isOwn, drawing.Marks.OfType<FrameMark>().All(frame => frame.Ink == LabelColours.BlackOnWhite.Ink));
    }

    [Fact]
    public void Of_RulesWithoutABorder_SetTheListAsTheOtherText()
    {
        var drawing = DessertLabel.Drawn(Dessert.Open(KitFolder.Data("desserts/travel-loaf")), "V1b", "IE");

        Assert.DoesNotContain(drawing.Marks.OfType<FrameMark>(), frame => Within(drawing, frame).Any(text => text.Part == "list"));
        Assert.Empty(drawing.Marks.OfType<GroundMark>());
    }

    // B.01.406(7)(a): amounts, energy and percentages of each; amounts by weight of the first alone.
    [Fact]
    public void Of_OtherAmounts_IsTheDualFormatWithEnergyAndPercentagesInEach()
    {
        var drawing = Drawn("185 x 150 x 60", null, "other_amount,2 slices; 80", "other_amount,1 cake; 320");
        TextMark[] panel = [.. drawing.Marks.OfType<TextMark>()];
        string[] LineOf(string word) => [.. panel.Where(mark => mark.Part is "nutrient" or "energy" or "energy figure" && Math.Abs(mark.BaseLineMillimetres - panel.First(each => each.Part is "nutrient" or "energy" && each.Text == word).BaseLineMillimetres) < MicrometreMillimetres)
            .OrderBy(mark => mark.XMillimetres).Select(mark => mark.Text)];

        Assert.Equal("dual, 8 point", drawing.Layout.Form!.Name);
        Assert.Empty(drawing.DraftReasons);
        Assert.Equal(["Per 1 slice (40 g)", "Per 2 slices (80 g)", "Per 1 cake (320 g)", "pour 1 tranche (40 g)", "pour 2 tranches (80 g)", "pour 1 gâteau (320 g)"],
            panel.Where(mark => mark.Part == "column head").OrderBy(mark => mark.BaseLineMillimetres).ThenBy(mark => mark.XMillimetres).Select(mark => mark.Text.Replace('\u00a0', ' ')));
        Assert.Equal(["Calories", "150", "300", "1200"], LineOf("Calories"));
        Assert.Equal(["Fat / Lipides", "0.5\u00a0g", "1%", "2%", "6%"], LineOf("Fat / Lipides"));
        Assert.Equal(["Carbohydrate / Glucides", "33\u00a0g"], LineOf("Carbohydrate / Glucides"));
        Assert.Equal(["Sugars / Sucres", "16\u00a0g", "16%", "31%", "125%"], LineOf("Sugars / Sucres"));
        Assert.DoesNotContain(panel, mark => mark.Part == "serving size");
        Assert.Contains(drawing.Remarks, remark => remark.StartsWith("columns: ", StringComparison.Ordinal) && remark.Contains("figures 12 and 13", StringComparison.Ordinal));
        LabelDrawingTests.AssertSound(drawing);
    }

    // B.01.458: nutrients in 8 point, then in 7; no other format is for several amounts, and where none has room the voluntary columns go.
    [Theory]
    [InlineData("185 x 150 x 60", "dual, 8 point", false)]
    [InlineData("215 x 85 x 60", "dual, 7 point", false)]
    [InlineData("185 x 82.3 x 60", "standard, 8 point", true)]
    public void Of_LessRoom_TriesTheDualFormatsAndThenWhatIsAskedForAlone(string box, string form, bool isShort)
    {
        var drawing = Drawn(box, null, "other_amount,1 cake; 320");

        Assert.True(drawing.Layout.Fits && drawing.Layout.Form!.Name == form && drawing.Layout.IsShort == isShort, string.Join('\n', drawing.Attempts));
        Assert.All(drawing.Attempts, attempt => Assert.Equal(attempt.IsShort, !attempt.Form!.Name.StartsWith("dual", StringComparison.Ordinal)));
    }

    // Figure 1.1 of the Directory, read in its description: one percentage, at the right, in the middle beside saturated and trans.
    [Theory]
    [InlineData("185 x 130 x 60", "standard, 8 point")]
    [InlineData("260 x 60 x 60", "horizontal")]
    public void Of_SaturatedAndTrans_HaveOnePercentageInTheMiddleBesideThem(string box, string form)
    {
        var drawing = Drawn(box);
        TextMark[] panel = [.. drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "nutrient")];
        var (saturated, trans) = (panel.Single(mark => mark.Text.StartsWith("Saturated", StringComparison.Ordinal)), panel.Single(mark => mark.Text.StartsWith("+ Trans", StringComparison.Ordinal)));
        var middle = (saturated.BaseLineMillimetres + trans.BaseLineMillimetres) / 2;
        var percent = panel.First(mark => mark.Text.EndsWith('%') && Math.Abs(mark.BaseLineMillimetres - middle) < MicrometreMillimetres);

        Assert.Equal(form, drawing.Layout.Form!.Name);
        Assert.Equal("0%", percent.Text);
        Assert.True(percent.XMillimetres > trans.RightMillimetres);
        // B.01.450(3)(a): characters never touch the rules.
        Assert.DoesNotContain(drawing.Marks.OfType<BarMark>(), bar => bar.BottomMillimetres > percent.TopMillimetres && bar.TopMillimetres < percent.BaseLineMillimetres && bar.LeftMillimetres < percent.RightMillimetres && bar.RightMillimetres > percent.LeftMillimetres);
        Assert.DoesNotContain(panel, mark => mark.Text.Contains("Saturated + Trans", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("2 slices")]
    [InlineData("2 slices; many")]
    [InlineData("2 cakes; 640")]
    [InlineData("1 slice; 40")]
    public void Of_AmountThatCannotBe_NamesTheCell(string amount)
    {
        var problem = Assert.Single(Assert.Throws<TableException>(() => Drawn("185 x 130 x 60", null, $"other_amount,{amount}")).Problems);

        Assert.Equal(("dessert.csv", "value", amount), (problem.File, problem.Column, problem.Found));
    }

    [Fact]
    public void Of_MeasureWithoutAWord_IsADraftThatSaysWhich() =>
        Assert.Contains(Drawn("185 x 150 x 60", null, "other_amount,2 wedges; 80").DraftReasons, reason => reason.StartsWith("'2 wedges' has no words in 'fr'", StringComparison.Ordinal));

    [Fact]
    public void Record_OfOtherAmounts_HoldsWhatIsPrintedAndNoMore()
    {
        var record = LabelRecords.SectionsOf(Cake("185 x 150 x 60", "other_amount,2 slices; 80"), "T1", "ca", "en").Single(section => section.Title == "Further columns of the nutrition panel");

        Assert.Contains(record.Rows, row => row is { Key: "fat, g, per 2 slices (80 g)", Text: "2%" });
        Assert.Contains(record.Rows, row => row.Key.StartsWith("calories", StringComparison.Ordinal) && row.Text.StartsWith("300", StringComparison.Ordinal));
        Assert.DoesNotContain(record.Rows, row => row.Key.StartsWith("carbohydrate", StringComparison.Ordinal) || row.Text.Contains(" g", StringComparison.Ordinal));
    }

    // B.01.355(1): the right half of a panel that is wider than high, the upper half of another; (2): nothing in the buffer.
    [Theory]
    [InlineData(185, 130, 36, 18.9, 1.5)]
    [InlineData(130, 185, 36, 18.9, 1.5)]
    [InlineData(120, 80, 28, 14.2, 1.1)]
    public void Of_PackThatNeedsTheSymbol_KeepsItsPlaceAndItsBufferFree(double width, double height, double wide, double high, double buffer)
    {
        var content = Content("185 x 130 x 80") with { Symbol = new(["sugars"], false), Panel = null, ShortPanel = null, ServingPanel = null, Pack = (PackShape.Box(Math.Max(width, height), Math.Min(width, height), 1) is var box ? box.OnFace(width, height) : null)! };
        var drawing = LabelDrawing.Of(content);
        var place = drawing.SymbolPlace!;

        Assert.Equal((wide, high), (place.WidthMillimetres, place.HeightMillimetres));
        Assert.True(width > height ? place.LeftMillimetres >= width / 2 : place.BottomMillimetres <= height / 2);
        Assert.True(place.RightMillimetres + buffer <= width && place.TopMillimetres - buffer >= 0);
        Assert.All(drawing.Marks.Where(mark => mark is not ReserveMark and not TextMark { Part: "reserve" }), mark => Assert.False(
            mark.RightMillimetres > place.LeftMillimetres - buffer + MicrometreMillimetres && mark.LeftMillimetres < place.RightMillimetres + buffer - MicrometreMillimetres && mark.BottomMillimetres > place.TopMillimetres - buffer + MicrometreMillimetres && mark.TopMillimetres < place.BottomMillimetres + buffer - MicrometreMillimetres, mark.ToString()));
        Assert.All(drawing.Marks.OfType<TextMark>().Where(mark => mark.Part == "reserve"), mark => Assert.True(Holds(place, mark), mark.ToString()));
        Assert.Contains(drawing.Remarks, remark => remark.StartsWith("The place of symbol 6 (BH) is kept free", StringComparison.Ordinal));
    }

    // The vertical format only where the horizontal one is wider than the panel: B.01.351(3).
    [Theory]
    [InlineData(36, 300, "BH")]
    [InlineData(35, 300, "BV")]
    public void Space_OfANarrowFront_IsThatOfTheVerticalFormat(double width, double height, string format) =>
        Assert.Equal(format, PackSymbol.Of(LabelKit.Canada, ["sugars"], PackShape.Box(height, width, 1).OnFace(width, height)!)!.Space!.Format);

    [Theory]
    [InlineData(25)]
    [InlineData(251)]
    public void Space_OfAFrontWhoseSizeWasNotToBeHad_IsNotKept(double squareCentimetres)
    {
        var drawing = LabelDrawing.Of(Content("185 x 130 x 60") with { Symbol = new(["sugars"], true), Panel = null, ShortPanel = null, Pack = PackShape.Surface(squareCentimetres) });

        Assert.Null(drawing.SymbolPlace);
        Assert.Contains(drawing.Remarks, remark => remark.StartsWith("No place is kept for symbol ", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_FrontOnWhichTheSymbolLeavesItsHalf_IsADraft()
    {
        var pack = PackShape.Box(60, 58, 50);
        var drawing = LabelDrawing.Of(Content("185 x 130 x 60") with { Symbol = new(["sugars"], true), Panel = null, ShortPanel = null, Languages = [], NetQuantity = "320 g", Pack = pack });

        Assert.Contains(drawing.DraftReasons, reason => reason.Contains("does not stand in the right half", StringComparison.Ordinal));
    }

    // The artwork is the authority's: without it the place is marked on a draft, with it the place is blank.
    [Theory]
    [InlineData("symbol_artwork,6BH.eps", false)]
    [InlineData("about,no artwork", true)]
    public void Drawn_SweetCake_IsADraftUntilTheArtworkIsNamed(string row, bool isDraft)
    {
        var drawing = DessertLabel.Drawn(Cake("185 x 130 x 60", row), "T1", "CA");

        Assert.Equal(isDraft, drawing.IsDraft);
        Assert.Equal(isDraft, drawing.Marks.OfType<ReserveMark>().Any());
        Assert.NotNull(drawing.SymbolPlace);
    }

    [Fact]
    public void DrawnFaces_OfSeveral_KeepsThePlaceOnTheFaceOfTheName()
    {
        var faces = DessertLabel.DrawnFaces(Cake("185 x 130 x 60", "symbol_artwork,6BH.eps", "face,185 x 130: name; net quantity", "face,185 x 130: rest"), "T1", "CA");

        Assert.Equal([true, false], faces.Select(face => face.SymbolPlace is not null));
    }

    [Fact]
    public void Of_AnyPack_IsSoundAndBordersHoldTheirLists()
    {
        var content = Content("185 x 130 x 60", "other_amount,2 slices; 80") with { Symbol = new(["sugars"], false) };
        Gen.Select(Gen.Double[60, 300], Gen.Double[60, 300], Gen.Double[5, 100]).Sample((first, second, third) =>
        {
            var drawing = LabelDrawing.Of(content with { Pack = PackShape.Box(first, second, third) });
            LabelDrawingTests.AssertSound(drawing);
            Assert.All(drawing.Marks.OfType<TextMark>().Where(text => text.Part is "list" or "contains"), text => Assert.Contains(Borders(drawing), border => Holds(border, text)));
        }, iter: 20);
    }

    private static IEnumerable<FrameMark> Borders(LabelDrawing drawing) => drawing.Marks.OfType<FrameMark>().Where(frame => Within(drawing, frame).Any(text => text.Part == "list"));

    private static IEnumerable<TextMark> Within(LabelDrawing drawing, LabelMark frame) => drawing.Marks.OfType<TextMark>().Where(text => Holds(frame, text));

    private static bool Holds(LabelMark frame, LabelMark mark) => mark.LeftMillimetres >= frame.LeftMillimetres - MicrometreMillimetres && mark.RightMillimetres <= frame.RightMillimetres + MicrometreMillimetres
        && mark.TopMillimetres >= frame.TopMillimetres - MicrometreMillimetres && mark.BottomMillimetres <= frame.BottomMillimetres + MicrometreMillimetres;

    private LabelDrawing Drawn(string box, LabelColours? colours = null, params string[] rows) => LabelDrawing.Of(Content(box, rows) with { Colours = colours ?? LabelColours.BlackOnWhite });

    // What is measured here does not hang on the symbol.
    private LabelContent Content(string box, params string[] rows) => DessertLabel.ContentOf(Cake(box, ["symbol_artwork,6BH.eps", .. rows]), "T1", "CA") with { Symbol = null };

    private Dessert Cake(string box, params string[] rows)
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "store"));
        File.WriteAllText(Path.Combine(_folder.Path, "store", "ingredients.csv"), "ingredient,food,allergens,label_name\nflour,SR28 20080,wheat,whole wheat flour\nsalt,SR28 02047,none,salt\nsugar,SR28 19335,none,sugar\n");
        File.WriteAllText(Path.Combine(_folder.Path, "store", "words.csv"), "word,fr\nwhole wheat flour,farine de blé entier\nsalt,sel\nsugar,sucre\nFlour cake,gâteau de farine\nslice,tranche\nslices,tranches\ncake,gâteau\ndry,au sec\n");
        File.WriteAllText(Path.Combine(_folder.Path, "6BH.eps"), "stands for the authority's artwork");
        File.WriteAllText(Path.Combine(_folder.Path, "trials.csv"), "trial,parent,made_on\nT1,,2026-11-01\n");
        File.WriteAllText(Path.Combine(_folder.Path, "formula.csv"), "component,line,T1\ncake,flour,240\ncake,salt,4\ncake,sugar,156\n");
        File.WriteAllLines(Path.Combine(_folder.Path, "dessert.csv"),
            ["key,value", "name,Flour cake", "portion_word,slice", "portion_g,40", "net_g,320", "reference_amount_g,80", "market,CA; CA; en", "market,CA; CA; fr", "form_of_sale,prepacked", "business,\"A bakery, Town\"", "lot,L 1", $"box_mm,{box}", "date_kind,best before", "keep,dry", .. rows]);
        return Dessert.Open(_folder.Path);
    }
}
