using Tamis.Statistics.Panels;

namespace Tamis.Statistics.Tests.Panels;

public class JudgePerformanceTests
{
    // Worked by hand: a scores 1, 2, 3 twice with ±0.5; b scores twice as far apart; session 2 is one higher than session 1 for both.
    private static readonly JudgedScore[] Scores = [.. from judge in new[] { (Name: "a", Scale: 1.0), (Name: "b", Scale: 2.0) }
                                                       from item in new[] { 1, 2, 3 }
                                                       from session in new[] { 1, 2 }
                                                       select new JudgedScore(judge.Name, $"i{item}", session, judge.Scale * item + session - 1.5)];

    [Fact]
    public void Of_TwoJudges_GivesTheFiguresWorkedByHand()
    {
        var first = JudgePerformance.Of(Scores)[0];

        Assert.Equal(Math.Sqrt(0.5), first.Repeatability!.Value, 1e-12);
        Assert.Equal(4, first.Discrimination!.F, 1e-10);
        Assert.Equal(1, first.Agreement!.Value, 1e-12);
        Assert.Equal(0.5, first.ScaleUse!.Value, 1e-12);
        Assert.Equal(1, first.Drift!.Value.Value, 1e-12);
    }

    [Fact]
    public void Of_OneJudgeWithoutRepeats_LeavesOutWhatCannotBeTold()
    {
        var only = Assert.Single(JudgePerformance.Of([new("a", "x", 1, 3), new("a", "y", 1, 4), new("a", "z", 1, double.NaN)]));

        Assert.Equal(new JudgePerformance("a", null, null, null, null, null), only);
    }
}
