using Tamis.Composition;

namespace Tamis.Tests.Composition;

public class ContentIntervalTests
{
    private static readonly Source Lab = new("Our laboratory", Evidence.Published);

    [Fact]
    public void Of_Samples_IsWhereALotLies()
    {
        var interval = ContentInterval.Of(Content.Spread(ContentState.Measured, 20, Lab, 9, 0.6))!;

        Assert.Equal(IntervalBasis.Lots, interval.Basis);
        // t(8) at 97.5 % is 2.306 (any table of the t distribution).
        Assert.Equal(20 + 2.306 * 0.6 * Math.Sqrt(1 + 1 / 9.0), interval.Range.High, 3);
        Assert.Equal(0.6 * Math.Sqrt(1 + 1 / 9.0), interval.Number.StandardUncertainty, 9);
    }

    [Fact]
    public void OfMean_Samples_IsNarrowerByTheRootOfTheirNumber()
    {
        var interval = ContentInterval.OfMean(Content.Spread(ContentState.Measured, 20, Lab, 9, 0.6))!;

        Assert.Equal(IntervalBasis.Mean, interval.Basis);
        Assert.Equal(20 - 2.306 * 0.6 / 3, interval.Range.Low, 3);
        Assert.Equal(0.2, interval.Number.StandardUncertainty, 9);
    }

    [Fact]
    public void OfDeclaration_IsHalfAStepOnEitherSideAndNeverBelowZero()
    {
        Assert.Equal((3.35, 3.45), Ends(ContentInterval.OfDeclaration(3.4, 0.1)));
        Assert.Equal((0.0, 0.25), Ends(ContentInterval.OfDeclaration(0, 0.5)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ContentInterval.OfDeclaration(1, 0));

        static (double, double) Ends(ContentInterval interval) => (Math.Round(interval.Range.Low, 9), Math.Round(interval.Range.High, 9));
    }

    [Fact]
    public void Of_BelowALimit_IsAnywhereUpToIt()
    {
        var interval = ContentInterval.Of(Content.Below(0.6, Lab))!;

        Assert.Equal((IntervalBasis.Limit, 0.3), (interval.Basis, interval.Number.Value));
        Assert.Equal(0.3 / Math.Sqrt(3), interval.Number.StandardUncertainty, 9);
    }

    [Fact]
    public void Of_NoSpread_PretendsNone()
    {
        Assert.Null(ContentInterval.Of(new(ContentState.Measured, 5, null, Lab)));
        Assert.Null(ContentInterval.Of(Content.Spread(ContentState.Measured, 5, Lab, 2, 0.5)));
        Assert.Null(ContentInterval.Of(Content.Unknown));
        Assert.Null(ContentInterval.OfMean(new(ContentState.Measured, 5, null, Lab)));
    }

    [Fact]
    public void OfFoodGroup_IsMarkedAndHoldsTheValue()
    {
        var interval = ContentInterval.OfFoodGroup(ShippedTable.Table, "SR28 09302", "K")!;

        Assert.Equal(IntervalBasis.FoodGroup, interval.Basis);
        Assert.True(interval.Range.Contains(ShippedTable.Table.Content("SR28 09302", "K").Per100Grams));
        Assert.Null(ContentInterval.OfFoodGroup(ShippedTable.Table, "SR28 09302", "CAFFN"));
    }
}
