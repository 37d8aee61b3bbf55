using Tamis.Composition;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Tests.Composition;

public sealed class CompoundFoodsTests : IDisposable
{
    private static readonly CompositionTable Table = KitData.Composition;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Foods_EachOfTheShippedTable_IsSaidToBeSingleOrACompound()
    {
        Assert.Empty(Table.Foods.Where(food => food.Compound is null).Select(food => food.Id));
        Assert.All(Table.Foods.Select(food => food.Compound!).Where(each => each.IsCompound), each => Assert.True(each.Kind.Length > 0 && each.ConsistsOf.Length > 0));
    }

    [Theory]
    [InlineData("SR28 19903", "dark chocolate")]
    [InlineData("SR28 19120", "milk chocolate")]
    [InlineData("SR28 19087", "white chocolate")]
    [InlineData("SR28 19297", "jam")]
    [InlineData("SR28 04617", "margarine")]
    [InlineData("SR28 18370", "baking powder")]
    [InlineData("SR28 18337", "puff pastry")]
    [InlineData("SR28 01095", "sweetened condensed milk")]
    [InlineData("CIQUAL 15201", "marzipan")]
    [InlineData("TAMIS 24", "praline paste")]
    [InlineData("SR28 09426", "candied fruit")]
    [InlineData("SR28 19336", "icing sugar")]
    public void Foods_WhatIsMadeOfSeveral_IsACompound(string food, string kind) => Assert.Equal((true, kind), (Table.Find(food).Compound!.IsCompound, Table.Find(food).Compound!.Kind));

    [Theory]
    [InlineData("SR28 19335")]
    [InlineData("SR28 19351")]
    [InlineData("SR28 01116")]
    [InlineData("SR28 01053")]
    [InlineData("SR28 01145")]
    [InlineData("SR28 20629")]
    [InlineData("SR28 12062")]
    [InlineData("SR28 19078")]
    [InlineData("SR28 02047")]
    public void Foods_WhatIsOneThing_IsSingle(string food) => Assert.False(Table.Find(food).Compound!.IsCompound);

    // Almond paste and marzipan are one thing under two names: a record that says 'with sugar' in its published name is never called single.
    [Fact]
    public void Foods_WhoseNameSaysThatSugarOrSaltIsIn_AreCompounds() =>
        Assert.All(Table.Foods.Where(food => new[] { "sweetened", "sugared", "salted", "10 % sugar", "enriched" }.Any(word => Names.HoldsWhole(food.Name, word)) && !Names.Holds(food.Name, "unsalted")),
            food => Assert.True(food.Compound!.IsCompound, food.Name));

    [Theory]
    [InlineData("Chocolat noir à 70 %", "dark chocolate")]
    [InlineData("Vollmilchschokolade", "milk chocolate")]
    [InlineData("Aprikosenkonfitüre", "jam")]
    [InlineData("Mermelada de naranja", "jam")]
    [InlineData("Margarina vegetale", "margarine")]
    [InlineData("Digestive biscuits", "biscuits and wafers")]
    [InlineData("Dijon mustard", "mustard")]
    [InlineData("Whole-egg custard", "custard powder")]
    public void Words_OfAFoodThatNoTableStates_TellACompound(string name, string kind)
    {
        var stated = Table.CompoundWords.In(name);
        Assert.Equal((true, kind), (stated!.IsCompound, stated.Kind));
    }

    [Theory]
    [InlineData("Mustard seeds")]
    [InlineData("Red wine vinegar")]
    [InlineData("Cake flour, of rye")]
    [InlineData("Custard apple")]
    [InlineData("Chocolate mint, fresh")]
    [InlineData("Damson puree")]
    [InlineData("Schwein, Schmalz")]
    public void Words_ThatOnlySoundLikeOne_TellNothing(string name) => Assert.Null(Table.CompoundWords.In(name));

    [Fact]
    public void Store_IngredientWithoutAStatedFood_IsToldByItsWordsAndAStatedOneIsNot()
    {
        List<CellProblem> problems = [];
        var store = Store.Read(Kitchen.Sheet("ingredients.csv", "ingredient,food,label_name,ingredient_list,additives\nfilling,,milk chocolate,,\ncocoa,SR28 19078,chocolate,\"cocoa mass\",none\n"), null, Table, KitData.Stated, null, problems);

        Assert.Empty(problems);
        Ingredient Of(string name) => store.Ingredients.All.Single(each => each.Name == name);
        Assert.Equal("milk chocolate", Of("filling").Compound!.Kind);
        Assert.Null(Of("filling").AdditiveList);
        Assert.False(Of("cocoa").Compound!.IsCompound);
        Assert.Equal(("cocoa mass", ""), (Of("cocoa").SupplierList, Of("cocoa").AdditiveList));
    }

    // Nobody can say how much of the sugars of an unlisted compound was added; of a single food none was.
    [Fact]
    public void Store_AddedSugarsOfAnUnlistedCompound_AreUnknown()
    {
        List<CellProblem> problems = [];
        var store = Store.Read(Kitchen.Sheet("ingredients.csv", "ingredient,food\ncouverture,SR28 19903\nalmonds,SR28 12062\n"), null, Table, KitData.Stated, null, problems);

        Assert.False(store.Ingredients.All[0].Profile!["SUGAD"].IsKnown);
        Assert.Equal(0, store.Ingredients.All[1].Profile!["SUGAD"].Per100Grams);
    }

    [Fact]
    public void Load_BadRows_AreNamedAllAtOnce()
    {
        _folder.Write("sources.csv", "key,evidence,title\nLAB,published,Our lab\n");
        _folder.Write("nutrients.csv", "tag,word,unit\nFAT,fat,g\n");
        _folder.Write("foods.csv", "food,name,source\nLAB 1,Cake,LAB\n");
        _folder.Write("contents.csv", "food,tag,state,value,source\nLAB 1,FAT,measured,10,LAB\n");
        _folder.Write("compound-foods.csv", "food,compound,kind,consists_of,source,locator,evidence,notes\nLAB 1,perhaps,cake,flour,us,,practice,\nLAB 1,yes,cake,,us,,practice,\nLAB 2,no,,,us,,practice,\n");

        var error = Assert.Throws<TableException>(() => CompositionTable.Load(_folder.Path));

        Assert.Equal([(2, "compound"), (3, "consists_of"), (3, "food"), (4, "food")], error.Problems.Select(problem => (problem.Row, problem.Column)));
    }
}
