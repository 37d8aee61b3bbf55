using Tamis.Composition;
using Tamis.Losses;

namespace Tamis.Tests.Losses;

public class MixtureUncertaintyTests
{
    private static readonly Source Lab = new("Our laboratory", Evidence.Published);

    // First order by hand: masses are certain, so u = sqrt(sum (m u / T)^2) with T the finished mass.
    [Fact]
    public void Of_SpreadContents_IsTheFirstOrderSumAndAgreesWithDrawing()
    {
        var mixture = Mixture(lost: 40, (300, Lot(20, 0.6)), (100, Lot(5, 0.9)));
        var found = UncertainContent.Of(mixture, "FAT")!;

        var lot = Math.Sqrt(1 + 1 / 9.0);
        Assert.Equal((300 * 20 + 100 * 5) / 360.0, found.Per100Grams, 9);
        Assert.Equal(Math.Sqrt(Math.Pow(300 * 0.6 * lot / 360, 2) + Math.Pow(100 * 0.9 * lot / 360, 2)), found.StandardUncertaintyPer100Grams, 6);
        var drawn = found.Drawn(200_000, seed: 4);
        Assert.Equal(found.Per100Grams, drawn.Mean, 4 * found.StandardUncertaintyPer100Grams / Math.Sqrt(200_000));
        Assert.Equal(1, drawn.StandardDeviation / found.StandardUncertaintyPer100Grams, 0.01);
        Assert.Equal(found.Range.High, drawn.Interval().High, 0.02);
        Assert.Equal(1, found.SpreadShare);
    }

    [Fact]
    public void Of_AMassWrittenAsARange_CountsAsWell()
    {
        var mixture = Mixture(lost: 0, (100, Point(80)), (100, Point(0)));
        var ranged = mixture with { Parts = [mixture.Parts[0] with { MassRangeGrams = Interval.Between(80, 120) }, mixture.Parts[1]] };
        var found = UncertainContent.Of(ranged, "FAT")!;

        // 80 m / (m + 100): the slope at 100 is 0.2 a gram; a range of 40 g has u = 20 / sqrt(3).
        Assert.Equal(0.2 * 20 / Math.Sqrt(3), found.StandardUncertaintyPer100Grams, 2);
        Assert.Equal(found.StandardUncertaintyPer100Grams, found.Drawn(seed: 2).StandardDeviation, 0.05);
        Assert.Equal(0, found.SpreadShare);
    }

    [Fact]
    public void Of_NoSpreadOrAnUnknown_PretendsNone()
    {
        Assert.Null(UncertainContent.Of(Mixture(lost: 0, (100, Point(80)), (100, Point(1))), "FAT"));
        Assert.Null(UncertainContent.Of(Mixture(lost: 0, (100, Lot(20, 1)), (100, Content.Unknown)), "FAT"));
    }

    [Fact]
    public void Of_PartWithoutSpread_SaysForHowMuchItSpeaks() =>
        Assert.Equal(0.25, UncertainContent.Of(Mixture(lost: 0, (100, Lot(20, 1)), (100, Point(60))), "FAT")!.SpreadShare, 9);

    private static Content Lot(double mean, double deviation) => Content.Spread(ContentState.Measured, mean, Lab, 9, deviation);

    private static Content Point(double value) => new(ContentState.Measured, value, null, Lab);

    private static Mixture Mixture(double lost, params (double MassGrams, Content Fat)[] parts) => new()
    {
        Parts = [.. parts.Select((part, index) => new MixturePart(new() { Name = $"line {index}", Profile = new($"line {index}", new([new("FAT", "fat", "g")]), [part.Fat]) }, part.MassGrams, 0, Lab))],
        EvaporatedGrams = lost,
    };
}
