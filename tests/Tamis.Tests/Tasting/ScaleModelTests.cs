using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

/// <summary>What the models say where the data can carry them, and in words where they cannot.</summary>
public class ScaleModelTests
{
    private static readonly SensoryAttribute Liking = SimulatedPanel.Liking;

    private static ScaleModel Model(TastingLog log) => ScaleModel.Of(log, log.Sessions[0], Liking, TastingPolicy.Kit);

    private static IEnumerable<double> NumbersOf(ScaleModel model) =>
        [.. model.Means.SelectMany(mean => (double[])[mean.Points, mean.Range?.Low ?? 0, mean.Range?.High ?? 0]),
         .. model.Pairs.SelectMany(pair => (double[])[pair.Points, pair.Range?.Low ?? 0, pair.Range?.High ?? 0]),
         .. model.Spread.SelectMany(part => (double[])[part.Points, part.Share]), model.TrialP ?? 0, model.PlatePoints ?? 0, model.CarryOverP ?? 0];

    [Fact]
    public void Of_CompleteTasting_AgreesWithDifferencesWithinAssessors()
    {
        var log = SimulatedPanel.Log(12, [0, 1, 3], assessorSpread: 1, noise: 1, seed: 1);
        var pair = Model(log).Pairs.Single(pair => (pair.Trial, pair.Against) == ("T0", "T2"));
        var within = new TastingAnalysis(log).Compare("T0", "T2", Liking).Single();

        // In complete blocks both are the mean of the differences within the assessors; the interval for all pairs is wider than that for one.
        Assert.Equal(within.DifferencePoints!.Value, pair.Points, 8);
        Assert.True(pair.Range!.Value.Width > within.Range!.Value.Width);
        Assert.Equal(Verdict.Shown, pair.Verdict);
    }

    [Fact]
    public void Of_ServedAgain_TellsWhatAssessorsFindAgain()
    {
        var log = SimulatedPanel.Log(12, [0, 1], assessorSpread: 1, noise: 1, seed: 2);
        var twice = SimulatedPanel.Log([.. log.Scores.SelectMany(score => (Score[])[score with { Serving = score.Serving with { Code = score.Serving.Code + "a" } },
            score with { Serving = score.Serving with { Code = score.Serving.Code + "b" }, Points = score.Points + (score.Serving.Assessor[^1] % 2 == 0 ? 0.3 : -0.3) }])], log.Sessions[0]);

        Assert.Contains(Model(twice).Spread, part => part is { From: SpreadFrom.AssessorInTrial, Points: > 0.3 });
    }

    // People who differ by three times the noise, and people who do not differ at all: of the latter one in twenty looks so at most (200 panels: up to 0.096).
    [Fact]
    public void AssessorsP_PeopleWhoDifferOrDoNot_TellsThem()
    {
        Assert.True(Model(SimulatedPanel.Log(12, [0, 1, 3], assessorSpread: 3, noise: 1, seed: 1)).AssessorsP < 1e-4);
        Assert.InRange(Enumerable.Range(1, 200).Count(seed => Model(SimulatedPanel.Log(8, [0, 0, 3], assessorSpread: 0, noise: 1, seed)).AssessorsP < 0.05) / 200.0, 0, 0.096);
    }

    [Fact]
    public void Of_OneAssessor_IsANoteOfOnePerson() => Assert.StartsWith("One assessor scored liking", Model(SimulatedPanel.Log(1, [0, 1, 2], 1, 1, 3)).WhyNot, StringComparison.Ordinal);

    [Fact]
    public void Of_FivePeople_AreNotesNotEvidence() => Assert.Contains("notes, not evidence", Model(SimulatedPanel.Log(5, [0, 1, 2], 1, 1, 3)).WhyNot, StringComparison.Ordinal);

    [Fact]
    public void Of_OneTrial_HasNothingToCompareWith() => Assert.StartsWith("One trial only", Model(SimulatedPanel.Log(12, [0], 1, 1, 4)).WhyNot, StringComparison.Ordinal);

    [Fact]
    public void Of_AllMarksEqual_AsksForTheDefaultOfAForm() => Assert.Contains("Every mark of liking is 5", Model(SimulatedPanel.Log(12, [0, 0, 0], 0, 0, 5)).WhyNot, StringComparison.Ordinal);

    // Every assessor gives the same marks, trial by trial: nothing is left to judge the differences by.
    [Fact]
    public void Of_PerfectSeparation_SaysThatNoSpreadIsLeft()
    {
        var model = Model(SimulatedPanel.Log(12, [0, 2, 4], 0, 0, 6));

        Assert.StartsWith("The marks of liking cannot carry a comparison", model.WhyNot, StringComparison.Ordinal);
        Assert.Empty(model.Pairs);
    }

