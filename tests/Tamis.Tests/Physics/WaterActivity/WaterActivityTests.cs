using CsCheck;
using Tamis.Desserts;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class WaterActivityTests
{
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));
    private static readonly WaterActivityModel Norrish = WaterActivityModel.All.Single(model => model.Name == "Norrish");

    private static readonly Gen<(double Water, double Sucrose, double Glucose, double Glycerol)> GenSyrup =
        Gen.Select(Gen.Double[50, 200], Gen.Double[0.1, 100], Gen.Double[0, 60], Gen.Double[0, 20]);

    private static WaterActivityEstimate OfTrial(string trial, string component) => WaterActivityEstimate.Of(Balance.Of(Tart.Trial(trial).Find(component)!.Out));

    private static Solution Syrup((double Water, double Sucrose, double Glucose, double Glycerol) each) =>
        Solution.OfGrams(each.Water, ("sucrose", each.Sucrose), ("glucose", each.Glucose), ("glycerol", each.Glycerol));

    // A second program's estimates by Norrish from the same sheets, as the demo's README has them; it took other molar masses for acids and higher saccharides.
    [Theory]
    [InlineData("T1", "gel", 0.973)]
    [InlineData("T4", "gel", 0.978)]
    [InlineData("T7", "gel", 0.977)]
    [InlineData("T1", "mousse", 0.990)]
    [InlineData("T6", "mousse", 0.992)]
    [InlineData("T1", "almond cream", 0.912)]
    [InlineData("T1", "ganache", 0.882)]
    [InlineData("T9", "ganache", 0.858)]
    public void Of_DemoComponent_LiesNearASecondProgram(string trial, string component, double expected)
    {
        var estimate = OfTrial(trial, component);

        Assert.Equal(expected, estimate.Predicted.Value, 0.003);
        Assert.Equal("Norrish", estimate.Chosen!.Model);
        Assert.True(estimate.Spread!.Value.Contains(estimate.Predicted.Value));
        Assert.All(estimate.Answers.Where(answer => answer.Predicted.IsSound), answer => Assert.True(estimate.Spread.Value.Contains(answer.Predicted.Value)));
    }

    [Theory]
    [InlineData("shell")]
    [InlineData("rye paste")]
    [InlineData("crumble")]
    [InlineData("wafer")]
    [InlineData("coat")]
    public void Of_DryLayer_SaysThatItDoesNotHoldAndAsksForSorption(string component)
    {
        var estimate = OfTrial("T1", component);

        Assert.False(estimate.Predicted.IsKnown);
        Assert.Null(estimate.Chosen);
        Assert.Contains("sorption isotherm", Assert.Single(estimate.Predicted.Lacks), StringComparison.Ordinal);
        Assert.Empty(estimate.NotStopped);
    }

    [Fact]
    public void Of_MoreSugar_IsLowerByEveryModel() => Gen.Select(GenSyrup, Gen.Double[0.5, 50]).Sample((syrup, more) =>
        WaterActivityModel.All.Where(model => model.Name is not ("Pitzer" or "Grover")).All(model =>
            model.Compute(Syrup(syrup with { Sucrose = syrup.Sucrose + more })) < model.Compute(Syrup(syrup))));

    [Fact]
    public void WaterGramsAt_ItsOwnWaterActivity_GivesItsOwnWater() => GenSyrup.Sample(syrup =>
        Math.Abs(Norrish.WaterGramsAt(Syrup(syrup with { Water = 10 }), Norrish.Compute(Syrup(syrup))) / syrup.Water - 1) < 1e-9);

    [Fact]
    public void Of_ScaledMixture_IsTheSame() => Gen.Select(GenSyrup, Gen.Double[0.01, 100]).Sample((syrup, factor) => WaterActivityModel.All.All(model =>
        Math.Abs(model.Compute(Syrup(syrup)) - model.Compute(Syrup((syrup.Water * factor, syrup.Sucrose * factor, syrup.Glucose * factor, syrup.Glycerol * factor)))) < 1e-12));

    [Fact]
    public void Of_OneSolute_AllFormsOfNorrishAndRossAgree() => Gen.Double[1, 150].Sample(sucrose =>
    {
        var answers = WaterActivityModel.All.Where(model => model.Name is "Norrish" or "Norrish with a mean constant" or "Ross").Select(model => model.Compute(Solution.OfGrams(100, ("sucrose", sucrose)))).ToArray();
        return answers.All(answer => Math.Abs(answer - answers[0]) < 1e-12);
    });

    [Fact]
    public void Of_SaltAlone_IsTakenFromPitzer()
    {
        // Robinson & Stokes 1959: 0.9316 at 2 mol/kg.
        var brine = WaterActivityEstimate.Of(Solution.OfGrams(1000, ("salt", 2 * 58.44)));

        Assert.Equal("Pitzer", brine.Chosen!.Model);
        Assert.Equal(0.9316, brine.Predicted.Value, 0.0003);
    }

    [Fact]
    public void Of_VeryStrongSyrup_IsTakenFromGroverAndSaysWhatLiesOutside()
    {
        var caramel = WaterActivityEstimate.Of(Solution.OfGrams(20, ("sucrose", 50), ("glucose", 50)));

        Assert.Equal("Grover", caramel.Chosen!.Model);
        Assert.Contains("below the range", caramel.Reason, StringComparison.Ordinal);
        Assert.NotEmpty(caramel.Answers.Single(answer => answer.Model == "Norrish").Predicted.Outside);
    }

    [Fact]
    public void Of_MoreSucroseThanWaterHolds_SetsTheExcessApart()
    {
        var fondant = WaterActivityEstimate.Of(Balance.FromGrams(100, (BalancePart.Water, 12), (BalancePart.Sucrose, 88)), storageCelsius: 20);

        // 66.60 % at 20 °C: 199.4 g in 100 g of water (Charles 1960).
        Assert.Equal(88 - 12 * 66.60 / 33.40, Assert.Single(fondant.Solution.Undissolved).Grams, 0.02);
        Assert.Equal(WaterActivityEstimate.Of(Solution.OfGrams(100, ("sucrose", 100 * 66.60 / 33.40))).Predicted.Value, fondant.Predicted.Value, 0.0002);
        Assert.True(fondant.IfAllDissolvedRatio < fondant.Predicted.Value);
    }

    [Fact]
    public void Of_AnyFigure_SplitsTheLadderOfLimits()
    {
        var ganache = OfTrial("T1", "ganache");

        Assert.Equal(MicrobialLimit.Kit.Count(limit => limit.IsGrowth), ganache.NotStopped.Count + ganache.Stopped.Count);
        Assert.All(ganache.Stopped, limit => Assert.True(limit.WaterActivityRatio > ganache.Predicted.Value));
        Assert.Contains(ganache.NotStopped, limit => limit.Group.Contains("moulds", StringComparison.Ordinal));
        Assert.True(ganache.IfSolidsBindWater!.Value.High < ganache.Predicted.Value);
        Assert.Contains("not a shelf-life study", MicrobialLimit.Caution, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_UnknownWater_ComputesNothingAndSaysWhatToSupply()
    {
        var estimate = WaterActivityEstimate.Of(Balance.Of(Pantry.Mixture((Pantry.Food("SR28 01053"), 50), (new() { Name = "powder" }, 50))));

        Assert.False(estimate.Predicted.IsKnown);
        Assert.Contains("water, known for 50 % of the mass", estimate.Predicted.Lacks);
    }

    [Theory]
    [InlineData(0, 10, "water above zero")]
    [InlineData(100, -1, "zero grams or more; found -1 g of sucrose")]
    public void OfGrams_Impossible_IsRefusedInWords(double water, double sucrose, string expected) =>
        Assert.Contains(expected, Assert.Throws<ArgumentException>(() => Solution.OfGrams(water, ("sucrose", sucrose))).Message, StringComparison.Ordinal);

    [Fact]
    public void OfGrams_MistypedSolute_NamesTheNearest() =>
        Assert.Contains("sucrose", Assert.Throws<KeyNotFoundException>(() => Solution.OfGrams(100, ("sucrosse", 1))).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_BelowAbsoluteZero_IsRefusedInWords() =>
        Assert.Contains("absolute zero", Assert.Throws<ArgumentOutOfRangeException>(() => WaterActivityEstimate.Of(Balance.FromGrams(1, (BalancePart.Water, 1)), -300)).Message, StringComparison.Ordinal);
}
