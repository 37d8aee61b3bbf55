using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Desserts.Labels;

/// <summary>What the rows of dessert.csv make of the bases of a panel.</summary>
public sealed class DessertPanelsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private Dessert Cake(params string[] rows)
    {
        _folder.Write("formula.csv", "component,line,T1\nsponge,flour,60\nsponge,sugar,40\n");
        _folder.Write("dessert.csv", string.Join('\n', ["key,value", "name,A cake", .. rows]) + "\n");
        return Dessert.Open(_folder.Path);
    }

    private string[] Bases(string rules, params string[] rows) => [.. DessertPanels.BasesOf(Cake(rows), "T1", KitData.Rules(rules)).Select(basis => basis.Words)];

    [Theory]
    [InlineData("eu", "per 100 g; per portion (40 g)")]
    [InlineData("gb", "per 100 g; per portion (40 g)")]
    [InlineData("au-nz", "per serving (40 g); per 100 g")]
    [InlineData("codex", "per 100 g; per portion (40 g)")]
    [InlineData("ca", "per serving (40 g)")]
    [InlineData("us", "per serving (40 g)")]
    public void BasesOf_StatedPortion_AreTheColumnsOfTheLaw(string rules, string bases) => Assert.Equal(bases, string.Join("; ", Bases(rules, "portion_g,40")));

    // The Canadian table of daily values has another value of potassium from 2026 on.
    [Theory]
    [InlineData("rules_day,2025-12-31", 4700)]
    [InlineData("rules_day,2026-01-01", 3400)]
    [InlineData("pieces,1", 3400)]
    public void Of_RulesDay_TakesTheRulesOfThatDay(string row, double expected) =>
        Assert.Equal((decimal)expected, (decimal)DessertPanels.Of(Cake(row), "T1", "ca").Line("potassium").Reference!.Value);

    [Fact]
    public void Of_RulesDayBeforeTheAct_IsADraft() => Assert.Contains(DessertPanels.Of(Cake("rules_day,2010-01-01"), "T1", "eu").DraftReasons, reason => reason.EndsWith("not on 2010-01-01.", StringComparison.Ordinal));

    [Fact]
    public void Of_RulesDayThatIsNone_NamesItsCell() =>
        Assert.Contains("a day as year-month-day", Assert.Throws<TableException>(() => DessertPanels.Of(Cake("rules_day,soon"), "T1", "eu")).Problems.Single().ToString(), StringComparison.Ordinal);

    [Theory]
    [InlineData("eu"), InlineData("us"), InlineData("au-nz")]
    public void BasesOf_NoPortion_Are100Grams(string rules) => Assert.Equal(["per 100 g"], Bases(rules));

    // 21 CFR 101.9(b)(12)(i): 200 g are 250 % of the 80 g of a cake of medium weight.
    [Theory]
    [InlineData("200", "per serving (1 slice, 60 g); per package (200 g)")]
    [InlineData("320", "per serving (1 slice, 60 g)")]
    public void BasesOf_PackageOfTwoToThreeReferenceAmounts_HaveTheWholeBesideTheServing(string net, string bases) =>
        Assert.Equal(bases, string.Join("; ", Bases("us", "portion_g,60", "portion_word,slice", $"net_g,{net}", "\"serving_category\",\"cakes, mediumweight\"")));

    // 100 ml of a sauce of 1.2 g/ml weigh 120 g.
    [Fact]
    public void BasesOf_Liquid_AreOf100Millilitres()
    {
        var basis = DessertPanels.BasesOf(Cake("state,liquid", "density_g_ml,1.2"), "T1", KitData.Rules("eu")).Single();

        Assert.Equal(("per 100 ml", 120.0), (basis.Words, basis.MassGrams!.Value));
        Assert.Equal(["per serving (100 ml)", "per 100 ml"], Bases("au-nz", "state,liquid", "density_g_ml,1.2", "portion_g,120"));
    }

    [Theory]
    [InlineData("eu", "state,liquid", "a row density_g_ml")]
    [InlineData("eu", "state,runny", "found 'runny', expected liquid or solid")]
    [InlineData("us", "serving_category,cake of mine\nportion_g,40", "row 3, column 'value': found 'cake of mine'")]
    [InlineData("us", "portion_g,400\nnet_g,320", "row 3, column 'value': found '400'")]
    [InlineData("us", "serving_category,cake frostings or icings\nportion_g,40", "a row density_g_ml")]
    [InlineData("us", "serving_category,brownies", "a row portion_g")]
    public void BasesOf_WhatCannotBe_NamesTheCell(string rules, string rows, string said) =>
        Assert.Contains(said, Assert.Throws<TableException>(() => Bases(rules, rows.Split('\n'))).Message, StringComparison.Ordinal);

    // The claims stand on the same reference amount as the serving.
    [Fact]
    public void FoodOf_KindOfFood_HasTheReferenceAmountOfTheServing()
    {
        Assert.Equal(80, DessertClaims.FoodOf(Cake("\"serving_category\",\"cakes, mediumweight\""), "T1", "us").ReferenceAmountGrams);
        Assert.Null(DessertClaims.FoodOf(Cake("serving_category,anything"), "T1", "eu").ReferenceAmountGrams);
        Assert.Throws<TableException>(() => DessertClaims.FoodOf(Cake("serving_category,cakes"), "T1", "us"));
    }

    // SR28: 100 g of whole-grain wheat flour hold 3.6 mg of iron, 26 % of 14 mg, and no vitamin C. Annex XIII Part A(2): what is less than 15 % may not be declared.
    [Fact]
    public void Of_WishedForVitamins_DeclaresThoseThatAreSignificant()
    {
        var cake = Flour("declare,iron; vitamin C", "declare,folate");

        Assert.Equal("iron", Assert.Single(DessertPanels.VoluntaryOf(cake, "T1", KitData.Rules("eu")).Declared));
        Assert.Contains(DessertPanels.Of(cake, "T1", "eu").Lines, line => line.Key == "iron");
        Assert.DoesNotContain(DessertPanels.Of(cake, "T1", "eu").Lines, line => line.Key == "vitamin C");
        Assert.StartsWith("vitamin C may not be declared: there is too little of it. The law wants at least 15\u202f% of the reference value in 100\u202fg or 100\u202fml", DessertPanels.VoluntaryOf(cake, "T1", KitData.Rules("eu")).TooLittle.Single().ToString(), StringComparison.Ordinal);
        Assert.Equal(["iron", "vitamin C", "folate"], DessertPanels.VoluntaryOf(cake, "T1", KitData.Rules("us")).Declared);
    }

    // 100 ml of a drink need half as much; a pack of a single portion may count what is in the portion.
    [Theory]
    [InlineData("iron", "no", "", "")]
    [InlineData("iron", "yes", "", "iron")]
    [InlineData("iron", "no", "portion_g,250\nnet_g,250", "iron")]
    [InlineData("iron", "no", "portion_g,125\nnet_g,250", "")]
    public void VoluntaryOf_DrinkOrSinglePortion_HasItsOwnLimit(string wish, string isDrink, string rows, string declared)
    {
        // Half flour and half water: 1.8 mg of iron in 100 g, 12.9 %; 4.5 mg in 250 g.
        var cake = Flour([$"declare,{wish}", $"drink,{isDrink}", .. rows.Split('\n', StringSplitOptions.RemoveEmptyEntries)], water: 100);

        Assert.Equal(declared, string.Join(", ", DessertPanels.VoluntaryOf(cake, "T1", KitData.Rules("eu")).Declared));
    }

    [Fact]
    public void VoluntaryOf_LineThatNoLawHas_NamesTheCell() =>
        Assert.Contains("row 3, column 'value': found 'vitamin Z'", Assert.Throws<TableException>(() => DessertPanels.Of(Flour("declare,vitamin Z"), "T1", "eu")).Message, StringComparison.Ordinal);

    // USDA retention factors, release 6, R6 0101: baked eggs keep 80 % of their vitamin B12 and all of their phosphorus.
    [Fact]
    public void Of_LinesThatAreBaked_KeepWhatTheFactorsLeave()
    {
        double Of(string key, params string[] rows) => DessertPanels.Of(Eggs(["declare,vitamin B12; phosphorus; folic acid", .. rows]), "T1", "eu").Line(key).Amount.Known;
        string[] baked = ["retention,\"sponge; egg; eggs, baked\""];

        Assert.Equal(0.8, Of("vitamin B12", baked) / Of("vitamin B12"), 9);
        Assert.Equal(1, Of("phosphorus", baked) / Of("phosphorus"), 9);
        Assert.Equal(Of("vitamin B12", baked), Of("vitamin B12", "retention,sponge; egg; R6 0101"), 12);
        Assert.Equal(Of("fat"), Of("fat", baked), 12);
    }

    // The working names the food, the factor and where it stands.
    [Fact]
    public void Of_LinesThatAreBaked_SaysSoInTheWorking()
    {
        var line = DessertPanels.Of(Eggs(["declare,vitamin B12", "retention,\"sponge; egg; eggs, baked\""]), "T1", "eu").Line("vitamin B12");

        Assert.Contains("of which 80 % stay, R6 0101 (eggs, baked)", AllOf(line.Explain()), StringComparison.Ordinal);

        static string AllOf(Working working) => string.Join('\n', working.From.Select(AllOf).Append($"{working.Step} {working.Source}"));
    }

    // A vitamin on the panel that nobody cooked is said to be that of what was weighed in.
    [Theory]
    [InlineData("declare,vitamin B12", true)]
    [InlineData("declare,phosphorus", false)]
    [InlineData("declare,vitamin B12\nretention,sponge; egg; R6 0101", false)]
    [InlineData("declare,vitamin B12; vitamin D\nretention,sponge; egg; R6 0101", true)]
    public void RemarkOn_VitaminsAsWeighedIn_SaysSo(string rows, bool isSaid)
    {
        var eggs = Eggs(rows.Split('\n'));

        Assert.Equal(isSaid, CookedMixture.RemarkOn(eggs, "T1", DessertPanels.Of(eggs, "T1", "eu")) is not null);
    }

    // Release 6 has 26 components and none of the vitamins D, E and K; a reader is told rather than given 100 %.
    [Fact]
    public void RemarkOn_VitaminThatTheFactorsDoNotSpeakOf_NamesItAlone()
    {
        var eggs = Eggs(["declare,vitamin B12; vitamin D", "retention,sponge; egg; R6 0101"]);

        Assert.StartsWith("vitamin D as weighed in: the factors of USDA retention 6", CookedMixture.RemarkOn(eggs, "T1", DessertPanels.Of(eggs, "T1", "eu")), StringComparison.Ordinal);
    }

    // Flour and meal have factors of their own, R6 0301: baked, they keep 80 % of their thiamin.
    [Fact]
    public void Retentions_FlourBaked_HasFactors() => Assert.Equal(0.8, KitData.Retentions.All.Single(each => each.Description == "flour/meal, baked").KeptShare("THIA")!.Value, 12);

    [Theory]
    [InlineData("\"sponge; egg; eggs, bakked\"", "eggs, baked")]
    [InlineData("sponge; eg; R6 0101", "near ones: egg")]
    [InlineData("spong; egg; R6 0101", "near ones: sponge")]
    [InlineData("R6 0101", "component; line; factors")]
    public void Of_RetentionThatIsNotThere_NamesTheCell(string row, string said)
    {
        var error = Assert.Throws<TableException>(() => DessertPanels.Of(Eggs([$"retention,{row}"]), "T1", "eu"));

        Assert.Contains("row 3, column 'value'", error.Message, StringComparison.Ordinal);
        Assert.Contains(said, error.Message, StringComparison.Ordinal);
    }

    // 21 CFR 101.9(g)(4): of what is naturally there at least 80 % of what is declared must be found, of what was added all of it.
    [Theory]
    [InlineData("declare,vitamin B12", 0.8)]
    [InlineData("fortified_with,vitamin B12", 1)]
    public void CertaintyOf_AddedVitamin_ToleratesNothingBelow(string row, double share)
    {
        var figure = DessertPanels.CertaintyOf(Eggs(["portion_g,60", row]), "T1", "us").Figures.Single(each => each.Line.Key == "vitamin B12");

        Assert.Equal(share * (double)figure.Line.Rounded!.ShownNumber!.Value, figure.Accepted!.Value.Lowest, 9);
    }

    private Dessert Eggs(string[] rows)
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "store"));
        _folder.Write(Path.Combine("store", "ingredients.csv"), "ingredient,food\negg,SR28 01123\nsugar,SR28 19335\n");
        _folder.Write("formula.csv", "component,line,T1\nsponge,egg,100\nsponge,sugar,20\n");
        _folder.Write("dessert.csv", string.Join('\n', ["key,value", "name,A cake", .. rows]) + "\n");
        return Dessert.Open(_folder.Path);
    }

    private Dessert Flour(params string[] rows) => Flour(rows, water: 0);

    private Dessert Flour(string[] rows, int water)
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "store"));
        _folder.Write(Path.Combine("store", "ingredients.csv"), "ingredient,food\nflour,SR28 20080\nwater,SR28 14411\n");
        _folder.Write("formula.csv", $"component,line,T1\nsponge,flour,100\nsponge,water,{water}\n");
        _folder.Write("dessert.csv", string.Join('\n', ["key,value", "name,A cake", .. rows]) + "\n");
        return Dessert.Open(_folder.Path);
    }
}
