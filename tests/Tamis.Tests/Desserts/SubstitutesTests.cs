using Tamis.Costing;
using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public class SubstitutesTests
{
    private static Dessert Tart => Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart"));

    [Fact]
    public void Of_DarkChocolate_FindsTheOtherOneFirst()
    {
        var found = Substitutes.Of(Tart, "T10", "ganache", "dark chocolate 64 %");
        var first = found.Nearest[0];

        Assert.Equal("dark chocolate 55 %", first.Ingredient.Name);
        Assert.True(first.IsSameKind);
        Assert.Empty(first.AllergensAdded);
        Assert.True(first.PerGram.Known < found.Component.PerGram.Known);
        Assert.All(found.Nearest, each => Assert.InRange(each.Distance.ApartGrams, 0, Substitutes.UsualGrams));
        Assert.Equal(found.Component.Made.MassInGrams, first.Made!.MassInGrams, 9);
    }

    [Fact]
    public void Cheapest_OfTheDemo_KeepsWindowsAndAddsNoAllergen()
    {
        foreach (var (component, ingredient) in new[] { ("ganache", "dark chocolate 64 %"), ("almond cream", "ground almonds"), ("mousse", "whole milk"), ("shell", "wheat flour") })
        {
            var found = Substitutes.Of(Tart, "T10", component, ingredient);
            if (found.CheapestThatKeeps is not { } cheapest) continue;
            Assert.Empty(cheapest.Lost);
            Assert.Empty(cheapest.AllergensAdded);
            Assert.All(found.Nearest.Where(each => each.IsInStore && each.Keeps && each.PerGram.IsWhole), each => Assert.True(each.PerGram.Known >= cheapest.PerGram.Known));
        }
    }

    [Fact]
    public void Of_FoodOfTheTable_HasNoPriceAndNobodyLooked()
    {
        var food = Substitutes.Of(Tart, "T10", "mousse", "whole milk").Nearest.First(each => !each.IsInStore);

        Assert.False(food.IsLookedAt);
        Assert.False(food.Keeps);
        Assert.False(food.PerGram.IsWhole);
        Assert.Empty(food.AllergensGone);
    }

    [Fact]
    public void Of_NutWithAnAllergenOfItsOwn_IsSaid()
    {
        using var kitchen = new TemporaryFolder();
        kitchen.Write("formula.csv", "component,line,way,step,T1\nx,almonds,,1,100 g\nx,water,out,1,2 % of almonds\n");
        Directory.CreateDirectory(Path.Combine(kitchen.Path, "store"));
        kitchen.Write("store/ingredients.csv", "ingredient,food,allergens,may_contain\nalmonds,SR28 12062,almond,\nalmonds with skin,SR28 12061,almond,hazelnut\n");
        var substitute = Substitutes.Of(Dessert.Open(kitchen.Path), "T1", "x", "almonds").Nearest.Single(each => each.IsInStore);

        Assert.Equal(["hazelnut"], substitute.AllergensAdded);
        Assert.NotNull(substitute.Made);
        // The 2 % of the almonds leave from what stands in for them.
        Assert.Equal(98, substitute.Made.YieldGrams, 9);
    }

    [Fact]
    public void Of_WithoutAnAllergen_LeavesOutWhatHoldsOrIsNamedAfterIt()
    {
        var found = Substitutes.Of(Tart, "T10", "almond cream", "ground almonds", without: "almond");

        Assert.NotEmpty(found.Nearest);
        Assert.DoesNotContain(found.Nearest, each => each.Ingredient.Name.Contains("almond", StringComparison.OrdinalIgnoreCase));
        Assert.Null(found.CheapestThatKeeps);
    }

    [Fact]
    public void Of_UnknownLine_NamesThoseThatAreThere() =>
        Assert.Contains("dark chocolate 64 %", Assert.Throws<KeyNotFoundException>(() => Substitutes.Of(Tart, "T10", "ganache", "chocolate")).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_IngredientWithoutFigures_IsRefused() => Assert.Throws<InvalidOperationException>(() => Substitutes.Of(Tart, "T10", "mousse", "bay leaf"));

    [Fact]
    public void Swap_MoreWaterLeavesThanIsThere_CannotBeMade()
    {
        List<CellProblem> problems = [];
        var batch = Kitchen.Batch("component,line,way,step,T1\nx,milk,,1,100 g\nx,water,out,1,80 %\n");

        Assert.Null(Swap.Of(batch, "x", "milk", Kitchen.Store.Find("butter")!, Kitchen.Store, problems));
        Assert.Contains("no more water", Assert.Single(problems).Expected, StringComparison.Ordinal);
    }
}
