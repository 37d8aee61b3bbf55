using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

/// <summary>Long sheets, rankings, picks, boxes, and the settings of a tasting.</summary>
public class ScoreFormsTests
{
    private const string Long = """
        tasting,assessor,code,attribute,answer
        S1,A01,454,sweetness,7.2
        S1,A01,454,liking,6
        S1,A01,454,sweetness right,4
        S1,A01,454,terms,nutty; Bread_Crust
        S1,A01,454,remark,"set like a jelly; too firm"
        S1,A01,717,sweetness,6.4
        S1,A01,717,liking,5.5
        S1,A01,717,sweetness right,3
        S1,A01,717,terms,none
        S1,A02,717,sweetness,
        S1,A02,717,liking,4
        S1,A02,717,sweetness right,2
        S1,A02,454,sweetness,0
        S1,A02,454,liking,3
        S1,A02,454,sweetness right,3
        S1,A02,454,terms,jammy

        """;

    [Fact]
    public void Read_LongSheet_MeansTheSameAsTheWideOne()
    {
        var (wide, tall) = (new TastingTexts().Read(), new TastingTexts { Scores = Long }.Read());

        Assert.Equal(wide.Scores.Select(Plain).Order(), tall.Scores.Select(Plain).Order());
        Assert.Equal(wide.Ticks.Select(ticks => string.Join(';', ticks.Words)), tall.Ticks.Select(ticks => string.Join(';', ticks.Words)));
        Assert.Equal(wide.Remarks.Select(remark => remark.Text), tall.Remarks.Select(remark => remark.Text));
        Assert.Equal(wide.Tasted.Count, tall.Tasted.Count);

        static string Plain(Score score) => FormattableString.Invariant($"{score.Serving.Assessor} {score.Serving.Code} {score.Attribute.Name} {score.Points}");
    }

    [Fact]
    public void Read_LongSheetWithFaults_NamesAllOfThem()
    {
        new TastingTexts { Scores = Long.Replace("S1,A01,454,liking,6", "S1,A01,454,likin,6", StringComparison.Ordinal).Replace("S1,A02,454,liking,3", "S1,A02,454,sweetness,11", StringComparison.Ordinal) }.Read(out var problems);

        Assert.Equal(2, problems.Count);
        Assert.Contains("column 'attribute': found 'likin', expected an attribute of attributes.csv, or remark; the nearest is 'liking'", problems[0], StringComparison.Ordinal);
        Assert.Contains("A02 has it in row 14 already for sweetness", problems[1], StringComparison.Ordinal);
    }

    private static TastingTexts Ranking(string scores) => new()
    {
        Attributes = "attribute,kind,question\nbest,ranking,Which is best?\n",
        Scores = $"tasting,assessor,code,best\n{scores}",
    };

    [Fact]
    public void Read_Ranking_GivesPlaces() =>
        Assert.Equal([2, 1, 1, 2], Ranking("S1,A01,454,2\nS1,A01,717,1\nS1,A02,717,1\nS1,A02,454,2\n").Read().Scores.Select(score => score.Points));

    [Fact]
    public void Read_RankingWithAPlaceTwiceOrTooHigh_NamesBoth()
    {
        Ranking("S1,A01,454,1\nS1,A01,717,1\nS1,A02,717,1\nS1,A02,454,3\n").Read(out var problems);

        Assert.Equal(
        [
            "scores.csv, row 3, column 'best': found '1', expected each place once in a ranking: where two seem alike, the assessor chooses.",
            "scores.csv, row 5, column 'best': found '3', expected a place from 1 to 2: A02 ranked so many.",
        ], problems);
    }

    [Fact]
    public void Read_BoxesScale_TakesWholePointsOnly()
    {
        TastingTexts texts = new()
        {
            Attributes = "attribute,kind,low,high,scale\nliking,liking,1,9,boxes\n",
            Scores = "tasting,assessor,code,liking\nS1,A01,454,7.5\nS1,A01,717,8\n",
        };
        texts.Read(out var problems);

        Assert.Equal("scores.csv, row 2, column 'liking': found '7.5', expected a whole number from 1 to 9, the scale of attributes.csv.", Assert.Single(problems));
    }

    [Fact]
    public void Read_CodeOfAnotherAssessor_SaysWhoseItIs()
    {
        new TastingTexts
        {
            Servings = "tasting,assessor,position,code,trial\nS1,A01,1,454,T1\nS1,A02,1,717,T2\n",
            Scores = "tasting,assessor,code,sweetness,liking,sweetness right,terms\nS1,A01,717,5,,,\nS1,A02,454,5,,,\n",
        }.Read(out var problems);

        Assert.Equal(2, problems.Count);
        Assert.EndsWith("expected a code that A01 was served in S1: 454; 717 went to A02: perhaps the code or the assessor of another ballot; row 3 has 454 where 717 belongs, so the two may have been exchanged.", problems[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Read_PositionAgainstThePlan_AsksWhetherCodesAreSwapped()
    {
        new TastingTexts { Scores = "tasting,assessor,code,position,sweetness,liking,sweetness right,terms\nS1,A01,717,1,5,,,\nS1,A01,454,2,5,,,\n" }.Read(out var problems);

        Assert.Equal(2, problems.Count);
        Assert.Contains("expected 2, the place of 717 in the order of A01 in servings.csv; are two codes swapped?", problems[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Read_RowsThatWaitToBeFilled_AreNoTastingYet()
    {
        var log = new TastingTexts { Scores = "tasting,assessor,code,sweetness,liking,sweetness right,terms,remark\nS1,A01,454,,,,,\nS1,A01,717,,,,,\n" }.Read();

        Assert.Empty(log.Tasted);
        Assert.Equal(4, log.NotTasted.Count());
    }

    [Fact]
    public void Read_SettingsOfATasting_AreAllRead()
    {
        var session = new TastingTexts
        {
            Trials = ["T1", "T2"],
            Tastings = "tasting,date,kind,trials,control,portion_g,served_c,minutes_out,assessors,trained,servings_each,design,seed\nS1,2026-09-18,scores,T1; t2,T1,25,12,20,3,no,2,any,4111\n",
        }.Read().Sessions[0];

        Assert.Equal(["T1", "T2"], session.Trials);
        Assert.Equal(["A01", "A02", "A03"], session.Assessors);
        Assert.Equal((25, 12, 20, 2, 4111, false), (session.PortionGrams, session.ServedCelsius, session.OutOfColdMinutes, session.ServingsEach, session.Seed, session.AreTrained));
    }

    [Fact]
    public void Read_BadSettings_AreNamedAtOnce()
    {
        new TastingTexts { Trials = ["T1", "T2"], Tastings = "tasting,trials,assessors,trained,servings_each,portion_g,seed\nS1,T1; T7,12.5,perhaps,0,-3,x\n" }.Read(out var problems);

        Assert.Equal(6, problems.Count);
    }
}
