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

    // 21 CFR 101.9(b)(2)(i)(D): of several units, each from 200 to 300 % of the reference amount, one has a column of its own. A package that is one unit has the column of the package.
    [Theory]
    [InlineData(159, 640, false), InlineData(160, 640, true), InlineData(240, 720, true), InlineData(241, 723, false), InlineData(200, 200, false)]
    public void Of_UnitsOfTwoToThreeReferenceAmounts_HaveAColumnForOne(double unit, double net, bool asked)
    {
        var serving = Us(unit, net);

        Assert.Equal(asked, serving.UnitColumn is not null);
        if (asked) Assert.Equal((80.0, unit), (serving.Grams, serving.UnitGrams!.Value));
    }

    [Fact]
    public void Of_RulesWithoutReferenceAmounts_TakeTheStatedPortion()
    {
        var serving = ServingMaker.Of(RuleSets.Load(LabelKit.Folder, "ca"), new() { StatedGrams = 40, UnitGrams = 40, NetGrams = 320, UnitWord = "slice" });

        Assert.Equal((40.0, "1 slice", 8.0), (serving.Grams, serving.Household, serving.PerContainer!.Value));
        Assert.Contains(serving.Lines, line => line.StartsWith("Per 1 slice (40 g)", StringComparison.Ordinal));
    }

    // Page and drawing have one wording, whichever the law has; a law that asks for no count has none on either.
    [Theory]
    [InlineData("au-nz"), InlineData("ca"), InlineData("codex"), InlineData("eu"), InlineData("gb"), InlineData("us")]
    public void Lines_CountOfServings_IsThatOfTheDrawing(string rules)
    {
        var set = RuleSets.Load(LabelKit.Folder, rules);
        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("cake", 280, LabelKit.Whole("cake", 6.25))), set, PanelBasis.Serving(40));
        foreach (var count in (double[])[7, 7.3])
        {
            var drawn = PanelContent.Of([panel], ["en"], new(count, "")).Servings.Replace('\u00a0', ' ');
            var lines = ServingWords.Of(set).Lines(set, "", "40 g", count).ToArray();
            Assert.Equal(drawn.Length > 0, lines.Contains(drawn));
            Assert.DoesNotContain(lines, line => line != drawn && line.Contains('7', StringComparison.Ordinal));
        }
    }

    // 21 CFR 101.9(b)(8)(i): to whole numbers, to halves between 2 and 5, with the word about where that moved the count. Elsewhere to whole numbers.
    [Theory]
    [InlineData("us", 22.7, "About 23 servings per container")]
    [InlineData("us", 8, "8 servings per container")]
    [InlineData("us", 3.4, "About 3.5 servings per container")]
    [InlineData("us", 3.5, "3.5 servings per container")]
    [InlineData("us", 1.6, "About 2 servings per container")]
    [InlineData("us", 5.2, "About 5 servings per container")]
    [InlineData("us", 22.999999, "23 servings per container")]
    [InlineData("au-nz", 22.7, "Servings per package: about 23")]
    [InlineData("eu", 22.7, "Portions in the pack: about 23")]
    public void Lines_CountOfServings_IsRounded(string rules, double count, string expected)
    {
        var set = RuleSets.Load(LabelKit.Folder, rules);

        Assert.Contains(expected, ServingWords.Of(set).Lines(set, "", "30 g", count));
    }

    // The drawing says what the page says, in the languages of the pack; Canada's table has no such line.
    [Theory]
    [InlineData("us", 22.7, "About 23 servings per container", "en")]
    [InlineData("us", 3.5, "3.5 servings per container", "en")]
    [InlineData("au-nz", 22.7, "Servings per package: about 23", "en")]
    [InlineData("eu", 22.7, "Portions dans l’emballage : environ 23 / Portionen in der Packung: etwa 23", "fr", "de")]
    [InlineData("eu", 8, "Portions in the pack: 8", "en")]
    [InlineData("ca", 22.7, "", "en", "fr")]
    public void Servings_OfADrawnPanel_AreRoundedToo(string rules, double count, string expected, params string[] languages)
    {
        var set = RuleSets.Load(LabelKit.Folder, rules);
        var panel = NutritionPanel.Of(LabelKit.Foods(0, ("SR28 20481", 100)), set, set.IsPerServing ? PanelBasis.Serving(30) : PanelBasis.Portion(30));

        Assert.Equal(expected, PanelContent.Of([panel], languages, new(count)).Servings.Replace('\u00a0', ' '));
    }

    // Food and Drug Regulations, B.01.002A(1)(b)(ii): below 200 % of the reference amount the whole package is the serving; at 200 % it is not.
    [Theory]
    [InlineData(150, 80.0, 150, "1 package")]
    [InlineData(159.9, 80.0, 159.9, "1 package")]
    [InlineData(160, 80.0, 40, "1 slice")]
    [InlineData(320, 80.0, 40, "1 slice")]
    [InlineData(150, null, 40, "1 slice")]
    public void Of_PackageInCanada_IsOneServingBelowTwiceTheReferenceAmount(double net, double? reference, double grams, string household)
    {
        var serving = ServingMaker.Of(LabelKit.Canada, new() { StatedGrams = 40, UnitGrams = 40, NetGrams = net, UnitWord = "slice", ReferenceGrams = reference });

        Assert.Equal((grams, household), (serving.Grams, serving.Household));
        Assert.Equal(grams == net, serving.Remark.Contains("the serving is the whole package, and not the 40 g of portion_g", StringComparison.Ordinal));
        Assert.Equal(reference is null, serving.Remark.Contains("write the amount as reference_amount_g in dessert.csv", StringComparison.Ordinal));
        if (grams == net) Assert.Contains("B.01.002A(1)(b)(ii)", serving.Working.Source.ToString(), StringComparison.Ordinal);
    }

    // What the kitchen calls a pack that is one serving stays; nothing need be said of it. A law without such a rule asks nothing.
    [Fact]
    public void Of_ServingThatIsThePackage_KeepsItsMeasure()
    {
        var pot = ServingMaker.Of(LabelKit.Canada, new() { StatedGrams = 120, UnitGrams = 120, NetGrams = 120, StatedHousehold = "1 pot", ReferenceGrams = 125 });

        Assert.Equal((120.0, "1 pot", 1.0, ""), (pot.Grams, pot.Household, pot.PerContainer!.Value, pot.Remark));
        Assert.Equal("", ServingMaker.Of(LabelKit.AustraliaNewZealand, new() { StatedGrams = 40, UnitGrams = 40, NetGrams = 50, ReferenceGrams = 80 }).Remark);
    }

    // Everything that must be mended is said at once, each with the key of dessert.csv.
    [Theory]
    [InlineData(400, 320.0, Medium, "portion_g")]
    [InlineData(40, 640.0, "brownis", "serving_category")]
    [InlineData(40, 640.0, "cake frostings or icings", "density_g_ml")]
    [InlineData(40, 640.0, "pie crust, pie shells", "serving_category")]
    [InlineData(400, 320.0, "brownis", "portion_g, serving_category")]
    public void Of_WhatCannotBe_NamesTheKeys(double unit, double? net, string category, string keys) =>
        Assert.Equal(keys, string.Join(", ", Assert.Throws<ServingException>(() => Us(unit, net, category)).Problems.Select(problem => problem.Key)));

    [Fact]
    public void Of_KindThatIsNotKnown_NamesTheNearest() => Assert.Contains("brownies", Assert.Throws<ServingException>(() => Us(40, 640, "brownis")).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_NoKindGiven_AsksForIt() => Assert.Contains("serving_category is missing", Assert.Throws<ServingException>(() => ServingMaker.Of(LabelKit.Us, new() { UnitGrams = 40 })).Message, StringComparison.Ordinal);

    // 21 CFR 101.9(b)(5)(viii): a tablespoon is 15 ml, a cup 240 ml; 101.12(b): 2 tbsp of icing, 2/3 cup of ice cream.
    [Theory]
    [InlineData("cake frostings or icings", 1.2, 36)]
    [InlineData("ice cream, frozen yogurt", 0.5, 80)]
    [InlineData("syrups", 1.3, 39)]
    public void Reference_ByVolume_WeighsTheMeasureOfTheLaw(string category, double density, double grams) =>
        Assert.Equal(grams, ServingMaker.Reference(LabelKit.Us, category, density).Grams, 9);

    // Where the law asks for a serving the panel says so; where a portion only may stand beside 100 g it says portion.
    [Fact]
    public void Stated_PortionBeside100Grams_IsNoServing()
    {
        PackedFood food = new() { StatedGrams = 40, UnitGrams = 40, StatedCount = 8 };

        Assert.Equal(("per portion (40 g)", 8.0), (ServingMaker.Of(LabelKit.Eu, food).Basis.Words, ServingMaker.Of(LabelKit.Eu, food).PerContainer!.Value));
        Assert.Equal("per serving (1 slice, 40 g)", ServingMaker.Of(LabelKit.AustraliaNewZealand, food with { UnitWord = "slice" }).Basis.Words);
        Assert.Equal(("per serving (2 halves, 40 g)", true), (ServingMaker.Stated(LabelKit.Us, food with { StatedHousehold = "2 halves" }).Basis.Words, ServingMaker.Stated(LabelKit.Us, food).Remark.Contains("serving_category", StringComparison.Ordinal)));
    }

    // Of a liquid the serving is said in millilitres: 110 g at 1.1 g/ml are 100 ml. 21 CFR 101.9(b)(7): from 5 ml on to the nearest millilitre.
    [Fact]
    public void Of_Liquid_IsSaidInMillilitres()
    {
        PackedFood sauce = new() { StatedGrams = 110, UnitGrams = 110, NetGrams = 550, IsLiquid = true, DensityGramsPerMillilitre = 1.1 };

        Assert.Equal(["Portions in the pack: 5", "Portion: 100 ml"], ServingMaker.Of(LabelKit.Eu, sauce).Lines);
        Assert.Equal(("per portion (100 ml)", 110.0), (ServingMaker.Of(LabelKit.Eu, sauce).Basis.Words, ServingMaker.Of(LabelKit.Eu, sauce).Basis.MassGrams!.Value));
        Assert.Contains("Serving size 101 mL", ServingMaker.Stated(LabelKit.Us, sauce with { StatedGrams = 110.8 }).Lines);
        Assert.Equal("density_g_ml", Assert.Single(Assert.Throws<ServingException>(() => ServingMaker.Of(LabelKit.Eu, sauce with { DensityGramsPerMillilitre = null })).Problems).Key);
    }

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
