using System.Globalization;
using Tamis.Desserts;
using Tamis.Montage;

namespace Tamis.Views.Tests.Drawings;

public class CrossSectionTests
{
    private static readonly AssembledPiece Tart = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart")).PieceOf("T1")!;

    [Fact]
    public void Of_Tart_DrawsEachLayerToOneScale()
    {
        var page = Markup.Read(CrossSection.Of("tart", Tart));
        var ring = WidthOf(".l-0");
        // The gel is 120 mm across in a ring of 160 mm.
        Assert.Equal(120.0 / 160, WidthOf(".l-5") / ring, 0.005);
        Assert.Equal(140.0 / 160, WidthOf(".l-3") / ring, 0.005);

        double WidthOf(string kind)
        {
            var xs = page.QuerySelector($"path{kind}")!.GetAttribute("d")!.Trim('M', 'Z').Split('L', 'M', 'Z').Where(each => each.Length > 0)
                .Select(point => double.Parse(point.Split(' ')[0], CultureInfo.InvariantCulture)).ToArray();
            return xs.Max() - xs.Min();
        }
    }

    [Fact]
    public void Of_Tart_SaysWhatEachLayerWeighsAndNoneOfItsLabelsCoversAnother()
    {
        var page = Markup.Read(CrossSection.Of("tart", Tart));
        var labels = page.QuerySelectorAll("svg text").ToArray();
        Assert.Equal(Tart.Layers.Count, labels.Length);
        Assert.Contains(labels, label => label.TextContent.StartsWith("gel 124", StringComparison.Ordinal));
        var places = labels.Select(label => double.Parse(label.GetAttribute("y")!, CultureInfo.InvariantCulture)).Order().ToArray();
        Assert.All(places.Zip(places.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 15));
        Assert.Equal(Tart.Layers.Count + 1, page.QuerySelectorAll("tbody tr").Length);
    }

    [Fact]
    public void Of_PieceWithoutShape_IsATableAlone()
    {
        var loaf = Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "travel-loaf")).PieceOf("V1")!;
        var page = Markup.Read(CrossSection.Of("<loaf>", loaf));
        Assert.Null(page.QuerySelector("svg"));
        Assert.NotNull(page.QuerySelector("table"));
    }
}
