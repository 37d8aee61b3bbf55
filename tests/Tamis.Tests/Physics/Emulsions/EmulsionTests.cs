using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class EmulsionTests
{
    // 300 g of cream (35 % fat, 58.5 % water) on 300 g of dark chocolate (38 % fat, 0.5 % water): a tart's ganache.
    private static readonly EmulsionPhases Tart = new(177, 90, 114, 105, 0, 90, 600);

    [Fact]
    public void Of_EqualParts_HasNoFault()
    {
        Assert.Equal(29.5, Tart.WaterPercent, 1e-9);
        Assert.Equal(36.5, Tart.FatPercent, 1e-9);
        Assert.Equal(219.0 / 177, Tart.FatToWaterRatio, 1e-12);
        Assert.Empty(EmulsionFault.Of(Tart));
    }

    [Theory]
    [InlineData(60, 150, "broken")]
    [InlineData(400, 90, "too soft")]
    [InlineData(70, 160, "grainy")]
    public void Of_OutsideTheEnds_NamesTheLikelyFault(double water, double sugars, string fault) =>
        Assert.Contains(EmulsionFault.Of(Tart with { WaterGrams = water, SugarsGrams = sugars }), each => each.Fault == fault);

    [Fact]
    public void Of_MuchCocoaButter_IsTooFirm() => Assert.Contains(EmulsionFault.Of(Tart with { CocoaButterGrams = 200 }), each => each.Fault == "too firm");

    [Fact]
    public void SwapChocolate_KeepsTheCocoaButter()
    {
        var grams = Emulsion.ChocolateOfSameCocoaButterGrams(346, 38.3, 31.3);

        Assert.Equal(346 * 38.3, grams * 31.3, 1e-9);
    }
}
