using Tamis.Costing;

namespace Tamis.Tests.Costing;

public class SubstitutionDataTests
{
    [Theory]
    [InlineData("apple", "north-west Europe", 12, true)]
    [InlineData("apples, peeled", "north-west Europe", 2, true)]
    [InlineData("apple", "north-west Europe", 6, false)]
    [InlineData("damson puree lot 2", "north-west Europe", 11, false)]
    [InlineData("strawberries", "southern Europe", 4, true)]
    [InlineData("Strawberries", "north-west Europe", 4, false)]
    public void Holds_Month_ByTheRegionAndOverTheYearsEnd(string ingredient, string region, int month, bool isFresh) =>
        Assert.Equal(isFresh, Season.Of(ingredient, region)!.Holds(month));

    [Theory]
    [InlineData("pineapple")]
    [InlineData("raspberries, frozen, unsweetened")]
    [InlineData("apricots, dried")]
    [InlineData("orange flower water")]
    [InlineData("caster sugar")]
    public void Of_WhatKeepsOrHasNoRow_HasNoSeason(string ingredient) => Assert.Null(Season.Of(ingredient, "north-west Europe"));

    [Fact]
    public void Shipped_Rows_HaveSources()
    {
        Assert.All(Season.All, season => Assert.NotEqual("", season.Source.Key));
        Assert.All(FunctionDose.Rules, rule => Assert.NotEqual("", rule.Source.Key));
        Assert.Equal((25, 2), (SubstitutionLimits.Kit.FarthestGrams, SubstitutionLimits.Kit.MostTimes));
        Assert.Equal((true, true, false), (SubstitutionLimits.Kit.IsAromatic("lemon zest"), SubstitutionLimits.Kit.IsAromatic("bay leaves"), SubstitutionLimits.Kit.IsAromatic("damson puree")));
    }

    [Fact]
    public void Read_BadCells_AreAllNamed()
    {
        var seasons = Kitchen.ProblemsOf(() => Season.ReadAll(Kitchen.Sheet("seasons.csv", "food,words,without,region,from_month,to_month,source,checked\nplum,plum,,north,0,thirteen,\"common practice, no source\",common practice\n")));
        var doses = Kitchen.ProblemsOf(() => FunctionDose.ReadAll(Kitchen.Sheet("doses.csv", "function,kinds,figure,least_percent,source,checked\nas sweet,sugar,sweetnes,x,\"common practice, no source\",common practice\n")));
        var limits = Kitchen.ProblemsOf(() => SubstitutionLimits.Read(Kitchen.Sheet("substitution.csv", "limit,value\nhow far apart,far\n")));

        Assert.Equal(["from_month", "to_month"], seasons.Select(problem => problem.Column));
        Assert.Equal(["figure", "least_percent"], doses.Select(problem => problem.Column));
        Assert.Equal(["value", "limit", "limit"], limits.Select(problem => problem.Column));
    }

    [Fact]
    public void FunctionDose_WithoutAFigureOfOneOfThem_IsNone()
    {
        Assert.Null(FunctionDose.Of(new() { Name = "gelatine", BloomGrams = 200 }, new() { Name = "agar" }));
        Assert.Null(FunctionDose.Of(new() { Name = "vanilla" }, new() { Name = "tonka bean" }));
    }
}
