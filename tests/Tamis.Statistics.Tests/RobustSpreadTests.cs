namespace Tamis.Statistics.Tests;

public class RobustSpreadTests
{
    // Median 3, distances 2 1 0 1 97, their median 1, times 1.4826.
    [Fact]
    public void Of_OneWildNumber_IsNotMoved()
    {
        var (median, deviation) = RobustSpread.Of([1, 2, 3, 4, 100]);

        Assert.Equal(3, median);
        Assert.Equal(1.4826, deviation, 4);
    }

    [Fact]
    public void Median_EvenCount_IsBetweenTheMiddleTwo() => Assert.Equal(2.5, RobustSpread.Median([4, 1, 3, 2]));

    [Fact]
    public void Median_NoNumbers_IsRefused() => Assert.Throws<ArgumentException>(() => RobustSpread.Median([]));
}
