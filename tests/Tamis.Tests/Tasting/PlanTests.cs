using Tamis.Tables;
using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class PlanTests
{
    private static TastingSession Session(int trials, int each, int assessors, int seed = 4115, string kind = "scores") => new("S5")
    {
        Kind = kind, Trials = [.. Enumerable.Range(1, trials).Select(trial => $"T{trial}")], ServingsEach = each, Seed = seed,
        Assessors = [.. Enumerable.Range(1, assessors).Select(assessor => $"A{assessor}")], Control = kind == "scores" ? "T1" : null,
    };

    private static TastingPlan Plan(TastingSession session, params string[] taken)
    {
        List<CellProblem> problems = [];
        var plan = PlanMaker.Make(session, taken, _ => 1, problems);
        Assert.Empty(problems);
        return plan!;
    }

    // Williams (1949): every trial in every place, and straight after every other, equally often; two squares where their number is odd.
    [Theory]
    [InlineData(2, 2), InlineData(3, 6), InlineData(4, 4), InlineData(5, 10), InlineData(6, 12), InlineData(7, 14)]
    public void Make_WholeWilliamsSquares_AreBalancedForPlaceAndCarryOver(int trials, int assessors)
    {
        var balance = Plan(Session(trials, trials, assessors)).Balance;

        Assert.True(balance.IsPlaceBalanced);
        Assert.True(balance.IsNeighbourBalanced);
        Assert.Equal((assessors, assessors), balance.Together);
    }

    // Balanced incomplete blocks: lambda (t − 1) = r (k − 1); 5 in 3s by 10: 3; 7 in 3s by 7: 1; 4 in 2s by 6: 1 (Cochran and Cox 1957).
    [Theory]
    [InlineData(5, 3, 10, 3), InlineData(4, 2, 12, 2), InlineData(4, 3, 4, 2), InlineData(6, 3, 20, 4)]
    public void Make_IncompleteBlocks_BringEveryPairTogetherEquallyOften(int trials, int each, int assessors, int together)
    {
        for (var seed = 1; seed <= 20; seed++) Assert.Equal((together, together), Plan(Session(trials, each, assessors, seed)).Balance.Together);
    }

    [Fact]
    public void Make_AnyNumbers_ServesEvenlyUnderCodesWithoutRepeats()
    {
        for (var seed = 1; seed <= 60; seed++)
        {
            var random = new SeededOrder(seed);
            var (trials, assessors) = (2 + random.Below(6), 2 + random.Below(14));
            var each = random.Below(3) == 0 ? trials * 2 : 2 + random.Below(trials - 1);
            var plan = Plan(Session(trials, each, assessors, seed), "100", "999");

            Assert.All(plan.Servings.GroupBy(serving => serving.Assessor), own =>
            {
                Assert.Equal(each, own.Count());
                Assert.Equal(each, own.Select(serving => serving.Code).Distinct().Count());
                Assert.Equal(Enumerable.Range(1, each), own.Select(serving => serving.Position!.Value).Order());
            });
            Assert.All(plan.Servings, serving => Assert.InRange(int.Parse(serving.Code, System.Globalization.CultureInfo.InvariantCulture), 101, 998));
            Assert.All(plan.Servings.GroupBy(serving => serving.Code), code => Assert.Single(code.Select(serving => serving.Trial).Distinct()));
            var counts = plan.Servings.GroupBy(serving => serving.Trial).Select(group => group.Count()).ToArray();
            Assert.True(counts.Max() - counts.Min() <= 1, $"seed {seed}: {string.Join(", ", counts)}");
        }
    }

    [Fact]
    public void Make_SameSeed_IsTheSamePlanAndAnotherSeedAnother()
    {
        var first = Plan(Session(5, 3, 10)).Servings;

        Assert.Equal(first, Plan(Session(5, 3, 10)).Servings);
        Assert.NotEqual(first, Plan(Session(5, 3, 10, seed: 4116)).Servings);
    }

    [Fact]
    public void Make_TrialServedTwice_HasTwoCodes() =>
        Assert.All(Plan(Session(3, 6, 12)).Codes, trial => Assert.Equal(2, trial.Codes.Count));

    [Fact]
    public void Make_Triangle_UsesEveryOrderEquallyOften()
    {
        var plan = Plan(Session(2, 3, 24, kind: "triangle"));

        var orders = plan.Servings.GroupBy(serving => serving.Assessor).Select(set => string.Concat(set.OrderBy(serving => serving.Position).Select(serving => serving.Trial))).GroupBy(order => order).ToArray();
        Assert.Equal(6, orders.Length);
        Assert.All(orders, order => Assert.Equal(4, order.Count()));
        Assert.All(plan.Servings.GroupBy(serving => serving.Assessor), set => Assert.Equal(3, set.Select(serving => serving.Code).Distinct().Count()));
    }

    // Two sets each: every order twice among the first sets of twelve people and twice among the second, so that each trial stands six times in each of six places.
    [Fact]
    public void Make_TriangleTwice_IsEvenInEveryPlace()
    {
        for (var seed = 1; seed <= 20; seed++)
            Assert.Equal((6, 6), Plan(Session(2, 6, 12, seed, "triangle")).Balance.PlaceSpread);
    }

    [Fact]
    public void Make_RowThatLacksThings_NamesAllOfThem()
    {
        List<CellProblem> problems = [];
        var plan = PlanMaker.Make(new("S5") { Trials = ["T1", "T2", "T3"], Control = "T9", ServingsEach = 4, Row = 6 }, [], _ => null, problems);

        Assert.Null(plan);
        Assert.Equal(["control", "assessors", "seed", "servings_each"], problems.Select(problem => problem.Column));
        Assert.All(problems, problem => Assert.Equal(6, problem.Row));
    }

    [Fact]
    public void Remarks_SevenSamplesTrainedForLikingWithoutControl_AreAllNamed()
    {
        var session = Session(7, 7, 14) with { Control = null, AreTrained = true };
        SensoryAttribute[] asked = [new("liking", AttributeKind.Liking), new("sweetness", AttributeKind.Intensity)];
        var texts = PlanRemark.Of(Plan(session), asked, TastingLog.Empty, TastingPolicy.Kit).Select(remark => remark.Text).ToArray();

        Assert.Contains(texts, text => text.StartsWith("7 samples for each assessor: above about 6", StringComparison.Ordinal));
        Assert.Contains(texts, text => text.StartsWith("Trained assessors are asked for liking", StringComparison.Ordinal));
        Assert.Contains(texts, text => text.StartsWith("No control", StringComparison.Ordinal));
    }

    [Fact]
    public void Remarks_UntrainedForIntensity_IsNamed() =>
        Assert.Contains(PlanRemark.Of(Plan(Session(4, 4, 12) with { AreTrained = false }), [new("sweetness", AttributeKind.Intensity)], TastingLog.Empty, TastingPolicy.Kit), remark => remark.Text.StartsWith("Untrained assessors are asked for sweetness", StringComparison.Ordinal));

    // The first numbers of SplitMix64 from 0 begin e220a839…, 6e789e6a…, 06c45d18… (reference implementation, public domain, from memory).
    [Fact]
    public void Below_SeedZero_IsTheReferenceGenerator()
    {
        var random = new SeededOrder(0);

        // Below 2³⁰ the upper thirty bits are left.
        Assert.Equal([(int)(0xe220a839 >> 2), 0x6e789e6a >> 2, 0x06c45d18 >> 2], Enumerable.Range(0, 3).Select(_ => random.Below(1 << 30)));
    }
}
