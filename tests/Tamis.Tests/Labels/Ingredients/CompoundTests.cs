using CsCheck;
using Tamis.Composition;
using Tamis.Desserts;
using Tamis.Formulas;
using Tamis.Labels;

namespace Tamis.Tests.Labels;

public class CompoundTests
{
    private const string Missing = "([its own list])";

    private static readonly Source Cell = new("formula.csv", Evidence.Sheet, "row 2, column T1");

    private static readonly Source Row = new("ingredients.csv", Evidence.Sheet, "row 9, column ingredient");

    private static readonly string[] Sets = ["eu", "gb", "us", "ca", "au-nz", "codex"];

    private static Ingredient Bought(string food, string name, params string[] allergens) =>
        new() { Name = name, LabelName = name, Food = food, Allergens = allergens, Compound = KitData.Composition.Find(food).Compound, Origin = Row };

    private static Ingredient Chocolate { get; } = Bought("SR28 19903", "dark chocolate", "soya");

    private static Ingredient Liqueur { get; } = Bought("TAMIS 40", "orange liqueur");

    private static Ingredient Jam { get; } = Bought("SR28 19719", "apricot jam");

    private static Ingredient Margarine { get; } = Bought("SR28 04617", "margarine");

    private static Ingredient Flour { get; } = Bought("SR28 20629", "wheat flour", "wheat");

    private static IngredientDeclaration List(string rules, ListWishes? wishes, params (Ingredient Ingredient, double MassGrams)[] uses) =>
        IngredientDeclaration.Of([.. uses.Select(use => new ListedUse(use.Ingredient, use.MassGrams, [], Cell))], uses.Sum(use => use.MassGrams), 0, KitData.Rules(rules), "en", wishes);

    private static IngredientDeclaration Share(string rules, Ingredient ingredient, double percent, ListWishes? wishes = null) =>
        List(rules, wishes, (ingredient, percent), (new() { Name = "rye flour", LabelName = "rye flour", Allergens = ["rye"] }, 100 - percent));

    [Theory]
    [InlineData("eu")]
    [InlineData("gb")]
    [InlineData("us")]
    [InlineData("ca")]
    [InlineData("au-nz")]
    [InlineData("codex")]
    public void Of_CompoundWithoutAList_WaitsForItInEveryRuleSet(string rules)
    {
        var list = Share(rules, Chocolate, 30);

        var problem = Assert.Single(list.Problems);
        Assert.Equal("dark chocolate", problem.ListOf);
        Assert.StartsWith("dark chocolate is a compound (dark chocolate: cocoa mass, sugar", problem.What, StringComparison.Ordinal);
        Assert.Contains("ingredient_list", problem.Supply, StringComparison.Ordinal);
        Assert.Equal(Row, problem.Origin);
        Assert.Contains($"dark chocolate {Missing}", list.Text, StringComparison.OrdinalIgnoreCase);
        Assert.True(list.IsDraft);
    }

    [Theory]
    [InlineData("eu", "dark chocolate (cocoa mass, sugar, emulsifier: lecithins (soya))")]
    [InlineData("us", "dark chocolate (cocoa mass, sugar, lecithins (soya))")]
    [InlineData("ca", "Dark chocolate (cocoa mass, sugar, lecithins (soya))")]
    [InlineData("au-nz", "dark chocolate (cocoa mass, sugar, emulsifier: lecithins (soya))")]
    [InlineData("codex", "dark chocolate (cocoa mass, sugar, emulsifier: lecithins (soya))")]
    public void Of_CompoundWithItsList_OpensIt(string rules, string printed)
    {
        var list = Share(rules, Chocolate with { SupplierList = "cocoa mass, sugar, emulsifier: lecithins (soya)" }, 30);

        Assert.Empty(list.Problems);
        Assert.Contains(printed, list.Text, StringComparison.Ordinal);
    }

