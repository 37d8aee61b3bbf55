using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class AdditiveLevelTests
{
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));

    private static AdditiveCheck Find(Dessert dessert, string trial, string rules, string number) => TrialParticulars.Additives(dessert, trial, rules).Single(each => each.Use.Additive.Number == number);

    [Theory]
    [InlineData("E 420", LevelVerdict.AsNeeded)]
    [InlineData("E 450", LevelVerdict.Within)]
    [InlineData("E 220", LevelVerdict.CarriedOver)]
    public void Check_Loaf_HoldsEveryAdditiveAgainstItsRow(string number, LevelVerdict expected) => Assert.Equal(expected, Find(Loaf, "V1", "eu", number).Verdict);

    // 21 CFR parts 73 and 74 list no vegetable carbon; the Union has it in Group II.
    [Theory]
    [InlineData("us", LevelVerdict.NotPermitted)]
    [InlineData("eu", LevelVerdict.AsNeeded)]
    public void Check_VegetableCarbon_HangsOnTheMarket(string rules, LevelVerdict expected) => Assert.Equal(expected, Find(Tart, "T10", rules, "E 153").Verdict);

    [Fact]
    public void Check_CompoundWithoutAmounts_AsksTheSupplier()
    {
        var check = Find(Loaf, "V2", "eu", "E 476");

        Assert.Equal(LevelVerdict.CannotBeSaid, check.Verdict);
        Assert.Contains("cocoa-flavoured chips", check.Supply, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_MassOfAllBoughtMixtures_IsTheUpperBound()
    {
        var whole = Loaf.Trial("V1").Whole!;
        var powder = whole.Parts.Where(part => part.Ingredient.Name == "baking powder").Sum(part => part.MassGrams);

        Assert.Equal(powder / whole.FinishedGrams * 1e6, (double)Find(Loaf, "V1", "eu", "E 450").MostMgPerKg!.Value, 0.001);
    }

    [Theory]
    [InlineData(1.9, LevelVerdict.Within)]
    [InlineData(2.0, LevelVerdict.Within)]
    [InlineData(2.1, LevelVerdict.CannotBeSaid)]
    public void Check_OwnPreservative_IsHeldAgainstTheLimit(double grams, LevelVerdict expected)
    {
        var part = LabelKit.Part("potassium sorbate", grams, null);
        var mixture = LabelKit.Of(part with { Ingredient = part.Ingredient with { AdditiveNumbers = ["E 202"], Function = "preservative" } }, LabelKit.Part("cake", 1000 - grams, null));
        var categories = FoodCategories.Of(LabelKit.Eu);

        var check = Assert.Single(AdditiveLevels.Of(LabelKit.Eu).Check(AdditiveUse.In(mixture, LabelKit.Eu), 1000, categories.Find("07.2"), categories));

        Assert.Equal(expected, check.Verdict);
    }

    [Fact]
    public void Check_NoCategory_IsAskedFor()
    {
        var part = LabelKit.Part("potassium sorbate", 1, null);
        var uses = AdditiveUse.In(LabelKit.Of(part with { Ingredient = part.Ingredient with { AdditiveNumbers = ["E 202"] } }), LabelKit.Eu);

        Assert.Contains("food_category", Assert.Single(AdditiveLevels.Of(LabelKit.Eu).Check(uses, 1, null, FoodCategories.Of(LabelKit.Eu))).Supply, StringComparison.Ordinal);
    }

    [Fact]
    public void UnknownIn_NumbersAndNamesBehindAClass_AreNamed()
    {
        var part = LabelKit.Part("powder", 1, null);
        var mixture = LabelKit.Of(part with { Ingredient = part.Ingredient with { AdditiveNumbers = ["E 4500"] } }, part with { Ingredient = part.Ingredient with { Name = "glaze", SupplierList = "sugar, gelling agent: moondust" } });

        Assert.Equal([("powder", "E 4500"), ("glaze", "moondust")], AdditiveUse.UnknownIn(mixture, LabelKit.Eu).Select(each => (each.Ingredient.Name, each.Named)));
    }

    [Fact]
    public void Of_BadRows_AreNamedAllAtOnce()
    {
        using RuleFolderCopy copy = new();
        copy.Append("eu", "additive-levels.csv", "E 4200,wedding cake,plenty,guess,,,an act,1,law,text,\n");

        var problems = Assert.Throws<TableException>(() => AdditiveLevels.Of(copy.Load("eu"))).Problems;

        Assert.Equal(["additives", "categories", "limit_mg_kg", "measured"], problems.Select(problem => problem.Column).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Of_EveryRuleSet_ReadsItsLevels() => Assert.All(RuleSets.Load(LabelKit.Folder), set => Assert.NotEmpty(AdditiveLevels.Of(set).All));
}
