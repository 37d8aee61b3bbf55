using System.Text.Json;

namespace Tamis.Views.Tests.Charts;

public class ChartTests
{
    private static readonly Dictionary<string, Func<ChartView>> All = new()
    {
        ["scores"] = () => Samples.Scores, ["means"] = () => Samples.Means, ["differences"] = () => Samples.Differences, ["bars"] = () => Samples.MadeOfBars, ["map"] = () => Samples.Map,
        ["curves"] = () => CurveChart.Of([PhysicsSamples.Curves()], Html.Of($"Curves of nothing.")), ["ladder"] = () => PhysicsSamples.Ladder(), ["water"] = () => WaterMoving.Of(PhysicsSamples.Water()),
        ["freezing"] = () => HeatCurves.Course("Freezing", PhysicsSamples.Freezing(PhysicsSamples.Piece()), Html.Of($"In the freezer."), [new("−18 °C", -18)]), ["lethality"] = () => HeatCurves.Lethality(PhysicsSamples.Log, Physics.LethalityReference.CookChill),
        ["ice"] = () => TemperatureCurves.Ice([("gel", at => at < -2 ? 0.5 : 0, -2)], Interval.Between(-30, 0)), ["solid fat"] = () => TemperatureCurves.SolidFat([("ganache", new(80, 90, 40)), ("gel", default)], Interval.Between(15, 40), Html.Of($"By the tables.")),
        ["balance"] = () => BalanceBars.Of("Made of", [("ganache", PhysicsSamples.Balance)], Html.Of($"By hand.")),
    };

