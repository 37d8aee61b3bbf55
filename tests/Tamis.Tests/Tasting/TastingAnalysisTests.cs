using CsCheck;
using Tamis.Tasting;
using static Tamis.Tests.Tasting.SimulatedPanel;

namespace Tamis.Tests.Tasting;

public class TastingAnalysisTests
{
    private static readonly Gen<TastingLog> GenLog =
        from assessors in Gen.Int[3, 9]
        from trials in Gen.Int[2, 5]
        from seed in Gen.Int[0, 100_000]
        // One assessor tastes all, so that every trial is linked; a fifth of the other plates falls.
        select Log(assessors, [.. Enumerable.Range(0, trials).Select(i => 0.3 * i)], 1, 1, seed, (assessor, trial) => assessor == 0 || (assessor * 7 + trial * 3 + seed) % 5 > 0);

    [Fact]
    public void Means_SeveralServings_CountTheAssessorOnce()
    {
        var log = Log([Score("S1", "A1", "T1", 2, "101"), Score("S1", "A1", "T1", 4, "102"), Score("S1", "A2", "T1", 7, "103")], new TastingSession("S1"));

        var mean = Assert.Single(new TastingAnalysis(log).Means());

        Assert.Equal((5, 2, 3), (mean.MeanPoints, mean.AssessorCount, mean.ServingCount));
        // Two values 3 and 7: half width t(1) x 2, and t(1) at 95 % is tan(0.475 pi).
        Assert.Equal(Math.Tan(0.475 * Math.PI) * 2, mean.Range!.Value.Width / 2, 9);
    }

    [Fact]
    public void Compare_OneAssessor_GivesNoInterval()
    {
        var comparison = Assert.Single(new TastingAnalysis(Log(1, [0, 1], 1, 1, 5)).Compare("T1", "T0", Liking));

        Assert.Equal(Verdict.TooFew, comparison.Verdict);
        Assert.NotNull(comparison.DifferencePoints);
        Assert.Null(comparison.Range);
        Assert.False(comparison.IsLook);
    }

    [Theory]
    [InlineData(5, Verdict.TooFew)]
    [InlineData(6, Verdict.Shown)]
    public void Compare_FewAssessors_AreNotesUnderSix(int assessors, Verdict verdict) =>
        Assert.Equal(verdict, Assert.Single(new TastingAnalysis(Log(assessors, [0, 20], 1, 1, 5)).Compare("T1", "T0", Liking)).Verdict);

    [Fact]
    public void Compare_AllMarksEqual_SaysThatThereIsNoSpread()
    {
        var comparison = Assert.Single(new TastingAnalysis(Log(8, [0, 0], 0, 0, 1)).Compare("T1", "T0", Liking));

        Assert.Equal((Verdict.NoSpread, 0, null), (comparison.Verdict, comparison.DifferencePoints, comparison.Range));
    }

    [Fact]
    public void Compare_NeverTogether_SaysSo()
    {
        var log = TwoTastings(null, "T1", "T9");

        Assert.Equal(Verdict.NeverTogether, Assert.Single(new TastingAnalysis(log).Compare("T1", "T9", Liking)).Verdict);
    }

    [Fact]
    public void Compare_ControlInBoth_LinksThem()
    {
        var log = TwoTastings("T0", "T1", "T9");
        var analysis = new TastingAnalysis(log);

        var linked = Assert.Single(analysis.Compare("T1", "T9", Liking));

        var (left, right) = (Assert.Single(analysis.Compare("T1", "T0", Liking)), Assert.Single(analysis.Compare("T9", "T0", Liking)));
        Assert.Equal(("T0", 2), (linked.Through, linked.Tastings.Count));
        Assert.Equal(left.DifferencePoints!.Value - right.DifferencePoints!.Value, linked.DifferencePoints!.Value, 12);
        Assert.True(linked.Range!.Value.Width > Math.Max(left.Range!.Value.Width, right.Range!.Value.Width));
        Assert.Empty(linked.Points);
    }

    [Fact]
    public void Compare_ServedTogetherButNotAsked_SaysSo()
    {
        var log = Log(8, [0, 1], 1, 1, 3);
        var bitterness = new SensoryAttribute("bitterness", AttributeKind.Intensity) { HighPoints = 10 };

        Assert.Equal(Verdict.NotAsked, Assert.Single(new TastingAnalysis(log).Compare("T1", "T0", bitterness)).Verdict);
    }

    [Fact]
    public void Compare_TwoTastings_AreToldApart()
    {
        var scores = Log(8, [0, 1], 1, 1, 3).Scores;
        var again = scores.Select(score => score with { Serving = score.Serving with { Tasting = "S2", Make = 2 } });

        var comparisons = new TastingAnalysis(Log([.. scores, .. again], new("S1"), new("S2"))).Compare("T1", "T0", Liking);

        Assert.Equal(["S1", "S2"], comparisons.Select(one => Assert.Single(one.Tastings)));
        Assert.Equal([[], [2]], comparisons.Select(one => one.TrialMakes));
    }

