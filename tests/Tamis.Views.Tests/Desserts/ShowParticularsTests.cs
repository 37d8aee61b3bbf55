using Tamis.Desserts;

namespace Tamis.Views.Tests;

public class ShowParticularsTests
{
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));
    private static readonly Dessert First = Dessert.Open(KitFolder.Data("desserts/first"));
    private static readonly Dessert Tart = Dessert.Open(KitFolder.Data("desserts/damson-tart"));

    [Fact]
    public void ReservedNames_CompoundChips_StopTheRelease()
    {
        var page = Show.ReservedNames(Loaf, "V2", "eu").ToPlainText();

        Assert.Contains("dry cocoa solids 14\u202f%, wanted at least 35\u202f%", page, StringComparison.Ordinal);
        Assert.Contains("Stops release", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Particulars_EveryMarketOfTheLoaf_ShowsEveryPart() =>
        Assert.All(Loaf.Markets("V2"), market => Assert.All(["Statements", "Net quantity", "Date and storage", "Additives", "own cautions"], part => Assert.Contains(part, Show.Particulars(Loaf, "V2", market).Markup, StringComparison.Ordinal)));

    // A further language of a rule set has words of its own, and nothing else of its own.
    [Fact]
    public void Particulars_AFurtherLanguage_SaysItsWordsAndNoMore()
    {
        var french = Show.Particulars(Loaf, "V1b", Loaf.Markets("V1b").First(market => market.Language == "fr"), isFirst: false).ToPlainText();

        Assert.All(["Net quantity", "À consommer de préférence avant"], words => Assert.Contains(words, french, StringComparison.OrdinalIgnoreCase));
        Assert.All(["Additives of", "A piece of this formula", "What the date hangs on", "own cautions"], words => Assert.DoesNotContain(words, french, StringComparison.Ordinal));
    }

    [Fact]
    public void AdditiveLevels_VegetableCarbon_StopsTheReleaseInOneMarketOnly()
    {
        Assert.Contains("Vegetable carbon (E 153)", Show.AdditiveLevels(Tart, "T10", "us").ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("not permitted", Show.AdditiveLevels(Tart, "T10", "eu").ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void FormOfSale_EveryMarket_SaysWhatIsMissing() => Assert.All(Loaf.Markets("V1"), market => Assert.Contains("sold prepacked", Show.FormOfSale(Loaf, "V1", market).ToPlainText(), StringComparison.Ordinal));

    // Ireland, France, Germany, Spain and Italy share the rules, and each language of them is a pack of its own; a country is drawn once, in all its languages.
    [Fact]
    public void EachMarket_OfTheLoaf_StandsOnceUnderItsHeading()
    {
        Assert.Equal(10, Show.EachMarket(Loaf, "V2", market => Html.Text("x")).Markup.Split("<h3>").Length);
        Assert.Equal(["European Union", "Great Britain", "United States", "Canada"], Titles(Show.EachRuleSet(Loaf, "V2", _ => Html.Text("x"))));
        Assert.Equal(["IE", "FR", "DE", "ES", "IT", "GB", "US", "CA"], Titles(Show.EachCountry(Loaf, "V2", _ => Html.Text("x"))));
        Assert.Contains("a row market in dessert.csv", Show.EachRuleSet(First, First.Candidate, _ => Html.Text("x")).ToPlainText(), StringComparison.Ordinal);

        static string[] Titles(Html view) => [.. view.Markup.Split("<h3>").Skip(1).Select(part => part[..part.IndexOf("</h3>", StringComparison.Ordinal)])];
    }

    [Fact]
    public void CounterAllergens_InALanguage_HasItsWords()
    {
        var page = Show.CounterAllergens(Tart, "eu", "fr").ToPlainText();

        Assert.Contains("Fruits à coque", page, StringComparison.Ordinal);
        Assert.DoesNotContain("No term", page, StringComparison.Ordinal);
        Assert.Contains("No term in 'es' for tree nuts", Show.CounterAllergens(Tart, "ca", "es").ToPlainText(), StringComparison.Ordinal);

        Assert.Contains("contient", page, StringComparison.Ordinal);
        Assert.Contains("seigle", page, StringComparison.Ordinal);
    }

    [Fact]
    public void CounterAllergens_Store_HasEveryDessertAndGroup()
    {
        var page = Show.CounterAllergens(Tart).ToPlainText();

        Assert.All(["Damson, toasted-rye and bay tart (T10)", "Rye, honey and citrus travel loaf", "Molluscs"], words => Assert.Contains(words, page, StringComparison.Ordinal));
    }

    // Regulation (EU) No 1169/2011, Annex III(4.1): espresso has 212 mg of caffeine in 100 g (SR28 14210); at 1.02 g/ml half of it, with as much sugar, comes to 108.1 mg in 100 ml.
    [Fact]
    public void Particulars_DrinkWithCaffeine_SaysItPer100MillilitresOrAsksForTheDensity()
    {
        var folder = Directory.CreateTempSubdirectory("tamis-drink-").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(folder, "store"));
            File.WriteAllText(Path.Combine(folder, "store", "ingredients.csv"), "ingredient,food\nshot,SR28 14210\nsugar,SR28 19335\n");
            File.WriteAllText(Path.Combine(folder, "formula.csv"), "component,line,T1\ndrink,shot,50\ndrink,sugar,50\n");
            string PageOf(params string[] rows)
            {
                File.WriteAllText(Path.Combine(folder, "dessert.csv"), string.Join('\n', ["key,value", "food_category,beverages", "state,liquid", .. rows]) + "\n");
                return Show.Particulars(Dessert.Open(folder), "T1", "eu").ToPlainText();
            }

            Assert.Contains("breast-feeding women (108.1\u202fmg/100 ml)", PageOf("density_g_ml,1.02"), StringComparison.Ordinal);
            Assert.Contains("Much caffeine in a drink: supply a row density_g_ml in dessert.csv", PageOf(), StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // No document states hydroxymethylfurfural; the pack label of the honey bears its name, and its supplier answers for it.
    [Fact]
    public void ReservedNames_NameByItsDocument_SaysWhoAnswersForIt()
    {
        var page = Show.ReservedNames(Loaf, "V1b", "eu").ToPlainText();

        Assert.Contains("By its document", page, StringComparison.Ordinal);
        Assert.Contains("pack label, 2026-05-04 does, and who supplied it answers for the composition. To be sure of it, supply hmf_mg_kg", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Cannot be said", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Particulars_Names_AreEscaped() => Assert.DoesNotContain("<script>", Show.ReservedNames(Spoilt(), "T1", "eu").Markup + Show.FormOfSale(Spoilt(), "T1", "eu").Markup, StringComparison.Ordinal);

    private static Dessert Spoilt()
    {
        var folder = Directory.CreateTempSubdirectory("tamis-").FullName;
        File.WriteAllText(Path.Combine(folder, "formula.csv"), "component,line,way,step,T1\ncake,butter <script>,,1,100\n");
        File.WriteAllText(Path.Combine(folder, "dessert.csv"), "key,value,trial,notes\nname,Butter <script>alert(1)</script>,,\nform_of_sale,loose <script>,,\n");
        return Dessert.Open(folder);
    }

    // What the pack prints stands beside what the sheet says, with its article; a rule set without words of its own shows the grams alone.
    [Fact]
    public void NetQuantity_UnitedStates_ShowsTheStatementOfThePackWithItsArticle()
    {
        var loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));

        Assert.Contains("<strong>Net Wt 11.2 oz (320 g)</strong>. <small>21 CFR 101.7", Show.NetQuantity(loaf, "V1", "us").Markup, StringComparison.Ordinal);
        // Where the pack says it as the sheet does it is not said twice.
        Assert.DoesNotContain("On the pack", Show.NetQuantity(loaf, "V1", "eu").Markup, StringComparison.Ordinal);
        Assert.Contains("<small>Regulation (EU) No 1169/2011, Article 23(1)", Show.NetQuantity(loaf, "V1", "eu").Markup, StringComparison.Ordinal);
    }
}
