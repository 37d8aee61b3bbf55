namespace Tamis.Views.Tests.Sheets;

public class SheetTests
{
    [Fact]
    public void WeighingSheet_EveryLineAndStep_HasABoxToTick()
    {
        var sheet = Samples.TwelveTarts;
        var document = Markup.Read(sheet.ToHtml());

        Assert.Equal(sheet.Components.Count, document.QuerySelectorAll("section.make").Length);
        Assert.Equal(sheet.Components.Sum(component => component.Steps.Sum(step => step.Lines.Count)), document.QuerySelectorAll(".weigh > li > .box").Length);
        Assert.Equal(sheet.Components.Sum(component => component.Steps.Count), document.QuerySelectorAll(".do > .box").Length);
        Assert.Equal(sheet.Components.Count(component => component.IsWeighed), document.QuerySelectorAll(".after .fill").Length);
    }

    [Fact]
    public void WeighingSheet_Mass_HasItsDecimalsApart() =>
        Assert.Equal("4<i>.0</i><small>g</small>", Markup.Read(Samples.TwelveTarts.ToHtml()).QuerySelectorAll(".weigh b").First(mass => mass.TextContent.StartsWith("4.0", StringComparison.Ordinal)).InnerHtml);

    [Fact]
    public void WeighingSheet_StepsWithoutWeighing_StandBesideTheMassesBeforeThem()
    {
        var crumble = Markup.Read(Samples.TwelveTarts.ToHtml()).QuerySelectorAll("section.make")[1];

        Assert.Equal("Crumble", crumble.QuerySelector("h2")!.TextContent);
        Assert.Single(crumble.QuerySelectorAll(".steps > li"));
        Assert.Equal(4, crumble.QuerySelectorAll(".steps > li > .dos > .do").Length);
    }

    [Theory]
    [InlineData(4.04, null, "4.0")]
    [InlineData(104.4, null, "104")]
    [InlineData(104.4, 1.0, "104")]
    [InlineData(104.4, 0.5, "104.5")]
    [InlineData(3.26, 0.1, "3.3")]
    [InlineData(1263.0, 5.0, "1\u202f265")]
    public void OnScale_Mass_IsWhatTheScaleCanShow(double grams, double? step, string expected) => Assert.Equal(expected, WeighingSheet.OnScale(grams, step).Figure);

    [Fact]
    public void NutritionPanel_Draft_SaysSoAboveThePanel() =>
        Assert.Equal("Draft: saturates known for 98 % of the mass", Markup.Read(Samples.European.Pack()).QuerySelector(".pack.draft > .state")!.TextContent);

    [Fact]
    public void NutritionPanel_Rows_KeepTheLawsOrderAndIndent()
    {
        var rows = Markup.Read(Samples.European.Pack()).QuerySelectorAll("tbody tr").ToArray();

        Assert.Equal(["Energy", "Fat", "of which saturates", "Fibre", "Salt"], rows.Select(row => row.QuerySelector("th")!.TextContent));
        Assert.Equal("in", rows[2].ClassName);
        Assert.Equal("1 557 kJ<br>371 kcal", rows[0].QuerySelector("td")!.InnerHtml);
    }

    [Fact]
    public void NutritionPanel_Behind_ShowsUnroundedIntervalCoverageAndWorking()
    {
        var document = Markup.Read(Samples.European.Behind());
        var fibre = document.QuerySelectorAll("tbody tr").Single(row => row.Children[0].TextContent == "Fibre").Children.Select(cell => cell.TextContent.Trim()).ToArray();

        Assert.Equal(["Fibre", "2.83\u202fg", "2.3 to 3.4", "all", "2.8 g"], fibre);
        Assert.Single(document.QuerySelectorAll(".known"));
        Assert.Single(document.QuerySelectorAll("details.working"));
        Assert.Equal("V1, fibre, declared", document.QuerySelector("[data-figure]")!.GetAttribute("data-figure"));
    }

    [Fact]
    public void NutritionPanel_Box_PutsThePerCentHeadAboveTheFirstRuledLine()
    {
        // 21 CFR 101.9(d)(6): the heading of the daily values stands under the rule below the calories.
        var rows = Markup.Read(Samples.American.Pack()).QuerySelectorAll("tbody tr").ToArray();

        Assert.Equal("energy", rows[0].ClassName);
        Assert.Contains("% Daily Value", rows[1].TextContent, StringComparison.Ordinal);
        Assert.StartsWith("Total Fat", rows[2].TextContent, StringComparison.Ordinal);
    }
}
