using Tamis.Losses;

namespace Tamis.Tests.Losses;

public class RatiosTests
{
    // Baker's percentages as bakery handbooks define them: every line over all the flours together, one flour of several below 100.
    [Fact]
    public void Of_TwoFlours_EachStandsBelowAHundred()
    {
        var ratios = Ratios.Of(Kitchen.Batch("component,line,T1\ndough,wheat flour,300 g\ndough,rye flour,100 g\ndough,water,260 g\n").Find("dough")!, "wheat flour", "rye flour");

        Assert.True(ratios.IsBakersPercentage);
        Assert.Equal([75, 25, 65], ratios.Lines.Select(line => line.ToBaseRatio * 100), (a, b) => Math.Abs(a - b) < 1e-9);
    }

    // Ruhlman 2009, Ratio: pie dough is 3 : 2 : 1 of flour, butter and water; 900 g of it hold 450 g of flour.
    [Fact]
    public void Of_PieDough_ScalesToTheHandbook()
    {
        var dough = Kitchen.Batch("component,line,T1\ndough,flour,3\ndough,butter,2\ndough,water,1\n");

        Assert.Equal(450, dough.Scaled(900 / 6.0).Find("dough")!.LineGrams("flour"), 9);
        Assert.Equal(2.0 / 3, Ratios.Of(dough.Find("dough")!, "flour").Of("butter"), 12);
    }

    [Fact]
    public void UsualBase_WithoutFlour_IsTheHeaviestLine() =>
        Assert.Equal(["milk"], Ratios.UsualBase(Kitchen.Batch("component,line,T1\ncream,milk,200\ncream,sugar,50\n").Find("cream")!));

    [Fact]
    public void Of_BaseThatIsNotIn_NamesTheLinesThatAre() =>
        Assert.Contains("flour, butter", Assert.Throws<ArgumentException>(() =>
            Ratios.Of(Kitchen.Batch("component,line,T1\nshell,flour,2\nshell,butter,1\n").Find("shell")!, "sugar")).Message, StringComparison.Ordinal);
}
