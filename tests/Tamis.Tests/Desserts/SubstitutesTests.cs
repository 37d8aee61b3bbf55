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
        Assert.All(found.Nearest.Where(each => !each.IsInStore), each => Assert.InRange(each.Distance.ApartGrams, 0, SubstitutionLimits.Kit.FarthestGrams));
        // 38.3 and 31.3 % of cocoa butter: as much of it takes more of the second.
        Assert.Equal("as much cocoa butter", first.Dose!.Function);
        Assert.Equal(38.3 / 31.3, first.Dose.Ratio, 0.005);
        Assert.Equal(found.Component.Made.MassInGrams + found.Component.Made.LineGrams("dark chocolate 64 %") * (first.Dose.Ratio - 1), first.Made!.MassInGrams, 6);
    }

    // By composition honey lies far from sugar; it is there because it sweetens, in the dose that is as sweet.
    [Fact]
    public void Of_SugarOfTheGel_FindsByFunctionWhatLiesFartherOff()
    {
        var found = Substitutes.Of(Tart, "T10", "gel", "caster sugar");
        var honey = found.Nearest.Single(each => each.Ingredient.Name == "honey");

        Assert.Equal("as sweet", honey.Dose!.Function);
        Assert.Equal(honey.Dose.Before / honey.Dose.After, honey.GramsForAGram, 12);
        Assert.InRange(honey.GramsForAGram, 1, 1.4);
        Assert.Equal(("sugar", "honey"), (found.Goes.LabelName, honey.LabelWord));
        Assert.All(found.Nearest.Where(each => each.Distance.ApartGrams > SubstitutionLimits.Kit.FarthestGrams), each => Assert.True(each.IsInStore && each.Dose is { Ratio: >= 0.5 and <= 2 }));
    }

    [Fact]
    public void Of_GelatineOfAnotherStrength_IsDosedByTheRootOfIt()
    {
        using var kitchen = Small("gelatine gold,SR28 19177,200\ngelatine bronze,SR28 19177,140\n", "gelatine gold");
        var other = Substitutes.Of(Dessert.Open(kitchen.Path), "T1", "x", "gelatine gold").Nearest.Single(each => each.IsInStore);

        Assert.Equal(("as firm a gel", Math.Sqrt(200.0 / 140)), (other.Dose!.Function, other.GramsForAGram));
        Assert.Equal(100 * Math.Sqrt(200.0 / 140), other.Made!.MassInGrams, 9);
    }

    // In May neither plums are there nor the apples and pears that would be near to them.
    [Fact]
    public void Of_FreshInAMonth_LeavesOutWhatIsOutOfSeason()
    {
        using var kitchen = Small("plums,SR28 09279,\nstrawberries,SR28 09316,\napples,SR28 09003,\n", "plums");
        var dessert = Dessert.Open(kitchen.Path);
        var (any, may) = (Substitutes.Of(dessert, "T1", "x", "plums"), Substitutes.Of(dessert, "T1", "x", "plums", freshInMonth: 5));

        Assert.Contains(any.Nearest, each => each.Season?.Holds(5) == false);
        Assert.NotEmpty(may.Nearest);
        Assert.All(may.Nearest, each => Assert.True(each.Season?.Holds(5) ?? true));
        Assert.Equal(["plums"], Substitutes.OutOfSeason(dessert.Trial("T1"), "north-west Europe", 5).Select(line => line.Ingredient.Name));
        Assert.Empty(Substitutes.OutOfSeason(dessert.Trial("T1"), "north-west Europe", 9));
    }

    [Fact]
    public void RegionOf_UnknownRegion_IsNamed()
    {
        using var kitchen = Small("plums,SR28 09279,\n", "plums");
        kitchen.Write("dessert.csv", "key,value\nregion,Atlantis\n");

        Assert.Contains("north-west Europe", Assert.Single(Kitchen.ProblemsOf(() => Substitutes.RegionOf(Dessert.Open(kitchen.Path), "T1"))).Expected, StringComparison.Ordinal);
        Assert.Equal(("dessert.csv", 2), OrderProblems.Of(Dessert.Open(kitchen.Path)).Select(problem => (problem.File, problem.Row)).Single());
    }

    private static TemporaryFolder Small(string ingredients, string line)
    {
        var kitchen = new TemporaryFolder();
        kitchen.Write("formula.csv", $"component,line,way,step,T1\nx,{line},,1,100 g\n");
        Directory.CreateDirectory(Path.Combine(kitchen.Path, "store"));
        kitchen.Write("store/ingredients.csv", "ingredient,food,bloom\n" + ingredients);
        return kitchen;
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
