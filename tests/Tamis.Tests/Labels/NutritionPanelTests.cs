using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Labels;

namespace Tamis.Tests.Labels;

/// <summary>Panels that can be worked out with a pencil from USDA Standard Reference release 28 (organic acids: Anses CIQUAL 2020), Annex XIV and the rounding tables.</summary>
public class NutritionPanelTests
{
    private static NutritionPanel European(double waterLostGrams, params (string Food, double MassGrams)[] foods) =>
        NutritionPanel.Of(LabelKit.Foods(waterLostGrams, foods), LabelKit.Eu, PanelBasis.Per100Grams);

    private static string Text(NutritionPanel panel) =>
        string.Join("; ", panel.Lines.Select(line => line.Key).Distinct().Select(key => $"{key} {panel.Declared(key)}"));

    // Butter 01145: 81.11 fat, 0.06 carbohydrate by difference less 0.1 acids, protein 0.85 × 6.25 / 6.38 = 0.8327, sodium 11 mg.
    // More acids than carbohydrate: none of it is left. 37 × 81.11 + 17 × 0.8327 + 13 × 0.1 = 3016.5 kJ; 9 × 81.11 + 4 × 0.8327 + 3 × 0.1 = 733.6 kcal.
    [Fact]
    public void Of_Butter_IsThePanelWorkedOutByHand() =>
        Assert.Equal("energy 3017 kJ / 734 kcal; fat 81 g; saturates 50 g; carbohydrate 0 g; sugars 0 g; fibre 0 g; protein 0.8 g; salt 0.03 g", Text(European(0, ("SR28 01145", 250))));

    // Egg 01123: 37 × 9.51 + 17 × 0.72 + 17 × 12.56 = 577.6 kJ; 9 × 9.51 + 4 × 0.72 + 4 × 12.56 = 138.7 kcal; salt 142 mg × 2.5 = 0.355 g, a tie.
    [Fact]
    public void Of_Egg_IsThePanelWorkedOutByHand() =>
        Assert.Equal("energy 578 kJ / 139 kcal; fat 9.5 g; saturates 3.1 g; carbohydrate 0.7 g; sugars 0 g; fibre 0 g; protein 13 g; salt 0.36 g", Text(European(0, ("SR28 01123", 58))));

    // Sugar 19335: 17 × 99.98 = 1699.7 kJ; 4 × 99.98 = 399.9 kcal.
    [Fact]
    public void Of_Sugar_IsThePanelWorkedOutByHand() =>
        Assert.Equal("energy 1700 kJ / 400 kcal; fat 0 g; saturates 0 g; carbohydrate 100 g; sugars 100 g; fibre 0 g; protein 0 g; salt 0 g", Text(European(0, ("SR28 19335", 100))));

    // A syrup of equal parts: half of the sugar's figures. 49.99 g × 17 = 849.8 kJ; 49.9 g of sugars; sodium 2.5 mg × 2.5 = 0.006 g of salt.
    [Fact]
    public void Of_Syrup_IsThePanelWorkedOutByHand() =>
        Assert.Equal("energy 850 kJ / 200 kcal; fat 0 g; saturates 0 g; carbohydrate 50 g; sugars 50 g; fibre 0 g; protein 0 g; salt 0 g",
            Text(European(0, ("SR28 19335", 500), ("SR28 14411", 500))));

    // The same syrup boiled down from 1000 to 800 g: 499.9 / 8 = 62.49 g; 1062.3 kJ; 249.95 kcal; 499 / 8 = 62.4 g of sugars.
    [Fact]
    public void Of_SyrupBoiledDown_CountsTheWaterThatLeft() =>
        Assert.Equal("energy 1062 kJ / 250 kcal; fat 0 g; saturates 0 g; carbohydrate 62 g; sugars 62 g; fibre 0 g; protein 0 g; salt 0 g",
            Text(European(200, ("SR28 19335", 500), ("SR28 14411", 500))));

    // Rapeseed oil 04582: 100 g of fat, 3700 kJ, 900 kcal (Annex XIV); 7.365 g of saturates.
    [Fact]
    public void Of_Oil_IsThePanelWorkedOutByHand() =>
        Assert.Equal("energy 3700 kJ / 900 kcal; fat 100 g; saturates 7.4 g; carbohydrate 0 g; sugars 0 g; fibre 0 g; protein 0 g; salt 0 g", Text(European(0, ("SR28 04582", 20))));

    // Salt 02047: sodium 38 758 mg × 2.5 = 96.895 g (Annex I(11)); at 1 g and more to the nearest 0.1 g.
    [Fact]
    public void Of_Salt_DeclaresSodiumTimesTwoAndAHalf() => Assert.Equal("96.9 g", European(0, ("SR28 02047", 10)).Declared("salt"));

