using Tamis.Composition;
using Tamis.Labels;
using Tamis.Losses;

namespace Tamis.Tests.Labels;

public class PanelRangeTests
{
    private static readonly Source Written = new("written for a test", Evidence.Computed);

    private static NutrientProfile Fat(string name, double per100Grams, Interval? range) =>
        new(name, new([new("FAT", "fat", "g")]), [new(ContentState.Measured, per100Grams, range, Written)]);

    private static PanelLine FatOf(params MixturePart[] parts) => NutritionPanel.Of(LabelKit.Of(parts), LabelKit.Eu, PanelBasis.Per100Grams).Line("fat");

    [Fact]
    public void Range_NoSpreadInTheData_IsNotPretended() => Assert.Null(FatOf(LabelKit.Part("butter", 100, Fat("butter", 80, null))).Spread);

    // Two foods of 100 g, one with 30 ± 3 g, one with 10 ± 4 g: the mean 20 g, and half of √(3² + 4²) = 2.5 g to each side (JCGM 100:2008, 5.1.2).
    [Fact]
    public void Range_IndependentContents_AddInQuadrature()
    {
        var line = FatOf(LabelKit.Part("cream", 100, Fat("cream", 30, Interval.Between(27, 33))), LabelKit.Part("milk", 100, Fat("milk", 10, Interval.Between(6, 14))));

        Assert.Equal(17.5, line.Spread!.Range.Low, 9);
        Assert.Equal(22.5, line.Spread.Range.High, 9);
        Assert.Equal("the spread of all contents is known", line.Spread!.InWords);
    }

    [Fact]
    public void Range_SpreadOfOneFoodOnly_SaysForHowMuchOfTheAmount()
    {
        var line = FatOf(LabelKit.Part("cream", 100, Fat("cream", 30, Interval.Between(27, 33))), LabelKit.Part("milk", 100, Fat("milk", 10, null)));

        Assert.Equal(0.75, line.Spread!.KnownSpreadShare, 9);
        Assert.Equal(line.Spread.Range, line.Range);
        Assert.Equal("the spread of contents is known for 75\u202f% of the amount", line.Spread.InWords);
    }

    // Below 0.1 g: between 0 and 0.1, and 0.05 in the sum.
    [Fact]
    public void Range_ContentBelowALimit_RunsFromZeroToTheLimit()
    {
        NutrientProfile profile = new("fruit", new([new("FAT", "fat", "g")]), [Content.Below(0.1, Written)]);

        var line = FatOf(LabelKit.Part("fruit", 100, profile));

        Assert.Equal((0.05, 0.0, 0.1), (line.Amount.Known, line.Spread!.Range.Low, line.Spread.Range.High));
    }

    // 20 to 25 g of oil (22.5 g) in 77.5 g of water: d(fat)/d(mass) = (1 − 0.225) / 100 g, so 22.5 ± 2.5 × 0.775 g in 100 g.
    [Fact]
    public void Range_AMassWrittenAsARange_IsCarriedWithItsDilution()
    {
        var oil = LabelKit.Part("oil", 22.5, Fat("oil", 100, null)) with { MassRangeGrams = Interval.Between(20, 25) };

        var line = FatOf(oil, LabelKit.Part("water", 77.5, Fat("water", 0, null)));

        Assert.Equal(22.5 - 1.9375, line.Spread!.Range.Low, 9);
        Assert.Equal(22.5 + 1.9375, line.Spread.Range.High, 9);
        Assert.Equal("from the masses; no spread of a content is known", line.Spread!.InWords);
    }

    [Fact]
    public void Range_OfTheWhole_GrowsWithTheMassItself()
    {
        Mixture oil = new() { Parts = [LabelKit.Part("oil", 22.5, Fat("oil", 100, null)) with { MassRangeGrams = Interval.Between(20, 25) }] };

        var whole = NutritionPanel.Of(oil, LabelKit.Eu, PanelBasis.Whole).Line("fat");

        Assert.Equal((20.0, 25.0), (whole.Spread!.Range.Low, whole.Spread.Range.High));
        Assert.Null(NutritionPanel.Of(oil, LabelKit.Eu, PanelBasis.Per100Grams).Line("fat").Spread);
    }

    // Polyols leave the carbohydrate at 17 kJ and count at 10: a gram more of them is 7 kJ less.
    [Fact]
    public void Range_AContentThatStandsTwiceInTheEnergy_MovesItByTheDifference()
    {
        var syrup = LabelKit.Whole("syrup", 6.25, ("CHOAVLDF", 70), ("POLYL", 50));
        NutrientProfile uncertain = new("syrup", syrup.Nutrients,
            [.. syrup.Nutrients.All.Select(nutrient => nutrient.Tag == "POLYL" ? syrup["POLYL"] with { Range = Interval.Between(49, 52) } : syrup[nutrient.Tag])], 6.25);

        var line = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("syrup", 100, uncertain)), LabelKit.Eu, PanelBasis.Per100Grams).Line("energy", "kJ");

        Assert.Equal(line.Value!.Value - 14, line.Spread!.Range.Low, 9);
        Assert.Equal(line.Value!.Value + 7, line.Spread.Range.High, 9);
    }

    // Policy of the rule set, known_spread_percent: a range that rests on a quarter of the amount would look surer than it is.
    [Fact]
    public void Range_SpreadOfLessThanTheRulesAskFor_IsNotShownButExplained()
    {
        var line = FatOf(LabelKit.Part("cream", 100, Fat("cream", 30, null)), LabelKit.Part("milk", 100, Fat("milk", 10, Interval.Between(6, 14))));

        Assert.Null(line.Range);
        Assert.Contains("width of the range, to first order: the spread of contents is known for 25\u202f% of the amount; less than the 50\u202f% for which a range is shown", line.Explain().Walk().Select(step => step.Step.Step));
    }
}
