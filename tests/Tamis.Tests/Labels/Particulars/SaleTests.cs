using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels;

public class SaleTests
{
    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));

    private static string Write(string folder, string facts, string ingredients = "ingredient,allergens\nflour,wheat\n")
    {
        Directory.CreateDirectory(Path.Combine(folder, "store"));
        Directory.CreateDirectory(Path.Combine(folder, "cake"));
        File.WriteAllText(Path.Combine(folder, "store", "ingredients.csv"), ingredients);
        File.WriteAllText(Path.Combine(folder, "cake", "formula.csv"), "component,line,way,step,T1\ncake,flour,,1,100\n");
        File.WriteAllText(Path.Combine(folder, "cake", "dessert.csv"), "key,value,trial,notes\n" + facts);
        return Path.Combine(folder, "cake");
    }

    [Fact]
    public void Of_EveryRuleSet_KnowsTheSameFourForms() => Assert.All(RuleSets.Load(LabelKit.Folder),
        set => Assert.Equal(["distance selling", "loose", "packed on the premises for direct sale", "prepacked"], SaleRules.Of(set).Forms.Order(StringComparer.Ordinal)));

    // Regulation (EU) No 1169/2011, Article 9(1): twelve particulars; alcoholic strength is for beverages and stands among the statements, the lot is of Directive 2011/91/EU.
    [Fact]
    public void For_Prepacked_HasEveryParticularOfTheLaw() => Assert.Equal(13, SaleRules.Of(LabelKit.Eu).For("prepacked").Count);

    [Fact]
    public void Of_Loaf_SaysWhatIsMissing()
    {
        var list = SaleChecklist.Of(Loaf, "V1", "eu", "en");

        Assert.Equal("prepacked", list.Form);
        Assert.Equal(["lot", "name and address of the business, in the Union"], list.Items.Where(item => item.State == SaleState.Missing).Select(item => item.Requirement.Particular).Order(StringComparer.Ordinal));
        Assert.Equal(SaleState.There, list.Items.Single(item => item.Requirement.Particular == "nutrition declaration").State);
    }

    // What nobody can say whether it must stand keeps the pack from being printed.
    [Fact]
    public void Of_StatementThatCannotBeSaid_IsMissing()
    {
        using TemporaryFolder folder = new();
        var list = SaleChecklist.Of(Dessert.Open(Write(folder.Path, "form_of_sale,prepacked,,\n", "ingredient,allergens,e_number,function\nflour,wheat,E 420,humectant\n")), "T1", "us", "en");

        Assert.Contains("sorbitol_50_g_a_day", list.Items.Single(item => item.Requirement.By == "particulars" && item.State == SaleState.Missing).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_DraftPanel_IsMissingWithItsReason()
    {
        var panel = SaleChecklist.Of(Loaf, "V3", "eu", "en").Items.Single(item => item.Requirement.Particular == "nutrition declaration");

        Assert.Equal(SaleState.Missing, panel.State);
        Assert.Contains("fruit preparation", panel.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_LanguageWithoutWords_IsMissing() =>
        Assert.Equal(SaleState.Missing, SaleChecklist.Of(Loaf, "V1", "eu", "nl").Items.Single(item => item.Requirement.Particular == "list of ingredients").State);

    [Fact]
    public void Of_UnknownForm_NamesTheCellAndTheChoices()
    {
        using TemporaryFolder folder = new();
        var problem = Assert.Single(Assert.Throws<TableException>(() => SaleChecklist.Of(Dessert.Open(Write(folder.Path, "form_of_sale,prepackd,,\n")), "T1", "eu", "en")).Problems);

        Assert.Equal(("dessert.csv", 2, "value", "prepackd"), (problem.File, problem.Row, problem.Column, problem.Found));
        Assert.StartsWith("one of: prepacked, ", problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_NoForm_IsAskedFor()
    {
        using TemporaryFolder folder = new();
        Assert.Contains("distance selling", Assert.Single(Assert.Throws<TableException>(() => SaleChecklist.Of(Dessert.Open(Write(folder.Path, "pieces,1,,\n")), "T1", "eu", "en")).Problems).Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_Exemption_LiftsWhatItLiftsAndAsksAPerson()
    {
        using TemporaryFolder folder = new();
        var list = SaleChecklist.Of(Dessert.Open(Write(folder.Path, "form_of_sale,prepacked,,\nexemption,small quantities sold direct or to local shops,,\n")), "T1", "eu", "en");

        Assert.Equal("nutrition declaration", Assert.Single(list.Items, item => item.State == SaleState.Lifted).Requirement.Particular);
    }

    [Fact]
    public void Of_Loose_AsksForAllergensAndNotForAPanel()
    {
        using TemporaryFolder folder = new();
        var list = SaleChecklist.Of(Dessert.Open(Write(folder.Path, "form_of_sale,loose,,\n", "ingredient,allergens\nflour,\n")), "T1", "eu", "en");

        Assert.Equal("nobody has written down the allergens of flour", Assert.Single(list.Items, item => item.State == SaleState.Missing).Words);
        Assert.Equal("nutrition declaration", Assert.Single(list.Items, item => item.State == SaleState.NotAskedFor).Requirement.Particular);
    }

    [Fact]
    public void Of_BadRow_IsNamed()
    {
        using RuleFolderCopy copy = new();
        copy.Append("eu", "form-of-sale.csv", "loose,ghost,perhaps,,magic,,,,an act,1,law,text,\n");

        Assert.Equal(["by", "needed"], Assert.Throws<TableException>(() => SaleRules.Of(copy.Load("eu"))).Problems.Select(problem => problem.Column).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Counter_Store_SaysContainsMayContainAndNotLookedAt()
    {
        using TemporaryFolder folder = new();
        Write(folder.Path, "name,Cake,,\n", "ingredient,allergens,may_contain\nflour,wheat,hazelnut\n");
        var other = Directory.CreateDirectory(Path.Combine(folder.Path, "tart")).FullName;
        File.WriteAllText(Path.Combine(other, "formula.csv"), "component,line,way,step,T1\ntart,flour,,1,100\ntart,mystery,,1,5\n");
        Directory.CreateDirectory(Path.Combine(folder.Path, "spoilt"));
        File.WriteAllText(Path.Combine(folder.Path, "spoilt", "formula.csv"), "component,line,way,step,T1\ncake,flour,,1,many\n");

        var table = CounterAllergens.Of(Path.Combine(folder.Path, "store"), "eu");

        // Regulation (EU) No 1169/2011, Annex II: fourteen groups.
        Assert.Equal(14, table.Groups.Count);
        var cake = table.Desserts.Single(each => each.Dessert == "Cake");
        CounterMark Mark(CounterDessert dessert, string group) => dessert.Cells[table.Groups.ToList().IndexOf(group)].Mark;
        Assert.Equal((CounterMark.Contains, CounterMark.MayContain, CounterMark.None), (Mark(cake, "cereals containing gluten"), Mark(cake, "nuts"), Mark(cake, "milk")));
        var tart = table.Desserts.Single(each => each.Dessert == "tart");
        Assert.Equal((CounterMark.Contains, CounterMark.NotLookedAt), (Mark(tart, "cereals containing gluten"), Mark(tart, "milk")));
        Assert.Equal(["mystery"], tart.NotLookedAt);
        Assert.Equal("spoilt", Assert.Single(table.Unread).Folder);
    }

    [Theory]
    [InlineData("V1", true)]
    [InlineData("V3", false)]
    public void Counter_Sulphites_CountFromTheirThresholdOn(string trial, bool expected)
    {
        // 95 mg/kg in the peel make about 12 mg/kg of the cake, 14 mg/kg in the fruit preparation about 2: Annex II(12) has 10.
        var list = Loaf.IngredientList(trial, "eu", "en");
        Assert.Equal(expected, list.Contains.Any(rule => rule.Substance == "sulphites"));
    }
}
