using Tamis.App.Check;

namespace Tamis.App.Tests.Check;

public class CheckCommandTests
{
    [Fact]
    public void Run_BadCells_SaysEachWithItsPlaceAndFails()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("mine/trials.csv", "trial\nT1\n");
        scratch.Write("mine/formula.csv", "component,line,T1\nshell,flour,lots\nshell,butter,100 g\nshell,salt,-3 g\n");
        using var said = new StringWriter();
        Assert.Equal(1, CheckCommand.Run(scratch["mine"], said));
        Assert.Contains("formula.csv, row 2, column 'T1': found 'lots'", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("formula.csv, row 4, column 'T1'", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_AStoreWithFoodsOfItsOwn_SaysHowManyAndHowTheyWereRead()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("mine/formula.csv", "component,line,T1\nshell,flour,100 g\n");
        scratch.Write("mine/store/ingredients.csv", "ingredient,food\nflour,LAB 1\n");
        scratch.Write("mine/store/composition/sources.csv", "key,evidence,title\nlab,published,Our laboratory\n");
        scratch.Write("mine/store/composition/nutrients.csv", "tag,word,unit\nFAT,fat,g\n");
        scratch.Write("mine/store/composition/foods.csv", "food,name,source\nLAB 1,Farine,lab\n");
        scratch.Write("mine/store/composition/contents.csv", "");
        File.WriteAllBytes(scratch["mine/store/composition/contents.csv"], System.Text.Encoding.Latin1.GetBytes("food,tag,value,source,method\nLAB 1,FAT,1,lab,pes\u00e9e\n"));
        using var said = new StringWriter();
        Assert.Equal(0, CheckCommand.Run(scratch["mine"], said));
        Assert.Contains("composition: 1 food beside those of the kit.", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("composition/contents.csv: letters of Windows-1252", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_NoFormula_SaysSoAndFails()
    {
        using var scratch = new ScratchFolder();
        using var said = new StringWriter();
        Assert.Equal(1, CheckCommand.Run(scratch.Path, said));
        Assert.Contains("formula.csv", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_EachFile_SaysHowItWasReadWhatIsOpenAndWhatIsKept()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("mine/trials.csv", "trial;made_on;Mood\nT1;25/11/2026;good\n");
        scratch.Write("mine/formula.csv", "component,line,T1\nshell,butter,100.5 g\n");
        scratch.Write("mine/.~lock.formula.csv#", "");
        using var said = new StringWriter();
        CheckCommand.Run(scratch["mine"], said);
        Assert.Contains("trials.csv: semicolons, decimal comma, dates day first.", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("trials.csv: kept and not read: Mood.", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("formula.csv is open in a spreadsheet", said.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_KeyThatNothingReads_IsNamedWithTheNearestThatSomethingDoes()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("mine/trials.csv", "trial\nT1\n");
        scratch.Write("mine/formula.csv", "component,line,T1\nshell,butter,100 g\n");
        scratch.Write("mine/dessert.csv", "key,value\nportin_g,40\nname,Loaf\n");
        using var said = new StringWriter();
        Assert.Equal(0, CheckCommand.Run(scratch["mine"], said));
        Assert.Contains("dessert.csv, key 'portin_g': kept and not read; is it portion_g?", said.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("key 'name'", said.ToString(), StringComparison.Ordinal);
    }

    // Two codes of one assessor exchanged: nothing is impossible, so nothing fails, but it is said here and on the page; so are columns that are no question.
    [Fact]
    public void Run_ScoresThatMayBeWrong_AreToLookAt()
    {
        using var scratch = new ScratchFolder();
        foreach (var from in Directory.EnumerateFiles(KitFolder.Data("desserts/damson-tart"))) scratch.Write($"mine/{Path.GetFileName(from)}", File.ReadAllText(from));
        foreach (var from in Directory.EnumerateFiles(KitFolder.Data("desserts/store"))) scratch.Write($"store/{Path.GetFileName(from)}", File.ReadAllText(from));
        var scores = File.ReadAllText(scratch["mine/scores.csv"]);
        scratch.Write("mine/scores.csv", scores.Replace("S1,A11,728", "S1,A11,?", StringComparison.Ordinal).Replace("S1,A11,454", "S1,A11,728", StringComparison.Ordinal)
            .Replace("S1,A11,?", "S1,A11,454", StringComparison.Ordinal).Replace(",remark", ",weather", StringComparison.Ordinal));
        using var said = new StringWriter();

        Assert.Equal(0, CheckCommand.Run(scratch["mine"], said));
        Assert.Contains("To look at: scores.csv, row 42, column 'code': found '454', expected 728 here and 454 in row 43", said.ToString(), StringComparison.Ordinal);
        Assert.Contains("scores.csv: kept and not read: weather.", said.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("tastings.csv: kept and not read", said.ToString(), StringComparison.Ordinal);
    }

    // A baking powder whose pack nobody copied: its raising agents stand in the sheet, the starch beside them would be left off in silence.
    [Fact]
    public void Run_CompoundWithoutItsList_NamesTheCellToFill()
    {
        using var scratch = new ScratchFolder();
        foreach (var folder in (string[])["store", "travel-loaf"])
            foreach (var from in Directory.EnumerateFiles(KitFolder.Data($"desserts/{folder}"), "*.csv")) scratch.Write($"{folder}/{Path.GetFileName(from)}", File.ReadAllText(from));
        var specifications = File.ReadAllText(scratch["store/specifications.csv"]);
        scratch.Write("store/specifications.csv", specifications.Replace("\"diphosphates, sodium carbonates, maize starch\"", "", StringComparison.Ordinal));
        using var said = new StringWriter();

        Assert.Equal(1, CheckCommand.Run(scratch["travel-loaf"], said));

        var line = Assert.Single(said.ToString().Split('\n'), each => each.StartsWith("specifications.csv", StringComparison.Ordinal) && each.Contains("found", StringComparison.Ordinal));
        Assert.StartsWith("specifications.csv, row 12, column 'ingredient_list': found '', expected ingredient_list of the supplier’s specification", line, StringComparison.Ordinal);
        Assert.Contains("baking powder is a compound (baking powder: raising agents (phosphates, sodium carbonates), starch; USDA SR28, food 18370)", line, StringComparison.Ordinal);
        // Canada asks for no list of a baking powder, and Australia and New Zealand for none under 5 %.
        Assert.EndsWith("(rules: eu, gb, us).", line.TrimEnd(), StringComparison.Ordinal);
    }

    // A mistyped allergen would be emphasised on no label: the cell itself is named, in the document as in the sheet of ingredients.
    [Fact]
    public void Run_AllergenThatNobodyKnows_IsNamedInItsOwnCell()
    {
        using var scratch = new ScratchFolder();
        scratch.Write("store/ingredients.csv", "ingredient,food,allergens,may_contain\nbutter,SR28 01145,mlik,\nflour,SR28 20481,wheat,soya; nust\nsugar,SR28 19335,none,\n");
        scratch.Write("store/specifications.csv", "ingredient,document,date,fat_g,allergens\nflour,FLOUR-1,2026-01-02,1,weat\n");
        scratch.Write("mine/formula.csv", "component,line,T1\nshell,butter,100 g\nshell,flour,200 g\nshell,sugar,100 g\n");
        scratch.Write("mine/dessert.csv", "key,value\nname,Loaf\ncross_contact,\"peanuts; almnds\"\n");
        using var said = new StringWriter();

        Assert.Equal(1, CheckCommand.Run(scratch["mine"], said));

        Assert.All(
            [("ingredients.csv, row 2, column 'allergens'", "'mlik' is none, is it milk"), ("ingredients.csv, row 3, column 'may_contain'", "'nust' is none"), ("specifications.csv, row 2, column 'allergens'", "'weat' is none, is it wheat"), ("dessert.csv, row 3, column 'value'", "'almnds' is none, is it almond")],
            cell => Assert.Contains(said.ToString().Split('\n'), line => line.StartsWith(cell.Item1, StringComparison.Ordinal) && line.Contains(cell.Item2, StringComparison.Ordinal)));
        Assert.Contains("4 cells to mend.", said.ToString(), StringComparison.Ordinal);
    }

    // Without a document the blank cell is that of the ingredient, also where the sheet has no such column yet.
    [Theory]
    [InlineData("ingredient,food,label_name,allergens\npraline 50,TAMIS 24,praline paste,hazelnut\n")]
    [InlineData("ingredient,food,label_name,allergens,ingredient_list\npraline 50,TAMIS 24,praline paste,hazelnut,\n")]
    public void Run_CompoundWithoutADocument_NamesTheBlankCellOfItsList(string ingredients)
    {
        using var scratch = new ScratchFolder();
        scratch.Write("formula.csv", "component,line,T1\ncream,praline 50,200 g\n");
        scratch.Write("trials.csv", "trial,parent,made_on\nT1,,2026-11-01\n");
        scratch.Write("dessert.csv", "key,value\nname,Praline cream\nmarket,IE; EU; en\n");
        scratch.Write("store/ingredients.csv", ingredients);
        using var said = new StringWriter();

        Assert.Equal(1, CheckCommand.Run(scratch.Path, said));

        Assert.Contains("ingredients.csv, row 2, column 'ingredient_list': found '', expected for praline 50 ingredient_list of the supplier’s specification", said.ToString(), StringComparison.Ordinal);
    }
}
