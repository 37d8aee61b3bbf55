using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class ShortPanelTests
{
    // What is not given is none, so that a sweet of sugar alone has next to nothing of all but energy and carbohydrate.
    private static ShortPanel Of(RuleSet rules, double servingGrams, string[] claimed, params (string Food, double MassGrams)[] foods) =>
        ShortPanel.Of([NutritionPanel.Of(LabelKit.Foods(0, foods), rules, rules.IsPerServing ? PanelBasis.Serving(servingGrams) : PanelBasis.Per100Grams)], claimed);

    // 21 CFR 101.9(f): of granulated sugar all but energy, carbohydrate and sugars are insignificant, so the simplified format may be used; added sugars are not stated by the table.
    [Fact]
    public void Of_SugarInTheUnitedStates_MayStandInTheSimplifiedFormat()
    {
        var panel = Of(LabelKit.Us, 8, [], ("SR28 19335", 100));

        Assert.True(panel.IsSimplified);
        Assert.Equal("Not a significant source of saturated fat, trans fat, cholesterol, dietary fiber, vitamin D, calcium, iron and potassium.", panel.StatementIn("en"));
    }

    // Subsection B.01.401(6): six figures that may be shown as 0. Both languages stand on the pack.
    [Fact]
    public void Of_SugarInCanada_SaysSoInBothLanguages()
    {
        var panel = Of(LabelKit.Canada, 8, [], ("SR28 19335", 100));

        Assert.True(panel.IsSimplified);
        Assert.StartsWith("Not a significant source of saturated fat, trans fat, fibre, cholesterol, sodium", panel.StatementIn("en"), StringComparison.Ordinal);
        Assert.StartsWith("Source négligeable de lipides saturés, lipides trans, fibres", panel.StatementIn("fr"), StringComparison.Ordinal);
    }

    // B.01.401(6.1): the table of a package that is one serving leaves off fibre, cholesterol, potassium, calcium and iron whatever there is of them; saturates and trans stand together; nothing is said in their place.
    [Fact]
    public void Of_SingleServingInCanada_LeavesOffWhatTheTableNeedNotHave()
    {
        NutritionPanel panel = NutritionPanel.Of(LabelKit.Foods(0, ("SR28 20080", 49), ("SR28 01145", 30), ("SR28 19335", 20), ("SR28 02047", 1)), LabelKit.Canada, PanelBasis.Serving(100));
        var shown = ShortPanel.Of([panel], ["iron"], isSingleServing: true);

        Assert.True(shown.IsSingleServing);
        Assert.Equal(["calcium", "cholesterol", "fibre", "potassium"], shown.LeftOff.Select(row => row.Figure).Order(StringComparer.Ordinal));
        Assert.Null(shown.StatementIn("en"));
        Assert.DoesNotContain(shown.Without(PanelContent.Of([panel], ["en", "fr"], null), ["en", "fr"]).Problems, problem => problem.ToString().Contains("left off", StringComparison.Ordinal));
        Assert.False(ShortPanel.Of([panel], []).IsSingleServing);
    }

    [Fact]
    public void Of_SingleServingOfSugarInCanada_LeavesOffSaturatesAndSodiumToo() => Assert.Equal(
        ["calcium", "cholesterol", "fibre", "iron", "potassium", "saturated", "saturated and trans", "sodium", "trans"],
        ShortPanel.Of([NutritionPanel.Of(LabelKit.Foods(0, ("SR28 19335", 100)), LabelKit.Canada, PanelBasis.Serving(8))], [], isSingleServing: true).LeftOff.Select(row => row.Figure).Order(StringComparer.Ordinal));

    // A law without such a format keeps its own.
    [Fact]
    public void Of_SingleServingInTheUnitedStates_IsAsAnyOther() => Assert.True(ShortPanel.Of([NutritionPanel.Of(LabelKit.Foods(0, ("SR28 19335", 100)), LabelKit.Us, PanelBasis.Serving(8))], [], isSingleServing: true).IsSimplified);

    // Of flour with salt seven figures are insignificant, one too few for the simplified format. Of saturates there is no statement by itself but under 0.5 g of total fat (paragraph (c)(2)(i)); 10 g of it hold a quarter of a gram of fat, 100 g ten times that.
    [Theory]
    [InlineData(10, true)]
    [InlineData(100, false)]
    public void Of_FlourInTheUnitedStates_LeavesOffByTheAmountOfTheWhole(double servingGrams, bool isLeftOff)
    {
        var panel = Of(LabelKit.Us, servingGrams, [], ("SR28 20080", 98), ("SR28 02047", 2));

        Assert.False(panel.IsSimplified);
        Assert.Equal(isLeftOff, panel.LeftOff.Any(row => row.Figure == "saturated fat"));
    }

    // 21 CFR 101.9(c)(2)(i) holds for each column that is printed: 10 g of flour hold less than 0.5 g of fat, and a package of 100 g does not.
    [Fact]
    public void Of_TwoColumns_LeavesOffWhatIsNextToNothingInEachOfThem()
    {
        var flour = LabelKit.Foods(0, ("SR28 20080", 98), ("SR28 02047", 2));
        NutritionPanel On(PanelBasis basis) => NutritionPanel.Of(flour, LabelKit.Us, basis);

        Assert.Contains(ShortPanel.Of([On(PanelBasis.Serving(10))], []).LeftOff, row => row.Figure == "saturated fat");
        var both = ShortPanel.Of([On(PanelBasis.Serving(10)), On(PanelBasis.Package(100))], []);
        Assert.DoesNotContain(both.LeftOff, row => row.Figure == "saturated fat");
        Assert.Contains(both.LeftOff, row => row.Figure == "cholesterol");
    }

    // 21 CFR 101.9(f): eight figures must be insignificant in each column. A serving of 2 g of flour has nothing of most; the package of 100 g has.
    [Fact]
    public void Of_TwoColumns_CountsForTheSimplifiedFormatWhatIsInsignificantInEach()
    {
        var flour = LabelKit.Foods(0, ("SR28 20080", 100));
        var serving = NutritionPanel.Of(flour, LabelKit.Us, PanelBasis.Serving(2));

        Assert.True(ShortPanel.Of([serving], []).IsSimplified);
        Assert.False(ShortPanel.Of([serving, NutritionPanel.Of(flour, LabelKit.Us, PanelBasis.Package(100))], []).IsSimplified);
    }

    // Where the pack claims something about fat, the parts of the fat stand.
    [Fact]
    public void Of_ClaimAboutTheWhole_KeepsThePart() =>
        Assert.DoesNotContain(Of(LabelKit.Us, 10, ["total fat"], ("SR28 20080", 100)).LeftOff, row => row.Figure is "saturated fat" or "cholesterol");

    // A figure that nobody knows is not next to nothing.
    [Fact]
    public void Of_UnknownFigure_Stands()
    {
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("unknown", 100, LabelKit.Profile("unknown", 6.25, ("FAT", 0), ("PROCNT", 0), ("CHOCDF", 0)))), LabelKit.Us, PanelBasis.Serving(30));

        Assert.DoesNotContain(ShortPanel.Of([panel], []).LeftOff, row => row.Figure is "calcium" or "potassium" or "iron");
    }

    // Regulation (EU) No 1169/2011, Article 34(5): what is negligible may be replaced by a statement; energy stands.
    [Fact]
    public void Of_SugarInTheUnion_ContainsNegligibleAmounts()
    {
        var panel = Of(LabelKit.Eu, 0, [], ("SR28 19335", 100));

        Assert.False(panel.IsSimplified);
        Assert.Equal("Contains negligible amounts of fat, saturates, protein and salt.", panel.StatementIn("en"));
        Assert.Equal("Enthält geringfügige Mengen von Fett, gesättigten Fettsäuren, Eiweiß und Salz.", panel.StatementIn("de"));
        Assert.Null(panel.StatementIn("nl"));
    }

    // Great Britain stands on the Union's rows; Australia, New Zealand and Codex have none.
    [Fact]
    public void Of_RulesWithoutRows_LeaveNothingOff()
    {
        Assert.NotEmpty(Of(LabelKit.Gb, 0, [], ("SR28 19335", 100)).LeftOff);
        Assert.Empty(Of(LabelKit.AustraliaNewZealand, 0, [], ("SR28 19335", 100)).LeftOff);
        Assert.Empty(Of(LabelKit.Codex, 0, [], ("SR28 19335", 100)).LeftOff);
    }

    // Every figure of the rows is a line of the panel, so that none is left off in vain.
    [Theory]
    [InlineData("eu"), InlineData("us"), InlineData("ca")]
    public void Of_Rows_NameLinesOfTheDeclaration(string set)
    {
        var rules = RuleSets.Load(LabelKit.Folder, set);

        Assert.Empty(ShortPanelRules.Of(rules).Figures.SelectMany(row => row.UnlessClaimed.Append(row.Figure).Concat(row.Held)).Except(rules.Declaration.Select(figure => figure.Key)));
    }
}
