using Tamis.Desserts;
using Tamis.Physics;

namespace Tamis.Views.Tests;

/// <summary>What models say of invented mixtures, for the tests of the views that show it. A name may be hostile.</summary>
internal static class PhysicsSamples
{
    private static readonly Source Made = new("made for a test", Evidence.Estimate);

    public static WaterCourse Water(string shell = "shell", string sponge = "sponge") => WaterCourse.Of(Stack(shell, sponge), 6, new(8, 60));

    public static WaterStack Stack(string shell = "shell", string sponge = "sponge") => WaterStack.Of(
    [
        WaterLayer.OfActivity(shell, MigrationData.Kit.Isotherm("biscuit and shortcrust"), 3, 1.08, 0.28, MigrationData.Kit.Diffusivity("biscuit and shortcrust")) with { Limit = MigrationData.Kit.Limit("biscuit and shortcrust") },
        WaterLayer.OfActivity(sponge, MigrationData.Kit.Isotherm("sponge"), 10, 0.4, 0.85, MigrationData.Kit.Diffusivity("sponge")),
    ], [MigrationData.Kit.Film("cocoa butter", 0.2)], 20);

    public static MouldedPiece Piece(string mousse = "mousse", string gel = "gel") => MouldedPiece.Of(
    [
        new(ThermalCurve.Of(mousse, ThermalMixture.Make(Proximates.FromGrams(55, 4, 22, 18, 0, 1), -4, 0.35)), 140, 30, 0, 20),
        new(ThermalCurve.Of(gel, ThermalMixture.Make(Proximates.FromGrams(73, 2, 0, 24.5, 0, 0.5), -3)), 120, 8, 12, -18),
    ], 4);

    public static TemperatureHistory Freezing(MouldedPiece piece) => piece.March([HeatStage.AllRound(120, Surroundings.Air(-30, 25))], new() { FieldsAtMinutes = [0, 30, 120] });

    public static TemperatureLog Log => TemperatureLog.Of([(0.0, 20.0), (8, 83), (8.25, 83), (14, 56), (27, 26)], Made);

    public static Predicted Figure(string name, double value, string unit, Interval? range = null, params IReadOnlyList<string> outside) =>
        Predicted.Computed(new(name, name, unit, Made), value, () => [new(name, value, unit, Made)]) with { Range = range, Outside = outside };

    public static Predicted Lacking(string name, string lack) => Predicted.Unknown(new(name, name, "", Made), lack);

    public static Measurement Measured(string component, string what, double value, string unit, int make = 1) => new("T1", make, component, what, value, unit, Made);

    public static CheckUp CheckUp(string word = "gelatine") => new()
    {
        Component = word,
        Family = word,
        Use = word,
        Lines = [Line(word, 0.93, 1, 1.5), Line(word + " of the water", 1.2, 1, 1.5), new(Window(word + " too", 1, 2), Lacking(word, word))],
    };

    private static CheckUpLine Line(string word, double value, double low, double high) => new(Window(word, low, high), Figure(word, value, "%"));

    private static Window Window(string word, double low, double high) => new(word, word, new(BaseKind.Finished), word, Interval.Between(low, high), "%", Made) { WhyLow = word, WhyHigh = word, TryLow = word, TryHigh = word };

    public static CurvePanel Curves(string word = "a curve") => new(word, new(word), new(word), [new(word, [(0, 1), (1, 2), (2, double.NaN), (3, 4), (4, 3)]) { Between = [(0, 0.5, 1.5), (4, 2.5, 3.5)] }, new(word, [(1, 1.23456789012345)]) { IsDots = true, IsChosen = true }])
    {
        Limits = [new(word, 2.5)],
        Bands = [new(word, Interval.Between(1, 2)), new(word, Interval.Between(3, 3.5), IsDanger: true)],
        Events = [new(word, 1), new(word, 1.1)],
        Description = word,
    };

    public static ChartView Ladder(string word = "gel") => WaterActivityLadder.Of([new(word, 0.955, Interval.Between(0.94, 0.96)) { Measured = [0.95] }, new(word + " 2", 0.31, null) { IsGuess = true }, new(word + " 3", null, null)], [new(word, 0.9), new("yeasts", 0.88)], Html.Text(word));

    public static Balance Balance => Balance.FromGrams(100, (BalancePart.Water, 40), (BalancePart.Sucrose, 20), (BalancePart.MilkFat, 15), (BalancePart.CocoaButter, 12));
}
