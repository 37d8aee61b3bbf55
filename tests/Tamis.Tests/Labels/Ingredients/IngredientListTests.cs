using CsCheck;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class IngredientListTests
{
    private static readonly Source Cell = new("formula.csv", Evidence.Sheet, "row 2, column T1");

    private static Dessert Loaf { get; } = Dessert.Open(Repository.Path("data", "desserts", "travel-loaf"));

    private static Ingredient Known(string name, params string[] allergens) => new() { Name = name, LabelName = name, Allergens = allergens };

    private static ListedUse Use(Ingredient ingredient, double massGrams, params string[] brackets) => new(ingredient, massGrams, brackets, Cell);

    private static IngredientDeclaration Eu(double waterLostGrams, ListWishes? wishes, params ListedUse[] uses) =>
        IngredientDeclaration.Of(uses, uses.Sum(use => use.MassGrams) - waterLostGrams, waterLostGrams, LabelKit.Eu, "en", wishes);

    [Fact]
    public void Of_Uses_StandByMassAsUsedWhateverWaterLeaves() =>
        Assert.Equal("Ingredients: milk, flour (wheat), salt.", Eu(400, null, Use(Known("flour", "wheat"), 300), Use(Known("milk", "milk"), 690), Use(Known("salt"), 10)).Text);

    [Fact]
    public void Of_AddedWater_CountsByWhatIsLeftAndGoesUnderFivePerCent()
    {
        // Regulation (EU) No 1169/2011, Annex VII Part A(1): finished weight less the other ingredients; up to 5 % may be left out.
        var much = Eu(50, null, Use(Known("water"), 500), Use(Known("sugar"), 480));
        var little = Eu(50, null, Use(Known("water"), 90), Use(Known("sugar"), 960));

        Assert.Equal("Ingredients: sugar, water.", much.Text);
        Assert.Equal(450, much.Items[1].MassGrams!.Value, 9);
        Assert.Equal("Ingredients: sugar.", little.Text);
        Assert.Contains(little.Remarks, remark => remark.Words.StartsWith("Water is left off", StringComparison.Ordinal));
    }

    // 'Hazelnut praline' dwells on its hazelnuts, and a raspberry tart on its raspberries: Regulation (EU) No 1169/2011, Article 22(1)(a).
    [Theory]
    [InlineData("Hazelnut", "hazelnuts")]
    [InlineData("Raspberry", "raspberries")]
    [InlineData("Peaches", "peach")]
    [InlineData("Cherries", "cherry")]
    [InlineData("Lemons", "lemon juice")]
    public void Of_NameInTheOtherNumber_HasItsQuantity(string word, string ingredient)
    {
        var list = Eu(0, new() { Emphasised = [word] }, Use(Known(ingredient), 30), Use(Known("sugar"), 70));

        Assert.Contains($"{ingredient} 30", list.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(list.Remarks, remark => remark.Words.StartsWith("Of the name", StringComparison.Ordinal));
    }

    // Whether a word of the name speaks of an ingredient is for a person; that nothing was found is said.
    [Fact]
    public void Of_WordOfTheNameThatNoIngredientHas_IsSaidAndStopsNothing()
    {
        var list = Eu(0, new() { Emphasised = ["honey", "citrus", "loaf"] }, Use(Known("honey"), 30), Use(Known("lemon juice"), 70));

        Assert.Empty(list.Problems);
        Assert.Contains(list.Remarks, remark => remark.Words.StartsWith("Of the name, no ingredient is called citrus, loaf:", StringComparison.Ordinal));
    }

    // Article 22(1)(a): a category of ingredients in the name has the quantity of what it speaks of, and is no open word any more.
    [Fact]
    public void Of_WordOfTheNameThatTheSheetExplains_HasItsQuantitiesAndIsNotAskedAbout()
    {
        var list = Eu(0, new() { Emphasised = ["honey", "citrus", "loaf", "lemon juice"], Dwelt = ["lemon juice"], Explained = ["citrus"] }, Use(Known("honey"), 30), Use(Known("lemon juice"), 70));

        Assert.Equal("Ingredients: lemon juice 70\u00a0%, honey 30\u00a0%.", list.Text);
        Assert.Contains(list.Remarks, remark => remark.Words.StartsWith("Of the name, no ingredient is called loaf:", StringComparison.Ordinal));
    }

    [Fact]
    public void IngredientList_EveryTrialOfTheLoaf_StatesTheQuantityOfItsCitrus()
    {
        var loaf = Tamis.Desserts.Dessert.Open(Tamis.KitFolder.Data("desserts/travel-loaf"));

        Assert.All(loaf.Batches, batch =>
        {
            var list = loaf.IngredientList(batch.Trial, "eu", "en");
            Assert.All(list.Items.Where(item => item.Name.Contains("lemon", StringComparison.Ordinal) || item.Name == "candied orange peel"), item => Assert.NotNull(item.Quantity));
            Assert.DoesNotContain(list.Remarks, remark => remark.Words.Contains("citrus", StringComparison.Ordinal));
            Assert.DoesNotContain(list.Problems, problem => problem.ToString().Contains("dwells on", StringComparison.Ordinal));
        });
    }

    [Fact]
    public void Of_BoughtFoodWithoutAList_IsAProblemUntilItSaysThatItIsASingleOne()
    {
        var bought = Known("apricot filling") with { Supplier = "S9" };

        Assert.Contains("a document of S9 that has no list", Assert.Single(Eu(0, null, Use(bought, 30)).Problems).ToString(), StringComparison.Ordinal);
        Assert.Empty(Eu(0, null, Use(bought with { Food = "SR28 09021" }, 30)).Problems);
        var single = Eu(0, null, Use(bought with { SupplierList = "apricot filling" }, 30));
        Assert.Empty(single.Problems);
        Assert.Equal("Ingredients: apricot filling.", single.Text);
        Assert.Equal("Ingredients: apricot filling (apricots).", Eu(0, null, Use(bought with { SupplierList = "apricots" }, 30)).Text);
    }

    // What a pack dwells on has its quantity stated; a word that hits nothing would leave it off unseen.
    [Fact]
    public void Of_WordThatThePackDwellsOn_IsAProblemWhereNoIngredientHasIt()
    {
        var list = Eu(0, new() { Emphasised = ["honey", "banana"], Dwelt = ["honey", "banana"] }, Use(Known("honey"), 30), Use(Known("sugar"), 70));

        Assert.Equal("Ingredients: sugar, honey 30\u00a0%.", list.Text);
        Assert.StartsWith("the pack dwells on 'banana'", Assert.Single(list.Problems).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OneNameTwice_IsOneItem() =>
        Assert.Equal("Ingredients: rye flour, sugar.", Eu(0, null, Use(Known("sugar"), 50), Use(Known("rye flour", "rye"), 40), Use(Known("dark rye flour", "rye") with { LabelName = "rye flour" }, 30)).Text);

    [Fact]
    public void Of_Bracket_StandsByTheMassOfAllThatIsInIt() =>
        Assert.Equal("Ingredients: nut paste (almonds, sugar), cream (milk).",
            Eu(0, null, Use(Known("cream", "milk"), 100), Use(Known("almonds", "almond"), 80, "nut paste"), Use(Known("sugar"), 60, "nut paste")).Text);

    [Fact]
    public void Of_Allergens_StandOutInTheNameOrBehindIt()
    {
        var list = Eu(0, null, Use(Known("butter", "milk"), 30), Use(Known("wheat flour", "wheat"), 50), Use(Known("eggs", "egg"), 40));

        Assert.Equal(["wheat", "eggs", "milk"], list.Runs.Where(run => run.IsEmphasised).Select(run => run.Text));
        Assert.Equal(["wheat", "egg", "milk"], list.Contains.Select(rule => rule.Substance));
    }

    [Fact]
    public void Of_UnknownAllergens_IsADraftThatSaysWhose()
    {
        var list = Eu(0, null, Use(Known("sugar") with { Allergens = null }, 30));

        Assert.Contains("sugar", Assert.Single(list.Problems).What, StringComparison.Ordinal);
        Assert.True(list.IsDraft);
    }

    [Fact]
    public void Of_MistypedAllergen_NamesTheNearest() => Assert.Contains("milk", Assert.Single(Eu(0, null, Use(Known("butter", "mlik"), 30)).Problems).Supply, StringComparison.Ordinal);

    [Fact]
    public void Of_AdditiveWithoutAClass_IsNamed() =>
        Assert.Contains(Eu(0, null, Use(Known("pectins") with { AdditiveNumbers = ["E 440"], Function = "geling agent" }, 5)).Problems, problem => problem.Supply.Contains("gelling agent", StringComparison.Ordinal));

    [Fact]
    public void Of_UnknownAdditive_IsNamed()
    {
        Assert.Contains(Eu(0, null, Use(Known("pectins") with { AdditiveNumbers = ["E 4400"], Function = "gelling agent" }, 5)).Problems, problem => problem.What.Contains("E 4400", StringComparison.Ordinal));
        Assert.Contains(Eu(0, null, Use(Known("glaze") with { SupplierList = "sugar, gelling agent: moondust" }, 5)).Problems, problem => problem.What.Contains("moondust", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_LanguageWithoutATerm_IsADraftAndLeavesNothingOff()
    {
        var list = IngredientDeclaration.Of([Use(Known("damson puree"), 30)], 30, 0, LabelKit.Eu, "fr");

        Assert.Contains("[damson puree]", list.Text, StringComparison.Ordinal);
        Assert.Contains("words.csv", Assert.Single(list.Problems).Supply, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_Exempt_IsNotNamed()
    {
        // Annex II 1(a): glucose syrups from wheat.
        var list = Eu(0, null, Use(Known("glucose syrup", "wheat"), 30));

        Assert.Empty(list.Contains);
        Assert.Contains(list.Remarks, remark => remark.Words.Contains("exempt", StringComparison.Ordinal));
    }

    // Chips are 250 of 2,220 g weighed in: far above 2 %; the law has no limit for compounds whose composition it does not define.
    [Fact]
    public void Of_LoafWithChips_OpensTheirListWithItsClasses()
    {
        var list = Loaf.IngredientList("V2", "eu", "en");

        Assert.Contains("emulsifiers: lecithins (rapeseed), E\u00a0476; natural flavouring", list.Text, StringComparison.Ordinal);
        Assert.Contains("fat-reduced cocoa powder 14\u00a0%", list.Text, StringComparison.Ordinal);
        Assert.Equal(["soya", "hazelnut"], list.MayContain.Select(rule => rule.Substance));
        Assert.DoesNotContain(list.Contains, rule => rule.Substance == "soya");
        Assert.False(list.IsDraft, string.Join("\n", list.Problems));
    }

    // 95 mg/kg in 250 g of peel make 11.9 mg/kg in the cake; 14 mg/kg in the fruit preparation make 1.8: Annex II(12) wants more than 10.
    [Fact]
    public void Of_Sulphites_AreNamedAboveTheLimitOfTheFinishedFood()
    {
        Assert.Contains(Loaf.IngredientList("V1", "eu", "en").Runs, run => run is { IsEmphasised: true, Text: "sulphur dioxide" });
        var fruit = Loaf.IngredientList("V3", "eu", "en");
        Assert.Contains("sulphur dioxide", fruit.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(fruit.Runs, run => run is { IsEmphasised: true, Text: "sulphur dioxide" });
        Assert.Contains(fruit.Remarks, remark => remark.Words.Contains("1.8 mg/kg", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("fr")]
    [InlineData("de")]
    [InlineData("es")]
    [InlineData("it")]
    public void Of_Loaf_IsWholeInFiveLanguages(string language) => Assert.Empty(Loaf.IngredientList("V1", "eu", language).Problems);

    [Fact]
    public void Of_Loaf_StatesTheQuantityOfWhatItIsNamedAfter()
    {
        // Honey: 340 of 2,219.85 g weighed in, 2 % of it in the bowl and on no cake; 2,219.85 less 44.4, 1.9 and 211.4 g are left: 17.0 %.
        Assert.Contains("honey 17\u00a0%", Loaf.IngredientList("V1", "eu", "en").Text, StringComparison.Ordinal);
        Assert.DoesNotContain("%", Loaf.IngredientList("V1", "us", "en").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_LoafInTheUnitedStates_HasAContainsStatementWithoutRye() =>
        Assert.Equal("Contains: milk, eggs, wheat, sulfites.", string.Concat(Loaf.IngredientList("V1", "us", "en").ContainsStatement.Select(run => run.Text)));

    // Regulation (EU) No 1169/2011, Article 21(1)(a): with a clear reference to the name as listed in Annex II, which lists lactose and hybridised strains; Commission Notice 2017/C 428/01 wants wheat beside spelt.
    [Theory]
    [InlineData("whey powder", "milk", "whey powder (*milk*)")]
    [InlineData("lactose", "milk", "*lactose*")]
    [InlineData("semolina", "wheat", "semolina (*wheat*)")]
    [InlineData("durum wheat semolina", "wheat", "durum *wheat* semolina")]
    [InlineData("spelt flour", "spelt", "spelt flour (*wheat*)")]
    [InlineData("triticale flour", "triticale", "*triticale* flour")]
    [InlineData("prawns", "prawn", "prawns (*crustaceans*)")]
    public void Of_NameThatIsNoNameOfTheLaw_HasTheLawsNameBehindIt(string name, string allergen, string expected) =>
        Assert.Equal($"Ingredients: {expected}.", Marked(Eu(0, null, Use(Known(name, allergen), 30)).Runs));

    // Annex II, 1(a) to (c): syrups and maltodextrins of wheat and syrups of barley are exempt, nothing of another cereal.
    [Theory]
    [InlineData("maltodextrin", "wheat", "maltodextrin")]
    [InlineData("maltodextrin", "barley", "maltodextrin (*barley*)")]
    [InlineData("glucose syrup", "barley", "glucose syrup")]
    [InlineData("glucose syrup", "rye", "glucose syrup (*rye*)")]
    public void Of_SyrupOfACereal_IsExemptWhereTheLawSaysSo(string name, string allergen, string expected) =>
        Assert.Equal($"Ingredients: {expected}.", Marked(Eu(0, null, Use(Known(name, allergen), 30)).Runs));

    // Standards 1.2.3—4 and 1.2.3—6, Schedule 9: required names in the list, and a summary in which cereals stand as gluten, wheat as itself as well.
    [Theory]
    [InlineData("spelt flour", "spelt", "spelt flour (*wheat*)", "wheat*, *gluten")]
    [InlineData("triticale flour", "triticale", "triticale flour (*wheat*)", "wheat*, *gluten")]
    [InlineData("rye flour", "rye", "*rye* flour", "gluten")]
    [InlineData("malted barley", "barley", "malted *barley*", "gluten")]
    [InlineData("oatmeal", "oats", "oatmeal (*oats*)", "gluten")]
    [InlineData("whey powder", "milk", "whey powder (*milk*)", "milk")]
    [InlineData("prawns", "prawn", "prawns (*crustacean*)", "crustacean")]
    [InlineData("marzipan", "almond", "marzipan (*almond*)", "almond")]
    public void Of_AustraliaAndNewZealand_HasRequiredNamesAndASummary(string name, string allergen, string list, string summary)
    {
        var made = IngredientDeclaration.Of([Use(Known(name, allergen), 30)], 30, 0, LabelKit.AustraliaNewZealand, "en", null);

        Assert.Equal($"Ingredients: {list}.", Marked(made.Runs));
        Assert.Equal($"*Contains:* *{summary}*.", Marked(made.ContainsStatement));
    }

    [Fact]
    public void Of_AustraliaAndNewZealand_SaysGlutenOnce() =>
        Assert.Equal("Contains: wheat, gluten, milk.", string.Concat(IngredientDeclaration.Of(
            [Use(Known("wheat flour", "wheat"), 30), Use(Known("rye flour", "rye"), 20), Use(Known("milk", "milk"), 10)], 60, 0, LabelKit.AustraliaNewZealand, "en", null).ContainsStatement.Select(run => run.Text)));

    [Theory]
    [InlineData("en", "honey 0.5\u00a0%")]
    [InlineData("fr", "honey 0,5\u00a0%")]
    [InlineData("de", "honey 0,5\u00a0%")]
    public void Of_Quantity_HasTheDecimalMarkOfTheLanguage(string language, string printed) => Assert.Contains(printed, IngredientDeclaration.Of(
        [Use(Known("honey"), 0.6), Use(Known("sugar"), 99.4)], 100, 0, LabelKit.Eu, language, new() { Emphasised = ["honey"], Translate = (word, _) => word }).Text, StringComparison.Ordinal);

    private static IngredientDeclaration Drawn(RuleSet rules, string language, params ListedUse[] uses) =>
        IngredientDeclaration.Of(uses, uses.Sum(use => use.MassGrams), 0, rules, language, null);

    // 21 USC 343(w)(1)(B): the food source in brackets, unless the name uses it; (w)(2): the type of a nut, the species of a fish or crustacean; FDA, FALN 004: all of the genus Triticum is wheat.
    [Theory]
    [InlineData("whey", "milk", "whey (milk)", "milk")]
    [InlineData("lactose", "milk", "lactose (milk)", "milk")]
    [InlineData("casein", "milk", "casein (milk)", "milk")]
    [InlineData("buttermilk", "milk", "buttermilk", "milk")]
    [InlineData("albumin", "egg", "albumin (eggs)", "eggs")]
    [InlineData("egg yolks", "egg", "egg yolks", "eggs")]
    [InlineData("semolina", "wheat", "semolina (wheat)", "wheat")]
    [InlineData("spelt flour", "spelt", "spelt flour (wheat)", "wheat")]
    [InlineData("triticale flour", "triticale", "triticale flour (wheat)", "wheat")]
    [InlineData("lecithin", "soya", "lecithin (soy)", "soy")]
    [InlineData("groundnut paste", "peanut", "groundnut paste (peanuts)", "peanuts")]
    [InlineData("tahini", "sesame", "tahini (sesame)", "sesame")]
    [InlineData("praline paste", "pecan", "praline paste (pecans)", "pecans")]
    [InlineData("shrimp powder", "crustaceans", "shrimp powder", "shrimp")]
    [InlineData("gelatine (cod)", "fish", "gelatine (cod)", "cod")]
    public void Of_UnitedStates_HasTheFoodSourceBehindTheName(string name, string allergen, string list, string contains)
    {
        var made = Drawn(LabelKit.Us, "en", Use(Known(name, allergen), 30));

        Assert.Empty(made.Problems);
        Assert.Equal($"Ingredients: {list}.", Marked(made.Runs));
        Assert.Equal($"Contains: {contains}.", Marked(made.ContainsStatement));
    }

    // 21 USC 321(qq)(1): rye, barley and oats are no major food allergens; molluscs, lupin, mustard and celery neither.
    [Theory]
    [InlineData("rye flour", "rye")]
    [InlineData("oat flakes", "oats")]
    [InlineData("squid ink", "molluscs")]
    [InlineData("mustard", "mustard")]
    public void Of_UnitedStates_NamesNoOtherAllergen(string name, string allergen)
    {
        var made = Drawn(LabelKit.Us, "en", Use(Known(name, allergen), 30));

        Assert.Equal($"Ingredients: {name}.", made.Text);
        Assert.Empty(made.ContainsStatement);
    }

    // Food and Drug Regulations, B.01.010.1(6) to (8) and (10): prescribed source names in brackets; B.01.010.3(1): title in bold, entries with a capital letter.
    [Theory]
    [InlineData("en", "whey", "milk", "whey (milk)", "Milk")]
    [InlineData("en", "semolina", "wheat", "semolina (wheat)", "Wheat")]
    [InlineData("en", "spelt flour", "spelt", "spelt flour (wheat)", "Wheat")]
    [InlineData("en", "triticale flour", "triticale", "triticale flour", "Triticale")]
    [InlineData("en", "oat flour", "oats", "oat flour (oats)", "Oats")]
    [InlineData("en", "malt", "barley", "malt (barley)", "Barley")]
    [InlineData("en", "lecithin", "soya", "lecithin (soy)", "Soy")]
    [InlineData("en", "groundnuts", "peanut", "groundnuts (peanuts)", "Peanuts")]
    [InlineData("en", "macadamia paste", "macadamia", "macadamia paste (macadamia nuts)", "Macadamia nuts")]
    [InlineData("en", "squid ink", "molluscs", "squid ink", "Squid")]
    [InlineData("en", "Dijon", "mustard", "Dijon (mustard)", "Mustard")]
    [InlineData("fr", "lactosérum", "milk", "lactosérum (lait)", "Lait")]
    [InlineData("fr", "épeautre", "wheat", "épeautre (blé)", "Blé")]
    [InlineData("fr", "praliné", "pecan", "praliné (pacanes)", "Pacanes")]
    [InlineData("fr", "noix de pécan", "pecan", "noix de pécan (pacanes)", "Pacanes")]
    [InlineData("fr", "lécithine", "soya", "lécithine (soja)", "Soja")]
    [InlineData("fr", "pignons", "pine nut", "pignons", "Pignons")]
    public void Of_Canada_HasThePrescribedSourceNames(string language, string name, string allergen, string list, string contains)
    {
        var made = IngredientDeclaration.Of([Use(Known(name, allergen), 30)], 30, 0, LabelKit.Canada, language, new() { Translate = (word, _) => word });

        Assert.Empty(made.Problems);
        Assert.Equal($"*{(language == "en" ? "Ingredients" : "Ingrédients\u00a0")}:* {Names.Capital(list)}.", Marked(made.Runs));
        Assert.Equal($"*{(language == "en" ? "Contains" : "Contient\u00a0")}:* {contains}.", Marked(made.ContainsStatement));
    }

    // 21 USC 343(w)(2); Food and Drug Regulations, B.01.010.1(6)(e).
    [Fact]
    public void Of_FishWithoutItsKind_IsAProblemWhereTheLawWantsTheKind()
    {
        var gelatine = Use(Known("fish gelatine", "fish"), 30);

        foreach (var rules in new[] { LabelKit.Us, LabelKit.Canada })
        {
            var made = Drawn(rules, "en", gelatine);
            Assert.Contains("fish named by its kind, and the name of fish gelatine does not say which", Assert.Single(made.Problems).ToString(), StringComparison.Ordinal);
            Assert.Equal("Ingredients: fish gelatine.", made.Text, ignoreCase: true);
        }
        Assert.Empty(Eu(0, null, gelatine).Problems);
    }

    // CXS 1-1985, 4.2.1.4: a hybridised strain by its parents, species of wheat as wheat.
    [Theory]
    [InlineData("triticale flour", "triticale", "triticale flour (wheat and rye)")]
    [InlineData("spelt flour", "spelt", "spelt flour (wheat)")]
    [InlineData("prawns", "prawn", "prawns (crustacea)")]
    [InlineData("whey", "milk", "whey (milk)")]
    public void Of_Codex_HasTheNameOfTheListBehindTheName(string name, string allergen, string list) =>
        Assert.Equal($"Ingredients: {list}.", Drawn(LabelKit.Codex, "en", Use(Known(name, allergen), 30)).Text);

    // FDA guidance of January 2025: coconut is no tree nut any more; it is named as an ingredient.
    [Fact]
    public void Of_Coconut_IsNoAllergenOfTheUnitedStates() =>
        Assert.Null(AllergenRules.Of(LabelKit.Us).For("coconut"));

    // What stands out stands between asterisks.
    private static string Marked(IEnumerable<TextRun> runs) => string.Concat(runs.Select(run => run.IsEmphasised ? $"*{run.Text}*" : run.Text));

    // Whatever goes in stands in the list once, in falling order, and the text holds every name.
    [Fact]
    public void Of_AnyUses_ListsEachOnceInOrder() => Gen.Select(Gen.Int[0, 12], Gen.Double[0.1, 500]).Array[1, 25].Sample(lines =>
    {
        var list = Eu(0, null, [.. lines.Select(line => Use(Known($"thing {(char)('a' + line.Item1)}"), line.Item2))]);

        Assert.Equal(lines.Select(line => line.Item1).Distinct().Count(), list.Items.Count);
        Assert.Equal(lines.Sum(line => line.Item2), list.Items.Sum(item => item.MassGrams!.Value), 6);
        Assert.True(list.Items.Zip(list.Items.Skip(1)).All(pair => pair.First.MassGrams >= pair.Second.MassGrams));
    });
}