    [Fact]
    public void Compare_Points_AreEachAssessorsMeans()
    {
        var log = Log([Score("S1", "A1", "T1", 2, "101"), Score("S1", "A1", "T1", 4, "102"), Score("S1", "A1", "T2", 1), Score("S1", "A2", "T2", 6)], new TastingSession("S1"));

        var comparison = Assert.Single(new TastingAnalysis(log).Compare("T1", "T2", Liking));

        Assert.Equal([new("A1", 3, 1), new("A2", null, 6)], comparison.Points);
        Assert.Equal((1, 1), (comparison.BothCount, comparison.AssessorCount));
    }

    [Fact]
    public void CompareTree_Tree_ComparesEachWithItsParentAndCountsTheLooks()
    {
        var tree = new TastingAnalysis(Log(9, [0, 1, 2], 1, 1, 8)).CompareTree(new Dictionary<string, string?> { ["T0"] = null, ["T1"] = "T0", ["T2"] = "T1", ["T3"] = "T2" });

        Assert.Equal([("T1", "T0"), ("T2", "T1"), ("T3", "T2")], tree.Comparisons.Select(one => (one.Trial, one.Against)));
        Assert.Equal(Verdict.NeverTogether, tree.Comparisons[2].Verdict);
        Assert.Equal(2, tree.Looks.Count);
        Assert.Equal(0.1, tree.Looks.ByChance, 12);
    }

    [Fact]
    public void Compare_BenchTasting_GivesNoFigure()
    {
        var scores = Log(9, [0, 5], 1, 1, 8).Scores;
        var log = Log(scores, new TastingSession("S1") { Kind = "Bench" });

        Assert.Equal(Verdict.NeverTogether, Assert.Single(new TastingAnalysis(log).Compare("T1", "T0", Liking)).Verdict);
        Assert.Empty(new TastingAnalysis(log).Means());
        Assert.Equal([("T0", 9), ("T1", 9)], BenchNotes.Of(log).Select(notes => (notes.Trial, notes.AssessorCount)));
    }

    [Fact]
    public void SmallestGap_NotShown_IsHalfTheWidth()
    {
        var comparison = Assert.Single(new TastingAnalysis(Log(8, [0, 0.1], 1, 1, 2)).Compare("T1", "T0", Liking));

        Assert.Equal(comparison.Range!.Value.Width / 2, comparison.SmallestGapPoints);
        Assert.Equal(comparison.Range!.Value.High - comparison.DifferencePoints!.Value, comparison.SmallestGapPoints!.Value, 12);
    }

    // The page of the tree and the page of a tasting must not say two things of one pair: with the reports, difference, interval and verdict are theirs.
    [Fact]
    public void Compare_WithReports_SaysWhatTheReportSays()
    {
        foreach (var seed in Enumerable.Range(1, 20))
        {
            var log = Log(8, [0, 0.8, 1.2, -0.4], 1, 1, seed, (assessor, trial) => (assessor + trial) % 4 > 0 || seed % 2 == 0);
            var report = TastingReport.Of(log, log.Sessions[0]);
            var comparison = Assert.Single(new TastingAnalysis(log, reports: _ => report).Compare("T1", "T0", Liking));
            var pair = report.Scales[0].PairOf("T1", "T0")!;

            Assert.Equal((pair.Points, pair.Range, pair.Verdict), (comparison.DifferencePoints, comparison.Range, comparison.Verdict));
            Assert.Equal(report.Scales[0].IsShown(TastingPolicy.Kit), comparison.StandsAmongAll);
        }
    }

    // Three trials against the first, one scale of one tasting: the intervals hold for all its pairs, so chance has one turn.
    [Fact]
    public void LooksOf_WithReports_CountsAScaleOnce()
    {
        var log = Log(9, [0, 1, 2], 1, 1, 8);
        var report = TastingReport.Of(log, log.Sessions[0]);

        Assert.Equal(1, new TastingAnalysis(log, reports: _ => report).CompareTree(new Dictionary<string, string?> { ["T0"] = null, ["T1"] = "T0", ["T2"] = "T0" }).Looks.Count);
        Assert.Equal(2, new TastingAnalysis(log).CompareTree(new Dictionary<string, string?> { ["T0"] = null, ["T1"] = "T0", ["T2"] = "T0" }).Looks.Count);
    }

