using Tamis.Desserts;

namespace Tamis.Tests.Desserts;

public class DessertCostsTests
{
    private static Dessert Tart => Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));

    [Fact]
    public void Piece_OfTheDemo_IsTheSumOfItsIngredients()
    {
        var costs = DessertCosts.Of(Tart, "T10");

        Assert.True(costs.PieceCost.IsWhole);
        Assert.Equal(costs.PieceCost.Known, costs.Ingredients.Sum(share => share.Cost!.Value), 9);
        Assert.Equal(1, costs.Ingredients.Sum(share => share.Share!.Value), 9);
        Assert.Equal(costs.PieceCost.Known / 8, costs.PortionCost!.Value.Known, 12);
        Assert.Equal(costs.PieceGrams, Tart.PieceOf("T10")!.MassGrams!.Value, 9);
        Assert.Equal(costs.PieceCost.Known, costs.Working.Value);
    }

    [Fact]
    public void OneGramMore_InEveryPiece_IsTheDifferenceOfTwoBatches()
    {
        const string before = "component,line,way,step,T1,T2\nx,egg,,1,500 g,501 g\nx,bowl,out,1,3 %,3 %\n";
        using var kitchen = new TemporaryFolder();
        kitchen.Write("formula.csv", before);
        Directory.CreateDirectory(Path.Combine(kitchen.Path, "store"));
        kitchen.Write("store/ingredients.csv", "ingredient,edible_percent\negg,88\n");
        kitchen.Write("store/prices.csv", "ingredient,supplier,pack,pack_g,price,currency,date\negg,S1,tray,1740,8.70,EUR,2026-05-04\n");
        kitchen.Write("dessert.csv", "key,value,trial,notes\npieces,1,,\n");
        var dessert = Dessert.Open(kitchen.Path);
        var (one, more) = (DessertCosts.Of(dessert, "T1"), DessertCosts.Of(dessert, "T2"));

        Assert.Equal(more.PieceCost.Known - one.PieceCost.Known, one.Ingredients.Single().Line.PerWeighedGram!.Value, 9);
    }

    [Fact]
    public void History_OfTheDemo_SaysWhichPricesAreLater()
    {
        var history = CostHistory.Of(Tart, "T10");

        Assert.Equal(Tart.Prices.Days, history.Days.Select(day => day.Day));
        Assert.Contains("damson puree", history.Days[0].PricedLater);
        Assert.Empty(history.Days[^1].PricedLater);
        Assert.All(history.Swings, swing => Assert.True(swing.PieceCost.Contains(swing.Ingredient.Cost!.Value + 1e-12) || swing.PieceCost.Contains(swing.Ingredient.Cost!.Value - 1e-12)));
    }

    [Fact]
    public void Purchases_OfTheDemo_MassAndMoneyAddUp()
    {
        var purchases = Purchases.Of(Tart, "T10", 12);

        Assert.Equal(purchases.Amounts.Amounts.Account.Bought, purchases.Packs.Sum(each => each.NeededGrams), 6);
        Assert.All(purchases.Packs, each => Assert.Equal(each.BoughtGrams!.Value, each.NeededGrams + each.LeftGrams!.Value, 6));
        Assert.Equal(purchases.WholePacks.Known, purchases.Used.Known + purchases.Packs.Sum(each => each.LeftCost!.Value), 6);
    }

    [Fact]
    public void Selling_OfTheDemo_TakesTheTaxOff()
    {
        var costs = DessertCosts.Of(Tart, "T10");

        Assert.Equal(78 / 1.135, costs.Selling!.WithoutTax, 9);
        Assert.Equal(costs.PieceCost.Known / costs.Selling.WithoutTax * 100, costs.Selling.FoodCostPercent(costs.PieceCost)!.Value, 9);
        Assert.NotNull(costs.LabourPerPiece);
        Assert.Equal(14 * 0.29 / 4, costs.EnergyPerPiece!.Value, 9);
    }

    [Fact]
    public void Prices_NegativePrice_StopCostsAndNothingElse()
    {
        using var kitchen = new TemporaryFolder();
        kitchen.Write("formula.csv", "component,line,way,step,T1\nx,flour,,1,100 g\n");
        Directory.CreateDirectory(Path.Combine(kitchen.Path, "store"));
        kitchen.Write("store/prices.csv", "ingredient,supplier,pack,pack_g,price,currency,date\nflour,S1,sack,1000,-2,EUR,2026-05-04\n");
        var dessert = Dessert.Open(kitchen.Path);

        Assert.Equal(100, dessert.Trial("T1").Find("x")!.YieldGrams);
        Assert.Equal("price", Assert.Single(Kitchen.ProblemsOf(() => DessertCosts.Of(dessert, "T1"))).Column);
        Assert.Contains(dessert.Problems, problem => problem.File == "prices.csv");
    }

    [Theory]
    [InlineData("labour_per_hour,-5")]
    [InlineData("tax_percent,much")]
    [InlineData("price,-1")]
    [InlineData("reserve_percent,-10")]
    public void Facts_BadRate_IsNamed(string row)
    {
        using var kitchen = new TemporaryFolder();
        kitchen.Write("formula.csv", "component,line,way,step,T1\nx,flour,,1,100 g\n");
        kitchen.Write("dessert.csv", $"key,value,trial,notes\n{row},,\n");

        Assert.Equal("value", Assert.Single(Dessert.Open(kitchen.Path).Problems).Column);
    }
}