    // Regulation (EU) No 1169/2011, Annex VII Part E(2)(a): less than 2 %, and additives stay.
    [Fact]
    public void Of_CompoundUnderTheLimit_NeedsItsAdditivesAlone()
    {
        var open = Share("eu", Chocolate, 1.9);
        Assert.Contains("the law lets it stand without its own list but for its additives", Assert.Single(open.Problems).What, StringComparison.Ordinal);
        Assert.StartsWith("additives in its document", Assert.Single(open.Problems).Supply, StringComparison.Ordinal);
        Assert.Contains(Missing, open.Text, StringComparison.Ordinal);

        var looked = Share("eu", Chocolate with { AdditiveList = "emulsifier: lecithins (soya)" }, 1.9);
        Assert.Empty(looked.Problems);
        Assert.Equal("Ingredients: rye flour, dark chocolate (emulsifier: lecithins (soya)).", looked.Text);

        var none = Share("eu", Chocolate with { AdditiveList = "" }, 1.9);
        Assert.Empty(none.Problems);
        Assert.Equal("Ingredients: rye flour, dark chocolate (soya).", none.Text);

        Assert.Contains("stands without its class", Assert.Single(Share("eu", Chocolate with { AdditiveList = "lecithins (soya)" }, 1.9).Problems).What, StringComparison.Ordinal);
        Assert.Contains("has no list of its own", Assert.Single(Share("eu", Chocolate with { AdditiveList = "" }, 2).Problems).What, StringComparison.Ordinal);
    }

    // 'compounds,short': the list is known, the law lets it stay closed, and every additive in it is named, those of its own compounds too.
    [Fact]
    public void Of_ListedCompoundThatIsToStandClosed_NamesItsAdditivesHoweverDeep()
    {
        var nougat = Bought("SR28 43046", "nougat", "soya", "almond") with { SupplierList = "sugar, almonds, chocolate (cocoa mass, sugar, emulsifier: lecithins (soya)), citric acid" };

        Assert.Equal("Ingredients: rye flour, nougat (emulsifier: lecithins (soya); citric acid) (almond).", Share("au-nz", nougat, 4.9, new() { Summarises = true }).Text);
    }

    [Theory]
    [InlineData("au-nz", 4.9, true)]
    [InlineData("au-nz", 5, false)]
    [InlineData("codex", 4.9, true)]
    [InlineData("eu", 1.9, true)]
    [InlineData("eu", 2, false)]
    [InlineData("gb", 1.9, true)]
    [InlineData("us", 0.5, false)]
    public void Of_CompoundWhoseAdditivesAreStated_StandsClosedUnderTheLawsLimit(string rules, double percent, bool closed) =>
        Assert.Equal(closed, !Share(rules, Chocolate with { AdditiveList = "" }, percent).IsDraft);

    // Food and Drug Regulations (Canada), B.01.009(1): margarine at any share, jam under 5 per cent; nothing is said of additives.
    [Fact]
    public void Of_CompoundThatTheLawNeverOpens_StandsByItsNameAlone()
    {
        Assert.Empty(Share("ca", Margarine, 30).Problems);
        Assert.Equal("Ingredients: Rye flour, Margarine.", Share("ca", Margarine, 30).Text);
        Assert.Empty(Share("ca", Jam, 4.9).Problems);
        Assert.Single(Share("ca", Jam, 5).Problems);
        Assert.Empty(Share("eu", Liqueur, 10).Problems);
        Assert.Contains(Share("eu", Liqueur, 10).Items, item => item.Reasons.Any(reason => reason.Origin?.Locator.Contains("Article 16(4)", StringComparison.Ordinal) == true));
        Assert.Single(Share("us", Liqueur, 10).Problems);
        Assert.Contains(Share("ca", Jam, 4.9).Remarks, remark => remark.Words == "apricot jam stands without its own list: only where it complies with the standard that the item names.");
    }

    // B.01.009(1), items 23 and 24, speak of the total amount: two jams, or a jam and a marmalade, count together.
    [Fact]
    public void Of_CompoundsThatTheLawCountsTogether_AreHeldAgainstTheLimitAsOne()
    {
        var (marmalade, flour) = (Bought("SR28 19303", "orange marmalade"), Bought("SR28 20063", "rye flour", "rye"));

        Assert.Empty(List("ca", null, (Jam, 2), (marmalade, 2.9), (flour, 95.1)).Problems);
        Assert.Equal(["apricot jam", "orange marmalade"], List("ca", null, (Jam, 2), (marmalade, 3), (flour, 95)).Problems.Select(problem => problem.ListOf).Order());
    }