    // Ten people, but T3 was served to four of them: a pair with it is notes on either page.
    [Fact]
    public void Compare_PairThatFewScored_IsTooFewOnBothPages()
    {
        var log = Log(10, [0, 1, 2, 9], 1, 1, 8, (assessor, trial) => trial < 3 || assessor < 4);
        var report = TastingReport.Of(log, log.Sessions[0]);

        Assert.Equal(Verdict.TooFew, report.Scales[0].PairOf("T3", "T0")!.Verdict);
        Assert.Equal(Verdict.TooFew, Assert.Single(new TastingAnalysis(log, reports: _ => report).Compare("T3", "T0", Liking)).Verdict);
    }

    [Theory]
    [InlineData(0.5, 2.1, Verdict.Shown)]
    [InlineData(-2.1, -0.5, Verdict.Shown)]
    [InlineData(0.05, 1, Verdict.Shown)]
    [InlineData(0.049, 1.6, Verdict.AtEdge)]
    [InlineData(-0.049, 1.6, Verdict.AtEdge)]
    [InlineData(-1.6, 0.02, Verdict.AtEdge)]
    [InlineData(-0.06, 1.6, Verdict.NotShown)]
    [InlineData(-0.04, 0.04, Verdict.NotShown)]
    [InlineData(0.01, 0.04, Verdict.NotShown)]
    public void Verdict_Interval_IsJudgedAsPrinted(double low, double high, Verdict verdict) => Assert.Equal(verdict, Verdicts.Of(low, high, 0.1));

    [Fact]
    public void Compare_ConstantAddedToAnAssessor_ChangesNoDifference() =>
        GenLog.Select(Gen.Double[-30, 30]).Sample((log, shift) => SameAs(log, log with
        {
            Scores = [.. log.Scores.Select(score => score.Serving.Assessor == "A01" ? score with { Points = score.Points + shift } : score)],
        }));

    [Fact]
    public void Compare_OtherCodesAndOrder_ChangeNothing() =>
        GenLog.Sample(log => SameAs(log, Log([.. log.Scores.Reverse().Select(score => score with { Serving = score.Serving with { Code = "9" + score.Serving.Code } })], new TastingSession("S1"))));

    [Fact]
    public void Compare_EveryServingTwice_ChangesNothing() =>
        GenLog.Sample(log => SameAs(log, Log([.. log.Scores, .. log.Scores.Select(score => score with { Serving = score.Serving with { Code = "9" + score.Serving.Code } })], new TastingSession("S1"))));

    [Fact]
    public void Compare_TurnedRound_ChangesTheSign() =>
        GenLog.Sample(log =>
        {
            var analysis = new TastingAnalysis(log);
            var (one, other) = (Assert.Single(analysis.Compare("T1", "T0", Liking)), Assert.Single(analysis.Compare("T0", "T1", Liking)));
            Assert.Equal(one.DifferencePoints!.Value, -other.DifferencePoints!.Value, 9);
            Assert.Equal(one.Verdict, other.Verdict);
        });

    // Of 1200 simulated tastings the 95 % interval holds the truth in 1140 on average; with one standard deviation of 7.5, four either way.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Compare_SimulatedPanels_HoldTheTruthAtTheStatedRate(bool isIncomplete)
    {
        double[] truth = [0, 0.8, -0.4, 0.1];
        var held = Enumerable.Range(0, 1200).Count(seed =>
        {
            // Incomplete: each assessor misses one of the four trials in turn.
            var log = Log(8, truth, 1.5, 1, seed, isIncomplete ? (assessor, trial) => assessor % 4 != trial : null);
            return Assert.Single(new TastingAnalysis(log).Compare("T1", "T2", Liking)).Range!.Value.Contains(truth[1] - truth[2]);
        });

        Assert.InRange(held, 1110, 1170);
    }

    private static TastingLog TwoTastings(string? control, string first, string second)
    {
        var one = Log(8, [0, 1], 1, 1, 3).Scores.Select(score => Rename(score, "S1", score.Serving.Trial == "T0" ? "T0" : first));
        var other = Log(8, [0, 2], 1, 1, 4).Scores.Select(score => Rename(score, "S2", score.Serving.Trial == "T0" ? "T0" : second));
        return Log([.. one, .. other], new TastingSession("S1") { Control = control }, new TastingSession("S2") { Control = control });

        static Score Rename(Score score, string tasting, string trial) => score with { Serving = score.Serving with { Tasting = tasting, Trial = trial } };
    }

    private static void SameAs(TastingLog before, TastingLog after)
    {
        foreach (var trial in before.TrialsIn("S1").Where(trial => trial != "T0"))
        {
            var (one, other) = (Assert.Single(new TastingAnalysis(before).Compare(trial, "T0", Liking)), Assert.Single(new TastingAnalysis(after).Compare(trial, "T0", Liking)));
            Assert.Equal(one.DifferencePoints!.Value, other.DifferencePoints!.Value, 8);
            Assert.Equal(one.Range?.Width ?? 0, other.Range?.Width ?? 0, 8);
            Assert.Equal(one.AssessorCount, other.AssessorCount);
        }
    }
}
