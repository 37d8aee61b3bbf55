using CsCheck;
using Tamis.Desserts;
using Tamis.Labels;

namespace Tamis.Tests.Labels.Layout;

/// <summary>Packs under 10 cm², which need not bear all that a larger one must: Regulation (EU) No 1169/2011, Article 16(2).</summary>
public sealed class SmallPackTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // Name, allergens, net quantity and date stay, whatever the room; the rest goes only as far as it must.
    [Theory]
    [InlineData("IE")]
    [InlineData("GB")]
    public void Drawn_20By20Millimetres_BearsWhatMustStandThereAndSaysWhatWentAndWhy(string market)
    {
        var drawing = DessertLabel.Drawn(Bite("20 x 20 x 20"), "T1", market);
        var printed = Printed(drawing);

        Assert.Empty(drawing.DraftReasons);
        Assert.Equal(["lot", "business", "keep"], drawing.Layout.LeftOff.Select(rule => rule.Part));
        Assert.All(["Hazelnut bite", "Contains: milk, hazelnuts", "Best before: see the stamp", "10 g"], text => Assert.Contains(text, printed, StringComparison.Ordinal));
        Assert.All(["L 1", "A bakery", "Cool and dry", "Ingredients"], text => Assert.DoesNotContain(text, printed, StringComparison.Ordinal));
        Assert.All(["Left off, as no layout has room for it, and given by other means: the lot (Directive 2011/91/EU", "Left off, as no layout has room for it, and given by other means: the name and address of the business (Regulation (EU) No 1169/2011, Article 16(2)", "Left off, as no layout has room for it, and given by other means: the way to keep it (Regulation (EU) No 1169/2011, Article 16(2)"],
            said => Assert.Contains(drawing.Remarks, remark => remark.StartsWith(said, StringComparison.Ordinal)));
        Assert.EndsWith("without the lot, name and address of the business, way to keep it", drawing.Layout.InWords, StringComparison.Ordinal);
        LabelDrawingTests.AssertSound(drawing);
    }

    [Fact]
    public void Drawn_RoomForAll_LeavesNothingOff()
    {
        var drawing = DessertLabel.Drawn(Bite("38 x 26 x 15"), "T1", "IE");

        Assert.Empty(drawing.DraftReasons);
        Assert.Empty(drawing.Layout.LeftOff);
        Assert.All(["L 1", "A bakery", "Cool and dry"], text => Assert.Contains(text, Printed(drawing), StringComparison.Ordinal));
        Assert.DoesNotContain("Left off", string.Concat(drawing.Remarks), StringComparison.Ordinal);
    }

    // The lot goes first; where the address must go after it, the short lot has room again, and how to keep it has not gone.
    [Fact]
    public void Drawn_RoomForSome_KeepsWhatFits()
    {
        var drawing = DessertLabel.Drawn(Bite("22 x 26 x 20"), "T1", "IE");
        var printed = Printed(drawing);

        Assert.Empty(drawing.DraftReasons);
        Assert.Equal(["business"], drawing.Layout.LeftOff.Select(rule => rule.Part));
        Assert.Contains("L 1", printed, StringComparison.Ordinal);
        Assert.Contains("Cool and dry", printed, StringComparison.Ordinal);
    }

    // From 10 cm² on nothing of it may go: what has no room is refused.
    [Fact]
    public void Drawn_PackOf10SquareCentimetres_LeavesNothingOff()
    {
        var drawing = DessertLabel.Drawn(Bite("50 x 20 x 10"), "T1", "IE");

        Assert.All(drawing.Attempts, attempt => Assert.Empty(attempt.LeftOff));
        Assert.False(drawing.Layout.Fits);
    }

    [Fact]
    public void Drawn_AnySmallPack_KeepsWhatMustStandThere()
    {
        var content = DessertLabel.ContentOf(Bite("20 x 20 x 20"), "T1", "IE");
        Gen.Select(Gen.Double[12, 45], Gen.Double[12, 45]).Sample((width, height) =>
        {
            var drawing = LabelDrawing.Of(content with { Pack = PackShape.Box(width, height, 10) });
            var printed = Printed(drawing);
            LabelDrawingTests.AssertSound(drawing);
            Assert.All(["Hazelnut bite", "Contains:", "Best before:", "10 g"], text => Assert.Contains(text, printed, StringComparison.Ordinal));
            Assert.Equal(drawing.Layout.LeftOff.Any(rule => rule.Part == "lot"), !printed.Contains("L 1", StringComparison.Ordinal));
        }, iter: 40);
    }

    // What is lifted on a form of sale by the size of the pack is what the layout may leave off: the two files say one thing.
    [Theory]
    [InlineData("eu", "largest surface under 10 cm2")]
    [InlineData("gb", "largest surface under 10 cm2")]
    [InlineData("codex", "surface under 10 cm2")]
    public void Exemptions_OfTheLayout_AreThoseOfTheFormOfSale(string set, string exemption)
    {
        var rules = RuleSets.Load(LabelKit.Folder, set);
        string[] lifted = [.. SaleRules.Of(rules).For("prepacked").Where(row => row.Exemptions.Contains(exemption)).SelectMany(row => row.FactKeys)];
        string[] layout = [.. LayoutRules.Of(rules).Rows.Where(row => row.Rule == "exempt" && row.Value.Length > 0).Select(row => row.Part)];

        Assert.NotEmpty(lifted);
        Assert.Equal(lifted.Order(), layout.Order());
        Assert.All(layout, part => Assert.True(LayoutRules.Of(rules).Exemption(part, PackShape.Surface(9.9), 10) is not null && LayoutRules.Of(rules).Exemption(part, PackShape.Surface(10), 10) is null));
    }

    [Theory]
    [InlineData("20 x 20 x 20", false)]
    [InlineData("38 x 26 x 15", true)]
    public void Record_OfASmallPack_HoldsWhatIsPrintedAndWhatIsGivenByOtherMeans(string box, bool isPrinted)
    {
        var sections = LabelRecords.SectionsOf(Bite(box), "T1", "eu", "en");
        string[] printed = [.. sections.Where(section => section.IsPrinted).SelectMany(section => section.Rows).Select(row => row.Key)];
        var otherwise = sections.Where(section => !section.IsPrinted).SelectMany(section => section.Rows).Where(row => row.Key.StartsWith("given by other means: ", StringComparison.Ordinal)).ToArray();

        Assert.All(["storage", "name and address", "lot"], key => Assert.Equal(isPrinted, printed.Contains(key)));
        Assert.Equal(isPrinted ? [] : ["given by other means: storage", "given by other means: name and address", "given by other means: lot"], otherwise.Select(row => row.Key));
        Assert.All(otherwise, row => Assert.True(row.Text.Length > 0 && (row.Source.Contains("Article 16(2)", StringComparison.Ordinal) || row.Source.Contains("2011/91/EU", StringComparison.Ordinal))));
    }

    private static string Printed(LabelDrawing drawing) => string.Join(' ', drawing.Marks.OfType<TextMark>().Select(mark => mark.Text.Trim())).Replace('\u00a0', ' ').Replace(" ,", ",", StringComparison.Ordinal);

    private Dessert Bite(string box)
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "store"));
        _folder.Write("store/ingredients.csv", "ingredient,food,allergens,label_name\nhazelnuts,SR28 12120,hazelnuts,hazelnuts\nmilk powder,SR28 01091,milk,skimmed milk powder\nsugar,SR28 19335,none,sugar\n");
        _folder.Write("formula.csv", "component,line,T1\nbite,hazelnuts,50\nbite,milk powder,20\nbite,sugar,30\n");
        _folder.Write("dessert.csv", $"key,value\nname,Hazelnut bite\nmarket,IE; EU; en\nmarket,GB; GB; en\nform_of_sale,prepacked\nbusiness,\"A bakery, 1 Long Street, Town\"\nlot,L 1\nbox_mm,{box}\ndate_kind,best before\nshelf_days,30\nkeep,\"cool and dry, below 22 °C\"\nnet_g,10\nexemption,largest surface under 25 cm2\nexemption,largest surface under 10 cm2\n");
        return Dessert.Open(_folder.Path);
    }
}
