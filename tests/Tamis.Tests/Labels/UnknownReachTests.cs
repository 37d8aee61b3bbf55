using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class UnknownReachTests
{
    private static NutritionPanel Of(params (string, double)[] second) => NutritionPanel.Of(LabelKit.Of(
        LabelKit.Part("known", 60, LabelKit.Whole("known", 6.25, ("FAT", 10), ("FASAT", 5), ("WATER", 90))),
        LabelKit.Part("second", 40, LabelKit.Profile("second", 6.25, second))), LabelKit.Eu, PanelBasis.Per100Grams);

    // 60 g hold 3 g of saturates; 40 g of something with 20 % fat can add 8 g at most: 11 g.
    [Fact]
    public void Of_PartOfAKnownWhole_IsBoundedByIt()
    {
        var reach = Assert.Single(UnknownReach.Of(Of(("FAT", 20)), "saturates"));

        Assert.Equal(("second", 40.0, 20.0, "11 g"), (reach.Ingredient, reach.SharePercent, reach.HighestPer100Grams!.Value, reach.Highest));
    }

    // Water 70 and protein 10 leave 20 g for fat: 6 g + 8 g.
    [Fact]
    public void Of_Constituent_IsBoundedByWhatTheOthersLeave() => Assert.Equal("14 g", Assert.Single(UnknownReach.Of(Of(("WATER", 70), ("PROCNT", 10)), "fat")).Highest);

    [Fact]
    public void Of_NothingKnown_IsBoundedByItsMass() => Assert.Equal("46 g", Assert.Single(UnknownReach.Of(Of(), "fat")).Highest);

    // Table to B.01.401 of the Food and Drug Regulations, item 6: of saturated and trans fat together only the percentage of 20 g stands. 40 g of nothing but these would be 200 %.
    [Fact]
    public void Of_FigureOfWhichThePercentageAloneIsPrinted_IsAPercentage()
    {
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("known", 60, LabelKit.Whole("known", 6.25, ("FAT", 10), ("FASAT", 5), ("WATER", 90))), LabelKit.Part("second", 40, null)), LabelKit.Canada, PanelBasis.Serving(100));

        Assert.Equal("200%", UnknownReach.Of(panel, "saturated and trans").Single(reach => reach.Ingredient == "second").Highest);
    }

    [Fact]
    public void Of_FigureThatIsKnown_HasNone() => Assert.Empty(UnknownReach.Of(Of(("FAT", 20), ("FASAT", 1)), "fat"));
}