    // Allergens are never exempt with the list.
    [Fact]
    public void Of_ClosedCompoundOfWhichNobodyKnowsTheAllergens_IsADraft() =>
        Assert.Contains("nobody has written down the allergens", Assert.Single(Share("ca", Margarine with { Allergens = null }, 30).Problems).What, StringComparison.Ordinal);

    [Fact]
    public void Of_ListThatIsTheNameAlone_OverrulesTheTableAndSaysSo()
    {
        var list = Share("eu", Bought("SR28 09032", "dried apricots") with { SupplierList = "dried apricots" }, 30);

        Assert.Empty(list.Problems);
        Assert.Equal("Ingredients: rye flour, dried apricots.", list.Text);
        Assert.Contains(list.Remarks, remark => remark.Words.StartsWith("dried apricots is taken for a single food, as its list says", StringComparison.Ordinal));
    }

    // Copied whole from its pack, with its own name before the brackets: the name is printed once.
    [Fact]
    public void Of_ListThatBeginsWithItsOwnName_PrintsTheNameOnce() =>
        Assert.Equal(Share("gb", Flour with { SupplierList = "wheat flour, calcium carbonate, iron" }, 30).Text, Share("gb", Flour with { SupplierList = "Wheat flour (wheat flour, calcium carbonate, iron)" }, 30).Text);

    // White flour in Great Britain has calcium, iron, niacin and thiamin by law; the mill says whether this one has.
    [Fact]
    public void Of_FlourThatALawFortifies_IsAskedForThereAlone()
    {
        Assert.Empty(Share("eu", Flour, 30).Problems);
        Assert.Contains("calcium carbonate, iron, niacin and thiamin", Assert.Single(Share("gb", Flour, 30).Problems).What, StringComparison.Ordinal);
        Assert.Empty(Share("gb", Flour with { SupplierList = "wheat flour" }, 30).Problems);
        Assert.Contains("wheat flour (wheat flour, calcium carbonate, iron, niacin, thiamin)", Share("gb", Flour with { SupplierList = "wheat flour, calcium carbonate, iron, niacin, thiamin" }, 30).Text, StringComparison.Ordinal);
    }

    // Of a baking powder the sheet names the raising agents; the starch beside them would be left off in silence.
    [Fact]
    public void Of_MixtureOfAdditivesWithoutAList_AsksForWhatElseIsInIt()
    {
        var powder = Bought("SR28 18370", "diphosphates, sodium carbonates") with { Name = "baking powder", AdditiveNumbers = ["E 450", "E 500"], Function = "raising agent" };

        Assert.Equal("baking powder", Assert.Single(Share("eu", powder, 1).Problems).ListOf);
        Assert.Contains("[its own list]", Share("eu", powder, 1).Text, StringComparison.Ordinal);
        Assert.Empty(Share("eu", powder with { SupplierList = "diphosphates, sodium carbonates, maize starch" }, 1).Problems);
        Assert.Empty(Share("ca", powder, 1).Problems);
        Assert.Empty(Share("au-nz", powder, 1).Problems);
    }

    [Fact]
    public void Of_SameNameWithOtherLists_StandApartAndWithTheSameTogether()
    {
        var first = Chocolate with { Name = "64 %", SupplierList = "cocoa mass, sugar, cocoa butter" };
        var turned = Chocolate with { Name = "55 %", SupplierList = "sugar, cocoa mass, cocoa butter" };
        var other = Chocolate with { Name = "with vanilla", SupplierList = "cocoa mass, sugar, cocoa butter, vanilla" };

        Assert.Equal("Ingredients: dark chocolate (sugar, cocoa mass, cocoa butter) (soya).", List("eu", null, (first, 30), (turned, 40)).Text);
        var apart = List("eu", null, (first, 30), (other, 20));
        Assert.Equal("Ingredients: dark chocolate (cocoa mass, sugar, cocoa butter) (soya), dark chocolate (cocoa mass, sugar, cocoa butter, vanilla) (soya).", apart.Text);
        Assert.Contains(apart.Remarks, remark => remark.Words.Contains("not the same list of their own", StringComparison.Ordinal));
        Assert.Equal("unlisted", Assert.Single(List("eu", null, (first, 30), (Chocolate with { Name = "unlisted" }, 20)).Problems).ListOf);
    }

