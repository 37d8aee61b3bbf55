using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

/// <summary>Assessors beside the others, ticks, rankings and the map of trials.</summary>
public class PanelTests
{
    private static readonly SensoryAttribute[] Scales = [.. Enumerable.Range(0, 4).Select(at => new SensoryAttribute($"scale {at}", AttributeKind.Intensity) { HighPoints = 10 })];

    // Trials differ by 0, 1, 2 … on every scale; marks(assessor, truth, noise) says what an assessor writes.
    private static TastingLog Log(int assessors, int trials, Func<int, double, double, double> marks, int repeats = 1)
    {
        var random = new Random(11);
        List<Score> scores = [];
        for (var assessor = 0; assessor < assessors; assessor++)
            for (var trial = 0; trial < trials; trial++)
                for (var again = 0; again < repeats; again++)
                    foreach (var (scale, at) in Scales.Select((scale, at) => (scale, at)))
                        scores.Add(SimulatedPanel.Score("S1", $"A{assessor:00}", $"T{trial}", marks(assessor, (trial + at) % trials, random.NextDouble() - 0.5), code: $"{trial}{again}") with { Attribute = scale });
        return SimulatedPanel.Log(scores, new TastingSession("S1")) with { Attributes = Scales };
    }

    [Fact]
    public void Record_AssessorWhoReadsTheScaleTheOtherWayRound_GoesAgainstTheOthers()
    {
        var records = AssessorRecord.Of(Log(8, 4, (assessor, truth, noise) => assessor == 0 ? 5 - truth + noise : 3 + truth + noise));

        Assert.True(records[0].Overall!.Range!.Value.High < -0.5);
        Assert.All(records.Skip(1), record => Assert.True(record.Agreement > 0.5));
    }

    [Fact]
    public void Record_AssessorWhoUsesHalfTheScaleAndMarksHigh_IsToldSo()
    {
        var record = AssessorRecord.Of(Log(8, 4, (assessor, truth, noise) => assessor == 0 ? 6 + truth / 2 + noise / 10 : 3 + truth + noise / 10))[0];

        Assert.InRange(record.ScaleUse!.Value, 0.4, 0.6);
        Assert.InRange(record.LevelPoints, 2.1, 2.4);
        Assert.Null(record.RepeatPoints);
    }

    [Fact]
    public void Record_ServedTwice_GivesTheSpreadBetweenPlates()
    {
        // Uniform noise of width one has a standard deviation of 1/√12 = 0.29; four times as wide 1.15.
        var records = AssessorRecord.Of(Log(8, 4, (assessor, truth, noise) => 3 + truth + noise * (assessor == 0 ? 4 : 1), repeats: 6));

        Assert.InRange(records[0].RepeatPoints!.Value, 0.9, 1.4);
        Assert.InRange(records[1].RepeatPoints!.Value, 0.2, 0.4);
        Assert.InRange(records[0].OthersRepeatPoints!.Value, 0.25, 0.33);
    }

    [Fact]
    public void Record_AllMarksEqual_HasNoAgreementAndNoNumberThatIsNone()
    {
        foreach (var record in AssessorRecord.Of(Log(8, 4, (_, _, _) => 5)))
        {
            Assert.Null(record.Agreement);
            Assert.Null(record.ScaleUse);
        }
    }

    // Worked by hand: columns 3, 1, 0; rows 2, 1, 1, 0: Q = 2 (3 × 10 − 16)/(2·1 + 1·2 + 1·2) = 28/6.
    [Fact]
    public void Q_SmallTable_IsTheOneWorkedByHand() =>
        Assert.Equal(28 / 6.0, TickTest.Q([[true, true, false], [true, false, false], [true, false, false], [false, false, false]])!.Value, 12);

    [Fact]
    public void Q_EverybodyTicksAllOrNothing_IsNone() => Assert.Null(TickTest.Q([[true, true], [false, false]]));

    // Four assessors in full agreement on three trials: statistic n (k − 1) = 8 (Kendall's W is 1).
    [Fact]
    public void RankTest_FullAgreement_HasTheLargestStatistic()
    {
        SensoryAttribute best = new("best", AttributeKind.Ranking) { LowPoints = 1, HighPoints = 60 };
        Score[] places = [.. from assessor in Enumerable.Range(0, 4) from trial in Enumerable.Range(1, 3) select SimulatedPanel.Score("S1", $"A{assessor}", $"T{trial}", trial) with { Attribute = best }];
        var log = SimulatedPanel.Log(places, new TastingSession("S1"));
        var test = RankTest.Of(log, log.Sessions[0], best, TastingPolicy.Kit)!;

        Assert.Equal(8, test.Statistic, 10);
        Assert.Equal([("T1", 4.0), ("T2", 8.0), ("T3", 12.0)], test.RankSums);
        // χ² with two degrees of freedom: exp(−8/2).
        Assert.Equal(Math.Exp(-4), test.P, 10);
        // q(0.95; 3, ∞) = 3.314 (printed tables): × √(4·3·4/12) = 6.63.
        Assert.Equal(6.63, test.GapNeeded, 2);
    }

    // The same four people, each trial on two plates at neighbouring places: mean places 1.5, 3.5 and 5.5, ranked anew, say the same.
    [Fact]
    public void RankTest_TrialServedTwice_CountsByItsMeanPlace()
    {
        SensoryAttribute best = new("best", AttributeKind.Ranking) { LowPoints = 1, HighPoints = 60 };
        Score[] places = [.. from assessor in Enumerable.Range(0, 4) from plate in Enumerable.Range(1, 6) select SimulatedPanel.Score("S1", $"A{assessor}", $"T{(plate + 1) / 2}", plate, code: $"{100 + plate}") with { Attribute = best }];
        var log = SimulatedPanel.Log(places, new TastingSession("S1"));
        var test = RankTest.Of(log, log.Sessions[0], best, TastingPolicy.Kit)!;

        Assert.True(test.HasSeveralPlates);
        Assert.Equal(8, test.Statistic, 10);
        Assert.Equal([("T1", 4.0), ("T2", 8.0), ("T3", 12.0)], test.RankSums);
    }

    [Fact]
    public void TrialMap_TwoGroupsOfTrials_LieApartWithEllipsesAroundThem()
    {
        var log = Log(10, 4, (_, truth, noise) => 3 + 2 * truth + noise);
        var map = TrialMap.Of(log, log.Sessions[0])!;

        Assert.Equal(4, map.Trials.Count);
        Assert.InRange(map.Shares.Across + map.Shares.Up, 0.5, 1.0000001);
        Assert.All(map.Trials, trial => Assert.All(trial.Outline, point => Assert.True(double.IsFinite(point.Across) && double.IsFinite(point.Up))));
        Assert.Equal(0, map.Trials.Sum(trial => trial.Across), 9);
        var other = TrialMap.Of(log, log.Sessions[0])!;
        Assert.Equal(map.Trials.Select(trial => (trial.Trial, trial.Across, trial.Up)), other.Trials.Select(trial => (trial.Trial, trial.Across, trial.Up)));
    }

    [Fact]
    public void TrialMap_TooFewTrialsPeopleOrNoDifference_IsNone()
    {
        Assert.Null(Map(Log(10, 2, (_, truth, noise) => truth + noise)));
        Assert.Null(Map(Log(4, 4, (_, truth, noise) => truth + noise)));
        Assert.Null(Map(Log(10, 4, (_, _, _) => 5)));

        static TrialMap? Map(TastingLog log) => TrialMap.Of(log, log.Sessions[0]);
    }
}
