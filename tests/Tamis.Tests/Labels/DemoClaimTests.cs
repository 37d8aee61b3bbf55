using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;

namespace Tamis.Tests.Labels;

public class DemoClaimTests
{
    private static Dessert Loaf { get; } = Dessert.Open(Repository.Path("data", "desserts", "travel-loaf"));

    private static ClaimVerdict Of(string trial, string rules, string claim, string? other = null) => ClaimCheck.Of(DessertClaims.FoodOf(Loaf, trial, rules, other), claim);

    // A second program's figures: 2.83 g of fibre in 100 g of V1 and 4.61 in V1b; Regulation (EC) No 1924/2006 wants 3 g, or 1.5 g in 100 kcal (0.76 and 1.26 here).
    [Fact]
    public void Of_FibreOfTheLoaf_FailsUntilAllTheFlourIsRye()
    {
        var failed = Of("V1", "eu", "source of fibre");
        Assert.Equal(ClaimState.Fails, failed.State);
        Assert.Equal(-0.17, failed.Conditions[0].Margin!.Value, 2);

        var carried = Of("V1b", "eu", "source of fibre");
        Assert.False(carried.IsRefused);
        Assert.Equal(1.61, carried.Conditions[0].Margin!.Value, 2);
    }

    [Fact]
    public void Repairs_FibreOfTheLoaf_AreCarriedByTheirOwnSwap()
    {
        var swap = DessertClaims.Repairs(Loaf, "V1", "eu", Of("V1", "eu", "source of fibre"))[0];

        Assert.Equal(swap.MassGrams, swap.InGrams);
        Assert.False(IsRefusedAfter(Loaf, swap, 1 + 1e-9));
        Assert.True(IsRefusedAfter(Loaf, swap, 0.99));
    }

    // As much dry matter comes as goes, and the water that comes with it leaves: the loaves come to what they did.
    [Fact]
    public void Repairs_ByDryMatter_KeepTheYield()
    {
        using TemporaryFolder folder = new();
        foreach (var part in (string[])["store", "travel-loaf"])
        {
            Directory.CreateDirectory(Path.Combine(folder.Path, part));
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{part}"), "*.csv")) File.Copy(file, Path.Combine(folder.Path, part, Path.GetFileName(file)));
        }
        File.AppendAllText(Path.Combine(folder.Path, "travel-loaf", "dessert.csv"), "swap_by,dry matter,,\n");
        var loaf = Dessert.Open(Path.Combine(folder.Path, "travel-loaf"));

        var swap = DessertClaims.Repairs(loaf, "V1", "eu", Of("V1", "eu", "source of fibre"))[0];

        double Dry(string ingredient) => 100 - loaf.Store.Ingredients.All.Single(each => each.Name == ingredient).Profile!["WATER"].Per100Grams;
        Assert.Equal(swap.MassGrams * Dry(swap.Out), swap.InGrams * Dry(swap.In), 6);
        Assert.NotEqual(swap.MassGrams, swap.InGrams, 3);
        Assert.False(IsRefusedAfter(loaf, swap, 1 + 1e-9));
        Assert.True(IsRefusedAfter(loaf, swap, 0.99));
    }

    // A comparative claim names the trial that it compares with behind a semicolon; without one it is not known, and says what to write.
    [Fact]
    public void Asked_ComparativeClaim_IsHeldAgainstTheTrialBehindIt()
    {
        using TemporaryFolder folder = new();
        foreach (var part in (string[])["store", "travel-loaf"])
        {
            Directory.CreateDirectory(Path.Combine(folder.Path, part));
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{part}"), "*.csv")) File.Copy(file, Path.Combine(folder.Path, part, Path.GetFileName(file)));
        }
        File.AppendAllText(Path.Combine(folder.Path, "travel-loaf", "dessert.csv"), "claim,reduced fat; v1,V3,\nclaim,reduced fat,V2,\n");
        var loaf = Dessert.Open(Path.Combine(folder.Path, "travel-loaf"));

        var compared = DessertClaims.Asked(loaf, "V3", "eu").Single(each => each.Verdict.Asked == "reduced fat").Verdict;
        Assert.Equal(ClaimState.Fails, compared.State);
        Assert.Equal(Of("V3", "eu", "reduced fat", "V1").Conditions[0].Margin, compared.Conditions[0].Margin);

        var alone = DessertClaims.Asked(loaf, "V2", "eu").Single(each => each.Verdict.Asked == "reduced fat").Verdict;
        Assert.Null(alone.Conditions[0].Holds);
        Assert.Contains("reduced fat; T1", alone.Conditions[0].Words, StringComparison.Ordinal);
    }

