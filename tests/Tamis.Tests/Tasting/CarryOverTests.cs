using System.Globalization;
using Tamis.Desserts;
using Tamis.Tables;
using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

/// <summary>What was tasted just before: whether it can be evened out, whether it is, and what that gives.</summary>
public class CarryOverTests
{
    private static readonly SensoryAttribute Liking = SimulatedPanel.Liking;

    private static TastingPolicy Always { get; } = TastingPolicy.Kit with { WiderForCarryOverShare = 1 };

    private static Source Origin { get; } = new("simulated", Evidence.Estimate);

    private static ScaleModel Model(TastingLog log, TastingPolicy? policy = null) => ScaleModel.Of(log, log.Sessions[0], Liking, policy ?? TastingPolicy.Kit);

    // A planned tasting whose truth is known: trials alike, each plate moved by what the trial before it leaves.
    private static TastingLog Planned(int trials, int assessors, double[] leaves, int seed, Func<Serving, bool>? isServed = null)
    {
        TastingSession session = new("S1") { Trials = [.. Enumerable.Range(0, trials).Select(trial => $"T{trial}")], Assessors = [.. Enumerable.Range(0, assessors).Select(person => $"A{person:00}")], ServingsEach = trials, Seed = seed, Control = "T0" };
        var servings = PlanMaker.Make(session, [], _ => 1, new List<CellProblem>())!.Servings.Where(serving => isServed?.Invoke(serving) ?? true).ToArray();
        var random = new Random(seed);
        List<Score> scores = [];
        foreach (var own in servings.GroupBy(serving => serving.Assessor))
        {
            var (level, left) = (Normal(), 0.0);
            foreach (var serving in own.OrderBy(serving => serving.Position))
            {
                scores.Add(new(serving, Liking, 5 + level + left + Normal(), Origin));
                left = leaves[int.Parse(serving.Trial[1..], CultureInfo.InvariantCulture)];
            }
        }
        return new() { Attributes = [Liking], Sessions = [session], Servings = servings, Tasted = servings, Scores = scores };

        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }

    // Six cows on three feeds (Cochran and Cox 1957) taken for assessors of three trials: R 4.2.2, lmerTest 3.1-3 and emmeans 1.8.4-1, as in data/published.
    [Fact]
    public void Of_DairyCows_IsThatOfLmerTest()
    {
        var sheet = SheetFile.Read(Path.Combine(KitFolder.Data("published"), "datasets", "dairy_cows.csv"));
        Score[] scores = [.. sheet.Rows.Select(row => new Score(new("S1", row["cow"], row["feed"], row["feed"], Origin) { Position = int.Parse(row["period"], CultureInfo.InvariantCulture) },
            Liking with { HighPoints = 200 }, double.Parse(row["milk"], CultureInfo.InvariantCulture), Origin))];
        var log = SimulatedPanel.Log(scores, new TastingSession("S1")) with { Attributes = [scores[0].Attribute] };
        var model = ScaleModel.Of(log, log.Sessions[0], scores[0].Attribute, Always);

        Assert.Equal(CarryOverStanding.EvenedOut, model.CarryOver.Standing);
        Assert.Equal(13.5597, model.PairOf("B", "A")!.Points, 4);
        Assert.Equal(34.4742, model.PairOf("C", "A")!.Points, 4);
        Assert.Equal([45.1667, 58.7264, 79.6409], model.Means.Select(mean => Math.Round(mean.Points, 4)));
        Assert.Equal(0.01287812, model.CarryOverP!.Value, 6);
        Assert.Equal(CarryOverStanding.CostsTooMuch, ScaleModel.Of(log, log.Sessions[0], scores[0].Attribute, TastingPolicy.Kit).CarryOver.Standing);
    }

