using Tamis.Composition;

namespace Tamis.Tests.Composition;

public class ImputationTests
{
    private static CompositionTable Table => ShippedTable.Table;

    [Fact]
    public void Profile_AsLoaded_FillsNothingIn() => Assert.False(Table.Profile("SR28 09083")["FIBTG"].IsKnown);

    [Fact]
    public void BySimilarFoods_Chosen_IsTheirMeanMarkedWithItsIntervalAndWorking()
    {
        string[] berries = ["SR28 09302", "SR28 09042", "SR28 09316"];
        var imputed = Imputation.BySimilarFoods(Table, "SR28 09083", "FIBTG", berries)!;

        Assert.Equal(berries.Average(berry => Table.Content(berry, "FIBTG").Per100Grams), imputed.Content.Per100Grams, 6);
        Assert.Equal((ContentState.Estimated, Evidence.Estimate), (imputed.Content.State, imputed.Content.Source!.Evidence));
        Assert.False(imputed.Content.IsOfRecord);
        Assert.True(imputed.Content.Range!.Value.Contains(imputed.Content.Per100Grams));
        Assert.Equal(berries.Length, imputed.Working.From.Count);
        Assert.Contains("SR28 09302", imputed.Content.Source.Locator, StringComparison.Ordinal);
    }

    [Fact]
    public void BySimilarFoods_NoneChosen_TakesTheNearestOfItsGroup()
    {
        var imputed = Imputation.BySimilarFoods(Table, "SR28 09083", "FIBTG")!;

        Assert.Equal(5, imputed.Working.From.Count);
        Assert.Null(Imputation.BySimilarFoods(Table, "SR28 09083", "SUCS", "SR28 02025"));
    }

    [Fact]
    public void ByDifference_IsWhatTheOthersLeave()
    {
        var food = Table.Profile("SR28 20629");
        var without = Without(food, "WATER");
        var imputed = Imputation.ByDifference(without, "WATER")!;

        // Carbohydrate is by difference in this record, so water comes back as it was.
        Assert.Equal(food["WATER"].Per100Grams, imputed.Content.Per100Grams, 2);
        Assert.Null(Imputation.ByDifference(Without(food, "WATER", "ASH"), "WATER"));
        Assert.Null(Imputation.ByDifference(without, "SUGAR"));
    }

    [Fact]
    public void ByRecipe_IsTheWeightedMeanLessTheWaterThatLeaves()
    {
        var imputed = Imputation.ByRecipe(Table, "WATER", [("SR28 19335", 500), ("SR28 14411", 500)], waterLostGrams: 200)!;

        var water = (500 * Table.Content("SR28 19335", "WATER").Per100Grams + 500 * Table.Content("SR28 14411", "WATER").Per100Grams) / 100 - 200;
        Assert.Equal(water / 800 * 100, imputed.Content.Per100Grams, 6);
        Assert.Null(Imputation.ByRecipe(Table, "FIBTG", [("SR28 19335", 100), ("SR28 09083", 100)]));
    }

    [Fact]
    public void With_AnEstimate_CountsOnlyInThatProfileAndNeverOverAFigure()
    {
        var food = Table.Profile("SR28 09083");
        var imputed = Imputation.BySimilarFoods(Table, food.Name, "FIBTG")!;
        var filled = food.With(imputed);

        Assert.Equal(ContentState.Estimated, filled["FIBTG"].State);
        Assert.False(food["FIBTG"].IsKnown);
        Assert.Throws<ArgumentException>(() => filled.With(imputed));
    }

    private static NutrientProfile Without(NutrientProfile profile, params string[] tags) => new(profile.Name, profile.Nutrients,
        [.. profile.Nutrients.All.Select(nutrient => tags.Contains(nutrient.Tag) ? Content.Unknown : profile[nutrient.Tag])]);
}
