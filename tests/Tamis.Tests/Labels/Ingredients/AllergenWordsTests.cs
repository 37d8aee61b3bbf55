using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class AllergenWordsTests
{
    private static AllergenRules Rules { get; } = AllergenRules.Of(LabelKit.Eu);

    private static string Found(string text, string language) => string.Join("; ", Rules.Words.Find(text, language).Select(span => span.Substance).Distinct());

    // A phrase means something else; what it names besides is found all the same.
    [Theory]
    [InlineData("crab apple", "en", "")]
    [InlineData("Crab-apples", "en", "")]
    [InlineData("crabapple jelly", "en", "")]
    [InlineData("oyster mushrooms", "en", "")]
    [InlineData("lobster mushroom", "en", "")]
    [InlineData("coconut milk", "en", "")]
    [InlineData("organic coconut milk (coconut, water)", "en", "")]
    [InlineData("almond milk", "en", "almond")]
    [InlineData("oat milk", "en", "oats")]
    [InlineData("soya milk powder", "en", "soya")]
    [InlineData("buckwheat flour", "en", "")]
    [InlineData("egg plant", "en", "")]
    [InlineData("eggplant", "en", "")]
    [InlineData("cocoa butter", "en", "")]
    [InlineData("peanut butter", "en", "peanut")]
    [InlineData("butter beans", "en", "")]
    [InlineData("cocoa butter equivalent", "en", "")]
    [InlineData("cream of tartar", "en", "")]
    [InlineData("coconut cream", "en", "")]
    [InlineData("quince cheese", "en", "")]
    [InlineData("beurre de cacao, crème de cassis", "fr", "")]
    [InlineData("Kakaobutter, Sahnesteif", "de", "")]
    [InlineData("nata de coco, natamicina", "es", "")]
    [InlineData("burro di cacao", "it", "")]
    [InlineData("chestnut, nutmeg, doughnut", "en", "")]
    [InlineData("goats", "en", "")]
    [InlineData("blé noir", "fr", "")]
    [InlineData("lait d'amande", "fr", "almond")]
    [InlineData("lait de coco en poudre", "fr", "")]
    [InlineData("noix de coco râpée, noix de muscade", "fr", "")]
    [InlineData("laitue, bœuf, boeuf", "fr", "")]
    [InlineData("Buchweizenmehl", "de", "")]
    [InlineData("Mandelmilch", "de", "almond")]
    [InlineData("Kokosmilch", "de", "")]
    [InlineData("Sojaeiweiß", "de", "soya")]
    [InlineData("Eierpflaumen, Milchsäure", "de", "")]
    [InlineData("Erdmandelmehl", "de", "")]
    [InlineData("trigo sarraceno", "es", "")]
    [InlineData("leche de almendras", "es", "almond")]
    [InlineData("nuez moscada", "es", "")]
    [InlineData("grano saraceno, granoturco, melograno", "it", "")]
    [InlineData("latte di mandorla", "it", "almond")]
    [InlineData("noce moscata, noce di cocco", "it", "")]
    [InlineData("nuovo", "it", "")]
    public void Find_APhraseThatMeansSomethingElse_NamesOnlyWhatItIs(string text, string language, string expected) => Assert.Equal(expected, Found(text, language));

    // What is overlooked can hurt: the exception holds for the whole phrase alone, and never for the same word beside it.
    [Theory]
    [InlineData("crab, apple", "en", "crustaceans")]
    [InlineData("crab apple salad", "en", "crustaceans")]
    [InlineData("crab apple, crab", "en", "crustaceans")]
    [InlineData("butter", "en", "milk")]
    [InlineData("cocoa butter, butter", "en", "milk")]
    [InlineData("whipping cream", "en", "milk")]
    [InlineData("coconut cream cheese", "en", "milk")]
    [InlineData("sodium caseinate", "en", "milk")]
    [InlineData("peanut butter, buttercream", "en", "peanut; milk")]
    [InlineData("beurre noisette, crème fraîche", "fr", "milk")]
    [InlineData("Süßrahmbutter, Schlagsahne", "de", "milk")]
    [InlineData("mantequilla, nata para montar", "es", "milk")]
    [InlineData("burro, panna fresca", "it", "milk")]
    [InlineData("almond milk chocolate", "en", "almond; milk")]
    [InlineData("coconut milk chocolate", "en", "milk")]
    [InlineData("coconut milk-chocolate", "en", "milk")]
    [InlineData("coconut, milk", "en", "milk")]
    [InlineData("coconut milk, milk", "en", "milk")]
    [InlineData("almond milkshake", "en", "almond; milk")]
    [InlineData("buckwheat and wheat flour", "en", "wheat")]
    [InlineData("goats milk", "en", "milk")]
    [InlineData("oats", "en", "oats")]
    [InlineData("egg, plant oil", "en", "egg")]
    [InlineData("egg fruit cake", "en", "egg")]
    [InlineData("noce, pesca", "it", "walnut")]
    [InlineData("blé, noir", "fr", "wheat")]
    [InlineData("chocolat au lait, noix de coco", "fr", "milk")]
    [InlineData("noix", "fr", "walnut")]
    [InlineData("bœuf, œufs", "fr", "egg")]
    [InlineData("Buchweizen-Weizenmehl", "de", "wheat")]
    [InlineData("Kokosmilchschokolade", "de", "milk")]
    [InlineData("Mandelmilchschokolade", "de", "almond; milk")]
    [InlineData("Erdmandel, Mandel", "de", "almond")]
    [InlineData("Eiweiß", "de", "egg")]
    [InlineData("trigo, sarraceno", "es", "wheat")]
    [InlineData("leche, coco", "es", "milk")]
    [InlineData("grano", "it", "wheat")]
    [InlineData("latte, cocco", "it", "milk")]
    [InlineData("uovo nuovo", "it", "egg")]
    public void Find_AnythingButTheWholePhrase_NamesTheAllergen(string text, string language, string expected) => Assert.Equal(expected, Found(text, language));

    [Fact]
    public void KindsIn_AFungus_IsNoMollusc()
    {
        var molluscs = AllergenRules.Of(LabelKit.Canada).All.First(rule => rule.Substance == "molluscs");

        Assert.Empty(Rules.KindsIn(molluscs, "oyster mushroom", "en"));
        Assert.Equal(["oyster"], Rules.KindsIn(molluscs, "oyster sauce", "en"));
    }

    // A supplier's list is no longer held against allergens that it does not name; what it does name is still asked for.
    [Theory]
    [InlineData("crab apple, sugar", false)]
    [InlineData("coconut milk, sugar", false)]
    [InlineData("buckwheat flour, sugar", false)]
    [InlineData("crab, apple, sugar", true)]
    [InlineData("coconut milk chocolate, sugar", true)]
    public void Of_SuppliersList_IsHeldAgainstWhatItNames(string list, bool asks)
    {
        Tamis.Formulas.Ingredient filling = new() { Name = "filling", LabelName = "filling", Allergens = [], SupplierList = list };
        var made = IngredientDeclaration.Of([new(filling, 30, ["tart"], new("written for a test", Evidence.Computed))], 30, 0, LabelKit.Eu, "en");

        Assert.Equal(asks, made.Problems.Any(problem => problem.ToString().Contains("and its allergens do not", StringComparison.Ordinal)));
    }

    // An exception that holds no word of its substance is a slip of the pen.
    [Fact]
    public void Exceptions_EveryPhrase_HoldsAWordOrAKindOfItsSubstance()
    {
        foreach (var row in SheetFile.Parse(AllergenWords.ExceptionsFile, File.ReadAllBytes(Repository.Path("data", "rules", AllergenWords.ExceptionsFile))).Rows)
            foreach (var language in (string[])["en", "fr", "de", "es", "it"])
                foreach (var phrase in (row[language] ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
                    Assert.True(Holds(row["substance"]!, phrase, language), $"{phrase} ({language})");

        static bool Holds(string substance, string phrase, string language) => Rules.Words.WordsOf(substance, language).Any(word => phrase.Contains(word, StringComparison.OrdinalIgnoreCase))
            || substance == "molluscs" && (phrase.Contains("oyster", StringComparison.Ordinal) || phrase.Contains("huître", StringComparison.Ordinal));
    }
}
