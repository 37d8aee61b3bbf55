using System.Text;
using Tamis.App.Label;

namespace Tamis.App.Tests.Label;

public class LabelDrawingCommandTests
{
    private static readonly string Loaf = KitFolder.Data("desserts/travel-loaf");

    [Fact]
    public void Run_AFinishedLabel_WritesItAndSaysWhichLayoutItTook()
    {
        using ScratchFolder scratch = new();
        using StringWriter writer = new();

        Assert.Equal(0, LabelDrawingCommand.Run(Loaf, "IE", "V1b", scratch["out"], writer));

        Assert.StartsWith("<?xml", File.ReadAllText(Path.Combine(scratch["out"], "label-v1b-ie-face-1.svg")), StringComparison.Ordinal);
        Assert.Contains("185mm 75mm", File.ReadAllText(Path.Combine(scratch["out"], "label-v1b-ie-face-1.html")), StringComparison.Ordinal);
        Assert.Contains("table, alone: needs", writer.ToString(), StringComparison.Ordinal);
        Assert.Contains("Look at: Of the name, no ingredient is called travel, loaf:", writer.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_FacesInTheSheet_WritesAFileForEach()
    {
        using ScratchFolder scratch = new();
        using StringWriter writer = new();
        foreach (var folder in (string[])["store", "travel-loaf"])
        {
            Directory.CreateDirectory(Path.Combine(scratch["desserts"], folder));
            foreach (var file in Directory.EnumerateFiles(KitFolder.Data($"desserts/{folder}"))) File.Copy(file, Path.Combine(scratch["desserts"], folder, Path.GetFileName(file)));
        }
        var loaf = Path.Combine(scratch["desserts"], "travel-loaf");
        var sheet = Path.Combine(loaf, "dessert.csv");
        File.WriteAllLines(sheet, [.. File.ReadAllLines(sheet).Where(line => !line.StartsWith("face,", StringComparison.Ordinal)), "face,185 x 75: name; net quantity,,", "face,185 x 65: rest,,"]);

        Assert.Equal(0, LabelDrawingCommand.Run(loaf, "IE", "V1b", scratch["out"], writer));

        Assert.Contains("185mm 75mm", File.ReadAllText(Path.Combine(scratch["out"], "label-v1b-ie-face-1.html")), StringComparison.Ordinal);
        Assert.Contains("185mm 65mm", File.ReadAllText(Path.Combine(scratch["out"], "label-v1b-ie-face-2.html")), StringComparison.Ordinal);
        Assert.Contains("face 2, 185", writer.ToString(), StringComparison.Ordinal);
    }

    [Browser.BrowserFact]
    public void Run_WithABrowser_WritesAPdfToo()
    {
        using ScratchFolder scratch = new();
        using StringWriter writer = new();

        Assert.Equal(0, LabelDrawingCommand.Run(Loaf, "IE; FR; DE", "V1b", scratch["out"], writer));

        Assert.StartsWith("%PDF", Encoding.Latin1.GetString(File.ReadAllBytes(Path.Combine(scratch["out"], "label-v1b-ie-fr-de-face-3.pdf"))), StringComparison.Ordinal);
    }

    // A name that is no program, and a file that is none: said in words, and nothing of any face is written.
    [Fact]
    public void Run_ABrowserThatCannotBeStarted_WritesNothing()
    {
        using ScratchFolder scratch = new();
        scratch.Write("no-program.txt", "not a program");
        foreach (var named in (string[])["no-such-browser", scratch["no-program.txt"]])
        {
            using StringWriter writer = new();

            Assert.Equal(1, LabelDrawingCommand.Run(Loaf, "IE; FR; DE", "V1b", scratch["out"], writer, browserOf: () => PrintBrowser.Find(named, "")));

            Assert.Contains($"'{named}' is no browser that this computer can start: let TAMIS_BROWSER name", writer.ToString(), StringComparison.Ordinal);
            Assert.EndsWith("Nothing was written." + Environment.NewLine, writer.ToString(), StringComparison.Ordinal);
            Assert.False(Directory.Exists(scratch["out"]));
        }
    }

    [Fact]
    public void Find_AName_IsLookedForOnThePath()
    {
        using ScratchFolder scratch = new();
        scratch.Write("bin/chromium", "");

        Assert.NotNull(PrintBrowser.Find("chromium", scratch["bin"]));
        Assert.NotNull(PrintBrowser.Find("", scratch["bin"]));
        Assert.Null(PrintBrowser.Find(null, scratch["other"]));
    }

    // 21 CFR 101.9(b)(12)(i), (f): a package of 250 % of its reference amount is drawn with its second column, short where that is asked for.
    [Theory]
    [InlineData("full", false)]
    [InlineData("short", true)]
    public void Run_AFinishedLabelOfTwoColumns_IsWritten(string form, bool isShort)
    {
        using ScratchFolder scratch = new();
        using StringWriter writer = new();
        scratch.Write("store/ingredients.csv", "ingredient,food,allergens,label_name\nflour,SR28 20080,wheat,whole wheat flour\nsalt,SR28 02047,none,salt\n");
        scratch.Write("formula.csv", "component,line,T1\nwafer,flour,97\nwafer,salt,3\n");
        scratch.Write("dessert.csv", $"key,value\nname,Flour wafer\nnet_g,75\nportion_g,15\nportion_word,wafer\nserving_category,cookies\nmarket,US; US; en\nform_of_sale,prepacked\nbusiness,\"A bakery, Town\"\nbox_mm,150 x 130 x 60\npanel_form,{form}\n");

        Assert.Equal(0, LabelDrawingCommand.Run(scratch.Path, "US", "T1", scratch["out"], writer));

        var svg = File.ReadAllText(Path.Combine(scratch["out"], "label-t1-us.svg"));
        Assert.Contains("Per container", svg, StringComparison.Ordinal);
        Assert.Equal(isShort, svg.Contains("Not a significant source of", StringComparison.Ordinal));
        Assert.NotEqual(isShort, svg.Contains(">Cholesterol<", StringComparison.Ordinal));
    }

    [Fact]
    public void Run_ADraft_WritesNothingAndSaysWhatIsMissing()
    {
        using ScratchFolder scratch = new();
        using StringWriter writer = new();

        Assert.Equal(1, LabelDrawingCommand.Run(Loaf, "US", "V1", scratch["out"], writer));

        Assert.False(Directory.Exists(scratch["out"]));
        Assert.Contains("Stops print: trans fat", writer.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_AnUnknownMarket_NamesThoseThatAreThere()
    {
        using StringWriter writer = new();

        Assert.Equal(1, LabelDrawingCommand.Run(Loaf, "NO", "V1", null, writer));
        Assert.Contains("IE, eu, en", writer.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("Nothing was written.", writer.ToString().TrimEnd(), StringComparison.Ordinal);
    }
}