    public static TheoryData<string> Names => [.. All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void ToHtml_Chart_HasStillLiveAndFigures(string name)
    {
        var chart = All[name]();
        var document = Markup.Read(chart.ToHtml());

        var panels = document.QuerySelectorAll(".chart").ToArray();
        Assert.Equal(chart.Panels.Count, panels.Length);
        Assert.All(panels, panel =>
        {
            var picture = panel.QuerySelector(".still > [role=img]")!;
            Assert.True(picture.GetAttribute("aria-label") is { Length: > 10 } || picture.QuerySelector("title")!.TextContent.Length > 3 && picture.QuerySelector("desc")!.TextContent.Length > 3);
            Assert.Equal("true", panel.QuerySelector(".live")!.GetAttribute("aria-hidden"));
            Assert.Single(panel.QuerySelectorAll("script[type='application/json']"));
        });
        Assert.NotEmpty(document.QuerySelectorAll("figure > details table tbody tr"));
        Assert.NotEmpty(document.QuerySelector("figcaption")!.TextContent);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void LiveJson_Colors_AreRolesThatTheStyleKnowsInBothSchemes(string name)
    {
        using var style = JsonDocument.Parse(ChartStyle.JsonFor(Language.English));
        var roles = style.RootElement.GetProperty("roles");
        foreach (var panel in All[name]().Panels)
        {
            using var figure = JsonDocument.Parse(panel.LiveJson);
            var used = Strings(figure.RootElement).Where(text => text.StartsWith("role:", StringComparison.Ordinal)).Select(text => text[5..]).ToArray();
            Assert.NotEmpty(used);
            Assert.All(used, role => Assert.True(roles.GetProperty("light").TryGetProperty(role, out _) && roles.GetProperty("dark").TryGetProperty(role, out _), role));
            Assert.DoesNotContain(Strings(figure.RootElement), text => text.StartsWith('#') || text.StartsWith("rgb", StringComparison.Ordinal));
            Assert.False(figure.RootElement.GetProperty("layout").TryGetProperty("template", out _), "the page has the template once");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ToHtml_SameInput_GivesTheSameBytes(string name) => Assert.Equal(All[name]().ToHtml().Markup, All[name]().ToHtml().Markup);

    [Fact]
    public void ScoreAgainstChange_Assessors_AreDotsInBothPicturesAndNeverNamed()
    {
        var panel = Samples.Scores.Panels[0];
        using var figure = JsonDocument.Parse(panel.LiveJson);

        var faint = Markup.Read(panel.Still).QuerySelectorAll(".faint").Length;
        Assert.Equal(2 * 12 + 2 * 6, faint);
        Assert.Equal(faint, figure.RootElement.GetProperty("data").EnumerateArray().Where(trace => trace.GetProperty("mode").GetString() == "markers").Sum(trace => trace.GetProperty("x").GetArrayLength()));
        Assert.All(figure.RootElement.GetProperty("data").EnumerateArray().Where(trace => trace.GetProperty("mode").GetString() == "markers"), trace => Assert.False(trace.TryGetProperty("text", out _)));
    }

    [Fact]
    public void ScoreAgainstChange_Labels_StandApart()
    {
        var places = Markup.Read(Samples.Scores.Panels[0].Still).QuerySelectorAll("text.halo").Select(label => double.Parse(label.GetAttribute("y")!, System.Globalization.CultureInfo.InvariantCulture)).ToArray();

        Assert.Equal(2, places.Length);
        Assert.True(Math.Abs(places[0] - places[1]) >= 15);
    }

    [Fact]
    public void DotsWithIntervals_Differences_AreFilledOnlyWhereThePrintedIntervalLeavesZero()
    {
        var dots = Markup.Read(Samples.Differences.Panels[1].Still).QuerySelectorAll("circle").Select(dot => dot.ClassName!).ToArray();

        // T4: liking +0.8 (0.0 to +1.6) prints at the edge, so its dot is hollow; damson acidity +1.1 (+0.3 to +1.9) is filled.
        Assert.Equal(["dot", "dot", "dot c-up", "dot", "dot"], dots);
    }

    [Fact]
    public void DotsWithIntervals_WithoutSpread_HasADotAndNoLine()
    {
        var chart = DotsWithIntervals.Of([new("Liking", [new("T1", 5, null)], Interval.Between(0, 10))], Html.Of($"One make."));

        Assert.Empty(Markup.Read(chart.Panels[0].Still).QuerySelectorAll("path.line"));
        Assert.Single(Markup.Read(chart.Panels[0].Still).QuerySelectorAll("circle"));
    }

    [Fact]
    public void CompositionBars_WhatNobodyKnows_IsAMeshAndNotZero()
    {
        var document = Markup.Read(Samples.MadeOfBars.ToHtml());

        Assert.Equal(2, document.QuerySelectorAll(".bar > .p-unknown").Length);
        Assert.Contains("not known", document.QuerySelector(".key")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("pattern", Samples.MadeOfBars.Panels[0].LiveJson, StringComparison.Ordinal);
        Assert.Contains(document.QuerySelectorAll("td"), cell => cell.TextContent == "not known");
    }

    [Fact]
    public void CompositionBars_WrongNumberOfShares_IsRefused() =>
        Assert.Contains("'shell'", Assert.Throws<ArgumentException>(() => CompositionBars.Of("x", [new(MadeOf.Water, "water")], [new("shell", [])], default)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(0, 10, new double[] { 0, 2, 4, 6, 8, 10 })]
    [InlineData(-2.5, 2.5, new double[] { -2, -1, 0, 1, 2 })]
    [InlineData(0.9, 1.13, new[] { 0.9, 0.95, 1, 1.05, 1.1 })]
    public void Ticks_Axis_AreRoundAndFew(double low, double high, double[] expected) => Assert.Equal(expected, new Scale(low, high, 0, 1).Ticks());

    [Fact]
    public void Apart_CrowdedLabels_KeepTheirOrderAndTheirDistance()
    {
        var placed = Svg.Apart([100, 101, 20, 99], 16, 10, 200);

        Assert.Equal([2, 3, 0, 1], Enumerable.Range(0, 4).OrderBy(at => placed[at]));
        Assert.All(placed.Order().Zip(placed.Order().Skip(1)), pair => Assert.True(pair.Second - pair.First >= 16 - 1e-9));
        Assert.All(placed, place => Assert.InRange(place, 10, 200));
    }

    private static IEnumerable<string> Strings(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.String => [element.GetString()!],
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Strings),
        JsonValueKind.Object => element.EnumerateObject().SelectMany(property => Strings(property.Value)),
        _ => [],
    };
}
