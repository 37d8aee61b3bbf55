using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics.Heat;

public class SafetyTests
{
    private static readonly Source Test = new("a test", Evidence.Estimate);

    [Fact]
    public void Minutes_HeldAtTheReference_AreTheMinutesHeld() =>
        Assert.Equal(2.5, Lethality.Minutes(Log((0, 70), (1, 70), (2.5, 70)), LethalityReference.CookChill).Value, 1e-12);

    [Fact]
    public void Minutes_ReadingsHalvedOnTheLine_ChangeNothing() =>
        Gen.Select(Gen.Double[20, 95], Gen.Double[20, 95], Gen.Double[1, 60]).Sample((from, to, minutes) =>
        {
            var whole = Lethality.Minutes(Log((0, from), (minutes, to)), LethalityReference.CookChill).Value;
            var halved = Lethality.Minutes(Log((0, from), (minutes / 2, (from + to) / 2), (minutes, to)), LethalityReference.CookChill).Value;
            return Math.Abs(whole - halved) <= 1e-9 * Math.Max(whole, 1e-12);
        });

    [Fact]
    public void MinutesByTrapezium_StraightTemperature_IsNeverLess() =>
        Gen.Select(Gen.Double[20, 95], Gen.Double[20, 95]).Sample((from, to) =>
            Lethality.MinutesByTrapezium(Log((0, from), (10, to)), LethalityReference.CookChill).Value >= Lethality.Minutes(Log((0, from), (10, to)), LethalityReference.CookChill).Value * (1 - 1e-12));

    [Fact]
    public void Course_ItsEnd_IsTheWhole()
    {
        var log = Log((0, 50), (4, 64), (8, 71), (12, 70), (16, 50));
        Assert.Equal(Lethality.Minutes(log, LethalityReference.CookChill).Value, Lethality.Course(log, LethalityReference.CookChill)[^1].EffectMinutes, 1e-12);
    }

    [Theory]
    [InlineData(72, true)]
    [InlineData(68, false)]
    public void Against_TwoMinutesHeld_ReachesTheTargetFromTheReferenceOn(double celsius, bool expected) =>
        Assert.Equal(expected, Lethality.Against(Log((0, celsius), (2, celsius)), LethalityReference.CookChill).ReachesTarget);

    [Fact]
    public void Against_ReferenceThatCannotBe_SaysNothing() =>
        Assert.Null(Lethality.Against(Log((0, 70), (2, 70)), LethalityReference.CookChill with { Z = new("z", -1, "°C", Test) }).ReachesTarget);

    [Fact]
    public void Minutes_ZOfZero_IsASentence() =>
        Assert.Equal("a z above 0 °C", Lethality.Minutes(Log((0, 60), (1, 70)), LethalityReference.CookChill with { Z = new("z", 0, "°C", Test) }).Lacks.Single());

    [Fact]
    public void DFromCounts_ThreeDecimalReductions_IsAThirdOfTheTime() =>
        Assert.Equal(2, Lethality.DFromCounts(new("time", 6, "min", Test), new("count", 1e6, "", Test), new("count", 1e3, "", Test)).Value, 1e-12);

    [Fact]
    public void Log_WrongReadings_AreAllNamed()
    {
        var message = Assert.Throws<ArgumentException>(() => Log((0, 60), (0, 61), (5, -300))).Message;
        Assert.Contains("Reading 2", message);
        Assert.Contains("Reading 3", message);
    }

    [Fact]
    public void Log_FromASheet_NamesEveryBadCell()
    {
        var problems = Kitchen.ProblemsOf(() => TemperatureLog.Read(Kitchen.Sheet("curve.csv", "minutes,celsius\n0,83\n5,hot\n3,20\n4,-400\n")));
        Assert.Equal([(3, "celsius"), (4, "minutes"), (5, "celsius")], problems.Select(problem => (problem.Row, problem.Column)));
    }

    [Theory]
    [InlineData(100, CoolingOutcome.InTime)]
    [InlineData(130, CoolingOutcome.TooSlow)]
    public void Check_FromSixtyThreeToTenIn(double minutes, CoolingOutcome expected)
    {
        // From 63 to 10 °C within 2 hours (French order of 21 December 2009).
        var verdict = CoolingRule.Named("France, cooling").Single().Check(Log((0, 80), (10, 63), (10 + minutes, 10), (200, 3)));
        Assert.Equal(expected, verdict.Outcome);
        Assert.Equal(minutes, verdict.Minutes ?? double.NaN, 1e-9);
    }

    [Fact]
    public void Check_LogThatBeginsInsideTheRange_SaysNothing() =>
        Assert.Equal(CoolingOutcome.LogTooShort, CoolingRule.Named("France, cooling").Single().Check(Log((0, 50), (30, 8))).Outcome);

    [Fact]
    public void Check_LogThatEndsEarly_IsTooSlowOnlyOnceTheTimeIsUp()
    {
        var rule = CoolingRule.Named("France, cooling").Single();
        Assert.Equal(CoolingOutcome.LogTooShort, rule.Check(Log((0, 70), (60, 30))).Outcome);
        Assert.Equal(CoolingOutcome.TooSlow, rule.Check(Log((0, 70), (180, 30))).Outcome);
    }

    [Fact]
    public void Check_ColdAllTheTime_IsNotPassed() => Assert.Equal(CoolingOutcome.NotPassed, CoolingRule.Named("US model code")[0].Check(Log((0, 4), (60, 3))).Outcome);

    [Fact]
    public void Check_Reheating_CountsTheRise() =>
        Assert.Equal(CoolingOutcome.InTime, CoolingRule.Named("France, reheating").Single().Check(Log((0, 4), (40, 70))).Outcome);

    [Fact]
    public void Named_UnknownRule_NamesTheKnown() => Assert.Contains("UK guidance", Assert.Throws<KeyNotFoundException>(() => CoolingRule.Named("house rule")).Message);

    [Fact]
    public void PasteurisationMinima_HistoricalOnes_SayIt() =>
        Assert.All(PasteurisationMinimum.All.Where(each => each.Source.Key == "9 CFR 590.570"), each => Assert.StartsWith("historical", each.Status, StringComparison.Ordinal));

    private static TemperatureLog Log(params (double, double)[] readings) => TemperatureLog.Of(readings, Test);
}
