using CsCheck;
using Tamis.Costing;
using Tamis.Physics;

namespace Tamis.Tests.Costing;

public class FoodDistanceTests
{
    private static readonly Gen<Balance> GenBalance = Gen.Select(Gen.Double[1, 100], Gen.Double[1, 100], Gen.Double[1, 100])
        .Select((water, sucrose, fat) => Balance.FromGrams(water + sucrose + fat, (BalancePart.Water, water), (BalancePart.Sucrose, sucrose), (BalancePart.MilkFat, fat)));

    [Fact]
    public void Of_TenPercentOfOneForAnother_IsTenGrams()
    {
        var left = Balance.FromGrams(100, (BalancePart.Water, 60), (BalancePart.Sucrose, 40));
        var right = Balance.FromGrams(200, (BalancePart.Water, 140), (BalancePart.Sucrose, 60));

        Assert.Equal(10, FoodDistance.Of(left, right).ApartGrams, 9);
        Assert.Equal(100, FoodDistance.Of(left, right).KnownGrams, 9);
    }

    [Fact]
    public void Of_SugarsOfWhichOnlyTheTotalIsKnown_AreComparedAsTotals()
    {
        var split = Balance.FromGrams(100, (BalancePart.Water, 60), (BalancePart.Sucrose, 40));
        var total = Balance.FromGrams(100, (BalancePart.Water, 60), (BalancePart.UnsplitSugars, 40));

        Assert.Equal(0, FoodDistance.Of(split, total).ApartGrams, 9);
    }

    [Fact]
    public void Of_NothingInCommon_IsAHundredGrams() =>
        Assert.Equal(100, FoodDistance.Of(Balance.FromGrams(5, (BalancePart.Water, 5)), Balance.FromGrams(5, (BalancePart.Starch, 5))).ApartGrams, 9);

    [Fact]
    public void Of_IngredientWithoutFigures_IsNotKnown() => Assert.Null(FoodDistance.Of(new() { Name = "powder" }, Kitchen.Store.Find("flour")!));

    // A distance: none to itself, the same both ways, no detour is shorter.
    [Fact]
    public void Of_AnyThree_IsADistance() => Gen.Select(GenBalance, GenBalance, GenBalance).Sample((a, b, c) =>
    {
        double Apart(Balance one, Balance other) => FoodDistance.Of(one, other).ApartGrams;
        Assert.Equal(0, Apart(a, a), 9);
        Assert.Equal(Apart(a, b), Apart(b, a), 9);
        Assert.True(Apart(a, c) <= Apart(a, b) + Apart(b, c) + 1e-9);
    });
}