    // T3 leaves two points on the next plate. It never follows itself, so that without evening out it would stand two thirds of a point lower than
    // it is beside a trial that follows it (three places of four have a plate before them, one of three such plates is T3): over 60 panels 0 against −0.5.
    [Fact]
    public void Of_ATrialThatLeavesItsTaste_IsNotHeldAgainstIt()
    {
        var panels = Enumerable.Range(1, 60).Select(seed => Planned(4, 12, [0, 0, 0, 2], seed)).ToArray();
        double[] evened = [.. panels.Select(log => Model(log).PairOf("T3", "T0")!.Points)], left = [.. panels.Select(log => Model(log, TastingPolicy.Kit with { WiderForCarryOverShare = 0 }).PairOf("T3", "T0")!.Points)];

        // The standard error of a difference is about √(2 × 1.1 / 12) = 0.43, of the mean of 60 about 0.055.
        Assert.InRange(evened.Average(), -0.17, 0.17);
        Assert.InRange(left.Average(), -0.67, -0.33);
    }

    // Nothing differs and nothing is left on the tongue: trials are called in one of twenty panels, carry-over too. 200 panels: 0.05 + 3 × √(0.05 × 0.95 / 200) = 0.096.
    [Fact]
    public void Of_NothingDiffers_CallsOneOfTwenty()
    {
        ScaleModel[] models = [.. Enumerable.Range(1, 200).Select(seed => Model(Planned(4, 12, [0, 0, 0, 0], seed)))];

        Assert.InRange(models.Count(model => model.TrialP < 0.05) / 200.0, 0.005, 0.096);
        Assert.InRange(models.Count(model => model.CarryOverP < 0.05) / 200.0, 0.005, 0.096);
    }

    [Fact]
    public void Of_EverybodyInOneOrder_CannotBeToldAndStillCompares()
    {
        var log = Planned(4, 12, [0, 0, 0, 0], 1);
        string[] order = ["T0", "T1", "T2", "T3"];
        Score[] scores = [.. log.Scores.Select(score => score with { Serving = score.Serving with { Position = Array.IndexOf(order, score.Serving.Trial) + 1 } })];
        var model = Model(SimulatedPanel.Log(scores, log.Sessions[0]));

        Assert.Equal((CarryOverStanding.CannotBeTold, null), (model.CarryOver.Standing, model.CarryOver.WiderShare));
        Assert.Null(model.CarryOverP);
    }

    [Fact]
    public void Of_OrderNotKnown_IsNotEvenedOut() => Assert.Equal(CarryOverStanding.OrderUnknown, Model(SimulatedPanel.Log(12, [0, 1, 3], 1, 1, 1)).CarryOver.Standing);

    // Five in threes leave too little to tell five aftertastes by: evening them out would make intervals half as wide again.
    [Theory]
    [InlineData("S1", CarryOverStanding.EvenedOut, 0.05), InlineData("S2", CarryOverStanding.EvenedOut, 0.05), InlineData("S3", CarryOverStanding.EvenedOut, 0.05), InlineData("S4", CarryOverStanding.CostsTooMuch, 0.52)]
    public void Of_Demo_EvensOutWhereItCostsLittle(string tasting, CarryOverStanding standing, double wider) =>
        Assert.All(Dessert.Open(KitFolder.Data("desserts/damson-tart")).ReportOf(tasting).Scales, scale =>
        {
            Assert.Equal(standing, scale.CarryOver.Standing);
            Assert.InRange(scale.CarryOver.WiderShare!.Value, wider - 0.01, wider + 0.01);
        });

    // A plate that was dropped leaves nothing on the tongue: the same as if it had never been planned.
    [Fact]
    public void Of_APlateThatWasNotTasted_LeavesNothing()
    {
        var whole = Planned(4, 12, [0, 1, 2, 3], 3);
        var dropped = whole.Servings.First(serving => serving is { Assessor: "A03", Position: 2 });
        Score[] scores = [.. whole.Scores.Where(score => score.Serving != dropped)];
        var untasted = whole with { Tasted = [.. whole.Tasted.Where(serving => serving != dropped)], Scores = scores };
        var unplanned = untasted with { Servings = untasted.Tasted };

        Assert.Equal(Model(unplanned).Pairs.Select(pair => pair.Points), Model(untasted).Pairs.Select(pair => pair.Points));
        Assert.NotEqual(Model(untasted with { Tasted = whole.Tasted }).Pairs[0].Points, Model(untasted).Pairs[0].Points);
    }
}
