using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

public class ColumnMarchTests
{
    // Same scheme in NumPy: the middle cell after every 10,000 steps; below, the outermost cell, the means and the weighted sum at the end.
    private static readonly double[] CoreEvery10000Steps = [19.749505991529876, 16.3240856254966, 9.602549391515057, 2.039189491960017, -2.435140244362032];

    private static readonly MarchSettings EveryTwoAndAHalfMinutes = new() { StepSeconds = SlabCase.StepSeconds, FieldsAtMinutes = [2.5, 5, 7.5, 10] };

    private static readonly ThermalCurve Steady = ThermalCurve.Steady("cake", 1000, 0.5, 3500);

    [Fact]
    public void Explicit_SlabOf200Cells_IsWhatTheSameSchemeGivesInNumPy()
    {
        var history = HeatMarch.Explicit(SlabCase.Column(), [SlabCase.Stage], EveryTwoAndAHalfMinutes);
        Near(CoreEvery10000Steps, Cores(history), 1e-6);
        Assert.Equal(-41.21545671338039, history.End.Celsius[0], 1e-6);
        Assert.Equal(-18.392993889129517, history.End.Celsius.Average(), 1e-6);
        // The table of heat content is rounded to a thousandth of a J/kg, and a sum in another order may round elsewhere.
        Assert.Equal(175281.53913867727, history.EndEnthalpyJPerKg.Average(), 1e-3);
        Assert.Equal(-369699.1771715033, history.End.Celsius.Select((celsius, i) => celsius * (i + 1)).Sum(), 1e-3);
    }

    [Fact]
    public void Implicit_SlabInSecondSteps_AgreesWithTheExplicitMarch() =>
        Near(CoreEvery10000Steps, Cores(HeatMarch.Implicit(SlabCase.Column(), [SlabCase.Stage], EveryTwoAndAHalfMinutes with { StepSeconds = 1 })), 0.03);

    [Theory]
    [InlineData(ConductionShape.Slab)]
    [InlineData(ConductionShape.Cylinder)]
    [InlineData(ConductionShape.Sphere)]
    public void Both_SteadyProperties_FollowTheSeries(ConductionShape shape)
    {
        // Carslaw and Jaeger; half thickness or radius 20 mm, h 25, 60 to 2 °C.
        var expected = SteadyCentre(shape, 20);
        Assert.Equal(expected, Centre(HeatMarch.Explicit(SteadyColumn(shape, 80), [Chilled(20)])), 0.02);
        Assert.Equal(expected, Centre(HeatMarch.Implicit(SteadyColumn(shape, 80), [Chilled(20)], new() { StepSeconds = 0.5 })), 0.02);
    }

    [Theory]
    [InlineData(ConductionShape.Slab)]
    [InlineData(ConductionShape.Cylinder)]
    [InlineData(ConductionShape.Sphere)]
    public void Explicit_TwiceTheCellsAtAQuarterOfTheStep_HasAQuarterOfTheError(ConductionShape shape)
    {
        // The mean over the piece, which has a place in every grid; the step goes with the square of the cell, so both errors fall by four.
        var expected = 2 + 58 * ConductionSeries.Of(shape, 25 * 0.02 / 0.5).MeanRatio(0.5 / (1000 * 3500.0) * 1200 / 4e-4);
        double Error(int cells, double step) => HeatMarch.Explicit(SteadyColumn(shape, cells), [Chilled(20)], new() { StepSeconds = step }).Readings[^1].MeanCelsius - expected;
        Assert.InRange(Error(10, 4) / Error(20, 1), 3.6, 4.4);
        Assert.InRange(Error(20, 1) / Error(40, 0.25), 3.6, 4.4);
    }

    [Fact]
    public void Implicit_HalfTheStep_HasHalfTheError()
    {
        double At(double step) => HeatMarch.Implicit(SteadyColumn(ConductionShape.Slab, 40), [Chilled(20)], new() { StepSeconds = step }).Readings[^1].MeanCelsius;
        var exact = At(0.05);
        Assert.InRange((At(40) - exact) / (At(20) - exact), 1.8, 2.2);
        Assert.InRange((At(20) - exact) / (At(10) - exact), 1.8, 2.2);
    }

