using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

public class PieceMarchTests
{
    private static readonly ThermalCurve Steady = ThermalCurve.Steady("cake", 1000, 0.5, 3500);

    [Fact]
    public void SteadyProperties_ShortRoll_FollowsTheProductOfTheSeries()
    {
        // Carslaw and Jaeger: the centre of a short roll is the product of a slab and a long roll.
        var piece = MouldedPiece.Of([new(Steady, 80, 50, 0, 60)], cellMillimetres: 1);
        var history = piece.March([HeatStage.AllRound(120, Surroundings.Air(0, 20))], new() { StepSeconds = 5, FieldsAtMinutes = [30, 60, 90] });
        var (slab, roll) = (ConductionSeries.Of(ConductionShape.Slab, 20 * 0.025 / 0.5), ConductionSeries.Of(ConductionShape.Cylinder, 20 * 0.04 / 0.5));
        const double Diffusivity = 0.5 / (1000 * 3500.0);
        foreach (var field in history.Fields)
        {
            var (ring, floor) = (3, field.Axes.Floors / 2);
            var radius = (field.Axes.RadiusMillimetres[ring] + field.Axes.RadiusMillimetres[ring + 1]) / 2;
            var height = (field.Axes.HeightMillimetres[floor] + field.Axes.HeightMillimetres[floor + 1]) / 2 - 25;
            var expected = 60 * slab.Ratio(Diffusivity * field.Minutes * 60 / (0.025 * 0.025), Math.Abs(height) / 25) * roll.Ratio(Diffusivity * field.Minutes * 60 / (0.04 * 0.04), radius / 40);
            Assert.Equal(expected, field.At(ring, floor), 0.02);
        }
    }

    [Fact]
    public void MousseWithGelAndCrumble_Frozen_ConservesHeat()
    {
        var history = Desserts.Entremets(1.5).March([HeatStage.AllRound(240, Surroundings.Air(-35, 30))], new() { FieldsAtMinutes = [60] });
        Assert.InRange(history.EnergyMissShare, 0, 1e-9);
        Assert.True(history.HeatInJoules < 0);
        Assert.NotNull(history.MinutesUntilAllBelow(-18));
    }

    [Fact]
    public void Piece_DiscThatReachesOut_IsRefusedByName() =>
        Assert.Contains("gel", Assert.Throws<ArgumentException>(() => MouldedPiece.Of([new(Steady, 80, 30, 0, 4), new(ThermalCurve.Steady("gel", 1000, 0.5, 3500), 90, 10, 25, 4)])).Message);
}
