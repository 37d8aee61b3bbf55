using Tamis.Composition;
using Tamis.Desserts;

namespace Tamis.Tests.Desserts;

/// <summary>A table of foods in the folder <c>composition</c> of a store, beside the kit's own. Invented.</summary>
public sealed class StoreTableTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public StoreTableTests()
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "store", "composition"));
        _folder.Write("formula.csv", "component,line,way,step,T1\ncake,damson,,1,100\ncake,butter,,1,100\n");
        _folder.Write("store/ingredients.csv", "ingredient,food\ndamson,LAB 1\nbutter,SR28 01145\n");
        Table("sources.csv", "key,evidence,title\nlab,published,Our laboratory\n");
        Table("nutrients.csv", "tag,word,unit,derived\nFAT,fat,g,\nCHOCDF,total carbohydrate,g,\nFIBTG,fibre,g,\nNA,sodium,mg,\nODD,a nutrient of this table alone,g,\n");
        Table("foods.csv", "food,name,source,nitrogen_factor\nLAB 1,Damson puree,lab,6.25\nSR28 1145,Butter of another kind,lab,\n");
        Table("contents.csv", "food,tag,value,low,high,samples,standard_deviation,source,method\nLAB 1,FAT,<0.2,,,,,lab,\nLAB 1,CHOCDF,15,14,16,5,0.5,lab,analysed\nLAB 1,FIBTG,2,,,,,lab,\nLAB 1,NA,tr,,,,,lab,\nLAB 1,ODD,1,,,,,lab,\nSR28 1145,FAT,1,,,,,lab,\n");
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Open_AFoodOfTheStoresOwnTable_HasItsFiguresWithStateSourceAndSpread()
    {
        var damson = Dessert.Open(_folder.Path).Store.Ingredients.Find("damson")!.Profile!;

        Assert.Equal((ContentState.BelowLimit, Interval.Between(0, 0.2)), (damson["FAT"].State, damson["FAT"].Range));
        Assert.Equal((15, 5, 0.5, "lab, food 1, analysed"), (damson["CHOCDF"].Per100Grams, damson["CHOCDF"].Samples, damson["CHOCDF"].StandardDeviation, damson["CHOCDF"].Source!.ToString()));
        Assert.Equal((ContentState.Trace, 13.0, 6.25), (damson["NA"].State, damson["CHOAVLDF"].Per100Grams, damson.NitrogenFactor));
        Assert.False(damson["WATER"].IsKnown);
    }

    [Fact]
    public void Open_AFoodThatTheKitHas_StaysTheKits() => Assert.Equal(81.11, Dessert.Open(_folder.Path).Store.Ingredients.Find("butter")!.Profile!["FAT"].Per100Grams);

    [Fact]
    public void With_AnotherTable_ChangesNothingOfTheKits()
    {
        var (kit, joined) = (KitData.Composition, KitData.Composition.With(CompositionTable.Load(Path.Combine(_folder.Path, "store", "composition"))));

        Assert.Equal(kit.Foods.Count + 1, joined.Foods.Count);
        Assert.Equal(kit.Contents, joined.Contents.Take(kit.Contents.Count));
        Assert.Equal(kit.Measures, joined.Measures);
    }

    [Fact]
    public void Problems_ABadCellOfTheStoresTable_IsNamedBesideThoseOfTheStore()
    {
        Table("contents.csv", "food,tag,value,source\nLAB 1,FAT,lots,lab\n");
        _folder.Write("store/ingredients.csv", "ingredient,food,density_g_ml\ndamson,SR28 01145,thick\n");

        Assert.Equal([("composition/contents.csv", 2), ("ingredients.csv", 2)], Dessert.Open(_folder.Path).Problems.Select(problem => (problem.File, problem.Row)).Order());
    }

    [Fact]
    public void Problems_ANutrientInAnotherUnit_IsNamed()
    {
        Table("nutrients.csv", "tag,word,unit\nFAT,fat,g\nCHOCDF,total carbohydrate,g\nFIBTG,fibre,g\nNA,sodium,g\nODD,odd,g\n");

        Assert.Equal("composition/nutrients.csv", Assert.Single(Dessert.Open(_folder.Path).Problems).File);
    }

    private void Table(string file, string text) => _folder.Write($"store/composition/{file}", text);
}