    // In a bracket of its own, as components.csv asks, a compound is looked at as in the list itself.
    [Fact]
    public void Of_CompoundInAHouseMadeComponent_IsOpenedOrAskedForThere()
    {
        IngredientDeclaration Of(Ingredient chocolate) => IngredientDeclaration.Of([new(chocolate, 60, ["ganache"], Cell), new(new() { Name = "cream", LabelName = "cream", Allergens = ["milk"] }, 40, ["ganache"], Cell)], 100, 0, LabelKit.Eu, "en");

        Assert.Equal("Ingredients: ganache (dark chocolate (cocoa mass, sugar) (soya), cream (milk)).", Of(Chocolate with { SupplierList = "cocoa mass, sugar" }).Text);
        Assert.Single(Of(Chocolate).Problems);
    }

    // Whatever compounds of the table go in without a list, at whatever share: each is asked for, or a rule says that the law asks for none.
    [Fact]
    public void Of_AnyCompoundsWithoutAList_NeverPrintAsSingleFoods()
    {
        var compounds = KitData.Composition.Foods.Where(food => food.Compound!.IsCompound).ToArray();
        Gen.Select(Gen.Select(Gen.Int[0, compounds.Length - 1], Gen.Double[0.1, 500]).Array[1, 8], Gen.Int[0, Sets.Length - 1], Gen.Bool).Sample((lines, set, closes) =>
        {
            var rules = Sets[set];
            var uses = lines.DistinctBy(line => line.Item1).Select(line => (Bought(compounds[line.Item1].Id, $"thing {compounds[line.Item1].Id}"), line.Item2)).ToArray();
            var list = List(rules, new() { Summarises = closes }, uses);
            var (all, limits) = (CompoundRules.Of(KitData.Rules(rules)), ListRules.Of(KitData.Rules(rules)));

            foreach (var (ingredient, mass) in uses)
            {
                var together = all.CountedWith(ingredient.Compound!.Kind);
                var leave = all.LeaveOf(limits, ingredient.Name, ingredient.Compound.Kind, mass / list.FinishedGrams * 100,
                    uses.Where(each => together.Contains(each.Item1.Compound!.Kind, Names.Comparer)).Sum(each => each.Item2) / list.FinishedGrams * 100);
                var isAsked = list.Problems.Any(problem => problem.ListOf == ingredient.Name);
                Assert.Equal(leave is null or { NamesAdditives: true }, isAsked);
                Assert.Equal(isAsked, list.Text.Contains($"{ingredient.Name} {Missing}", StringComparison.OrdinalIgnoreCase));
            }
        });
    }

    // The tart's bought chocolate stands in components of the house, and two couvertures have one name and list the same.
    [Theory]
    [InlineData("eu")]
    [InlineData("gb")]
    [InlineData("us")]
    [InlineData("ca")]
    [InlineData("au-nz")]
    [InlineData("codex")]
    public void Of_DemoDesserts_HaveEveryCompoundOpened(string rules)
    {
        foreach (var folder in (string[])["damson-tart", "travel-loaf"])
        {
            var dessert = Dessert.Open(Repository.Path("data", "desserts", folder));
            var lists = dessert.Batches.Where(batch => batch.Whole is { FinishedGrams: > 0 }).Select(batch => dessert.IngredientList(batch.Trial, rules, "en")).ToArray();

            Assert.DoesNotContain(lists.SelectMany(list => list.Problems), problem => problem.ListOf is not null);
            if (folder == "damson-tart") Assert.Contains(lists, list => list.Text.Contains("dark chocolate (cocoa mass, sugar, cocoa butter", StringComparison.OrdinalIgnoreCase));
            Assert.All(lists, list => Assert.True(list.Items.Select(item => item.Printed).Distinct(Names.Comparer).Count() == list.Items.Count, list.Text));
        }
    }

    [Fact]
    public void Rules_EachKind_IsOneThatTheCompositionTableKnows()
    {
        var kinds = KitData.Composition.Foods.Select(food => food.Compound!.Kind).Concat(["bread", "fruit jelly", "spice mixture"]).ToHashSet(Names.Comparer);
        foreach (var rules in Sets) Assert.All(CompoundRules.Of(KitData.Rules(rules)).All, rule => Assert.Contains(rule.Kind, kinds));
    }
}
