using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Desserts.Labels;

/// <summary>What the rows of dessert.csv make of the bases of a panel.</summary>
public sealed class DessertPanelsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private Dessert Cake(params string[] rows)
    {
        _folder.Write("formula.csv", "component,line,T1\nsponge,flour,60\nsponge,sugar,40\n");
        _folder.Write("dessert.csv", string.Join('\n', ["key,value", "name,A cake", .. rows]) + "\n");
        return Dessert.Open(_folder.Path);
    }

    private string[] Bases(string rules, params string[] rows) => [.. DessertPanels.BasesOf(Cake(rows), "T1", KitData.Rules(rules)).Select(basis => basis.Words)];

    [Theory]
    [InlineData("eu", "per 100 g; per portion (40 g)")]
    [InlineData("gb", "per 100 g; per portion (40 g)")]
    [InlineData("au-nz", "per serving (40 g); per 100 g")]
    [InlineData("codex", "per 100 g; per portion (40 g)")]
    [InlineData("ca", "per serving (40 g)")]
    [InlineData("us", "per serving (40 g)")]
    public void BasesOf_StatedPortion_AreTheColumnsOfTheLaw(string rules, string bases) => Assert.Equal(bases, string.Join("; ", Bases(rules, "portion_g,40")));

    [Theory]
    [InlineData("eu"), InlineData("us"), InlineData("au-nz")]
    public void BasesOf_NoPortion_Are100Grams(string rules) => Assert.Equal(["per 100 g"], Bases(rules));

    // 21 CFR 101.9(b)(12)(i): 200 g are 250 % of the 80 g of a cake of medium weight.
    [Theory]
    [InlineData("200", "per serving (1 slice, 60 g); per package (200 g)")]
    [InlineData("320", "per serving (1 slice, 60 g)")]
    public void BasesOf_PackageOfTwoToThreeReferenceAmounts_HaveTheWholeBesideTheServing(string net, string bases) =>
        Assert.Equal(bases, string.Join("; ", Bases("us", "portion_g,60", "portion_word,slice", $"net_g,{net}", "\"serving_category\",\"cakes, mediumweight\"")));

    // 100 ml of a sauce of 1.2 g/ml weigh 120 g.
    [Fact]
    public void BasesOf_Liquid_AreOf100Millilitres()
    {
        var basis = DessertPanels.BasesOf(Cake("state,liquid", "density_g_ml,1.2"), "T1", KitData.Rules("eu")).Single();

        Assert.Equal(("per 100 ml", 120.0), (basis.Words, basis.MassGrams!.Value));
        Assert.Equal(["per serving (40 g)", "per 100 ml"], Bases("au-nz", "state,liquid", "density_g_ml,1.2", "portion_g,40"));
    }

    [Theory]
    [InlineData("eu", "state,liquid", "a row density_g_ml")]
    [InlineData("eu", "state,runny", "found 'runny', expected liquid or solid")]
    [InlineData("us", "serving_category,cake of mine\nportion_g,40", "row 3, column 'value': found 'cake of mine'")]
    [InlineData("us", "portion_g,400\nnet_g,320", "row 3, column 'value': found '400'")]
    [InlineData("us", "serving_category,cake frostings or icings\nportion_g,40", "a row density_g_ml")]
    [InlineData("us", "serving_category,brownies", "a row portion_g")]
    public void BasesOf_WhatCannotBe_NamesTheCell(string rules, string rows, string said) =>
        Assert.Contains(said, Assert.Throws<TableException>(() => Bases(rules, rows.Split('\n'))).Message, StringComparison.Ordinal);

    // The claims stand on the same reference amount as the serving.
    [Fact]
    public void FoodOf_KindOfFood_HasTheReferenceAmountOfTheServing()
    {
        Assert.Equal(80, DessertClaims.FoodOf(Cake("\"serving_category\",\"cakes, mediumweight\""), "T1", "us").ReferenceAmountGrams);
        Assert.Null(DessertClaims.FoodOf(Cake("serving_category,anything"), "T1", "eu").ReferenceAmountGrams);
        Assert.Throws<TableException>(() => DessertClaims.FoodOf(Cake("serving_category,cakes"), "T1", "us"));
    }
}