    [Fact]
    public void Implicit_FreezingInFinerCellsAndSteps_SettlesOnOneTime()
    {
        double Minutes(int cells, double step) => HeatMarch.Implicit(Frozen(ConductionShape.Slab, cells), [HeatStage.AllRound(240, Surroundings.Air(-35, 30))], new() { StepSeconds = step })
            .MinutesUntilAllBelow(-18) ?? double.NaN;
        var (coarse, middle, fine) = (Minutes(20, 8), Minutes(40, 4), Minutes(80, 2));
        Assert.InRange(Math.Abs(fine - middle) / Math.Abs(middle - coarse), 0, 0.7);
        Assert.InRange(Math.Abs(fine - middle) / fine, 0, 0.005);
    }

    [Theory]
    [InlineData(ConductionShape.Slab)]
    [InlineData(ConductionShape.Cylinder)]
    [InlineData(ConductionShape.Sphere)]
    public void Both_FrozenThenThawed_ConserveHeat(ConductionShape shape)
    {
        HeatStage[] stages = [HeatStage.AllRound(60, Surroundings.Air(-35, 30)), HeatStage.AllRound(90, Surroundings.Air(4, 10))];
        var (explicitly, implicitly) = (HeatMarch.Explicit(Frozen(shape, 30), stages), HeatMarch.Implicit(Frozen(shape, 30), stages, new() { StepSeconds = 10 }));
        // A tenth of a per cent is promised; cell by cell bookkeeping keeps far more.
        Assert.InRange(explicitly.EnergyMissShare, 0, 1e-9);
        Assert.InRange(implicitly.EnergyMissShare, 0, 1e-4);
        Assert.Equal(explicitly.Readings[^1].MeanCelsius, implicitly.Readings[^1].MeanCelsius, 0.2);
    }

    [Theory]
    [InlineData(ConductionShape.Slab)]
    [InlineData(ConductionShape.Cylinder)]
    [InlineData(ConductionShape.Sphere)]
    public void Implicit_HeatThatOnlyFreezes_TakesPlanksTime(ConductionShape shape)
    {
        // Plank 1913: all at its freezing point, next to no heat in a degree; 40 mm thick or wide.
        const double Latent = 250_000, Heat = 50;
        var curve = ThermalCurve.FromKnots("water that only freezes", 1000, [-60, -0.02, 0, 20], [-60 * Heat - Latent, -0.02 * Heat - Latent, 0, 20 * Heat], [2.2, 2.2, 2.2, 2.2]);
        var column = HeatColumn.Of(shape, [new(curve, shape == ConductionShape.Slab ? 40 : 20, 0)], 200);
        var minutes = HeatMarch.Implicit(column, [HeatStage.AllRound(300, Surroundings.Air(-20, 50))], new() { StepSeconds = 2 }).MinutesUntilAllBelow(-0.03);
        Assert.NotNull(minutes);
        Assert.Equal(1, minutes.Value * 60 / FreezingTimes.PlankSeconds(shape, 0.04, 1000, Latent, 0, -20, 50, 2.2), 0.01);
    }

    [Theory]
    [InlineData(ConductionShape.Slab)]
    [InlineData(ConductionShape.Cylinder)]
    [InlineData(ConductionShape.Sphere)]
    public void Implicit_WateryFood_TakesPhamsTimeWithinATenth(ConductionShape shape)
    {
        // Pham 1986 claims about ±10 % for foods of much water.
        var mixture = ThermalMixture.Make(Proximates.FromGrams(77, 16, 4, 2, 0, 1), -1);
        HeatColumn column = HeatColumn.Of(shape, [new(ThermalCurve.Of("watery food", mixture), shape == ConductionShape.Slab ? 50 : 25, 10)], 60);
        var hours = HeatMarch.Implicit(column, [HeatStage.AllRound(600, Surroundings.Air(-30, 30))], new() { StepSeconds = 10 }).MinutesUntilAllBelow(-18) / 60;
        static Given Of(double value, string unit) => new("test", value, unit, new("a test", Evidence.Estimate));
        var pham = FreezingCase.Of(shape, Of(50, "mm"), mixture, Of(30, "W/(m²·K)"), Of(-30, "°C"), Of(10, "°C"), Of(-18, "°C")).Pham();
        Assert.True(pham.IsSound);
        Assert.NotNull(hours);
        Assert.Equal(1, hours.Value / pham.Value, 0.1);
    }