    // Gelatine 19177: 85.60 g by the factor 5.55; Annex I(10) asks for 6.25 of every food: 85.60 × 6.25 / 5.55 = 96.4 g.
    [Fact]
    public void Of_Gelatine_DeclaresProteinByTheLawsFactor() => Assert.Equal("96 g", European(0, ("SR28 19177", 10)).Declared("protein"));

    // A line that the law leaves free and that would say nothing but zero stands where somebody wished for it, or where what it speaks of was added and the law asks for it (Food and Drug Regulations, B.01.402(6)).
    [Theory]
    [InlineData("eu", "polyols", "cake", 0.01, false, false)]
    [InlineData("eu", "polyols", "cake", 0.01, true, true)]
    [InlineData("eu", "polyols", "sorbitol", 0.01, false, false)]
    [InlineData("eu", "polyols", "cake", 0.6, false, true)]
    [InlineData("us", "sugar alcohol", "cake", 0.01, false, false)]
    [InlineData("us", "sugar alcohol", "cake", 0.6, false, true)]
    [InlineData("ca", "sugar alcohol", "cake", 0.01, false, false)]
    [InlineData("ca", "sugar alcohol", "maltitol syrup", 0.01, false, true)]
    [InlineData("ca", "sugar alcohol", "cake", 0.6, false, true)]
    public void Of_TraceOfPolyols_IsALineOnlyWhereItMustBe(string rules, string key, string ingredient, double polyols, bool isAsked, bool stands)
    {
        var mixture = LabelKit.Of(LabelKit.Part(ingredient, 100, LabelKit.Whole(ingredient, 6.25, ("CHOAVLDF", 50), ("CHOCDF", 50), ("SUGAR", 20), ("POLYL", polyols))));
        var panel = NutritionPanel.Of(mixture, RuleSets.Load(LabelKit.Folder, rules), PanelBasis.Serving(100), asked: isAsked ? [key] : []);

        Assert.Equal(stands, panel.Lines.Any(line => line.Key == key));
    }

    // 0.6 g in 100 g is declared, 0.24 g in 40 g is zero: one table has one set of lines.
    [Fact]
    public void Columns_LineThatIsZeroInOneOfThem_StandsInBoth()
    {
        var mixture = LabelKit.Of(LabelKit.Part("cake", 100, LabelKit.Whole("cake", 6.25, ("CHOAVLDF", 50), ("POLYL", 0.6))));
        var columns = PanelColumns.Of(mixture, LabelKit.Eu, [PanelBasis.Per100Grams, PanelBasis.Serving(40)]);

        Assert.Equal(["0.6 g", "0 g"], columns.Rows.Single(row => row.Key == "polyols").Cells.Select(cell => cell.Declared));
        Assert.DoesNotContain(PanelColumns.Of(mixture, LabelKit.Eu, [PanelBasis.Serving(40), PanelBasis.Serving(20)]).Rows, row => row.Key == "polyols");
    }

    // A sorbitol syrup of 70 %: 70 g of polyols within the carbohydrate, 10 kJ and 2.4 kcal a gram (Annex I(7), Annex XIV).
    [Fact]
    public void Of_SorbitolSyrup_CountsPolyolsWithTheirOwnFactorWithinTheCarbohydrate()
    {
        var syrup = LabelKit.Whole("sorbitol syrup", 6.25, ("WATER", 30), ("CHOAVLDF", 70), ("POLYL", 70));

        var panel = NutritionPanel.Of(LabelKit.Of(LabelKit.Part("sorbitol syrup", 60, syrup)), LabelKit.Eu, PanelBasis.Per100Grams);

        Assert.Equal("energy 700 kJ / 168 kcal; fat 0 g; saturates 0 g; carbohydrate 70 g; sugars 0 g; polyols 70 g; fibre 0 g; protein 0 g; salt 0 g", Text(panel));
    }

    // A spirit of 33 g of alcohol in 100 g: 29 × 33 = 957 kJ, 7 × 33 = 231 kcal (Annex XIV).
    [Fact]
    public void Of_Spirit_CountsAlcohol() =>
        Assert.Equal("957 kJ / 231 kcal", NutritionPanel.Of(LabelKit.Of(LabelKit.Part("spirit", 20, LabelKit.Whole("spirit", 6.25, ("ALC", 33)))), LabelKit.Eu, PanelBasis.Per100Grams).Declared("energy"));

