using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Tamis.App.Paper;
using Tamis.App.Tests.Browser;

namespace Tamis.App.Tests.Paper;

public sealed class PaperCommandTests : IDisposable
{
    private readonly ScratchFolder _scratch = new();

    private static string Desserts => KitFolder.Data("desserts");

    public void Dispose() => _scratch.Dispose();

    private string Written(string dessert, out string said)
    {
        using var writer = new StringWriter();
        Assert.Equal(0, PaperCommand.Run(Path.Combine(Desserts, dessert), null, null, _scratch["paper"], writer));
        said = writer.ToString();
        return _scratch["paper"];
    }

    [Fact]
    public void Run_DemoOrder_WritesFiveSheetsFromTheSameData()
    {
        var folder = Written("damson-tart", out var said);

        Assert.Equal(["batch", "labels", "ready", "shopping", "specification"], Directory.EnumerateFiles(folder).Select(file => Path.GetFileName(file).Split('-')[0]).Order(StringComparer.Ordinal));
        Assert.Contains("shopping-damson-tart-t10.html", said, StringComparison.Ordinal);
        string Text(string sheet) => File.ReadAllText(Directory.EnumerateFiles(folder, $"{sheet}-*").Single());
        // The butter of the shopping list is the butter to have ready.
        var butter = Regex.Match(Text("ready"), @"<b>(?<mass>[^<]+)</b> butter").Groups["mass"].Value;
        Assert.Contains(butter.Replace("\u202fg", "", StringComparison.Ordinal), Regex.Replace(Text("shopping"), "</?i>", ""), StringComparison.Ordinal);
        Assert.Contains("hot sugar", Text("batch"), StringComparison.OrdinalIgnoreCase);
        // Where time and temperature decide, there is room to write what was measured.
        Assert.Matches("class=\"limit\"><b>freeze[^<]*−18", Text("batch"));
        Assert.Contains("Keeps 30 days", Text("labels"), StringComparison.Ordinal);
        // Moulds are counted; what is left over says what it contains and where it can go.
        Assert.Contains("<b>12</b> × ring 140x30", Text("ready"), StringComparison.Ordinal);
        Assert.Matches("wafer <small>contains egg, milk, rye; keeps 10[^;]*; goes into nothing else", Text("ready"));
        Assert.Contains("Putting together", Text("specification"), StringComparison.Ordinal);
    }

    // The folder that a beginner starts with: a formula, a trial and a few ingredients.
    [Fact]
    public void Run_WithoutAMontage_MakesTheOtherSheetsAndSaysWhatIsMissing()
    {
        var folder = Written("first", out _);

        Assert.Contains("montage.csv", File.ReadAllText(Directory.EnumerateFiles(folder, "shopping-*").Single()), StringComparison.Ordinal);
        Assert.Contains("class=\"weigh\"", File.ReadAllText(Directory.EnumerateFiles(folder, "batch-*").Single()), StringComparison.Ordinal);
    }

    // A blank under allergens is unknown: no sheet may say that there is none.
    [Theory]
    [InlineData("batch")]
    [InlineData("labels")]
    [InlineData("specification")]
    public void Run_IngredientNobodyLookedAt_IsNamedAndNotCalledFree(string sheet)
    {
        var dessert = _scratch["plain"];
        Directory.CreateDirectory(Path.Combine(dessert, "store"));
        File.WriteAllText(Path.Combine(dessert, "formula.csv"), "component,line,way,step,T1\ncream,mystery powder,,1,100 g\n");
        File.WriteAllText(Path.Combine(dessert, "store", "ingredients.csv"), "ingredient,allergens\nmystery powder,\n");
        using var writer = new StringWriter();

        Assert.Equal(0, PaperCommand.Run(dessert, "T1", 1, _scratch["paper"], writer));
        var text = File.ReadAllText(Directory.EnumerateFiles(_scratch["paper"], $"{sheet}-*").Single());
        Assert.Contains("Nobody has looked at mystery powder", text, StringComparison.Ordinal);
        Assert.DoesNotContain("no listed allergen", text, StringComparison.Ordinal);
    }

