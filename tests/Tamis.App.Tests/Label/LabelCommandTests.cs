using Tamis.App.Label;

namespace Tamis.App.Tests.Label;

public class LabelCommandTests
{
    private static ScratchFolder Folder()
    {
        ScratchFolder scratch = new();
        scratch.Write("formula.csv", "component,line,T1\nsugar work,sugar,200 g\n");
        scratch.Write("trials.csv", "trial,parent,made_on\nT1,,2026-11-01\n");
        scratch.Write("dessert.csv", "key,value\nname,Sugar work\nform_of_sale,loose\n");
        scratch.Write("store/ingredients.csv", "ingredient,food,label_name,allergens\nsugar,SR28 19335,sugar,none\n");
        return scratch;
    }

    private static (int Code, string Said) Said(Func<TextWriter, int> run)
    {
        using var said = new StringWriter();
        return (run(said), said.ToString());
    }

    [Fact]
    public void Run_OneRuleSet_WritesFiguresAndWorkingTwice()
    {
        using var scratch = Folder();

        var (code, said) = Said(writer => LabelCommand.Run(scratch.Path, null, ["eu"], scratch["out"], writer));

        Assert.Equal(0, code);
        Assert.Contains("under 1 rule sets", said, StringComparison.Ordinal);
        // "sugar" is in the list, "work" speaks of nothing in it.
        Assert.Contains("Look at: Of the name, no ingredient is called work:", said, StringComparison.Ordinal);
        Assert.Equal(["label-figures.csv", "label-figures.json", "label-working.csv", "label-working.json"], Directory.EnumerateFiles(scratch["out"]).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void Run_ADay_IsInEveryFile()
    {
        using var scratch = Folder();

        var (code, said) = Said(writer => LabelCommand.Run(scratch.Path, null, ["eu"], scratch["out"], writer, new(2026, 6, 13)));

        Assert.Equal(0, code);
        Assert.Contains("under 1 rule sets, by the rules of 2026-06-13", said, StringComparison.Ordinal);
        Assert.All(Directory.EnumerateFiles(scratch["out"]), file => Assert.Contains("2026-06-13", File.ReadAllText(file), StringComparison.Ordinal));
    }

    // A day before the act was in force: the label is a draft, and nothing is signed.
    [Fact]
    public void Sign_ADayBeforeTheAct_IsRefusedInWords()
    {
        using var scratch = Folder();

        var (code, said) = Said(writer => SignCommand.Run(scratch.Path, "T1", "eu", "P1", "en", new(2026, 11, 2), writer, new(2010, 1, 1)));

        Assert.Equal(1, code);
        Assert.Contains("not on 2010-01-01", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-13-40"), InlineData("13.6.2026"), InlineData("soon"), InlineData("")]
    public void RulesDay_ThatIsNone_IsSaidInWords(string text) =>
        Assert.Equal($"--day: found '{text}', expected a day as year-month-day, such as 2026-06-13. Nothing was written.", Assert.Throws<UserProblem>(() => RulesDay.Of(text)).Message);

    [Fact]
    public void RulesDay_IsReadOrLeftToTheSheet() => Assert.Equal((new DateOnly(2026, 6, 13), (DateOnly?)null), (RulesDay.Of("2026-06-13"), RulesDay.Of(null)));

    [Fact]
    public void Run_UnknownRuleSet_NamesTheKnownOnesAndWritesNothing()
    {
        using var scratch = Folder();

        var (code, said) = Said(writer => LabelCommand.Run(scratch.Path, "T1", ["atlantis"], scratch["out"], writer));

        Assert.Equal(1, code);
        Assert.Contains("codex", said, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch["out"]));
    }

    // Each command that puts a panel on paper or into a file names the cell, and writes nothing.
    [Fact]
    public void Run_PanelFormIsNeitherFullNorShort_NamesTheCellInEveryCommand()
    {
        using var scratch = Folder();
        scratch.Write("dessert.csv", "key,value\nmarket,IE; EU; en\nbox_mm,150 x 130 x 60\npanel_form,shrt\n");

        Assert.All(
            [
                Said(writer => LabelCommand.Run(scratch.Path, "T1", ["eu"], scratch["out"], writer)),
                Said(writer => LabelDrawingCommand.Run(scratch.Path, "IE", "T1", scratch["out"], writer)),
                Said(writer => SignCommand.Run(scratch.Path, "T1", "eu", "P1", "en", new(2026, 11, 2), writer)),
            ],
            each =>
            {
                Assert.Equal(1, each.Code);
                Assert.StartsWith("dessert.csv, row 4, column 'value': found 'shrt', expected one of: full, short, energy alone, energy + 4.", each.Said, StringComparison.Ordinal);
            });
        Assert.False(Directory.Exists(scratch["out"]) || Directory.Exists(scratch["records"]));
    }

    [Fact]
    public void Sign_Label_IsWrittenOnceAndThenRefused()
    {
        using var scratch = Folder();
        DateOnly day = new(2026, 11, 2);

        var (first, written) = Said(writer => SignCommand.Run(scratch.Path, "T1", "eu", "P1", "en", day, writer));
        var (second, refused) = Said(writer => SignCommand.Run(scratch.Path, "T1", "eu", "P1", "en", day, writer));

        Assert.Equal((0, 1), (first, second));
        Assert.Contains("T1-eu-en-2026-11-02.json", written, StringComparison.Ordinal);
        Assert.Contains("never written over", refused, StringComparison.Ordinal);
    }

    [Fact]
    public void Sign_Draft_IsRefusedInWords()
    {
        using var scratch = Folder();
        scratch.Write("dessert.csv", "key,value\nname,Sugar work\nform_of_sale,prepacked\n");
        scratch.Write("store/ingredients.csv", "ingredient,food,label_name,allergens\nsugar,,sugar,none\n");

        var (code, said) = Said(writer => SignCommand.Run(scratch.Path, "T1", "eu", "P1", "en", new(2026, 11, 2), writer));

        Assert.Equal(1, code);
        Assert.Contains("cannot be signed yet", said, StringComparison.Ordinal);
        Assert.Contains("not known of sugar", said, StringComparison.Ordinal);
    }

    // A portion that no pack holds is missed by one rule set, a claim that nobody knows by another part: all are named, and each once.
    [Theory]
    [InlineData("label")]
    [InlineData("sign")]
    [InlineData("label-drawing")]
    public void Run_SeveralBadCells_NamesThemAllAtOnce(string command)
    {
        using ScratchFolder scratch = new();
        foreach (var folder in (string[])["store", "travel-loaf"])
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{folder}"), "*.csv")) scratch.Write($"{folder}/{Path.GetFileName(file)}", File.ReadAllText(file));
        var sheet = scratch["travel-loaf/dessert.csv"];
        File.WriteAllText(sheet, File.ReadAllText(sheet).Replace("portion_g,40", "portion_g,400", StringComparison.Ordinal).Replace("\"cakes, mediumweight\"", "\"cakes, mediumwieght\"", StringComparison.Ordinal)
            .Replace("food_category,fine bakery wares", "food_category,fine bakery", StringComparison.Ordinal) + "declare,vitamin Z,,\n");

        var (code, said) = Said(writer => command switch
        {
            "label" => LabelCommand.Run(scratch["travel-loaf"], "V1b", [], scratch["out"], writer),
            "sign" => SignCommand.Run(scratch["travel-loaf"], "V1b", "us", "P1", "en", new(2026, 11, 2), writer),
            _ => LabelDrawingCommand.Run(scratch["travel-loaf"], "US", "V1", scratch["out"], writer),
        });

        Assert.Equal(1, code);
        foreach (var bad in (string[])["'cakes, mediumwieght'", "'vitamin Z'", "'fine bakery'"]) Assert.Single(said.Split('\n'), line => line.Contains(bad, StringComparison.Ordinal));
        if (command == "label") Assert.Single(said.Split('\n'), line => line.Contains("'400'", StringComparison.Ordinal));
        Assert.EndsWith("Nothing was written.", said.TrimEnd(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch["out"]));
    }

    // The label of a cake whose baking powder has no list of its own: the figures may be had, but nothing is printed or signed.
    [Theory]
    [InlineData("sign")]
    [InlineData("label-drawing")]
    public void Run_CompoundWithoutItsList_StopsPrintAndSignature(string command)
    {
        using ScratchFolder scratch = new();
        foreach (var folder in (string[])["store", "travel-loaf"])
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{folder}"), "*.csv")) scratch.Write($"{folder}/{Path.GetFileName(file)}", File.ReadAllText(file));
        var specifications = scratch["store/specifications.csv"];
        var written = File.ReadAllText(specifications);

        Assert.DoesNotContain("baking powder is a compound", Run(), StringComparison.Ordinal);
        File.WriteAllText(specifications, written.Replace("\"diphosphates, sodium carbonates, maize starch\"", "", StringComparison.Ordinal));
        var refused = Run();

        Assert.Contains("baking powder is a compound", refused, StringComparison.Ordinal);
        Assert.Contains("ingredient_list of the supplier’s specification", refused, StringComparison.Ordinal);
        Assert.Contains("ingredients.csv, row 36", refused, StringComparison.Ordinal);
        Assert.Equal(0, Said(writer => LabelCommand.Run(scratch["travel-loaf"], "V1b", ["eu"], scratch["figures"], writer)).Code);

        string Run()
        {
            Directory.CreateDirectory(scratch["out"]);
            return Said(writer => command == "sign" ? SignCommand.Run(scratch["travel-loaf"], "V1b", "eu", "P1", "en", new(2026, 11, 2), writer)
                : LabelDrawingCommand.Run(scratch["travel-loaf"], "IE", "V1b", scratch["out"], writer)).Said;
        }
    }
}