    // Butter, a serving of 14 g, 21 CFR 101.9(c): 9 × 11.355 + 4 × 0.0084 + 4 × 0.119 = 102.7 calories; fat 11.355 g of 78 is 14.6 %;
    // saturated 7.07 g of 20 is 35.3 %; cholesterol 30.1 mg of 300 is 10.0 %; sodium 1.5 mg, below 5. Release 28 states no trans fat for it.
    [Fact]
    public void Of_ButterByTheServing_IsTheAmericanPanelWorkedOutByHand()
    {
        var panel = NutritionPanel.Of(LabelKit.Foods(0, ("SR28 01145", 250)), LabelKit.Us, PanelBasis.Serving(14, "1 tbsp"));

        Assert.Equal("per serving (1 tbsp, 14 g)", panel.Basis.Words);
        Assert.Equal(["100", "11 g", "7 g", "30 mg", "0 mg", "0 g", "0 g"], new[] { "calories", "total fat", "saturated fat", "cholesterol", "sodium", "total carbohydrate", "protein" }.Select(key => panel.Declared(key)));
        Assert.Equal(["15%", "35%", "10%", "0%"], new[] { "total fat", "saturated fat", "cholesterol", "sodium" }.Select(key => panel.Line(key).Percent?.Text));
        Assert.Null(panel.Line("protein").Percent);
        Assert.Equal("not known", panel.Declared("trans fat"));
        Assert.Equal("Includes Added Sugars", panel.Line("added sugars").Term);
        Assert.True(panel.IsDraft);
    }

    [Fact]
    public void Of_Lines_StandInLawfulOrder()
    {
        var panel = NutritionPanel.Of(LabelKit.Foods(0, ("SR28 01123", 58)), LabelKit.Eu, PanelBasis.Per100Grams, asked: ["polyunsaturates", "mono-unsaturates", "starch"]);

        // Regulation (EU) No 1169/2011, Annex XV.
        Assert.Equal(["energy", "energy", "fat", "saturates", "mono-unsaturates", "polyunsaturates", "carbohydrate", "sugars", "starch", "fibre", "protein", "salt"], panel.Lines.Select(line => line.Key));
    }

    [Fact]
    public void Of_PercentOfReferenceIntake_IsOfTheUnroundedAmount()
    {
        var panel = European(0, ("SR28 01145", 250));

        // Annex XIII Part B: 3016.5 of 8400 kJ is 35.9 %, 50.489 of 20 g of saturates is 252.4 %.
        Assert.Equal("36 %", panel.Line("energy", "kJ").Percent!.Text);
        Assert.Equal("252 %", panel.Line("saturates").Percent!.Text);
        Assert.Null(panel.Line("energy", "kcal").Percent);
    }

    [Fact]
    public void Of_MixtureWithoutMass_IsRefused() =>
        Assert.Throws<ArgumentException>(() => NutritionPanel.Of(new(), LabelKit.Eu, PanelBasis.Per100Grams));

    [Fact]
    public void Of_ALineThatTheRulesDoNotHave_NamesTheNearest() =>
        Assert.Contains("fibre", Assert.Throws<KeyNotFoundException>(() => NutritionPanel.Of(LabelKit.Foods(0, ("SR28 01123", 58)), LabelKit.Eu, PanelBasis.Per100Grams, asked: ["fiber"])).Message);

    // A cell that shows a panel or a rule shows words.
    [Fact]
    public void ToString_IsWordsOfTheTrade()
    {
        Assert.StartsWith("Nutrition declaration per 100 g (European Union).\nenergy 578 kJ\nenergy 139 kcal\nfat 9.5 g\nof which saturates 3.1 g", European(0, ("SR28 01123", 58)).ToString());
        Assert.Equal("European Union: Regulation (EU) No 1169/2011", LabelKit.Eu.ToString());
        Assert.Equal("salt: nearest 0.1 g from 1 g, ties up [Commission guidance on tolerances for nutrient values, December 2012, rounding table (guidance)]", LabelKit.Eu.Rounding.For("salt", "g").Last().ToString());
    }

    // 21 CFR 101.9(c)(2)(iii) and (iv): each of the two makes the other mandatory. Butter 01145 holds 3.01 g of the one and 23.43 g of the other in 100 g, by the table.
    [Theory]
    [InlineData("polyunsaturated fat")]
    [InlineData("monounsaturated fat")]
    public void Of_OneUnsaturatedFatInTheUnitedStates_BringsTheOther(string asked)
    {
        var panel = NutritionPanel.Of(LabelKit.Foods(0, ("SR28 01145", 250)), LabelKit.Us, PanelBasis.Serving(14), null, [asked]);

        Assert.Equal(["saturated fat", "trans fat", "polyunsaturated fat", "monounsaturated fat"], panel.Lines.Where(line => line.Key.EndsWith(" fat", StringComparison.Ordinal) && line.Indent == 1).Select(line => line.Key));
    }