    [Fact]
    public void Layers_WithAFilmOnTop_CoolMoreSlowlyThanWithout()
    {
        HeatColumn column = HeatColumn.Of(ConductionShape.Slab, [new(ThermalCurve.Of("crumble", Desserts.Crumble), 4, 20), new(ThermalCurve.Of("mousse", Desserts.Mousse), 26, 12)], 60);
        double? Minutes(double resistance) => HeatMarch.Implicit(column, [new(300, Surroundings.Air(-30, 30, resistance), Surroundings.Insulated, Surroundings.Insulated)], new() { StepSeconds = 5 }).MinutesUntilAllBelow(-10);
        Assert.True(Minutes(Wrapping.Named("silicone mould").ResistanceM2KPerW) > Minutes(0) * 1.1);
    }

    [Fact]
    public void Explicit_StepThatItDoesNotBear_IsRefusedWithTheLongest() =>
        Assert.Contains("up to", Assert.Throws<ArgumentOutOfRangeException>(() => HeatMarch.Explicit(SlabCase.Column(), [SlabCase.Stage], new() { StepSeconds = 5 })).Message);

    [Fact]
    public void TimeUntilAllBelow_NotReached_SaysWhatItWouldTake()
    {
        var predicted = HeatMarch.Implicit(SteadyColumn(ConductionShape.Slab, 20), [Chilled(1)]).TimeUntilAllBelow(5);
        Assert.False(predicted.IsKnown);
        Assert.Contains("longer time", predicted.Lacks.Single());
    }

    [Fact]
    public void TimeUntilAllBelow_Reached_ShowsWhatWasMarched()
    {
        var predicted = HeatMarch.Implicit(SteadyColumn(ConductionShape.Slab, 20), [Chilled(200)]).TimeUntilAllBelow(10);
        Assert.True(predicted.IsSound);
        Assert.Contains(predicted.Working.Walk(), step => step.Step.Step.Contains("cake", StringComparison.Ordinal));
    }

    private static HeatColumn SteadyColumn(ConductionShape shape, int cells) => HeatColumn.Of(shape, [new(Steady, shape == ConductionShape.Slab ? 40 : 20, 60)], shape == ConductionShape.Slab ? 2 * cells : cells);

    private static HeatStage Chilled(double minutes) => HeatStage.AllRound(minutes, Surroundings.Air(2, 25));

    private static HeatColumn Frozen(ConductionShape shape, int cells) => HeatColumn.Of(shape, [new(ThermalCurve.Of("mousse", Desserts.Mousse), shape == ConductionShape.Slab ? 30 : 15, 12)], cells);

    // The cell next to the middle lies half a cell from it: read there.
    private static double SteadyCentre(ConductionShape shape, double minutes) =>
        2 + 58 * ConductionSeries.Of(shape, 25 * 0.02 / 0.5).Ratio(0.5 / (1000 * 3500.0) * minutes * 60 / 4e-4, 0.5 / 80);

    private static double Centre(TemperatureHistory history) => history.Readings[^1].CentreCelsius;

    private static double[] Cores(TemperatureHistory history) => [.. history.Fields.Append(history.End).Select(field => field.Celsius[SlabCase.Cells / 2])];

    private static void Near(double[] expected, double[] found, double within)
    {
        Assert.Equal(expected.Length, found.Length);
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First, pair.Second, within));
    }
}
