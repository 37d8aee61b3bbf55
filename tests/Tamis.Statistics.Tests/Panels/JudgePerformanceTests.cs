using Tamis.Statistics.Panels;

namespace Tamis.Statistics.Tests.Panels;

public class JudgePerformanceTests
{
    // Worked by hand: scores of 1, 2, 3, twice, with ±0.5; session 2 is one higher than session 1.
    private static readonly JudgedScore[] Scores = [.. from item in new[] { 1, 2, 3 } from session in new[] { 1, 2 } select new JudgedScore($"i{item}", session, item + session - 1.5)];

    [Fact]
    public void Of_ItemsScoredTwice_GivesTheFiguresWorkedByHand()
    {
        var performance = JudgePerformance.Of(Scores);

        Assert.Equal(4, performance.Discrimination!.F, 1e-10);
        Assert.Equal(1, performance.Drift!.Value.Value, 1e-12);
    }

    [Fact]
    public void Of_NothingScoredTwice_LeavesOutWhatCannotBeTold()
    {
        Assert.Equal(new JudgePerformance(null, null), JudgePerformance.Of([new("x", 1, 3), new("y", 1, 4)]));
        Assert.Equal(new JudgePerformance(null, null), JudgePerformance.Of([]));
    }
}
