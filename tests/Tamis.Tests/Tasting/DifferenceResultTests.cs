using Tamis.Statistics.Discrimination;
using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class DifferenceResultTests
{
    [Fact]
    public void Draw_ManyGuessingGroups_DoAsWellAsTheExactTailSays()
    {
        var groups = GuessingClasses.Draw(24, 3, 20_000, seed: 1);

        // Within three standard errors: 3 × √(0.0284 × 0.9716 / 20000) = 0.0035.
        Assert.InRange(groups.AtLeast(13) / 20_000.0 - Binomials.AtLeast(13, 24, 1.0 / 3), -0.0035, 0.0035);
        Assert.Equal(20_000, groups.GroupCount);
    }

    [Fact]
    public void Of_TriangleSheet_CountsRightAnswersAndNamesUnclearOnes()
    {
        var log = new TastingTexts
        {
            Attributes = "attribute,kind,question\nodd,pick,Which?\n",
            Tastings = "tasting,kind,trials\nS1,triangle,T1; T2\n",
            Servings = "tasting,assessor,position,code,trial\nS1,A01,1,101,T1\nS1,A01,2,102,T2\nS1,A01,3,103,T1\nS1,A02,1,101,T1\nS1,A02,2,102,T2\nS1,A02,3,104,T2\nS1,A03,1,101,T1\nS1,A03,2,102,T2\nS1,A03,3,104,T2\n",
            Scores = "tasting,assessor,code,odd\nS1,A01,102,x\nS1,A01,101,\nS1,A02,104,x\nS1,A03,101,x\nS1,A03,102,x\n",
        }.Read();
        var result = Assert.Single(DifferenceResult.Of(log));

        Assert.Equal((1, 2, 1), (result.Right, result.Answered, result.UnclearCount));
    }

    [Fact]
    public void ChanceOfGuessing_Paired_CountsBothEnds() =>
        // 8 of 10 either way: 2 × (45 + 10 + 1)/1024.
        Assert.Equal(112 / 1024.0, new DifferenceResult(new("S1"), DifferenceTest.Paired, "T1", "T2", [("A1", 8, 10)], 0).ChanceOfGuessing, 12);
}
