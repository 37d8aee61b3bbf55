using Tamis.Formulas;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Tests.Physics;

public class IngredientKindsTests
{
    [Theory]
    [InlineData("milk chocolate 38 %", "milk chocolate")]
    [InlineData("Whole milk", "milk")]
    [InlineData("cocoa-flavoured chips", "compound coating")]
    [InlineData("cocoa butter, deodorised", "dark chocolate or cocoa")]
    [InlineData("peanut butter", "nut")]
    [InlineData("gelatine leaf", "gelling agent")]
    [InlineData("buttermilk", "milk")]
    [InlineData("quark", "not known")]
    public void Of_ANameWithoutAFood_IsTakenByItsLongestKnownWords(string name, string kind) =>
        Assert.Equal(kind, IngredientKinds.Kit.Of(new Ingredient { Name = name }).Name);

    [Fact]
    public void Of_AFoodNumber_CountsBeforeTheNameAndWithoutItsZeros() =>
        Assert.Equal("egg yolk", IngredientKinds.Kit.Of(new Ingredient { Name = "milk", Food = "sr28 1125" }).Name);

    [Fact]
    public void Of_AFunction_CountsWhereTheNameSaysNothing() =>
        Assert.Equal("gelling agent", IngredientKinds.Kit.Of(new Ingredient { Name = "E 407", Function = "gelling agent" }).Name);

    [Fact]
    public void Read_BadCells_AreAllNamed()
    {
        using var folder = new TemporaryFolder();
        folder.Write("ingredient-kinds.csv", "kind,fat_is,solids_are,sugars_are,polyols_are,carbohydrate_is,sodium_is_salt,none_of,source,checked\nmilk,milk fatt,,,,,no,,here,text\nmilk,milk fat,,,,,no,,,often\n");
        folder.Write("kind-of-food.csv", "food,words,kind\nSR28 1,,mill\n,,milk\n");
        folder.Write("glucose-syrups.csv", "dextrose_equivalent,glucose_percent,maltose_percent,source,checked\n40,20,10,here,text\n30,110,10,here,text\n");

        var problems = Kitchen.ProblemsOf(() => IngredientKinds.Read(PhysicsData.Load(folder.Path)));

        Assert.Contains(problems, problem => problem is { Column: "fat_is", Row: 2 } && problem.Expected.Contains("milk fat", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem is { Column: "kind", Row: 3, File: "ingredient-kinds.csv" });
        Assert.Contains(problems, problem => problem is { Column: "source", Row: 3 });
        Assert.Contains(problems, problem => problem is { Column: "checked", Row: 3 });
        Assert.Contains(problems, problem => problem is { Column: "kind", Row: 2, File: "kind-of-food.csv" });
        Assert.Contains(problems, problem => problem is { Column: "words", Row: 3 });
        Assert.Contains(problems, problem => problem is { Column: "glucose_percent", Row: 3 });
        Assert.Contains(problems, problem => problem is { Column: "dextrose_equivalent", Row: 3 });
    }
}
