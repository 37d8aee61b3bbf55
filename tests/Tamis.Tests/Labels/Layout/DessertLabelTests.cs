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

    [Theory]
    [InlineData("print_colour,red,,", "a colour")]
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

    // The demo's loaf with further rows in its dessert.csv.
    private Dessert Loaf(params string[] rows)
    {
        foreach (var (from, to) in new[] { ("desserts/travel-loaf", ""), ("desserts/store", "store") })
        {
            Directory.CreateDirectory(Path.Combine(_folder.Path, to));
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data(from))) File.Copy(file, Path.Combine(_folder.Path, to, Path.GetFileName(file)));
        }
        File.AppendAllLines(Path.Combine(_folder.Path, "dessert.csv"), rows);
        return Dessert.Open(_folder.Path);
    }
}
