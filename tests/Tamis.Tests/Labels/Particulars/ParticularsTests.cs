using Tamis.Composition;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Labels;
using Tamis.Losses;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class ParticularsTests
{
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));

    private static MixturePart Part(string name, double grams, string? number = null, string? function = null, double? polyols = null, string? list = null) =>
        LabelKit.Part(name, grams, polyols is { } per ? LabelKit.Profile(name, null, ("POLYL", per)) : null) is var part
            ? part with { Ingredient = part.Ingredient with { AdditiveNumbers = number is null ? [] : [number], Function = function, SupplierList = list } } : part;

    private static Particular Find(IReadOnlyList<Particular> all, string name) => all.Single(each => each.Rule.Name == name);

    private static IReadOnlyList<Particular> Eu(ParticularFood food) => Particulars.Of(food, LabelKit.Eu);

    // Regulation (EU) No 1169/2011, Annex III(2.4): more than 10 % of added polyols; exactly 10 % is not more.
    [Theory]
    [InlineData(9.9, ParticularState.DoesNotApply)]
    [InlineData(10, ParticularState.DoesNotApply)]
    [InlineData(10.1, ParticularState.Applies)]
    public void Of_Polyols_StandAboveTenPerCent(double grams, ParticularState expected) =>
        Assert.Equal(expected, Find(Eu(new() { Mixture = LabelKit.Of(Part("sorbitol", grams, "E 420", "humectant", 100), Part("flour", 100 - grams)) }), "polyols").State);

    [Fact]
    public void Of_PolyolsOfUnknownContent_CannotBeSaidWhereTheyCouldPassTheLimit()
    {
        var much = Find(Eu(new() { Mixture = LabelKit.Of(Part("sorbitol syrup", 30, "E 420", "humectant"), Part("flour", 70)) }), "polyols");
        var little = Find(Eu(new() { Mixture = LabelKit.Of(Part("sorbitol syrup", 8, "E 420", "humectant"), Part("flour", 92)) }), "polyols");

        Assert.Equal(ParticularState.CannotBeSaid, much.State);
        Assert.Contains("sorbitol syrup", much.Supply, StringComparison.Ordinal);
        Assert.Equal(ParticularState.DoesNotApply, little.State);
    }

    [Theory]
    [InlineData("humectant", false, false)]
    [InlineData("sweetener", true, false)]
    [InlineData("sweetener", false, true)]
    public void Of_Polyol_IsASweetenerOnlyWhereItIsUsedAsOne(string function, bool sweetenersOnly, bool withSugar)
    {
        var all = Eu(new() { Mixture = LabelKit.Of(Part("maltitol", 5, "E 965", function, 100), Part("flour", 90), Part(withSugar ? "caster sugar" : "rye flakes", 5)) });

        Assert.Equal(sweetenersOnly, Find(all, "sweeteners").State == ParticularState.Applies);
        Assert.Equal(withSugar, Find(all, "sugars and sweeteners").State == ParticularState.Applies);
    }

    [Fact]
    public void Of_ColourInACompound_IsFoundByItsList()
    {
        var found = Find(Eu(new() { Mixture = LabelKit.Of(Part("sprinkles", 3, list: "sugar, colour: tartrazine"), Part("flour", 97)) }), "colours and attention");

        Assert.Equal(ParticularState.Applies, found.State);
        Assert.Equal("tartrazine by way of sprinkles", found.Because);
        Assert.Equal("kann Aktivität und Aufmerksamkeit bei Kindern beeinträchtigen", found.In("de"));
        Assert.Null(found.In("nl"));
    }

    private static MixturePart WithCaffeine(string name, double grams, double? milligrams) =>
        LabelKit.Part(name, grams, new(name, new([new("CAFFN", "caffeine", "mg")]), [milligrams is { } per ? new(ContentState.Measured, per, null, new("written for a test", Evidence.Computed)) : Content.Unknown], null));

    // Annex III(4): the content of caffeine stands in brackets behind the words; it is that of the whole food, not of what was added alone.
    [Fact]
    public void Of_Caffeine_SaysHowMuchOfItIsInTheWholeFood()
    {
        ParticularFood food = new() { Mixture = LabelKit.Of(WithCaffeine("guarana", 1, 4000), WithCaffeine("cocoa", 9, 100), WithCaffeine("sugar", 90, 0)), Category = "confectionery", Says = key => key == "caffeine_for_effect" ? "yes" : null };

        var found = Find(Eu(food), "caffeine added for what it does");
        var open = Find(Eu(food with { Mixture = LabelKit.Of(WithCaffeine("guarana", 1, 4000), WithCaffeine("cocoa", 9, null), WithCaffeine("sugar", 90, 0)) }), "caffeine added for what it does");

        Assert.Equal((ParticularState.Applies, ""), (found.State, found.Supply));
        Assert.Equal("Contains caffeine. Not recommended for children or pregnant women (49\u202fmg/100 g)", found.In("en"));
        Assert.EndsWith("(49\u202fmg/100 g)", found.In("de"), StringComparison.Ordinal);
        Assert.Equal(ParticularState.CannotBeSaid, open.State);
        Assert.Contains("cocoa", open.Supply, StringComparison.Ordinal);
    }

    // Annex III(4.2): per 100 g or per 100 ml, as the nutrition declaration is; drinks have a statement of their own.
    [Fact]
    public void Of_CaffeineInASauce_IsSaidPer100MillilitresAndNotOfADrink()
    {
        ParticularFood food = new() { Mixture = LabelKit.Of(WithCaffeine("guarana", 1, 4000), WithCaffeine("syrup", 99, 0)), Category = "desserts", IsLiquid = true, DensityGramsPerMillilitre = 1.25, Says = key => key == "caffeine_for_effect" ? "yes" : null };

        Assert.EndsWith("(50\u202fmg/100 ml)", Find(Eu(food), "caffeine added for what it does").In("en"), StringComparison.Ordinal);
        Assert.EndsWith("(40\u202fmg/100 g)", Find(Eu(food with { IsLiquid = false }), "caffeine added for what it does").In("en"), StringComparison.Ordinal);
        Assert.Equal(ParticularState.DoesNotApply, Find(Eu(food with { Category = "beverages" }), "caffeine added for what it does").State);
        Assert.Equal("food_category in dessert.csv", Find(Eu(food with { Category = null }), "caffeine added for what it does").Supply);
    }

    // Annex III(4.1): more than 150 mg/l, which is 15 mg/100 ml; the mass of 100 ml decides.
    [Theory]
    [InlineData(14.5, 1.04, ParticularState.Applies, "(15.1\u202fmg/100 ml)")]
    [InlineData(15.2, 0.98, ParticularState.DoesNotApply, null)]
    [InlineData(15, 1, ParticularState.DoesNotApply, null)]
    [InlineData(30, 1.05, ParticularState.Applies, "(31.5\u202fmg/100 ml)")]
    public void Of_CaffeineOfADrink_IsHeldAndSaidPer100Millilitres(double milligrams, double density, ParticularState expected, string? amount)
    {
        var found = Find(Eu(new() { Mixture = LabelKit.Of(WithCaffeine("cold drink", 100, milligrams)), Category = "beverages", DensityGramsPerMillilitre = density }), "much caffeine in a drink");

        Assert.Equal((expected, "mg/100 ml"), (found.State, found.Unit));
        Assert.Equal(milligrams * density, found.Amount!.Value.Known, 1e-9);
        if (amount is not null) Assert.EndsWith(amount, found.In("en"), StringComparison.Ordinal);
    }

    // A density is never guessed: without one, only what has no caffeine at all needs none.
    [Fact]
    public void Of_CaffeineOfADrinkWithoutADensity_AsksForIt()
    {
        Particular Drink(double? milligrams) => Find(Eu(new() { Mixture = LabelKit.Of(WithCaffeine("cold drink", 100, milligrams)), Category = "beverages" }), "much caffeine in a drink");

        Assert.All((double?[])[1, 400, null], milligrams => Assert.Equal(ParticularState.CannotBeSaid, Drink(milligrams).State));
        Assert.StartsWith("a row density_g_ml in dessert.csv", Drink(400).Supply, StringComparison.Ordinal);
        Assert.Null(Drink(400).Amount);
        Assert.Equal(ParticularState.DoesNotApply, Drink(0).State);
    }

    // Annex XII: the strength on the pack is measured; the kit does not make it up from masses.
    [Fact]
    public void Of_AlcoholInADrink_AsksForTheStrengthAndPrintsIt()
    {
        ParticularFood food = new() { Mixture = LabelKit.Of(LabelKit.Part("punch", 100, LabelKit.Profile("punch", null, ("ALC", 4)))), Category = "beverages" };

        Assert.Equal("a row alcohol_percent_vol in dessert.csv", Find(Eu(food), "alcohol in a drink").Supply);
        Assert.Equal("5.1 % vol", Find(Eu(food with { Says = key => key == "alcohol_percent_vol" ? "5.1" : null }), "alcohol in a drink").In("fr"));
    }

    // Food and Drug Regulations B.16.016: aspartame alone asks for words; those for other sweeteners, B.01.015 to B.01.020, were repealed.
    [Fact]
    public void Of_SweetenersInCanada_AskForWordsOnlyWhereThereIsAspartame()
    {
        static IEnumerable<string> Asked(string name, string number) => Particulars.Of(new() { Mixture = LabelKit.Of(Part(name, 0.1, number, "sweetener"), Part("flour", 99.9)) }, LabelKit.Canada)
            .Where(each => each.State == ParticularState.Applies).Select(each => each.Rule.Name);

        Assert.Equal(["aspartame"], Asked("aspartame", "E 951"));
        Assert.Empty(Asked("sucralose", "E 955"));
    }

    // Food and Drug Regulations (C.R.C., c. 870), B.02.003: 1.1 % or more by volume. 1 g in 100 g of a drink of 0.98 g/ml is 0.98 g in 100 ml, 1.2 % by volume.
    [Theory]
    [InlineData(1, ParticularState.Applies)]
    [InlineData(0.8, ParticularState.DoesNotApply)]
    public void Of_AlcoholInADrinkInCanada_StandsWithItsName(double grams, ParticularState expected)
    {
        var found = Find(Particulars.Of(new() { Mixture = LabelKit.Of(LabelKit.Part("punch", 100, LabelKit.Profile("punch", null, ("ALC", grams)))), Category = "beverages", DensityGramsPerMillilitre = 0.98, Says = _ => "1.2" }, LabelKit.Canada), "alcohol in a drink");

        Assert.Equal((expected, true), (found.State, found.Rule.IsWithName));
        if (expected == ParticularState.Applies) Assert.Equal(("1.2 % alc./vol.", "1.2 % alc./vol."), (found.In("en"), found.In("fr")));
    }

    // B.16.017: the grams of polydextrose in a serving of stated size; what loses no polydextrose, the water, makes a serving hold more of it.
    [Fact]
    public void Of_PolydextroseInCanada_SaysItsGramsInAServing()
    {
        var cake = LabelKit.Of(Part("polydextrose", 8, "E 1200"), Part("filling", 40, list: "sugar, bulking agent: polydextrose 5 %"), Part("flour", 72)) with { EvaporatedGrams = 20 };
        var found = Find(Particulars.Of(new() { Mixture = cake, ServingGrams = () => 50 }, LabelKit.Canada), "polydextrose");

        Assert.Equal("contains 5 g of polydextrose per serving of 50 g", found.In("en"));
        Assert.Equal("contient 5 g de polydextrose par portion de 50 g", found.In("fr"));
    }

    [Theory]
    [InlineData("sugar, bulking agent: polydextrose", true, "how much polydextrose filling holds")]
    [InlineData("sugar, bulking agent: polydextrose 5 %", false, "portion_g")]
    public void Of_PolydextroseOfUnknownShareOrServing_AsksForIt(string list, bool isServingKnown, string supply)
    {
        var found = Find(Particulars.Of(new() { Mixture = LabelKit.Of(Part("filling", 40, list: list), Part("flour", 60)), ServingGrams = () => isServingKnown ? 50 : null }, LabelKit.Canada), "polydextrose");

        Assert.Equal(ParticularState.CannotBeSaid, found.State);
        Assert.Contains(supply, found.Supply, StringComparison.Ordinal);
    }

    // B.16.018(1): of erythritol there is a statement unless the pack bears a table.
    [Theory]
    [InlineData("none", ParticularState.Applies)]
    [InlineData("yes", ParticularState.DoesNotApply)]
    public void Of_ErythritolInCanada_IsSaidWhereThereIsNoTable(string panel, ParticularState expected) => Assert.Equal(expected, Find(Particulars.Of(new()
    {
        Mixture = LabelKit.Of(Part("erythritol", 10, "E 968"), Part("flour", 90)), ServingGrams = () => 30, Says = key => key == "nutrition_panel" ? panel : null,
    }, LabelKit.Canada), "erythritol without a table").State);

    // A language that has no name of the additive has no wording: nothing is printed with a gap.
    [Fact]
    public void Of_WordingThatNamesAdditives_IsFilledOrLeftOut()
    {
        using RuleFolderCopy copy = new();
        copy.Change("ca", "particulars.csv", "aspartame contains phenylalanine,l’aspartame contient de la phénylalanine", "contains {additives},contient {additives}");
        var found = Find(Particulars.Of(new() { Mixture = LabelKit.Of(Part("aspartame", 0.1, "E 951", "sweetener"), Part("flour", 99.9)) }, copy.Load("ca")), "aspartame");

        Assert.Equal("contains aspartame", found.In("en"));
        Assert.DoesNotContain("{", found.In("fr") ?? "", StringComparison.Ordinal);
    }

    // Annex III(3): 100 mg/kg of glycyrrhizinic acid in confectionery; the figure is of the liquorice and thins out in the food.
    [Theory]
    [InlineData(1999, ParticularState.DoesNotApply)]
    [InlineData(2000, ParticularState.Applies)]
    public void Of_Liquorice_HangsOnItsDocument(double mgPerKg, ParticularState expected)
    {
        ParticularFood food = new() { Mixture = LabelKit.Of(Part("liquorice extract", 5), Part("sugar", 95)), Category = "confectionery" };

        Assert.Equal(expected, Find(Eu(food with { Stated = (ingredient, column) => ingredient.Name == "liquorice extract" && column == "glycyrrhizinic_acid_mg_kg" ? new((decimal)mgPerKg, new("a document", Evidence.Supplier)) : null }), "liquorice").State);
        Assert.Contains("glycyrrhizinic_acid_mg_kg", Find(Eu(food), "liquorice").Supply, StringComparison.Ordinal);
        Assert.Equal(ParticularState.DoesNotApply, Find(Eu(food with { Category = "fine bakery wares" }), "liquorice").State);
    }

    [Fact]
    public void Of_Thawed_StandsUnlessAnExemptionIsAskedForAndIsAskedAboutWhereTheMethodThaws()
    {
        ParticularFood food = new() { Mixture = LabelKit.Of(Part("cream", 100)) };

        Assert.Equal(ParticularState.DoesNotApply, Find(Eu(food), "defrosted").State);
        Assert.Equal(ParticularState.CannotBeSaid, Find(Eu(food with { Asked = ["thawed"] }), "defrosted").State);
        Assert.Equal(ParticularState.Applies, Find(Eu(food with { Says = key => key == "thawed" ? "yes" : null }), "defrosted").State);
        Assert.Equal(ParticularState.Lifted, Find(Eu(food with { Says = key => key == "thawed" ? "yes" : null, Exemptions = ["freezing is a necessary step"] }), "defrosted").State);
    }

    [Fact]
    public void Of_Loaf_TriggersNothingAndShowsHowFarItIsFromTheLimit()
    {
        var polyols = Find(TrialParticulars.Of(Loaf, "V1", "eu"), "polyols");

        Assert.Equal(ParticularState.DoesNotApply, polyols.State);
        // 60 g of syrup with 70 % in a cake of 1962 g, less what stayed in the bowl: the second program's panel has 2.10 g in 100 g.
        Assert.Equal(2.10, polyols.Amount!.Value.Known, 0.005);
        Assert.DoesNotContain(TrialParticulars.Of(Loaf, "V1", "eu"), each => each.State is ParticularState.Applies or ParticularState.CannotBeSaid);
    }

    [Fact]
    public void Of_Tart_AsksTheExemptionForWhatIsSoldThawed() => Assert.Equal(ParticularState.Lifted, Find(TrialParticulars.Of(Tart, "T10", "eu"), "defrosted").State);

    [Fact]
    public void Own_Tart_KeepsTheWorkshopsCautionsApart()
    {
        string[] hazards = [.. TrialParticulars.Own(Tart, "T10").Select(each => each.Rule.Hazard).Distinct()];

        Assert.Contains("choking", hazards);
        Assert.Contains("honey and infants", hazards);
    }

    [Fact]
    public void Of_Words_StandInFiveLanguagesWhereTheUnionPrescribesThem() =>
        Assert.All(ParticularRules.Of(LabelKit.Eu).All, rule => Assert.Equal(["de", "en", "es", "fr", "it"], rule.Wording.Keys.Order(StringComparer.Ordinal)));

    [Fact]
    public void Of_UnknownExemption_NamesTheCellAndTheChoices()
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "cake"));
        File.WriteAllText(Path.Combine(folder.Path, "cake", "formula.csv"), "component,line,way,step,T1\ncake,flour,,1,100\n");
        File.WriteAllText(Path.Combine(folder.Path, "cake", "dessert.csv"), "key,value,trial,notes\nexemption,freezing is necesary,,\n");

        var problem = Assert.Single(Assert.Throws<TableException>(() => TrialParticulars.Of(Dessert.Open(Path.Combine(folder.Path, "cake")), "T1", "eu")).Problems);

        Assert.Equal(("dessert.csv", 2, "value", "freezing is necesary"), (problem.File, problem.Row, problem.Column, problem.Found));
        Assert.StartsWith("one of: freezing is a necessary step", problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_BadRows_AreNamedAllAtOnce()
    {
        using RuleFolderCopy copy = new();
        copy.Append("eu", "particulars.csv", "nothing,,,,,,,,,,,,,,,words,,,,,an act,1,law,text,\nodd,,E 4200,,,,POLYL,about,ten,,thawed,,,,,words,,,,,an act,1,law,text,\n");

        var problems = Assert.Throws<TableException>(() => ParticularRules.Of(copy.Load("eu"))).Problems;

        Assert.Contains(problems, problem => problem.Column == "additives" && problem.Expected.Contains("every pack", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem.Column == "additives" && problem.Expected.Contains("E 4200", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem is { Column: "test", Found: "about" });
        Assert.Contains(problems, problem => problem is { Column: "limit", Found: "ten" });
        Assert.Contains(problems, problem => problem is { Column: "says", Found: "thawed" });
        Assert.Contains(problems, problem => problem is { Column: "unit" });
    }
}
