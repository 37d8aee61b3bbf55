using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels.Layout;

/// <summary>What the rows of dessert.csv put on a label.</summary>
public sealed class DessertLabelTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void ContentOf_BusinessAndLot_StandOnceBelowAllLanguages()
    {
        var content = DessertLabel.ContentOf(Loaf("business,\"A bakery, 1 Street, Town\",,", "lot,L 0001,,"), "V1", "IE; FR");

        Assert.Equal(["en", "fr", ""], content.Languages.Select(language => language.Language));
        Assert.Equal(["A bakery, 1 Street, Town", "L 0001"], content.Languages[^1].Paragraphs.Select(paragraph => paragraph.Runs.Single().Text));
    }

    // Regulation (EU) No 1169/2011, Annex VI Part A(2): the statement stands with the name of the food; Annex X(1)(a): the words before the date.
    [Fact]
    public void ContentOf_ThawedFood_SaysSoBesideItsName()
    {
        var said = DessertLabel.ContentOf(Loaf("thawed,yes,,"), "V1", "IE").Languages[0].Paragraphs;

        Assert.Equal(["name", "warning", "list"], said.Take(3).Select(paragraph => paragraph.Part));
        Assert.Equal("Defrosted", said[1].Runs.Single().Text);
        Assert.Contains("Best before: see the stamp", said.Select(paragraph => paragraph.Runs[0].Text));
    }

    [Fact]
    public void ContentOf_WordsWithoutATerm_AreADraftThatNamesThem()
    {
        var drawing = DessertLabel.Drawn(Loaf("instructions,slice with a wet knife,,"), "V1", "FR");

        Assert.Contains(drawing.DraftReasons, reason => reason.StartsWith("'slice with a wet knife' has no words in 'fr'", StringComparison.Ordinal));
    }

    [Fact]
    public void ContentOf_Colours_AreThoseOfThePack()
    {
        var colours = DessertLabel.ContentOf(Loaf("print_colour,#102030,,", "ground_colour,#f0f0f0,,"), "V1", "IE").Colours;

        Assert.Equal(("#102030", "#f0f0f0"), (colours.Ink.ToString(), colours.Ground.ToString()));
    }

    // Figures that contradict each other on one pack stop print as they stop a signature.
    [Fact]
    public void Drawn_PortionsThatDoNotMakeThePack_IsADraft()
    {
        var loaf = Loaf();
        var file = Path.Combine(loaf.Folder, "dessert.csv");
        File.WriteAllLines(file, File.ReadAllLines(file).Select(line => line.StartsWith("portions,", StringComparison.Ordinal) ? "portions,9,," : line));

        Assert.Contains(DessertLabel.Drawn(Dessert.Open(loaf.Folder), "V1b", "IE").DraftReasons, reason => reason.Contains("9 portions of 40 g are 360 g", StringComparison.Ordinal));
    }

    // Regulation (EU) No 1169/2011, Article 16(2) lets the list be left off under 10 cm2, and Article 21(1) then asks for "contains" with the allergens.
    [Fact]
    public void Drawn_PackTooSmallForAList_StillTellsOfAllergens()
    {
        var loaf = Loaf();
        var file = Path.Combine(loaf.Folder, "dessert.csv");
        File.WriteAllLines(file, File.ReadAllLines(file).Select(line => line.StartsWith("box_mm", StringComparison.Ordinal) ? "box_mm,30 x 25 x 15,," : line));

        var drawing = DessertLabel.Drawn(Dessert.Open(loaf.Folder), "V1b", "IE; FR");
        var printed = string.Join(' ', drawing.Marks.OfType<TextMark>().Select(mark => mark.Text));

        Assert.DoesNotContain("Ingredients", printed, StringComparison.Ordinal);
        Assert.Matches("Contains: +rye *, +eggs? *, +milk *, +sulphites", printed);
        Assert.Matches("Contient\u00a0: +seigle", printed);
    }

    [Theory]
    [InlineData("print_colour,red,,", "column 'value': found 'red', expected a colour")]
    [InlineData("box_mm,185 x 75,V1,", "length, width and height in mm")]
    public void ContentOf_ABadCell_SaysWhatIsExpected(string row, string expected) =>
        Assert.Contains(expected, Assert.Throws<TableException>(() => DessertLabel.ContentOf(Loaf(row), "V1", "IE")).Problems.Single().ToString(), StringComparison.Ordinal);

    [Fact]
    public void ContentOf_APackOfUnknownSize_AsksForIt()
    {
        var loaf = Loaf();
        var file = Path.Combine(loaf.Folder, "dessert.csv");
        File.WriteAllLines(file, File.ReadAllLines(file).Where(line => !line.StartsWith("box_mm", StringComparison.Ordinal)));

        Assert.Contains("surface_cm2", Assert.Throws<TableException>(() => DessertLabel.ContentOf(Dessert.Open(loaf.Folder), "V1", "IE")).Problems.Single().ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void DrawnFaces_NoRows_IsTheLargestFaceAlone()
    {
        var loaf = Loaf();

        var drawing = Assert.Single(DessertLabel.DrawnFaces(loaf, "V1", "IE"));

        Assert.Null(drawing.Content.Face);
        Assert.Equal(DessertLabel.Drawn(loaf, "V1", "IE").Marks, drawing.Marks);
    }

    [Fact]
    public void DrawnFaces_NameInFrontAndTheRestBeside_EachCarriesItsOwnAndNothingIsLost()
    {
        var loaf = Loaf("face,185 x 75: name; net quantity,,", "face,185 x 65: rest,,", "thawed,yes,,");
        var faces = DessertLabel.DrawnFaces(loaf, "V1b", "IE");

        Assert.Equal([1, 2], faces.Select(face => face.Content.Face!.Value));
        // A statement beside the name goes where the name goes.
        Assert.Equal(["name", "warning", "net quantity"], PartsOf(faces[0]));
        Assert.Equal((LabelArrangement.TextAlone, "text alone"), (faces[0].Layout.Arrangement, faces[0].Layout.InWords));
        Assert.NotNull(faces[1].Content.Panel);
        Assert.DoesNotContain("name", PartsOf(faces[1]));
        var whole = DessertLabel.Drawn(loaf, "V1b", "IE");
        Assert.Equal(WordsOf([whole]), WordsOf(faces));
        Assert.All(faces, face => Assert.Empty(face.DraftReasons));
    }

    // Article 13(2) of Regulation (EU) No 1169/2011: the sizes hang on the largest face, also on the 49 cm² of an end.
    [Fact]
    public void DrawnFaces_PanelOnAnEnd_StandsAloneInTheTypeOfTheLargestFace()
    {
        var faces = DessertLabel.DrawnFaces(Loaf("face,75 x 65: panel,,", "face,185 x 75: rest,,"), "V1b", "IE");

        Assert.Equal(("table, alone", 75.0, 65.0), (faces[0].Layout.InWords, faces[0].WidthMillimetres, faces[0].HeightMillimetres));
        Assert.All(faces[0].Sizes, size => Assert.Equal(1.2, size.XHeightMillimetres, 9));
        Assert.DoesNotContain(faces.SelectMany(face => face.Remarks), remark => remark.Contains("largest face is drawn", StringComparison.Ordinal));
    }

    [Fact]
    public void DrawnFaces_ThreeFacesAndOneOfThemTwice_AreAllDrawn()
    {
        var faces = DessertLabel.DrawnFaces(Loaf("face,185 x 75: name; net quantity,,", "face,185 x 65: list,,", "face,65 x 75: panel,,", "face,75 x 65: rest,,"), "V1b", "IE");

        Assert.Equal([(185.0, 75.0), (185, 65), (65, 75), (75, 65)], faces.Select(face => (face.WidthMillimetres, face.HeightMillimetres)));
    }

    // Article 13(5): name and net quantity in the same field of vision.
    [Fact]
    public void DrawnFaces_NameAndNetQuantityApart_StopsEveryFaceWithTheArticle()
    {
        var loaf = Loaf("face,185 x 75: name,,", "face,185 x 65: rest,,");

        Assert.All(DessertLabel.DrawnFaces(loaf, "V1b", "IE"), face => Assert.Contains(face.DraftReasons, reason => reason.Contains("The name and the net quantity must stand on one face", StringComparison.Ordinal) && reason.Contains("Article 13(5)", StringComparison.Ordinal)));
    }

    // The Food Standards Code sets no common field of vision; the measurement stands on the main display part, and the kit says where it reads more into that than is there.
    [Fact]
    public void DrawnFaces_NameAndNetQuantityApartByCustomOnly_IsSaidAndStopsNothing()
    {
        var faces = DessertLabel.DrawnFaces(Loaf("face,185 x 75: name,,", "face,185 x 65: rest,,"), "V1", "AU");

        Assert.DoesNotContain(faces.SelectMany(face => face.DraftReasons), reason => reason.Contains("one face", StringComparison.Ordinal));
        Assert.All(faces, face => Assert.Contains(face.Remarks, remark => remark.StartsWith("The name and the net quantity should stand on one face (National Trade Measurement Regulations 2009", StringComparison.Ordinal)));
    }

    // Article 13(6): a pack under 10 cm2 needs no common field of vision.
    [Fact]
    public void DrawnFaces_PackUnder10SquareCentimetres_NeedsNoCommonFace() =>
        Assert.DoesNotContain(DessertLabel.DrawnFaces(Loaf("box_mm,33 x 30 x 30,V1b,", "face,33 x 30: name,V1b,", "face,30 x 33: rest,V1b,"), "V1b", "IE").SelectMany(face => face.DraftReasons), reason => reason.Contains("one face", StringComparison.Ordinal));

    // Article 13(5): the strength of a drink of more than 1.2 % by volume stands in one field of vision with its name, and so goes where the name goes.
    [Theory]
    [InlineData("face,185 x 75: name; net quantity,,", null)]
    [InlineData("face,185 x 75: name,,", "The name (with ‘17 % vol’) and the net quantity must stand on one face")]
    public void DrawnFaces_StrengthOfADrink_GoesWithItsName(string face, string? reason)
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        folder.Write("store/ingredients.csv", "ingredient,food,allergens,label_name\nliqueur,SR28 14414,none,liqueur\n");
        folder.Write("formula.csv", "component,line,T1\ndrink,liqueur,100\n");
        folder.Write("dessert.csv", $"key,value,trial,notes\nname,A drink,,\nnet_g,200,,\nfood_category,beverages,,\nalcohol_percent_vol,17,,\nform_of_sale,prepacked,,\nbox_mm,185 x 75 x 65,,\nmarket,IE; EU; en,,\n{face}\nface,185 x 65: rest,,\n");
        var faces = DessertLabel.DrawnFaces(Dessert.Open(folder.Path), "T1", "IE");

        Assert.Contains("17", string.Join(" ", faces[0].Marks.OfType<TextMark>().Select(mark => mark.Text)), StringComparison.Ordinal);
        Assert.DoesNotContain("vol", string.Join(" ", faces[1].Marks.OfType<TextMark>().Select(mark => mark.Text)), StringComparison.Ordinal);
        string[] said = [.. faces.SelectMany(each => each.DraftReasons).Where(each => each.Contains("one face", StringComparison.Ordinal)).Distinct()];
        if (reason is null) Assert.Empty(said);
        else Assert.StartsWith(reason, Assert.Single(said), StringComparison.Ordinal);
        Assert.Equal(reason is not null, LabelRecords.Hindrances(Dessert.Open(folder.Path), "T1", "eu", "en").Any(each => each.Contains("must stand on one face", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("a face of the box: 185 x 75, 185 x 65, 75 x 65", "face,185 x 99: rest,,")]
    [InlineData("width x height of a face", "face,rest,,")]
    [InlineData("for 'cheese' one of: name", "face,185 x 75: cheese; rest,,")]
    [InlineData("a face for net quantity, list, warning, text, panel, or for 'rest'", "face,185 x 75: name,,")]
    [InlineData("a box has two faces of each", "face,185 x 75: name,,", "face,75 x 185: list,,", "face,185 x 75: rest,,")]
    public void DrawnFaces_ABadRow_SaysWhatIsExpected(string expected, params string[] rows) =>
        Assert.Contains(expected, Assert.Single(Assert.Throws<TableException>(() => DessertLabel.DrawnFaces(Loaf(rows), "V1b", "IE")).Problems).ToString(), StringComparison.Ordinal);

    private static IEnumerable<string> PartsOf(LabelDrawing drawing) => drawing.Marks.OfType<TextMark>().OrderBy(mark => mark.BaseLineMillimetres).Select(mark => mark.Part).Distinct();

    private static IEnumerable<string> WordsOf(IEnumerable<LabelDrawing> drawings) =>
        drawings.SelectMany(drawing => drawing.Marks.OfType<TextMark>()).SelectMany(mark => mark.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Order(StringComparer.Ordinal);

    // The demo's loaf with further rows in its dessert.csv.
    // Food and Drug Regulations (C.R.C., c. 870), B.01.006(1) and B.01.008(1): the common name stands on the principal display panel as the net quantity does; statements stand grouped together with the list.
    [Theory]
    [InlineData("185 x 75: name", "185 x 65: rest", "The name and the net quantity must stand on one face")]
    [InlineData("185 x 75: name; net quantity", "185 x 65: rest", null)]
    public void DrawnFaces_Canada_WantsNameAndQuantityTogether(string first, string second, string? reason)
    {
        var reasons = DessertLabel.DrawnFaces(Loaf($"face,{first},,", $"face,{second},,"), "V2", "CA").SelectMany(face => face.DraftReasons).ToArray();

        if (reason is null) Assert.DoesNotContain(reasons, each => each.Contains("must stand on one face", StringComparison.Ordinal));
        else Assert.Contains(reasons, each => each.StartsWith(reason, StringComparison.Ordinal));
    }

    // A label without a statement has nothing to stand beside its list.
    [Fact]
    public void DrawnFaces_PartThatTheLabelDoesNotHave_StandsBesideNothing() =>
        Assert.DoesNotContain(DessertLabel.DrawnFaces(Loaf("face,185 x 75: name; net quantity; warning,,", "face,185 x 65: rest,,"), "V2", "CA").SelectMany(face => face.DraftReasons), each => each.Contains("must stand on one face", StringComparison.Ordinal));

    // B.01.008.1(3): beside a table in 8 point the list is as high as its nutrients, and never below 1.4 mm with 3.2 mm from line to line.
    [Fact]
    public void DrawnFaces_Canada_ListIsAsHighAsTheNutrientsOfATableInEightPoint()
    {
        var rules = LayoutRules.Of(KitData.Rules("ca"));
        var box = PackShape.Box(185, 75, 65);

        var (list, nutrient) = (rules.Size("list", box, null, "standard, 8 point"), rules.Size("nutrient", box, null, "standard, 8 point"));

        Assert.Equal(nutrient.SizeMillimetres, list.SizeMillimetres, 9);
        Assert.True(list.XHeightMillimetres >= 1.4);
        Assert.Equal(1.1, rules.Size("list", box, null, "horizontal").XHeightMillimetres, 9);
    }

    private Dessert Loaf(params string[] rows)
    {
        foreach (var (from, to) in new[] { ("desserts/travel-loaf", ""), ("desserts/store", "store") })
        {
            Directory.CreateDirectory(Path.Combine(_folder.Path, to));
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data(from))) File.Copy(file, Path.Combine(_folder.Path, to, Path.GetFileName(file)));
        }
        // The demo's own faces are left out: each test spreads the label as it needs.
        var sheet = Path.Combine(_folder.Path, "dessert.csv");
        File.WriteAllLines(sheet, [.. File.ReadAllLines(sheet).Where(line => !line.StartsWith("face,", StringComparison.Ordinal)), .. rows]);
        return Dessert.Open(_folder.Path);
    }
}
