using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

public class ConductionSeriesTests
{
    [Theory]
    [InlineData(ConductionShape.Slab)]
    [InlineData(ConductionShape.Cylinder)]
    [InlineData(ConductionShape.Sphere)]
    public void Ratio_ShortAfterTheStart_IsOneInTheCentre(ConductionShape shape)
    {
        var series = ConductionSeries.Of(shape, 2);
        Assert.Equal(1, series.Ratio(0));
        Assert.Equal(1, series.Ratio(0.005), 1e-6);
    }

    [Theory]
    [InlineData(ConductionShape.Slab)]
    [InlineData(ConductionShape.Cylinder)]
    [InlineData(ConductionShape.Sphere)]
    public void MeanRatio_FallsByWhatPassesTheFace(ConductionShape shape)
    {
        // Heat through the face: dY_mean/dFo = −dimensions · Bi · Y_face; by central differences.
        var series = ConductionSeries.Of(shape, 3);
        var dimensions = shape switch { ConductionShape.Slab => 1, ConductionShape.Cylinder => 2, _ => 3 };
        Assert.Equal(-dimensions * 3 * series.Ratio(0.1, 1), (series.MeanRatio(0.1001) - series.MeanRatio(0.0999)) / 0.0002, 1e-4);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(1)]
    [InlineData(100)]
    public void Zeta_Roots_StandOnePerHalfTurnAndSolveTheirEquation(double biot)
    {
        for (var number = 1; number <= 20; number++)
        {
            var zeta = ConductionRoots.Zeta(ConductionShape.Slab, biot, number);
            Assert.Equal(biot, zeta * Math.Tan(zeta), 1e-6 * Math.Max(1, biot * biot));
            Assert.InRange(ConductionRoots.Zeta(ConductionShape.Cylinder, biot, number), (number - 1) * Math.PI, number * Math.PI);
            Assert.InRange(ConductionRoots.Zeta(ConductionShape.Sphere, biot, number), (number - 1) * Math.PI, number * Math.PI);
        }
    }

    [Fact]
    public void FourierFor_OneTermAndWholeSeries_AgreeLate()
    {
        var (first, whole) = (ConductionSeries.Of(ConductionShape.Sphere, 2, firstTermOnly: true), ConductionSeries.Of(ConductionShape.Sphere, 2));
        Assert.Equal(1, ConductionSeries.FourierFor(0.1, (first, 1)) / ConductionSeries.FourierFor(0.1, (whole, 1)), 1e-3);
    }

    [Fact]
    public void Zeta_BiotOfZero_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => ConductionRoots.Zeta(ConductionShape.Slab, 0));
}
