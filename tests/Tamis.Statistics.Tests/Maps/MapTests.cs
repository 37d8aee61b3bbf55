using Tamis.Statistics.Maps;

namespace Tamis.Statistics.Tests.Maps;

public class MapTests
{
    private static readonly double[][] Square = [[2, 1], [-2, 1], [2, -1], [-2, -1]];

    [Fact]
    public void Of_RowsOfARectangle_FindsItsSides()
    {
        var map = PrincipalComponents.Of(Square, scaled: false)!;

        Assert.Equal(16.0 / 3, map.Variances[0], 1e-12);
        Assert.Equal(0.8, map.Share(0), 1e-12);
        Assert.Equal(1, map.Loadings[0][0], 1e-12);
        Assert.Equal(0.5, PrincipalComponents.Of(Square, scaled: true)!.Share(0), 1e-12);
        Assert.Null(PrincipalComponents.Of([[1, 1], [1, 1]], scaled: true));
    }

    // Draws on a slope of one in one with a spread of 0.25 along it: the 95 % quantile of χ² with 2 degrees is 5.991465.
    [Fact]
    public void About_DrawsAlongASlope_IsALineOfTheirSpread()
    {
        (double, double)[] drawn = [.. Enumerable.Range(0, 400).Select(draw => draw % 2 == 0 ? 0.25 : -0.25).Select(away => (3 + away / Math.Sqrt(2), 1 + away / Math.Sqrt(2)))];

        var ellipse = ConfidenceEllipse.About(3, 1, drawn, 0.95);

        Assert.Equal(0.25 * Math.Sqrt(5.991465), ellipse.HalfLength, 1e-6);
        Assert.Equal((0, Math.PI / 4), (Math.Round(ellipse.HalfWidth, 6), Math.Round(ellipse.AngleRadians, 12)), (left, right) => Math.Abs(left.Item2 - right.Item2) < 1e-9 && left.Item1 == right.Item1);
        Assert.Equal(3 + ellipse.HalfLength / Math.Sqrt(2), ellipse.Outline(4)[0].X, 1e-9);
        Assert.Equal(1 - ellipse.HalfLength / Math.Sqrt(2), ellipse.Outline(4)[2].Y, 1e-9);
        Assert.Throws<ArgumentException>(() => ConfidenceEllipse.About(0, 0, [(0, 0)], 0.95));
    }

    [Fact]
    public void Find_TwoHeaps_PartsThem()
    {
        var found = Segments.Find([[0, 0], [10, 10], [0, 1], [10, 11]], 2, starts: 5, seed: 3);

        Assert.Equal([0, 1, 0, 1], found.Of);
        Assert.Equal(1, found.SquaresWithin, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Segments.Find([[1], [1]], 2, 1, 1));
    }
}
