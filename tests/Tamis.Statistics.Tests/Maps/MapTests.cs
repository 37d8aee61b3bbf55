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

    [Fact]
    public void Of_JudgesWhoDifferAlongOneAxis_GivesAnEllipseOfTheErrorOfTheMean()
    {
        var map = PrincipalComponents.Of(Square, scaled: false)!;
        double[][][] judges = [.. Enumerable.Range(0, 16).Select(judge => Square.Select(row => new[] { row[0] + (judge % 2 == 0 ? 1 : -1), row[1] }).ToArray())];

        var ellipse = ConfidenceEllipse.Of(map, judges, 0.95, draws: 4000, seed: 7)[0];

        // Standard error of the mean 1/√16; the 95 % quantile of χ² with 2 degrees is 5.991465. A standard deviation of 4000 draws is good to 1.1 %.
        Assert.Equal(0.25 * Math.Sqrt(5.991465), ellipse.HalfLength, 0.03);
        Assert.Equal(0, ellipse.HalfWidth, 1e-6);
        Assert.Equal(ellipse, ConfidenceEllipse.Of(map, judges, 0.95, draws: 4000, seed: 7)[0]);
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