    // Assessors who differ no more than plates: a variance of nil, a singular fit; the comparison holds all the same.
    [Fact]
    public void Of_AssessorsWhoDoNotDiffer_HasAVarianceOfNilAndStillCompares()
    {
        var found = Enumerable.Range(1, 40).Select(seed => Model(SimulatedPanel.Log(8, [0, 0, 3], assessorSpread: 0, noise: 1, seed))).First(model => model.Spread.Any(part => part is { From: SpreadFrom.Assessor, Points: 0 }));

        Assert.All(NumbersOf(found), number => Assert.True(double.IsFinite(number)));
        Assert.NotEmpty(found.Pairs);
    }

    [Fact]
    public void Of_FortyPercentMissing_ComparesWhatIsThere()
    {
        var random = new Random(7);
        var log = SimulatedPanel.Log(14, [0, 1, 2, 3], 1, 1, 7, (_, _) => random.NextDouble() > 0.4);
        var model = Model(log);

        Assert.Equal("", model.WhyNot);
        Assert.All(NumbersOf(model), number => Assert.True(double.IsFinite(number)));
        Assert.Equal(6, model.Pairs.Count);
    }

    [Fact]
    public void Of_TrialsThatNeverMeet_ComparesByWayOfAssessorsAsASample()
    {
        var model = Model(SimulatedPanel.Log(12, [0, 1, 2, 3], 1, 1, 8, (assessor, trial) => trial / 2 == assessor % 2));

        Assert.All(NumbersOf(model), number => Assert.True(double.IsFinite(number)));
    }

    // Holm (1979): with one trial really different on one of several scales, the others must not be called; over many panels without any difference
    // at least one scale is called in no more than one of twenty. 200 panels: the share lies under 0.05 + 3 × √(0.05 × 0.95 / 200) = 0.096.
    [Fact]
    public void Report_NothingDiffers_CallsAScaleInOneOfTwentyTastings()
    {
        var called = Enumerable.Range(1, 200).Count(seed =>
        {
            SensoryAttribute[] scales = [.. Enumerable.Range(0, 4).Select(at => Liking with { Name = $"scale {at}" })];
            Score[] scores = [.. scales.SelectMany((scale, at) => SimulatedPanel.Log(10, [0, 0, 0], 1, 1, seed * 10 + at).Scores.Select(score => score with { Attribute = scale }))];
            var log = SimulatedPanel.Log(scores, new TastingSession("S1")) with { Attributes = scales };
            return TastingReport.Of(log, log.Sessions[0]).Scales.Any(scale => scale.IsShown(TastingPolicy.Kit));
        });

        Assert.InRange(called / 200.0, 0.005, 0.096);
    }

    // R 4.2.2: power.t.test(delta = 1, sd = sqrt(2), power = 0.8, type = "paired", strict = TRUE) gives 17.71.
    [Fact]
    public void ToSee_GapOfOneSpread_NeedsEighteen() => Assert.Equal(18, ServingsNeeded.ToSee(1, 1, TastingPolicy.Kit));

    // The design is read off the marks: each of twelve people scored three trials once.
    [Fact]
    public void ToSee_TastingSetOutLikeThis_CountsAllPairsTogether()
    {
        var model = Model(SimulatedPanel.Log(12, [0, 1, 3], assessorSpread: 1, noise: 1, seed: 1));

        Assert.Equal((12, 3, 3, 1), (model.Design!.Blocks, model.Design.Treatments, model.Design.Each, model.Design.Times));
        Assert.True(ServingsNeeded.ToSee(model, 1, TastingPolicy.Kit) > ServingsNeeded.ToSee(model.ServingPoints!.Value, 1, TastingPolicy.Kit));
    }

    [Fact]
    public void Penalty_TooMuchCostsTwoPoints_IsFound()
    {
        SensoryAttribute right = new("sweetness right", AttributeKind.JustRight) { LowPoints = 1, HighPoints = 5 };
        var random = new Random(9);
        List<Score> scores = [];
        for (var assessor = 0; assessor < 20; assessor++)
            for (var trial = 0; trial < 3; trial++)
            {
                var answer = 2 + random.Next(3);
                var liked = SimulatedPanel.Score("S1", $"A{assessor:00}", $"T{trial}", 6 - (answer == 4 ? 2 : 0) + random.NextDouble());
                scores.Add(liked);
                scores.Add(liked with { Attribute = right, Points = answer });
            }
        var log = SimulatedPanel.Log(scores, new TastingSession("S1")) with { Attributes = [Liking, right] };
        var penalty = Penalty.Of(log, log.Sessions[0], TastingPolicy.Kit).Single(each => each.IsTooMuch);

        Assert.InRange(penalty.Points!.Value, -2.3, -1.7);
        Assert.True(penalty.Range!.Value.High < -1.5);
    }
}
