using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class ServingMakerTests
{
    private const string Medium = "cakes, mediumweight";

    private static Serving Us(double unit, double? net = 640, string category = Medium) => ServingMaker.Of(LabelKit.Us, new() { Category = category, UnitGrams = unit, NetGrams = net, UnitWord = "slice" });

    // 21 CFR 101.9(b)(2)(i) and (b)(6), 101.12(b): the reference amount of such a cake is 80 g. 40 g are half of it: two make a serving. 60 g are 75 %: one. A whole cake of 640 g: the fraction nearest to 80 g is an eighth.
    // A package of 150 g, less than twice the reference amount, is one serving.
    [Theory]
    [InlineData(40, 640.0, 80, "2 slices")]
    [InlineData(26, 640.0, 78, "3 slices")]
    [InlineData(60, 640.0, 60, "1 slice")]
    [InlineData(159, 640.0, 159, "1 slice")]
    [InlineData(640, 640.0, 80, "1/8 slice")]
    [InlineData(50, 150.0, 150, "1 package")]
    public void Of_CakeInTheUnitedStates_IsTheServingOfTheSection(double unit, double net, double grams, string household)
    {
        var serving = Us(unit, net);

        Assert.Equal((grams, household), (serving.Grams, serving.Household));
        Assert.True(serving.Basis.IsServing);
    }

    // 21 CFR 101.9(b)(12)(i): from 200 to 300 % of the reference amount a second column stands for the whole package.
    [Theory]
    [InlineData(159, false), InlineData(160, true), InlineData(240, true), InlineData(241, false)]
    public void Of_PackageOfTwoToThreeReferenceAmounts_HasASecondColumn(double net, bool asked) => Assert.Equal(asked, Us(60, net).SecondColumn is not null);

    [Fact]
    public void Of_RulesWithoutReferenceAmounts_TakeTheStatedPortion()
    {
        var serving = ServingMaker.Of(RuleSets.Load(LabelKit.Folder, "ca"), new() { StatedGrams = 40, UnitGrams = 40, NetGrams = 320, UnitWord = "slice" });

        Assert.Equal((40.0, "1 slice", 8.0), (serving.Grams, serving.Household, serving.PerContainer!.Value));
        Assert.Contains(serving.Lines, line => line.StartsWith("Per 1 slice (40 g)", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_PortionLargerThanThePack_SaysWhatToCorrect() => Assert.Contains("portion_g or net_g", Assert.Throws<ArgumentException>(() => Us(400, 320)).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_KindThatIsNotKnown_NamesTheNearest() => Assert.Contains("brownies", Assert.Throws<KeyNotFoundException>(() => Us(40, 640, "brownis")).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_ReferenceAmountByVolumeWithoutADensity_AsksForIt() => Assert.Contains("density_g_ml", Assert.Throws<ArgumentException>(() => Us(40, 640, "cake frostings or icings")).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_NoKindGiven_AsksForIt() => Assert.Contains("serving_category", Assert.Throws<ArgumentException>(() => ServingMaker.Of(LabelKit.Us, new() { UnitGrams = 40 })).Message, StringComparison.Ordinal);

    // Two columns are one panel: they show the same lines, and each rounds by itself.
    [Fact]
    public void PanelColumns_ServingBeside100Grams_HaveTheSameLines()
    {
        var rules = RuleSets.Load(LabelKit.Folder, "au-nz");
        var mixture = LabelKit.Foods(0, ("SR28 19335", 50), ("SR28 01145", 50));

        var panel = PanelColumns.Of(mixture, rules, [PanelBasis.Serving(40), PanelBasis.Per100Grams]);

        Assert.All(panel.Rows, row => Assert.Equal(2, row.Cells.Count));
        Assert.All(panel.Rows, row => Assert.Single(row.Cells.Select(cell => cell.Key).Distinct()));
        Assert.Empty(panel.MissingColumns);
        Assert.NotEmpty(PanelColumns.Of(mixture, rules, [PanelBasis.Per100Grams]).MissingColumns);
    }
}