    // What a declared line makes mandatory is asked for and not left off.
    [Fact]
    public void Of_UnsaturatedFatWhoseOtherIsUnknown_IsADraft()
    {
        NutrientList nutrients = new([.. LabelKit.Nutrients.All, new("FAPU", "polyunsaturates", "g"), new("FAMS", "monounsaturates", "g")]);
        NutrientProfile oil = new("oil", nutrients, [.. nutrients.All.Select(each => each.Tag == "FAMS" ? Content.Unknown : new Content(ContentState.Measured, each.Tag is "FAT" ? 100 : each.Tag is "FAPU" ? 60 : 0, null, new("written for a test", Evidence.Computed)))], null);
        NutritionPanel Asked(params string[] keys) => NutritionPanel.Of(LabelKit.Of(LabelKit.Part("oil", 100, oil)), LabelKit.Us, PanelBasis.Serving(14), null, keys);

        Assert.Contains(Asked("polyunsaturated fat").Missing, missing => missing.Line.Key == "monounsaturated fat");
        Assert.DoesNotContain(Asked().Missing, missing => missing.Line.Key == "monounsaturated fat");
    }

    // Food and Drug Regulations B.01.402(3)(a): one of the four brings omega-6, omega-3 and monounsaturates.
    [Fact]
    public void Of_PolyunsaturatesInCanada_BringTheOmegasAndTheMonounsaturates()
    {
        var figures = LabelKit.Canada.Declaration.ToDictionary(figure => figure.Key);

        Assert.Equal(["omega-6", "omega-3", "monounsaturated"], figures["polyunsaturated"].StandsWith);
        Assert.DoesNotContain("polyunsaturated", figures["monounsaturated"].StandsWith);
    }

    // 21 CFR 101.9(c)(8)(vii): 100 g of enriched flour 20581 hold 291 mcg DFE, 154 mcg of them folic acid; unenriched flour 20481 holds 26 and none.
    [Theory]
    [InlineData("SR28 20581", "290 mcg DFE (150 mcg folic acid)")]
    [InlineData("SR28 20481", "30 mcg DFE")]
    public void Of_FolateInTheUnitedStates_NamesTheFolicAcidThatWasAdded(string flour, string expected)
    {
        var line = NutritionPanel.Of(LabelKit.Foods(0, (flour, 100)), LabelKit.Us, PanelBasis.Serving(100), null, ["folate"]).Line("folate");

        Assert.Equal(expected, line.Printed);
        Assert.EndsWith(expected, line.ToString(), StringComparison.Ordinal);
    }

    // An ingredient that names folic acid in its list and has no figure of it, or none, is asked for; a panel without folate does not ask.
    [Fact]
    public void Of_FlourWhoseListNamesFolicAcid_AsksHowMuch()
    {
        var flour = LabelKit.Foods(0, ("SR28 20481", 100)).Parts[0];
        flour = flour with { Ingredient = flour.Ingredient with { SupplierList = "wheat flour, niacin, iron, folic acid" } };
        NutritionPanel Asked(params string[] keys) => NutritionPanel.Of(LabelKit.Of(flour), LabelKit.Us, PanelBasis.Serving(100), null, keys);

        Assert.Contains("folate: folic acid is named in Wheat flour, all-purpose, unenriched, and how much was added is not known", Assert.Single(Asked("folate").DraftReasons, reason => reason.Contains("folic", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.DoesNotContain(Asked().DraftReasons, reason => reason.Contains("folic", StringComparison.Ordinal));
    }

    // B.01.402(6): the line stands where a sugar alcohol was added. Where a list names one and no table has a figure of it, there is no line, and the panel asks.
    [Theory]
    [InlineData("ca", "maltitol syrup", null, "sugar alcohol: maltitol is named in maltitol syrup, and how much was added is not known")]
    [InlineData("ca", "maltitol syrup", 0.0, "sugar alcohol: maltitol is named in maltitol syrup, and how much was added is not known")]
    [InlineData("ca", "maltitol syrup", 60.0, null)]
    [InlineData("ca", "glucose syrup", null, null)]
    [InlineData("eu", "maltitol syrup", null, null)]
    public void Of_ASugarAlcoholThatIsNamedWithoutAFigure_AsksHowMuch(string rules, string ingredient, double? polyols, string? expected)
    {
        (string, double)[] contents = [("CHOAVLDF", 70), ("CHOCDF", 70), ("SUGAR", 5), .. polyols is { } grams ? [("POLYL", grams)] : Array.Empty<(string, double)>()];
        var mixture = LabelKit.Of(LabelKit.Part(ingredient, 100, LabelKit.Whole(ingredient, 6.25, contents)));
        var asked = NutritionPanel.Of(mixture, RuleSets.Load(LabelKit.Folder, rules), PanelBasis.Serving(100)).DraftReasons.FirstOrDefault(reason => reason.StartsWith("sugar alcohol:", StringComparison.Ordinal));

        Assert.Equal(expected, asked?.Split(';')[0]);
    }
}