    private static bool IsRefusedAfter(Dessert loaf, ClaimSwap swap, double times)
    {
        var food = DessertClaims.FoodOf(loaf, "V1", "eu");
        var incoming = loaf.Store.Ingredients.All.Single(each => each.Name == swap.In);
        var left = swap.MassGrams * times;
        Mixture swapped = food.Mixture with
        {
            Parts = [.. food.Mixture.Parts.Select(part =>
            {
                if (part.Ingredient.Name != swap.Out) return part;
                var taken = Math.Min(left, part.MassGrams);
                left -= taken;
                return part with { MassGrams = part.MassGrams - taken };
            }), new(incoming, swap.InGrams * times, 0, new("a swap", Evidence.Computed))],
            EvaporatedGrams = food.Mixture.EvaporatedGrams + (swap.InGrams - swap.MassGrams) * times,
        };
        Assert.Equal(food.Mixture.FinishedGrams, swapped.FinishedGrams, 6);
        return ClaimCheck.Of(food with { Mixture = swapped }, "source of fibre").IsRefused;
    }

    [Fact]
    public void Of_NoAddedSugars_NamesWhatAddsThem()
    {
        var verdict = Of("V3", "eu", "no added sugars");

        Assert.Equal(ClaimState.Fails, verdict.State);
        Assert.Contains("honey", verdict.Conditions[0].Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_WordsThatAreNoClaim_SaysSo() => Assert.Equal(ClaimState.NotAClaim, Of("V2", "eu", "chocolate chips").State);

    [Fact]
    public void Of_MistypedClaim_NamesTheNearest() => Assert.Contains("source of fibre", Of("V1", "eu", "sourse of fibre").Nearest);

    // V3: the fruit preparation leaves its fibre blank; what is not known is not claimed.
    [Fact]
    public void Of_UnknownFigure_CannotBeSaid() => Assert.Equal(ClaimState.CannotBeSaid, Of("V3", "eu", "source of fibre").State);

    [Fact]
    public void Of_ReferenceAmountThatNobodyGave_SaysWhatToGive()
    {
        var verdict = ClaimCheck.Of(DessertClaims.FoodOf(Loaf, "V1", "us") with { ReferenceAmountGrams = null }, "low fat");

        Assert.Equal(ClaimState.CannotBeSaid, verdict.State);
        Assert.Contains(verdict.Conditions, condition => condition.Words.Contains("serving_category", StringComparison.Ordinal));
    }

    // 21 CFR 101.62(b)(2): at most 3 g of fat in the reference amount; 80 g of the loaf hold 11 g.
    [Fact]
    public void Of_FatOfTheLoafInTheUnitedStates_IsThatOfTheReferenceAmountOfItsKind()
    {
        var verdict = Of("V1", "us", "low fat");

        Assert.Equal(ClaimState.Fails, verdict.State);
        Assert.Equal(3 - 11.26, verdict.Conditions[0].Margin!.Value, 1);
    }

    // 4.61 against 2.83 g of fibre: 63 % more.
    [Fact]
    public void Of_ComparedTrials_HasTheDifference()
    {
        var verdict = Of("V1b", "eu", "increased fibre", "V1");

        Assert.Equal(ClaimState.Holds, verdict.State);
        Assert.Equal(63, verdict.Conditions[0].Amount!.Value, 0);
        Assert.Equal(ClaimState.CannotBeSaid, Of("V1b", "eu", "increased fibre").State);
    }

    [Fact]
    public void Available_NeverHasWhatIsRefused()
    {
        var food = DessertClaims.FoodOf(Loaf, "V1b", "eu");

        var available = ClaimCheck.Available(food);

        Assert.Contains(available, verdict => verdict.Rule!.Name == "source of fibre");
        Assert.All(available, verdict => Assert.False(ClaimCheck.Of(food, verdict.Rule!.Name).IsRefused));
    }

    // Fat 14.1 (3 to 17.5: amber), saturates 8.1 (above 5: red), sugars 32.9 (above 22.5: red), salt 0.46 (0.3 to 1.5: amber).
    [Fact]
    public void FrontOfPack_LoafInGreatBritain_HasItsColoursAndNoScoreWithoutFruit()
    {
        var schemes = FrontOfPack.Of(DessertClaims.FoodOf(Loaf, "V1", "gb"));

        Assert.Equal(["amber", "red", "red", "amber"], schemes[0].Figures.Select(figure => figure.Given));
        Assert.False(schemes[1].IsWhole);
        // 1,557 kJ: 4; saturates 8.1: 8; sugars 32.9: 7; sodium 184: 2; fruit 0; fibre 2.83 by the method of the table: 3; protein does not count at 21.
        Assert.StartsWith("Score 18:", FrontOfPack.Of(DessertClaims.FoodOf(Loaf, "V1", "gb"), 0)[1].Verdict, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("eu")]
    [InlineData("gb")]
    [InlineData("us")]
    [InlineData("ca")]
    [InlineData("au-nz")]
    [InlineData("codex")]
    public void Of_EveryClaimOfEveryRuleSet_HasAnAnswer(string rules)
    {
        var food = DessertClaims.FoodOf(Loaf, "V1b", rules, "V1") with { ReferenceAmountGrams = 55 };

        Assert.All(ClaimRules.Of(food.Rules).All, claim => Assert.NotEqual(ClaimState.NotAClaim, ClaimCheck.Of(food, claim.Name).State));
        Assert.NotEmpty(ClaimRules.Of(food.Rules).All);
    }
}
