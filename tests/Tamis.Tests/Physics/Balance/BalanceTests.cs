using CsCheck;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Losses;
using Tamis.Physics;

namespace Tamis.Tests.Physics;

public class BalanceTests
{
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));

    private static readonly Lazy<Ingredient[]> Foods = new(() => [.. KitData.Composition.Foods.Select(food => Pantry.Food(food.Id))]);

    private static readonly Gen<Mixture> GenMixture =
        from lines in Gen.Select(Gen.Int[0, KitData.Composition.Foods.Count - 1], Gen.Double[0.1, 500]).Array[1, 8]
        from share in Gen.Double[0, 0.9]
        let mixture = new Mixture { Parts = [.. lines.Select(line => Pantry.Part(Foods.Value[line.Item1], line.Item2))] }
        select mixture with { EvaporatedGrams = mixture.Amount("WATER").Known * share };

    [Fact]
    public void Of_AnyMixture_AddsUpToTheFinishedMass() => GenMixture.Sample(mixture =>
    {
        var balance = Balance.Of(mixture);
        return Near(balance.Shares.Sum(share => share.KnownPercent), 100) && Near(balance.Shares.Sum(share => share.KnownGrams), mixture.FinishedGrams);
    });

    // Fat, sugars and water are counted in their parts once: their sums are those of the composition data.
    [Fact]
    public void Of_AnyMixture_TotalsAreThoseOfTheComposition() => GenMixture.Sample(HasTheTotalsOfTheComposition);

    [Fact]
    public void Of_EveryFoodOfTheTable_TotalsAreThoseOfTheComposition() =>
        Assert.All(Foods.Value, food => Assert.True(HasTheTotalsOfTheComposition(Pantry.Mixture((food, 100))), food.Name));

    [Fact]
    public void Of_TwoMixturesTogether_AddsTheirBalances() => Gen.Select(GenMixture, GenMixture).Sample((one, other) =>
    {
        var (left, right, both) = (Balance.Of(one), Balance.Of(other), Balance.Of(Mixture.Of([one, other])));
        return BalanceParts.Known.All(part => Near((left[part] + right[part]).Known, both[part].Known) && Near((left[part] + right[part]).CoveredShare, both[part].CoveredShare));
    });

    [Fact]
    public void Of_EveryFoodOfTheTable_HasAKindAndNoContradiction()
    {
        Assert.All(Foods.Value, food =>
        {
            var parts = IngredientKinds.Kit.PartsOf(food);
            Assert.NotSame(IngredientKind.Unknown, parts.Kind);
            Assert.Empty(parts.Remarks);
            Assert.InRange(parts.KnownPer100Grams, 0, 103);
        });
    }

    // Water, fat and sugars of the finished components: a second program computed them from the same sheets; the demo's README.
    [Theory]
    [InlineData("shell", 4.08, 30.78, 18.44)]
    [InlineData("almond cream", 19.79, 36.27, 23.73)]
    [InlineData("rye paste", 1.44, 30.24, 31.21)]
    [InlineData("bound crumble", 2.28, 37.19, 25.22)]
    [InlineData("gel", 69.11, 0.08, 22.12)]
    [InlineData("mousse", 62.59, 22.37, 10.09)]
    [InlineData("ganache", 18.99, 34.19, 28.56)]
    [InlineData("coat", 0.62, 69.16, 18.36)]
    public void Of_DemoComponent_AgreesWithASecondProgram(string component, double water, double fat, double sugars)
    {
        var balance = Balance.Of(Tart.Trial("T1").Find(component)!.Out);

        Assert.Equal(water, balance.PercentOf(BalancePart.Water)!.Value, 0.0051);
        Assert.Equal(fat, balance.PercentOf(balance.Fat)!.Value, 0.0051);
        Assert.Equal(sugars, balance.PercentOf(balance.Sugars)!.Value, 0.0051);
    }

    // The same program's 18.24 % cocoa butter in the ganache of T1 and 14.90 % in that of T9.
    [Theory]
    [InlineData("T1", 18.24)]
    [InlineData("T9", 14.90)]
    public void Of_DemoGanache_CocoaButterAgreesWithASecondProgram(string trial, double cocoaButter)
    {
        var balance = Balance.Of(Tart.Trial(trial).Find("ganache")!.Out);

        Assert.Equal(cocoaButter, balance.PercentOf(BalancePart.CocoaButter)!.Value, 0.0051);
        Assert.Contains("fat-free cocoa solids", Assert.Single(balance.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_CreamButterAndYolk_CountsEachGramOnce()
    {
        var cream = IngredientKinds.Kit.PartsOf(Pantry.Food("SR28 01053"));

        Assert.Equal((36.08, 2.92), (cream[BalancePart.MilkFat].Per100Grams, cream[BalancePart.Lactose].Per100Grams));
        Assert.Equal(100 - 57.81 - 36.08 - 2.92, cream[BalancePart.MilkSolids].Per100Grams, 9);
        Assert.Equal(0, cream[BalancePart.Protein].Per100Grams);
        Assert.Equal(0.06, IngredientKinds.Kit.PartsOf(Pantry.Food("SR28 01145"))[BalancePart.Lactose].Per100Grams, 9);
        Assert.Equal(26.54, IngredientKinds.Kit.PartsOf(Pantry.Food("SR28 01125"))[BalancePart.EggFat].Per100Grams);
    }

    [Fact]
    public void Of_WholeEgg_HoldsAboutAsMuchOfBothAsTwoPartsWhiteAndOnePartYolk()
    {
        var apart = Balance.Of(Pantry.Mixture((Pantry.Food("SR28 01124"), 65), (Pantry.Food("SR28 01125"), 35)));
        var whole = Balance.Of(Pantry.Mixture((Pantry.Food("SR28 01123"), 100)));

        Assert.Equal(apart.PercentOf(BalancePart.EggYolkSolids)!.Value, whole.PercentOf(BalancePart.EggYolkSolids)!.Value, 1.0);
        Assert.Equal(apart.PercentOf(BalancePart.EggWhiteSolids)!.Value, whole.PercentOf(BalancePart.EggWhiteSolids)!.Value, 1.0);
    }

    // Lactose of 8.9 to 9.1 % milk solids not fat (common practice): the traditional figure holds it, the part does not.
    [Fact]
    public void MilkSolidsNonFat_OfMilk_HoldsTheLactose()
    {
        var milk = Balance.Of(Pantry.Mixture((Pantry.Food("SR28 01211"), 100)));

        Assert.Equal(100 - 88.13 - 3.27, milk.PercentOf(milk.MilkSolidsNonFat)!.Value, 9);
        Assert.Equal(5.05, milk.MilkSolidsNonFat.Known - milk[BalancePart.MilkSolids].Known, 9);
    }

    [Fact]
    public void Of_SyrupKnownByItsSheetAlone_IsSplitByItsDextroseEquivalent()
    {
        var syrup = new Ingredient { Name = "glucose syrup", DextroseEquivalentPercent = 40, SolidsPercent = 80 };

        var balance = Balance.Of(Pantry.Mixture((syrup, 100)));

        Assert.Equal(20, balance.PercentOf(BalancePart.Water)!.Value, 9);
        Assert.Equal(15, balance.PercentOf(BalancePart.Glucose)!.Value, 9);
        Assert.Equal(80, balance.PercentOf(balance.Sugars)!.Value + balance.PercentOf(BalancePart.HigherSaccharides)!.Value, 9);
        Assert.Equal(40, balance.DextroseEquivalentPercent!.Value, 9);
        // By the definition of DE, 80 g of dry matter hold 80 · 40 / 18016 mol; glucose and maltose take theirs.
        Assert.Equal(80 * 40 / 18016.0 - 15 / 180.16 - 11 / 342.30, balance.HigherSaccharidesMoles.Whole!.Value, 9);
    }

    [Fact]
    public void Of_MilkChocolate_NeedsItsSheetToSplitItsFat()
    {
        var bare = Pantry.Food("SR28 19120");

        var unsplit = Balance.Of(Pantry.Mixture((bare, 100)));
        var split = Balance.Of(Pantry.Mixture((bare with { CocoaPercent = 38, CocoaButterPercent = 25 }, 100)));

        Assert.Null(unsplit.PercentOf(BalancePart.CocoaButter));
        Assert.Equal(29.66, unsplit.PercentOf(unsplit.Fat)!.Value, 9);
        Assert.Equal((25, 13.0), (split.PercentOf(BalancePart.CocoaButter)!.Value, split.PercentOf(BalancePart.CocoaSolids)!.Value));
        Assert.Equal(4.66, split.PercentOf(BalancePart.MilkFat)!.Value, 9);
    }

    [Fact]
    public void Of_MoreCocoaButterThanFat_TakesThemAsSharesAndSaysSo()
    {
        var balance = Balance.Of(Pantry.Mixture((Pantry.Food("SR28 19902") with { CocoaButterPercent = 40 }, 100)));

        Assert.Equal(31.28, balance.PercentOf(BalancePart.CocoaButter)!.Value, 9);
        Assert.Contains("add up to 40 g in 100 g", Assert.Single(balance.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_IngredientWithoutFigures_StaysUnknownAndLiesInTheRest()
    {
        var balance = Balance.Of(Pantry.Mixture((Pantry.Food("SR28 01053"), 75), (new Ingredient { Name = "powder" }, 25)));

        Assert.Null(balance.PercentOf(BalancePart.MilkFat));
        Assert.Equal(0.75, balance[BalancePart.MilkFat].CoveredShare);
        Assert.Equal(25, balance[BalancePart.Rest].Known, 9);
        Assert.False(balance[BalancePart.Rest].IsWhole);
    }

    [Fact]
    public void Of_FiguresThatAddUpToMoreThanTheIngredient_ComputesNothingFromThemAndSaysWhere()
    {
        var balance = Balance.Of(Pantry.Mixture((Pantry.Of("odd paste", ("WATER", 50), ("FAT", 40), ("SUGAR", 45)), 100)));

        Assert.Contains("135 g in 100 g", Assert.Single(balance.Remarks), StringComparison.Ordinal);
        Assert.Equal(0, balance[BalancePart.Water].CoveredShare);
    }

    [Fact]
    public void FromGrams_PartsByHand_LeaveTheRest()
    {
        var syrup = Balance.FromGrams(100, (BalancePart.Sucrose, 60), (BalancePart.Water, 38));

        Assert.Equal(2, syrup.PercentOf(BalancePart.Rest)!.Value, 9);
        Assert.Equal(60, syrup.PercentOf(syrup.Sugars)!.Value, 9);
        Assert.Equal(98, syrup.WaterPhase.Whole!.Value, 9);
        Assert.Equal(0, syrup.PercentOf(BalancePart.Alcohol));
    }

    [Theory]
    [InlineData(100, -1, 0, "zero grams or more; found -1 g of water")]
    [InlineData(100, 60, 50, "110 g together, more than the 100 g")]
    [InlineData(0, 0, 0, "above zero; found 0 g")]
    [InlineData(100, double.NaN, 0, "found NaN g of water")]
    public void FromGrams_Impossible_IsRefusedInWords(double finished, double water, double sucrose, string expected)
    {
        var error = Assert.Throws<ArgumentException>(() => Balance.FromGrams(finished, (BalancePart.Water, water), (BalancePart.Sucrose, sucrose)));

        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FromGrams_APartTwiceOrTheRest_IsRefusedInWords()
    {
        Assert.Contains("stands twice", Assert.Throws<ArgumentException>(() => Balance.FromGrams(10, (BalancePart.Salt, 1), (BalancePart.Salt, 1))).Message, StringComparison.Ordinal);
        Assert.Contains("is not given", Assert.Throws<ArgumentException>(() => Balance.FromGrams(10, (BalancePart.Rest, 1))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Why_EveryPart_AddsUpToItsFigure() => GenMixture.Sample(mixture =>
    {
        var balance = Balance.Of(mixture);
        return BalanceParts.Known.All(part => balance.Why(part) is var why && Near(why.From.Where(step => !double.IsNaN(step.Value)).Sum(step => step.Value), why.Value));
    }, iter: 50);

    private static bool HasTheTotalsOfTheComposition(Mixture mixture)
    {
        var balance = Balance.Of(mixture);
        return Agrees(balance.Fat, mixture.Amount("FAT")) && Agrees(balance.Sugars, mixture.Amount("SUGAR")) && Agrees(balance[BalancePart.Water], mixture.Amount("WATER"));
    }

    private static bool Agrees(Amount mine, Amount composition) => composition.IsWhole is false || Near(mine.Known, composition.Known) && mine.IsWhole;

    private static bool Near(double left, double right) => Math.Abs(left - right) <= 1e-6 * Math.Max(1, Math.Abs(right));
}
