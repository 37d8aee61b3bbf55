using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

public class PieceMarchTests
{
    private static readonly ThermalCurve Steady = ThermalCurve.Steady("cake", 1000, 0.5, 3500);
    private static readonly HeatStage Blast = HeatStage.AllRound(240, Surroundings.Air(-35, 30));

    [Fact]
    public void SteadyProperties_ShortRoll_FollowsTheProductOfTheSeries()
    {
        // Carslaw and Jaeger: the temperature of a short roll is the product of a slab's and a long roll's.
        var history = MouldedPiece.Of([new(Steady, 80, 50, 0, 60)], cellMillimetres: 1)
            .March([HeatStage.AllRound(120, Surroundings.Air(0, 20))], new() { StepSeconds = 5, FieldsAtMinutes = [30, 60, 90] });
        var (slab, roll) = (ConductionSeries.Of(ConductionShape.Slab, 20 * 0.025 / 0.5), ConductionSeries.Of(ConductionShape.Cylinder, 20 * 0.04 / 0.5));
        const double Diffusivity = 0.5 / (1000 * 3500.0);
        Assert.Equal(3, history.Fields.Count);
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
    public void SteadyProperties_HalfTheCell_HasAQuarterOfTheError()
    {
        double Mean(double cell) => MouldedPiece.Of([new(Steady, 80, 48, 0, 60)], cell).March([HeatStage.AllRound(60, Surroundings.Air(0, 20))], new() { StepSeconds = 10 }).Readings[^1].MeanCelsius;
        const double Fourier = 0.5 / (1000 * 3500.0) * 3600;
        var expected = 60 * ConductionSeries.Of(ConductionShape.Slab, 20 * 0.024 / 0.5).MeanRatio(Fourier / (0.024 * 0.024)) * ConductionSeries.Of(ConductionShape.Cylinder, 20 * 0.04 / 0.5).MeanRatio(Fourier / (0.04 * 0.04));
        var (coarse, middle, fine) = (Mean(8) - expected, Mean(4) - expected, Mean(2) - expected);
        Assert.InRange(coarse / middle, 3.5, 4.5);
        Assert.InRange(middle / fine, 3.5, 4.5);
    }

    [Fact]
    public void SteadyProperties_HalfTheStep_HasAQuarterOfTheError()
    {
        var piece = MouldedPiece.Of([new(Steady, 80, 48, 0, 60)], 4);
        double Mean(double step) => piece.March([HeatStage.AllRound(64, Surroundings.Air(0, 20))], new() { StepSeconds = step }).Readings[^1].MeanCelsius;
        var exact = Mean(2);
        Assert.InRange((Mean(240) - exact) / (Mean(120) - exact), 3, 5.5);
    }

    [Fact]
    public void WideFlatPiece_WithAnInsulatedSide_FreezesLikeASlab()
    {
        var mousse = ThermalCurve.Of("mousse", Desserts.Mousse);
        var blast = Surroundings.Air(-35, 30);
        var piece = MouldedPiece.Of([new(mousse, 60, 30, 0, 12)], 1).March([new(240, blast, blast, Surroundings.Insulated)]).MinutesUntilAllBelow(-18);
        var slab = HeatMarch.Explicit(HeatColumn.Of(ConductionShape.Slab, [new(mousse, 30, 12)], 30), [Blast]).MinutesUntilAllBelow(-18);
        Assert.NotNull(piece);
        Assert.Equal(1, piece.Value / slab!.Value, 0.002);
    }

    [Fact]
    public void MousseWithGelAndCrumble_FrozenThenThawed_ConservesHeat()
    {
        var history = Desserts.Entremets(2).March([Blast, HeatStage.AllRound(300, Surroundings.Air(4, 8))], new() { FieldsAtMinutes = [30, 60, 300] });
        Assert.InRange(history.EnergyMissShare, 0, 1e-9);
        Assert.Equal([30, 60, 300], history.Fields.Select(field => field.Minutes));
        Assert.InRange(history.MinutesUntilAllBelow(-18) ?? double.NaN, 30, 240);
        Assert.Equal(0, history.MinutesUntilAllAbove(-5));
        Assert.InRange(history.MinutesUntilAllAbove(-5, afterMinutes: 240) ?? double.NaN, 30, 300);
    }

    [Fact]
    public void MousseWithGelAndCrumble_InFinerCells_FreezesInTheSameTime()
    {
        double Minutes(double cell) => Desserts.Entremets(cell).March([Blast]).MinutesUntilAllBelow(-18) ?? double.NaN;
        Assert.Equal(1, Minutes(2) / Minutes(1), 0.01);
    }

    [Fact]
    public void Piece_VolumesOfItsDiscs_AreExact()
    {
        var piece = Desserts.Entremets(2);
        var gel = 0.0;
        for (var floor = 0; floor < piece.Axes.Floors; floor++)
            for (var ring = 0; ring < piece.Axes.Rings; ring++)
                if (piece.DiscOfCell[floor * piece.Axes.Rings + ring] == 2)
                    gel += Math.PI * (Square(piece.Axes.RadiusMillimetres[ring + 1]) - Square(piece.Axes.RadiusMillimetres[ring])) * (piece.Axes.HeightMillimetres[floor + 1] - piece.Axes.HeightMillimetres[floor]);
        Assert.Equal(Math.PI * 60 * 60 * 10, gel, 1e-6);

        static double Square(double x) => x * x;
    }

    [Fact]
    public void Piece_DiscThatReachesOut_IsRefusedByName() =>
        Assert.Contains("gel", Assert.Throws<ArgumentException>(() => MouldedPiece.Of([new(Steady, 80, 30, 0, 4), new(ThermalCurve.Steady("gel", 1000, 0.5, 3500), 90, 10, 25, 4)])).Message);

    [Fact]
    public void Standing_NarrowOnWide_LeavesAirAndConservesHeat()
    {
        var piece = MouldedPiece.Standing([new(Steady, 80, 10, 0, 60), new(null, 70, 7, 3, 60), new(Steady, 60, 20, 3, 60)], 2);
        var history = piece.March([HeatStage.AllRound(60, Surroundings.Air(0, 20))], new() { FieldsAtMinutes = [30] });
        Assert.InRange(history.EnergyMissShare, 0, 1e-9);
        Assert.True(double.IsNaN(history.Fields.Single().At(piece.Axes.Rings - 1, piece.Axes.Floors - 1)));
        Assert.InRange(history.Readings[^1].MeanCelsius, 0.1, 59.9);
        // What stands is a base of 80 × 3, a wall of 80 less 70 × 7, a column of 60 × 20.
        var grams = Math.PI / 4 * (80 * 80 * 3 + (80 * 80 - 70 * 70) * 7 + 60 * 60 * 20) / 1000;
        Assert.Equal(grams / 1000 * 3500, history.HeatGainedJoules / (history.Readings[^1].MeanCelsius - 60), 1e-6);
    }

    [Fact]
    public void Sweep_OnOneCoreAndOnTwo_GivesTheSameDigits()
    {
        var mousse = ThermalCurve.Of("mousse", Desserts.Mousse);
        IReadOnlyList<SweepPoint> Sweep(int atOnce) => HeatSweep.Over([20, 30, 40], [-20, -35], (thickness, air) => MouldedPiece.Of([new(mousse, 80, thickness, 0, 12)], 4)
            .March([HeatStage.AllRound(400, Surroundings.Air(air, 30))]).MinutesUntilAllBelow(-15), atOnce);
        var (one, two) = (Sweep(1), Sweep(2));
        Assert.Equal(one, two);
        Assert.Equal(6, one.Count);
        Assert.True(one[1].Minutes < one[0].Minutes && one[0].Minutes < one[4].Minutes);
    }
}
