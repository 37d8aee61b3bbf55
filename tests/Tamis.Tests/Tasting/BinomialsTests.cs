using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class BinomialsTests
{
    // ISO 4120, triangle at 5 %: 6 of 8, 13 of 24, 19 of 42 … (from memory; each follows from the exact binomial tail).
    [Theory]
    [InlineData(6, 5), InlineData(12, 8), InlineData(24, 13), InlineData(36, 18), InlineData(60, 27)]
    public void FewestRight_Triangle_IsThePublishedCount(int answers, int right) => Assert.Equal(right, Binomials.FewestRight(answers, 1.0 / 3, 0.05));

    // Triangle at 5 % with a power of 80 %: 16, 23, 40, 87, 325 answers for 50, 40, 30, 20, 10 % of distinguishers (ISO 4120 and handbooks, from memory).
    [Theory]
    [InlineData(0.5, 16), InlineData(0.4, 23), InlineData(0.3, 40), InlineData(0.2, 87), InlineData(0.1, 325)]
    public void AnswersNeeded_Triangle_IsThePublishedNumber(double share, int answers) => Assert.Equal(answers, Binomials.AnswersNeeded(1.0 / 3, share, 0.05, 0.8));

    [Fact]
    public void AtLeast_AllOutcomes_AreSummedByHand()
    {
        // 3 of 5 at a half: (10 + 5 + 1)/32.
        Assert.Equal(16 / 32.0, Binomials.AtLeast(3, 5, 0.5), 12);
        Assert.Equal(1, Binomials.AtLeast(0, 5, 0.5));
        Assert.Equal(0, Binomials.AtLeast(6, 5, 0.5));
    }

    // Clopper and Pearson (1934): none of ten leaves 0 to 1 − 0.025^(1/10) = 0.3085.
    [Fact]
    public void Limits_NoneAndAll_EndAtTheEnds()
    {
        Assert.Equal((0, 0.3085), (Binomials.Limits(0, 10, 0.95).Low, Math.Round(Binomials.Limits(0, 10, 0.95).High, 4)));
        Assert.Equal((0.6915, 1), (Math.Round(Binomials.Limits(10, 10, 0.95).Low, 4), Binomials.Limits(10, 10, 0.95).High));
    }

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
