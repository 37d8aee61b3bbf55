using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public sealed class DessertTests : IDisposable
{
    private const string Formula = "component,line,T1,T2\nshell,flour,200 g,200 g\nshell,butter,100 g,110 g\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-dessert-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Open_FormulaAlone_GivesMassesRatiosAndDifferences()
    {
        Write("formula.csv", Formula);
        var dessert = Open();

        Assert.Empty(dessert.Problems);
        Assert.Equal(["T1", "T2"], dessert.Batches.Select(batch => batch.Trial));
        Assert.Equal(0.5, dessert.RatiosOf("T1", "shell").Of("butter"), 12);
        Assert.Equal("butter", Assert.Single(TrialStep.Between(dessert, "T1", "T2").Difference.Lines).Line);
        Assert.Equal("T2", dessert.Candidate);
        Assert.Null(dessert.Tastings);
        Assert.Contains(dessert.SheetsMissing, missing => missing.File == "ingredients.csv" && missing.WouldAdd.Length > 0);
    }

    [Fact]
    public void Open_BadScores_StopTheTastingAndNothingElse()
    {
        Write("formula.csv", Formula);
        Write("attributes.csv", "attribute,kind,low,high\nliking,liking,0,10\n");
        Write("servings.csv", "tasting,assessor,position,code,trial,make\nS1,A1,1,123,T1,1\nS1,A1,2,456,T2,1\n");
        Write("scores.csv", "tasting,assessor,code,liking\nS1,A1,123,55\nS1,A1,999,5\n");
        var dessert = Open();

        var problems = Assert.Throws<TableException>(() => dessert.Tastings).Problems;
        Assert.Equal([2, 3], problems.Select(problem => problem.Row).Order());
        Assert.All(problems, problem => Assert.Equal("scores.csv", problem.File));
        Assert.Equal(problems, dessert.Problems);
        Assert.Equal(310, dessert.Trial("T2").Find("shell")!.MassInGrams);
        Assert.NotEmpty(dessert.Weighing("T2", 1).Components);
    }

    [Fact]
    public void Open_BadFormula_StopsTheBatchesAndNotTheTastings()
    {
        Write("formula.csv", "component,line,T1\nshell,flour,lots of it\nshell,butter,100\nshell,salt,2 g\nshell,sugar,50\n");
        Write("attributes.csv", "attribute,kind,low,high\nliking,liking,0,10\n");
        Write("servings.csv", "tasting,assessor,position,code,trial,make\nS1,A1,1,123,T1,1\n");
        Write("scores.csv", "tasting,assessor,code,liking\nS1,A1,123,5\n");
        var dessert = Open();

        Assert.Equal("lots of it", Assert.Single(Assert.Throws<TableException>(() => dessert.Batches).Problems).Found);
        Assert.Single(dessert.Tastings!.Scores);
    }

    [Fact]
    public void Open_FoodMistyped_IsNamedWithTheNearestOnes()
    {
        Write("formula.csv", Formula);
        Write("store/ingredients.csv", "ingredient,food\nflour,SR28 20629\nbutter,SR28 0114\n");

        var problem = Assert.Single(Open().Problems);
        Assert.Equal(("ingredients.csv", 3, "food", "SR28 0114"), (problem.File, problem.Row, problem.Column, problem.Found));
        Assert.Contains("SR28 01145", problem.Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-03-01", "old sheet")]
    [InlineData("2026-06-01", "new sheet")]
    [InlineData("2025-01-01", "old sheet")]
    public void Open_Documents_TheNewestOnOrBeforeTheDayCounts(string day, string document)
    {
        Write("formula.csv", Formula);
        Write("store/ingredients.csv", "ingredient,food\nflour,\nbutter,\n");
        Write("store/specifications.csv", "ingredient,document,date,fat_g\nbutter,old sheet,2026-02-01,80\nbutter,new sheet,2026-05-01,82\n");

        var store = Dessert.Open(_folder, DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture)).Store;
        Assert.Equal(document == "old sheet" ? 80 : 82, store.Ingredients.Find("butter")!.Profile!["FAT"].Per100Grams);
        Assert.Equal(document == "old sheet" ? 1 : 0, store.Remarks.Count);
    }

    [Fact]
    public void Open_BlankOfTheNewestDocument_ComesFromTheFoodAndNeverFromAnOlderOne()
    {
        Write("formula.csv", Formula);
        Write("store/ingredients.csv", "ingredient,food\nflour,\nbutter,SR28 01145\n");
        Write("store/specifications.csv", "ingredient,document,date,fat_g,salt_g\nbutter,old sheet,2026-02-01,80,1.5\nbutter,new sheet,2026-05-01,82,\n");

        var butter = Open().Store.Ingredients.Find("butter")!.Profile!;
        Assert.Equal(82, butter["FAT"].Per100Grams);
        Assert.Equal(11, butter["NA"].Per100Grams);
    }

    [Fact]
    public void Open_AllergensBlankNoneAndNamed_AreThreeStatements()
    {
        Write("formula.csv", Formula);
        Write("store/ingredients.csv", "ingredient,allergens\nflour,wheat; rye\nbutter,none\nsalt,\n");

        var store = Open().Store.Ingredients;
        Assert.Equal(["wheat", "rye"], store.Find("flour")!.Allergens);
        Assert.Empty(store.Find("butter")!.Allergens!);
        Assert.Null(store.Find("salt")!.Allergens);
    }

    [Fact]
    public void Open_KitchenFolderWithOneDessert_FindsItWithTheStoreBesideIt()
    {
        Write("tart/formula.csv", Formula);
        Write("store/ingredients.csv", "ingredient,food\nflour,SR28 20629\nbutter,SR28 01145\n");

        var dessert = Open();
        Assert.Equal("tart", dessert.FolderName);
        Assert.NotNull(dessert.Trial("T1").Whole!.Per100Grams("FAT"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("sub/")]
    public void Open_NoFormula_SaysWhereItShouldBe(string inside)
    {
        Write(inside + "other.csv", "a,b\n1,2\n");

        Assert.Contains("formula sheet", Assert.Throws<TableException>(Open).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Trial_Unknown_NamesTheTrialsThereAre()
    {
        Write("formula.csv", Formula);

        Assert.Contains("T1, T2", Assert.Throws<KeyNotFoundException>(() => Open().Trial("T9")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Open_SemicolonsAndCommaDecimals_ReadAsTheSpreadsheetWroteThem()
    {
        Write("formula.csv", "sep=;\r\nComponent;Line;T1\r\nshell;flour;200,5 g\r\nshell;butter;100,25 g\r\n;;\r\n;;\r\n");

        Assert.Equal(300.75, Open().Trial("T1").Find("shell")!.MassInGrams, 12);
    }

    private Dessert Open() => Dessert.Open(_folder);

    private void Write(string file, string text)
    {
        var path = Path.Combine(_folder, file);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }
}
