using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class AnswerCountsTests
{
    [Fact]
    public void JustRight_Steps_AreCountedWithThoseThatNobodyGave()
    {
        var counts = AnswerCounts.JustRight(new TastingTexts().Read()).Where(count => count.Trial == "T1");

        Assert.Equal([("1", 0), ("2", 0), ("3", 1), ("4", 1), ("5", 0)], counts.Select(count => (count.Answer, count.Count)));
        Assert.All(counts, count => Assert.Equal(2, count.ServingCount));
    }

    [Fact]
    public void Words_NoneCountsAsAnAnswerAndBlankDoesNot()
    {
        var counts = AnswerCounts.Words(new TastingTexts().Read());

        // T2: one assessor ticked none, the other left the cell blank.
        Assert.All(counts.Where(count => count.Trial == "T2"), count => Assert.Equal((0, 1), (count.Count, count.ServingCount)));
        Assert.Equal(0.5, counts.Single(count => count is { Trial: "T1", Answer: "bread crust" }).Share);
    }
}
