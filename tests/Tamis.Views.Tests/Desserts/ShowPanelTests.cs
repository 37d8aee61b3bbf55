using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Tamis.Desserts;

namespace Tamis.Views.Tests;

/// <summary>A panel on a page has the columns that the law asks for.</summary>
public sealed class ShowPanelTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-panel-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private Dessert Cake(params string[] rows)
    {
        Directory.CreateDirectory(Path.Combine(_folder, "store"));
        File.WriteAllText(Path.Combine(_folder, "store", "ingredients.csv"), "ingredient,food\nflour,SR28 20080\nbutter,SR28 01145\n");
        File.WriteAllText(Path.Combine(_folder, "formula.csv"), "component,line,T1\nsponge,flour,100\nsponge,butter,100\n");
        File.WriteAllText(Path.Combine(_folder, "dessert.csv"), string.Join('\n', ["key,value", "name,A cake", .. rows]) + "\n");
        return Dessert.Open(_folder);
    }

    private IElement Pack(string rules, params string[] rows) => new HtmlParser().ParseDocument(Show.Panel(Cake(rows), "T1", rules).Markup).QuerySelector(".pack")!;

    private static string[] Texts(IElement pack, string selector) => [.. pack.QuerySelectorAll(selector).Select(each => each.TextContent.Trim().Replace('\u00a0', ' '))];

    // Standard 1.2.8, section S12-2: the serving is said above, and each line stands per serving and per 100 g. Butter with 81.11 % of fat and flour with 2.5 %, half and half, make 41.8 %.
    [Fact]
    public void Panel_AustraliaAndNewZealand_StandsPerServingAndPer100Grams()
    {
        var pack = Pack("au-nz", "portion_g,40", "portion_word,slice", "net_g,320");

        Assert.Equal(["Servings per package: 8", "Serving size: 1 slice (40 g)"], Texts(pack, ".serving"));
        Assert.Equal(["Quantity per serving", "Quantity per 100 g"], Texts(pack, "thead th").Take(2));
        Assert.Equal(["Fat, total", "16.7 g", "41.8 g"], Texts(pack.QuerySelectorAll("tbody tr").Single(row => row.TextContent.Contains("Fat, total", StringComparison.Ordinal)), "th, td").Take(3));
    }

    // Regulation (EU) No 1169/2011, Article 33: a portion beside 100 g, its size and their number on the label.
    [Fact]
    public void Panel_EuropeanUnion_HasThePortionBeside100Grams()
    {
        var pack = Pack("eu", "portion_g,40", "net_g,320");

        Assert.Equal(["Portions in the pack: 8", "Portion: 40 g"], Texts(pack, ".serving"));
        Assert.Equal(["per 100 g", "per portion (40 g)"], Texts(pack, "thead th").Take(2));
    }

    // 21 CFR 101.9(b)(12)(i), (e): 200 g are 250 % of the 80 g of such a cake; each column has its amounts and its percentages. 41.8 % of 60 g are 25 g of fat, 32 % of 78 g; of 200 g 84 g, 107 %.
    [Fact]
    public void Panel_UnitedStates_PackageOfTwoToThreeReferenceAmounts_HasTwoColumns()
    {
        string[] rows = ["portion_g,60", "portion_word,slice", "serving_category,\"cakes, mediumweight\""];
        var pack = Pack("us", [.. rows, "net_g,200"]);

        Assert.Equal(["Per serving", "Per container"], Texts(pack, "thead th"));
        Assert.Equal(["Total Fat", "25 g", "32%", "84 g", "107%"], Texts(pack.QuerySelectorAll("tbody tr").Single(row => row.TextContent.Contains("Total Fat", StringComparison.Ordinal)), "th, td"));
        Assert.Empty(Pack("us", [.. rows, "net_g,400"]).QuerySelectorAll("thead"));
        Assert.Equal(["About 7 servings per container", "Serving size 1 slice (60 g)"], Texts(Pack("us", [.. rows, "net_g,400"]), ".serving"));
    }

    // Food and Drug Regulations, B.01.002A(1)(b)(ii): 150 g are 187.5 % of 80 g. The page says why the portion of the sheet does not stand, and asks where nobody wrote the amount.
    [Fact]
    public void Panel_Canada_PackageBelowTwoReferenceAmounts_IsOneServing()
    {
        string[] rows = ["portion_g,40", "portion_word,slice", "net_g,150"];
        string Verdict(params string[] more) => new HtmlParser().ParseDocument(Show.PanelVerdict(Cake([.. rows, .. more]), "T1", "ca").Markup).Body!.TextContent;

        Assert.Equal(["Per 1 package (150 g)"], Texts(Pack("ca", [.. rows, "reference_amount_g,80"]), ".serving"));
        Assert.Contains("the serving is the whole package, and not the 40 g of portion_g", Verdict("reference_amount_g,80"), StringComparison.Ordinal);
        Assert.Equal(["Per 1 slice (40 g)"], Texts(Pack("ca", rows), ".serving"));
        Assert.Contains("write the amount as reference_amount_g in dessert.csv", Verdict(), StringComparison.Ordinal);
    }

    // Article 32(2): per 100 g or per 100 ml. Of a liquid of 1.1 g/ml 100 ml hold 1.1 times what 100 g do.
    [Fact]
    public void Panel_Liquid_StandsPer100Millilitres()
    {
        var pack = Pack("eu", "state,liquid", "density_g_ml,1.1", "portion_g,55");

        Assert.Equal(["per 100 ml", "per portion (50 ml)"], Texts(pack, "thead th").Take(2));
        Assert.Equal("46 g", Texts(pack.QuerySelectorAll("tbody tr").First(row => row.TextContent.StartsWith("Fat", StringComparison.OrdinalIgnoreCase)), "td")[0]);
    }

    // 21 CFR 101.9(f): of sugar alone the simplified format may be used; the page offers it, and draws it where dessert.csv asks for it.
    [Fact]
    public void Panel_NextToNothingOfMostFigures_MayBeShort()
    {
        string[] rows = ["portion_g,8"];
        Cake(rows);
        File.WriteAllText(Path.Combine(_folder, "store", "ingredients.csv"), "ingredient,food\nflour,SR28 19335\nbutter,SR28 19335\n");
        var full = Dessert.Open(_folder);
        File.WriteAllText(Path.Combine(_folder, "dessert.csv"), "key,value\nportion_g,8\npanel_form,short\n");
        var brief = Dessert.Open(_folder);

        Assert.Contains("The simplified format may be used", Show.PanelVerdict(full, "T1", "us").ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("Cholesterol", Show.Panel(full, "T1", "us").ToPlainText(), StringComparison.Ordinal);
        var pack = new HtmlParser().ParseDocument(Show.Panel(brief, "T1", "us").Markup).QuerySelector(".pack")!;
        Assert.DoesNotContain("Cholesterol", pack.TextContent, StringComparison.Ordinal);
        Assert.Contains("Not a significant source of saturated fat, trans fat, cholesterol", pack.TextContent, StringComparison.Ordinal);
    }

    // Regulation (EU) No 1169/2011, Article 30(5): the page of loose food offers the panel of few figures, and draws it where dessert.csv asks for it.
    [Fact]
    public void Panel_LooseFood_MayHaveFewFigures()
    {
        Assert.Contains("write panel_form, energy alone (energy) or energy + 4 (energy, fat, saturates, sugars and salt) in dessert.csv", Show.PanelVerdict(Cake("form_of_sale,loose"), "T1", "eu").ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("energy alone", Show.PanelVerdict(Cake("form_of_sale,prepacked"), "T1", "eu").ToPlainText(), StringComparison.Ordinal);

        var few = Pack("eu", "form_of_sale,loose", "panel_form,energy + 4");

        Assert.Equal(["Energy", "Fat", "of which saturates", "Sugars", "Salt"], Texts(few, "tbody th"));
        Assert.Contains("Energy + 4 stands on the panel, as dessert.csv asks", Show.PanelVerdict(Cake("form_of_sale,loose", "panel_form,energy + 4"), "T1", "eu").ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("the full one stands: only for what is sold loose", Show.PanelVerdict(Cake("form_of_sale,prepacked", "panel_form,energy + 4"), "T1", "eu").ToPlainText(), StringComparison.Ordinal);
    }

    // What keeps a panel from being drawn is said on the page, with its cell.
    [Theory]
    [InlineData("serving_category,cake of mine", "row 4, column 'value': found 'cake of mine'")]
    [InlineData("net_g,30", "row 3, column 'value': found '40'")]
    public void Panel_WhatCannotBe_NamesTheCell(string row, string said)
    {
        var cake = Cake("portion_g,40", row);

        Assert.All([Show.Panel(cake, "T1", "us"), Show.PanelVerdict(cake, "T1", "us")], page => Assert.Contains(said, page.ToPlainText(), StringComparison.Ordinal));
    }
}
