using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class TreeModelTests
{
    private static List<Score> Panel(string tasting, int seed, double height, params (string Trial, int Make, double Points)[] served)
    {
        var random = new Random(seed);
        return [.. from assessor in Enumerable.Range(0, 10)
                   let level = random.NextDouble()
                   from plate in served
                   select SimulatedPanel.Score(tasting, $"A{assessor:00}", plate.Trial, height + plate.Points + level + random.NextDouble() - 0.5, make: plate.Make)];
    }

    private static TastingLog Log(params IEnumerable<Score>[] tastings) =>
        SimulatedPanel.Log([.. tastings.SelectMany(scores => scores)], [.. tastings.SelectMany(scores => scores).Select(score => score.Serving.Tasting).Distinct().Select(name => new TastingSession(name))]);

    [Fact]
    public void Difference_LinkedByATrialInCommon_TakesTheTastingsHeightAway()
    {
        var model = TreeModel.Of(Log(Panel("S1", 1, 5, ("T1", 1, 0), ("T2", 1, 2)), Panel("S2", 2, 9, ("T1", 2, 0), ("T3", 1, -1))), SimulatedPanel.Liking);

        Assert.InRange(model.Difference("T2", "T3")!.Points, 2.4, 3.6);
    }

    [Fact]
    public void Difference_NoTrialInCommon_IsNotTold()
    {
        var model = TreeModel.Of(Log(Panel("S1", 1, 5, ("T1", 1, 0), ("T2", 1, 2)), Panel("S2", 2, 9, ("T3", 1, 0), ("T4", 1, -1))), SimulatedPanel.Liking);

        Assert.Null(model.Difference("T2", "T3"));
        Assert.NotNull(model.Difference("T3", "T4"));
    }

    [Fact]
    public void MakeComparisons_EveryTrialMadeOnce_AreNone()
    {
        var model = TreeModel.Of(Log(Panel("S1", 1, 5, ("T1", 1, 0), ("T2", 1, 2))), SimulatedPanel.Liking);

        Assert.Equal(0, model.MakeComparisons);
        Assert.False(model.HasMakes);
    }

    // Two makes of each of three trials in one tasting: six makes less three trials leave three comparisons.
    [Fact]
    public void MakeComparisons_TwoMakesOfThreeTrials_AreThree() =>
        Assert.Equal(3, TreeModel.Of(Log(Panel("S1", 1, 5, ("T1", 1, 0), ("T1", 2, 1), ("T2", 1, 2), ("T2", 2, 1), ("T3", 1, 2), ("T3", 2, 1))), SimulatedPanel.Liking).MakeComparisons);

    [Fact]
    public void Difference_MakesThatDiffer_WidenTheIntervalOfTheFormula()
    {
        (string, int, double)[] steady = [("T1", 1, 0), ("T1", 2, 0), ("T2", 1, 2), ("T2", 2, 2), ("T3", 1, 0), ("T3", 2, 0)];
        (string, int, double)[] unsteady = [("T1", 1, -1), ("T1", 2, 1), ("T2", 1, 1), ("T2", 2, 3), ("T3", 1, -1), ("T3", 2, 1)];

        Assert.True(Width(unsteady) > 3 * Width(steady));

        double Width((string, int, double)[] served) => TreeModel.Of(Log(Panel("S1", 1, 5, served)), SimulatedPanel.Liking).Difference("T2", "T1")!.Range!.Value.Width;
    }

    [Fact]
    public void DoseEffect_ScoreThatFollowsTheDose_IsFoundFromLowestToHighest()
    {
        Dictionary<string, double?> doses = new() { ["T1"] = 1.0, ["T2"] = 1.2, ["T3"] = 1.4, ["T4"] = 1.6 };
        var log = Log(Panel("S1", 1, 5, ("T1", 1, 0), ("T2", 1, 1), ("T3", 1, 2), ("T4", 1, 3)));
        var effect = DoseEffect.Of(log, SimulatedPanel.Liking, trial => doses[trial], TastingPolicy.Kit)!;

        Assert.InRange(effect.Points, 2.5, 3.5);
        Assert.True(effect.Range!.Value.Low > 1.5);
    }

    [Fact]
    public void DoseEffect_TwoValuesOnly_IsNoLine() =>
        Assert.Null(DoseEffect.Of(Log(Panel("S1", 1, 5, ("T1", 1, 0), ("T2", 1, 1), ("T3", 1, 2))), SimulatedPanel.Liking, trial => trial == "T1" ? 1 : 2, TastingPolicy.Kit));
}
