using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public class FunctionalDataTests
{
    private const string Header = "ingredient,bloom,cocoa_percent,cocoa_butter_percent,milk_fat_percent,dextrose_equivalent,solids_percent,ph\n";

    private static Store Read(string ingredients, string? specifications, List<CellProblem> problems) =>
        Store.Read(Kitchen.Sheet("ingredients.csv", Header + ingredients), specifications is null ? null : Kitchen.Sheet("specifications.csv", specifications), KitData.Composition, KitData.Stated, null, problems);

    [Fact]
    public void Read_FunctionalColumns_AreThoseOfTheSheet()
    {
        List<CellProblem> problems = [];

        var chocolate = Read("dark chocolate,,64,38.3 %,0,,,\ndamson,,,,,,16,3.1\n", null, problems).Ingredients;

        Assert.Empty(problems);
        Assert.Equal((64.0, 38.3, 0.0), (chocolate.Find("dark chocolate")!.CocoaPercent, chocolate.Find("dark chocolate")!.CocoaButterPercent, chocolate.Find("dark chocolate")!.MilkFatPercent));
        Assert.Equal((16.0, 3.1), (chocolate.Find("damson")!.SolidsPercent, chocolate.Find("damson")!.PH));
    }

    [Fact]
    public void Read_ADocument_WinsWhereItsCellIsFilled()
    {
        List<CellProblem> problems = [];

        var chips = Read("chips,,20,10,,,,\n", "ingredient,document,date,cocoa_dry_solids_percent,cocoa_butter_percent,brix\nchips,CHIP-07,2026-02-10,14,1.5,\n", problems).Ingredients.Find("chips")!;

        Assert.Empty(problems);
        Assert.Equal((14.0, 1.5), (chips.CocoaPercent, chips.CocoaButterPercent));
    }

    [Theory]
    [InlineData("chocolate,,700,,,,,\n", "cocoa_percent")]
    [InlineData("chocolate,,64,70,,,,\n", "cocoa_butter_percent")]
    [InlineData("chocolate,,80,60,50,,,\n", "milk_fat_percent")]
    [InlineData("puree,,,,,,,31\n", "ph")]
    [InlineData("syrup,,,,,140,,\n", "dextrose_equivalent")]
    [InlineData("syrup,,,,,,-3,\n", "solids_percent")]
    public void Read_AFigureOutOfBounds_NamesItsCell(string row, string column)
    {
        List<CellProblem> problems = [];

        Read(row, null, problems);

        Assert.Equal((2, column), (Assert.Single(problems).Row, problems[0].Column));
    }
}