    // A price below zero is no price to shop by: the cell is named, and no sheet is printed.
    [Fact]
    public void Run_NegativePrice_NamesTheCellAndPrintsNothing()
    {
        var dessert = _scratch["plain"];
        Directory.CreateDirectory(Path.Combine(dessert, "store"));
        File.WriteAllText(Path.Combine(dessert, "formula.csv"), "component,line,way,step,T1\nwhipped,cream,,1,100 g\n");
        File.WriteAllText(Path.Combine(dessert, "dessert.csv"), "key,value\npieces,1\n");
        File.WriteAllText(Path.Combine(dessert, "store", "ingredients.csv"), "ingredient\ncream\n");
        File.WriteAllText(Path.Combine(dessert, "store", "prices.csv"), "ingredient,pack_g,price,currency\ncream,1000,-5,EUR\n");
        using var writer = new StringWriter();

        Assert.Equal(1, PaperCommand.Run(dessert, "T1", 1, _scratch["paper"], writer));
        Assert.Contains("prices.csv, row 2, column 'price'", writer.ToString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(_scratch["paper"]));
    }

    [Fact]
    public void Run_TrialThatIsNotThere_NamesThoseThatAre()
    {
        using var writer = new StringWriter();

        Assert.Equal(1, PaperCommand.Run(Path.Combine(Desserts, "damson-tart"), "T99", 3, _scratch["none"], writer));
        Assert.Contains("T10", writer.ToString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(_scratch["none"]));
    }

    // ISO 216: A4 is 210 by 297 mm; ANSI/ASME Y14.1: Letter is 8.5 by 11 inches. In points of 1/72 inch.
    [BrowserFact]
    public async Task Run_OnBothPapers_PrintsWholeAndLegibly()
    {
        var folder = Written("damson-tart", out _);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = BrowserFactAttribute.Path, Args = ["--no-sandbox"] });
        await using var context = await browser.NewContextAsync(new() { Offline = true });
        List<string> faults = [];
        foreach (var (paper, width, height, pixels) in new[] { ("A4", 595, 842, 703), ("Letter", 612, 792, 725) })
            foreach (var file in Directory.EnumerateFiles(folder, "*.html").Order(StringComparer.Ordinal))
            {
                var page = await context.NewPageAsync();
                var where = $"{Path.GetFileName(file)} on {paper}";
                // The width between the margins of the sheet's own page, 12 mm on each side, at 96 pixels an inch.
                await page.SetViewportSizeAsync(pixels, 1000);
                await page.EmulateMediaAsync(new() { Media = Media.Print });
                await page.GotoAsync(new Uri(file).AbsoluteUri);
                if (await page.EvaluateAsync<bool>("document.documentElement.scrollWidth > document.documentElement.clientWidth + 1")) faults.Add($"{where} is cut off at the side");
                var smallest = await page.EvaluateAsync<double>("Math.min(...[...document.querySelectorAll('main *')].filter(each => [...each.childNodes].some(node => node.nodeType === 3 && node.data.trim()) && each.checkVisibility() && !each.closest('svg')).map(each => parseFloat(getComputedStyle(each).fontSize)))");
                if (smallest < 8 * 96 / 72.0 * 0.85) faults.Add($"{where} has type of {smallest * 0.75:0.0} points");
                var pdf = Encoding.Latin1.GetString(await page.PdfAsync(new() { Format = paper }));
                var boxes = Regex.Matches(pdf, @"/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)");
                if (boxes.Count == 0 || boxes.Any(box => Math.Abs(double.Parse(box.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) - width) > 1 || Math.Abs(double.Parse(box.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) - height) > 1)) faults.Add($"{where} is not on {paper}");
                var sheets = Regex.Count(pdf, @"/Type\s*/Page\b(?!s)");
                if (Path.GetFileName(file).StartsWith("specification", StringComparison.Ordinal) && sheets != 1) faults.Add($"{where} takes {sheets} pages");
                // Nine parts, none of them over two sheets: some sheets end with room to spare.
                if (sheets is < 1 or > 7) faults.Add($"{where} takes {sheets} pages");
                await page.CloseAsync();
            }
        Assert.Empty(faults);
    }
}
