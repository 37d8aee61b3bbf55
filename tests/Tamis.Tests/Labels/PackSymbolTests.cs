using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

/// <summary>Which symbol the front of a pack must carry, and where. Its artwork is the authority's.</summary>
public class PackSymbolTests
{
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));

    // Food and Drug Regulations (C.R.C., c. 870), B.01.351, B.01.352, B.01.355: symbol 2 names saturated fat and sugars on more than 30 cm².
    [Fact]
    public void Of_TwoFigures_IsTheLawsNumberWithItsFormatsItsHalfAndItsWords()
    {
        var symbol = PackSymbol.Of(LabelKit.Canada, ["sugars", "saturated fat"], PackShape.Box(185, 75, 65))!;

        Assert.Equal(("2", "the right half of the principal display panel"), (symbol.Figure, symbol.Place));
        Assert.Equal(2, symbol.Formats.Count);
        Assert.Equal(["High in", "Sat fat", "Sugars", "Health Canada"], symbol.Words["en"]);
        Assert.Equal(["Élevé en", "Gras sat.", "Sucres", "Santé Canada"], symbol.Words["fr"]);
        Assert.Contains("buffer", symbol.ToString(), StringComparison.Ordinal);
    }

    // An upright panel bears it in its upper half; above 450 cm² there is no vertical format.
    [Theory]
    [InlineData(185, 75, "the right half of the principal display panel")]
    [InlineData(75, 185, "the upper half of the principal display panel")]
    public void Of_AnyPanel_StandsOnTheHalfThatItsShapeGives(double width, double height, string place) =>
        Assert.Equal(place, PackSymbol.Of(LabelKit.Canada, ["sodium"], PackShape.Box(185, 75, 65).OnFace(width, height)!)!.Place);

    [Theory]
    [InlineData(450, 2)]
    [InlineData(451, 1)]
    public void Of_LargePanel_HasNoVerticalFormat(double squareCentimetres, int formats) => Assert.Equal(formats, PackSymbol.Of(LabelKit.Canada, ["sodium"], PackShape.Surface(squareCentimetres))!.Formats.Count);

    [Fact]
    public void Of_RulesWithoutASymbol_IsNone() => Assert.Null(PackSymbol.Of(LabelKit.Eu, ["sugars"], PackShape.Box(185, 75, 65)));

    [Fact]
    public void Of_RowsThatCannotBeRead_NamesThemAll()
    {
        using RuleFolderCopy copy = new();
        copy.Change("ca", "front-of-pack-symbol.csv", "figure,3,", "figur,3,");
        copy.Change("ca", "front-of-pack-symbol.csv", "wider than high", "wide");

        var problems = Assert.Throws<TableException>(() => PackSymbol.Of(copy.Load("ca"), ["sugars"], PackShape.Box(185, 75, 65))).Problems;

        Assert.Equal(["rule", "where"], problems.Select(problem => problem.Column).Order());
    }

    [Theory]
    [InlineData("size,28 x 14.2,BH", "size,28 by 14.2,BH")]
    [InlineData("buffer,1.1,BH", "buffer,wide,BH")]
    [InlineData("place,the upper half of", "place,the top of")]
    public void Of_MeasuresThatCannotBeRead_NamesTheCell(string row, string instead)
    {
        using RuleFolderCopy copy = new();
        copy.Change("ca", "front-of-pack-symbol.csv", row, instead);

        Assert.Equal(["value"], Assert.Throws<TableException>(() => PackSymbol.Of(copy.Load("ca"), ["sugars"], PackShape.Box(185, 75, 65))).Problems.Select(problem => problem.Column));
    }

    [Fact]
    public void Of_TrialWithUnknownFigures_CannotBeSaidAndStopsBoth()
    {
        Assert.Null(TrialSymbol.Of(Loaf, "V2", "ca").IsNeeded);
        Assert.Contains(LabelRecords.Hindrances(Loaf, "V2", "ca", "en"), reason => reason.StartsWith("whether the symbol must stand cannot be said: saturated fat", StringComparison.Ordinal));
        Assert.Contains(DessertLabel.DrawnFaces(Loaf, "V2", "CA")[0].DraftReasons, reason => reason.Contains("nutrition symbol on the front", StringComparison.Ordinal));
    }

    // 30 g of sugar are 30 % of Canada's daily value of 100 g; the law names it from 15 % on. No fat, no sodium: the sheet states them.
    [Theory]
    [InlineData("", "", false)]
    [InlineData("symbol_artwork,6BH.eps\n", "6BH.eps", true)]
    [InlineData("symbol_artwork,6BH.eps\n", "store/6BH.eps", true)]
    [InlineData("symbol_artwork,6BH.eps\n", "", false)]
    public void Of_SweetFood_AsksForTheArtworkOfTheAuthority(string row, string artwork, bool isThere)
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        if (artwork.Length > 0) File.WriteAllText(Path.Combine(folder.Path, artwork), "artwork");
        File.WriteAllText(Path.Combine(folder.Path, "store", "ingredients.csv"), "ingredient,food,label_name,allergens\nsugar,SR28 19335,sugar,none\n");
        File.WriteAllText(Path.Combine(folder.Path, "formula.csv"), "component,line,T1\nsugar work,sugar,200 g\n");
        File.WriteAllText(Path.Combine(folder.Path, "trials.csv"), "trial,parent,made_on\nT1,,2026-11-01\n");
        File.WriteAllText(Path.Combine(folder.Path, "dessert.csv"), $"key,value\nname,Sugar work\nportion_g,40\nnet_g,200\nreference_amount_g,40\nbox_mm,100 x 60 x 40\nform_of_sale,prepacked\n{row}");
        var dessert = Dessert.Open(folder.Path);

        var symbol = TrialSymbol.Of(dessert, "T1", "ca");

        Assert.True(symbol.IsNeeded);
        Assert.StartsWith("symbol 6, horizontal", symbol.Words, StringComparison.Ordinal);
        Assert.Equal(isThere, symbol.Artwork is not null);
        Assert.Equal(row.Length > 0 && !isThere, symbol.Lacks?.Contains("'6BH.eps', which the row names, stands neither", StringComparison.Ordinal) == true);
        // The file is asked for by name before anything is printed; a law without a symbol prints without it.
        Assert.Equal(row.Length > 0 && !isThere ? [("dessert.csv", "value", "6BH.eps")] : [], LabelCells.Problems(dessert, "T1", ["ca"]).Select(problem => (problem.File, problem.Column, problem.Found)));
        Assert.Equal(row.Length > 0 && !isThere, LabelCells.Problems(dessert).Any(problem => problem.Found == "6BH.eps"));
        Assert.DoesNotContain(LabelCells.Problems(dessert, "T1", ["eu"]), problem => problem.Found == "6BH.eps");
        Assert.Equal(isThere ? SaleState.There : SaleState.Missing, SaleChecklist.Of(dessert, "T1", "ca", "en").Items.Single(item => item.Requirement.By == "symbol").State);
        Assert.Equal(!isThere, LabelRecords.Hindrances(dessert, "T1", "ca", "en").Any(reason => reason.Contains("authority’s own artwork", StringComparison.Ordinal)));
    }

    // B.01.350(5)(b), (13)(h): nothing of it is asked below 100 cm², unless the table is: a claim, an added nutrient. Which figures are known does not matter then.
    [Theory]
    [InlineData("box_mm,40 x 40 x 40", "", false)]
    [InlineData("box_mm,50 x 40 x 35", "", true)]
    [InlineData("box_mm,40 x 40 x 40", "fortified_with,calcium\n", true)]
    [InlineData("box_mm,40 x 40 x 40", "claim,source of fibre\n", true)]
    [InlineData("box_mm,15 x 15 x 15", "claim,source of fibre\n", false)]
    [InlineData("surface_cm2,14", "", true)]
    [InlineData("box_mm,200 x 200 x 90", "exemption,made and sold in the same shop\n", false)]
    [InlineData("box_mm,200 x 200 x 90", "exemption,made and sold in the same shop\nclaim,source of fibre\n", true)]
    [InlineData("box_mm,200 x 200 x 90", "exemption,individual portion served with a meal\nclaim,source of fibre\n", false)]
    public void Of_SmallOrExemptPack_AsksForNoSymbol(string size, string rows, bool isNeeded)
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        File.WriteAllText(Path.Combine(folder.Path, "store", "ingredients.csv"), "ingredient,food,label_name,allergens\nsugar,SR28 19335,sugar,none\n");
        File.WriteAllText(Path.Combine(folder.Path, "formula.csv"), "component,line,T1\nsugar work,sugar,200 g\n");
        File.WriteAllText(Path.Combine(folder.Path, "trials.csv"), "trial,parent,made_on\nT1,,2026-11-01\n");
        File.WriteAllText(Path.Combine(folder.Path, "dessert.csv"), $"key,value\nname,Sugar work\nportion_g,40\nnet_g,200\nreference_amount_g,40\n{size}\nform_of_sale,prepacked\n{rows}");
        var symbol = TrialSymbol.Of(Dessert.Open(folder.Path), "T1", "ca");

        Assert.Equal(isNeeded, symbol.IsNeeded);
        Assert.Equal(isNeeded, symbol.Lacks is not null);
        Assert.Equal(!isNeeded, symbol.Words.StartsWith("no symbol is asked for", StringComparison.Ordinal));
    }

    [Fact]
    public void Exemptions_RowsThatCannotBeRead_NamesThemAll()
    {
        using RuleFolderCopy copy = new();
        copy.Change("ca", "front-of-pack-exemptions.csv", ",total surface < 15 cm2,,", ",,signed,");

        Assert.Equal(["exemption", "unless"], Assert.Throws<TableException>(() => FrontOfPackExemptions.Of(copy.Load("ca"))).Problems.Select(problem => problem.Column).Order());
    }
}
