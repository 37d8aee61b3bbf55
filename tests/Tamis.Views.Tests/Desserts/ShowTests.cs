using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;
using Tamis.Desserts;

namespace Tamis.Views.Tests.Desserts;

/// <summary>What cells show of a dessert: nothing of the code, nothing that text from a sheet could run.</summary>
public sealed partial class ShowTests : IDisposable
{
    private const string Hostile = "<img src=x onerror=alert(1)>";

    private readonly string _folder = Directory.CreateTempSubdirectory("tamis-show-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    public static TheoryData<string> DemoFolders => new("desserts/damson-tart", "desserts/travel-loaf", "lessons/sweet-shell");

    [Theory]
    [MemberData(nameof(DemoFolders))]
    public void Show_Demo_SaysNothingOfTheCode(string folder)
    {
        foreach (var (what, html) in AllOf(Dessert.Open(KitFolder.Data(folder))))
        {
            var text = new HtmlParser().ParseDocument(html.Markup.Replace("<script", "<!--", StringComparison.Ordinal).Replace("</script>", "-->", StringComparison.Ordinal).Replace("</", " </", StringComparison.Ordinal)).Body!.TextContent;
            Assert.False(Forbidden().IsMatch(text), $"{what} shows: {Forbidden().Match(text).Value}, in …{Around(text)}…");
        }
    }

    [Fact]
    public void Show_TextFromSheets_IsEscapedWhereverItIsShown()
    {
        Write("dessert.csv", $"key,value\nname,{Hostile}\nabout,{Hostile}\n");
        Write("formula.csv", $"component,line,way,step,T1,T2,notes\n{Hostile},{Hostile} flour,,1,100 g,90 g,{Hostile}\n{Hostile},egg,,1,2 eggs,2 eggs,\n{Hostile},{Hostile},out,2,2 %,3 %,\nlost,{Hostile} jug,,1,2 jugs,2 jugs,\n");
        Write("trials.csv", $"trial,parent,made_on,question,outcome,notes\nT1,,2026-01-02,{Hostile},{Hostile},{Hostile}\nT2,T1,2026-01-03,{Hostile},{Hostile},{Hostile}\n");
        Write("steps.csv", $"component,step,do,caution\n{Hostile},1,{Hostile},{Hostile}\nassembly,1,{Hostile},{Hostile}\n");
        Write("store/ingredients.csv", $"ingredient,food,piece,piece_g,allergens\n{Hostile} flour,SR28 20629,,,{Hostile}\negg,SR28 01123,egg,58,\n{Hostile} jug,,,,\n");
        Write("measured.csv", $"trial,make,component,what,value,unit\nT1,1,{Hostile},yield,170,g\n");

        foreach (var (what, html) in AllOf(Dessert.Open(_folder)))
        {
            Assert.DoesNotContain("<img", html.Markup, StringComparison.OrdinalIgnoreCase);
            Assert.True(new HtmlParser().ParseDocument(html.Markup).QuerySelectorAll("img, [onerror]").Length == 0, what);
        }
    }

    // One file is enough to start, and each further one adds: no view may fail for want of a sheet.
    [Theory]
    [InlineData("formula.csv")]
    [InlineData("formula.csv", "trials.csv")]
    [InlineData("formula.csv", "store/ingredients.csv")]
    [InlineData("formula.csv", "trials.csv", "store/ingredients.csv", "dessert.csv")]
    [InlineData("formula.csv", "trials.csv", "attributes.csv", "servings.csv", "scores.csv")]
    [InlineData("formula.csv", "attributes.csv", "servings.csv", "scores.csv", "store/ingredients.csv")]
    public void Show_SheetsMissing_SaysWhatTheyWouldAdd(params string[] files)
    {
        Dictionary<string, string> all = new()
        {
            ["formula.csv"] = "component,line,T1,T2\nshell,flour,200 g,200 g\nshell,butter,2 sticks,110 g\nsyrup,sugar,10 g,10 g\n",
            ["trials.csv"] = "trial,parent\nT1,\nT2,T1\n",
            ["store/ingredients.csv"] = "ingredient,food,piece,piece_g\nflour,SR28 20629,,\nbutter,,stick,113\n",
            ["dessert.csv"] = "key,value\nname,A shell\npieces,2\nportion_g,50\n",
            ["attributes.csv"] = "attribute,kind,low,high\ncrispness,intensity,0,10\n",
            ["servings.csv"] = "tasting,assessor,position,code,trial,make\nS1,A1,1,123,T1,1\nS1,A1,2,456,T2,1\nS1,A2,1,123,T1,1\nS1,A2,2,456,T2,1\n",
            ["scores.csv"] = "tasting,assessor,code,crispness\nS1,A1,123,5\nS1,A1,456,6\nS1,A2,123,4\nS1,A2,456,6\n",
        };
        foreach (var file in files) Write(file, all[file]);
        var dessert = Dessert.Open(_folder);

        foreach (var (what, html) in AllOf(dessert)) Assert.False(Forbidden().IsMatch(html.ToPlainText()), what);
        Assert.All(all.Keys.Except(files).Where(file => file != "formula.csv"), file => Assert.Contains(Path.GetFileName(file), Show.Missing(dessert).ToPlainText(), StringComparison.Ordinal));
    }

    [Fact]
    public void Show_TwoRuns_AreTheSameBytes() => Assert.Equal(
        AllOf(Dessert.Open(KitFolder.Data("desserts/damson-tart"))).Select(each => each.Html.Markup),
        AllOf(Dessert.Open(KitFolder.Data("desserts/damson-tart"))).Select(each => each.Html.Markup));

    [Fact]
    public void Difference_OfTheCandidate_TracksItsFiguresByName()
    {
        var page = new HtmlParser().ParseDocument(Show.Difference(Dessert.Open(KitFolder.Data("desserts/damson-tart")), "T8", "T10").Markup);

        Assert.Equal("135", page.QuerySelector("[data-figure='T10, shell, rye flour, g']")!.TextContent.Trim());
    }

    [Fact]
    public void Verdict_OfTheDemo_SaysWhatIsShownAndWhatIsNot()
    {
        var text = Show.Verdict(Dessert.Open(KitFolder.Data("desserts/damson-tart"))).ToPlainText();

        Assert.Contains("T10 is liked better than T1 by 2.5 points of 10 (0.5 to 4.6).", text, StringComparison.Ordinal);
        Assert.Contains("The tasting cannot tell T10 from T8: liking 0.0 (\u22122.1 to +2.0).", text, StringComparison.Ordinal);
        Assert.Contains("moved together", text, StringComparison.Ordinal);
    }

    private static IEnumerable<(string What, Html Html)> AllOf(Dessert dessert)
    {
        var trial = dessert.Candidate;
        var component = dessert.Trial(trial).Components[0].Name;
        yield return ("About", Show.About(dessert));
        yield return ("Verdict", Show.Verdict(dessert));
        yield return ("Tree", Show.Tree(dessert));
        yield return ("Difference", Show.Difference(dessert, dessert.ParentOf(trial), trial));
        yield return ("ScoresAgainstChanges", Show.ScoresAgainstChanges(dessert));
        yield return ("Effects", Show.Effects(dessert));
        yield return ("Means", Show.Means(dessert));
        yield return ("Map", Show.Map(dessert, component));
        yield return ("MadeOf", Show.MadeOf(dessert, trial));
        yield return ("MadeOfAll", Show.MadeOfAll(dessert));
        yield return ("Ratios", Show.Ratios(dessert, trial));
        yield return ("RatiosThatMoved", Show.RatiosThatMoved(dessert));
        yield return ("Panel, eu", Show.Panel(dessert, trial, "eu"));
        yield return ("Panel, us", Show.Panel(dessert, trial, "us"));
        yield return ("PiecePanel", Show.PiecePanel(dessert, trial, "eu"));
        yield return ("PanelVerdict", Show.PanelVerdict(dessert, trial, "eu"));
        yield return ("PanelOfAll", Show.PanelOfAll(dessert, "eu"));
        yield return ("ComponentPanel", Show.ComponentPanel(dessert, trial, component, "eu"));
        yield return ("Yields", Show.Yields(dessert));
        yield return ("Missing", Show.Missing(dessert));
        yield return ("WeighingLinks", Show.WeighingLinks(dessert));
        yield return ("Windows", Show.Windows(dessert, trial, component));
        yield return ("WhatMoves", Show.WhatMoves(dessert, component));
        yield return ("ScaledTo", Show.ScaledTo(dessert, trial, component, 900));
        foreach (var (name, _) in WeighingPages.AllOf(dessert)) Assert.Matches("^weighing-[a-z0-9-]+\\.html$", name);
        yield return ("Weighing sheet", WeighingPages.Of(dessert, trial, dessert.WantedPieces(trial)).ToHtml());
    }

    private static string Around(string text) => Forbidden().Match(text) is { Success: true } found
        ? text[Math.Max(0, found.Index - 40)..Math.Min(text.Length, found.Index + 60)] : "";

    // The list of PAGES: code words, bare tags, long digits (a working shows four significant ones), hyphens as minus, words that claim too much.
    [GeneratedRegex(@"NaN|\bnull\b|Tamis\.|System\.|∞|\d\.\d{8,}|\dE-\d|(?<=[\s(])-\d|\bsignificant|\bPROCNT\b|\bFIBTG\b|\bCHOAVL|\bN/A\b")]
    private static partial Regex Forbidden();

    private void Write(string file, string text)
    {
        var path = Path.Combine(_folder, file);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }
}
