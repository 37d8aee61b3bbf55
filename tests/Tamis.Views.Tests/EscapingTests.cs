using System.Text.Json;
using CsCheck;
using Tamis.Physics;

namespace Tamis.Views.Tests;

public class EscapingTests
{
    private const string Bad = Markup.Hostile;

    private static readonly Difference Some = new(1, Interval.Between(0.5, 1.5));

    public static TheoryData<string> Views => [.. All.Keys];

    private static readonly Dictionary<string, Html> All = new()
    {
        ["table"] = new DataTable(Bad, [Column.Words(Bad), Column.Numbers(Bad, Bad)], [new Row(((Cell)Bad) with { From = Bad, Figure = Bad }, ((Cell)new Num("1", ".5", Bad)).Tracked(Bad))]) { Caption = Html.Text(Bad), Notes = [Html.Text(Bad)] }.ToHtml(),
        ["working"] = WorkingView.Of(new(Bad, 1, Bad, new(Bad, Evidence.Sheet, Bad)) { From = [new(Bad, double.NaN, "", new(Bad, Evidence.Memory, Bad))] }),
        ["tree"] = TrialTree.Of([new(Bad, Html.Text(Bad)) { Effects = [new(Html.Text(Bad), Finding.Gain)], Said = Html.Text(Bad), Children = [new(Bad, Html.Text(Bad))] }]),
        ["notes"] = Notes.Note(Html.Text(Bad), Bad) + Notes.Verdict([(Bad, Html.Text(Bad))], Bad) + Notes.Code(Bad) + Notes.Folded(Bad, Html.Text(Bad)) + Notes.Problems(Bad, [Bad]),
        ["index"] = IndexParts.PageList([new(Bad, "chef.html", Html.Text(Bad))]) + IndexParts.ChangedSince([new(Bad, Bad, Bad, Bad, [new(Bad, "chef.html", Bad, Bad)])]),
        ["marks"] = Marks.Tracked(Bad, Html.Text(Bad)) + Marks.From(Bad),
        ["sentences"] = Says.English.Of(Bad, false, Bad, Bad, Some) + Says.English.TwoChanges(Bad, Bad, Bad, Bad) + Says.English.MissingSheet(Bad, Bad),
        ["weighing sheet"] = new WeighingSheet(Bad, [new(Bad, [new([new(new("1", "", Bad), Bad, Bad)], Html.Text(Bad)) { Temperature = Bad, Minutes = Bad, Caution = Bad }]) { Header = Bad }]) { Facts = [Bad] }.ToHtml(),
        ["panel"] = new NutritionPanelView(Bad, [Bad], [new(Bad, [Bad]) { Percents = [Bad], Figure = Bad, Interval = Bad, CoveredShare = 0.5 }]) { Draft = Bad, Notes = [Bad], PercentHead = Bad, LanguageTag = Bad }.ToHtml(),
        ["box"] = new NutritionPanelView(Bad, [Bad], [new(Bad, [Bad]) { IsHeavy = true }, new(Bad, [Bad]) { Percents = [Bad] }]) { Form = PanelForm.Box, Servings = [Bad], Notes = [Bad] }.ToHtml(),
        ["scores"] = ScoreAgainstChange.Of([new(Bad, Bad, Bad, [new(Bad, [new(Bad, 1, 5, null, [5]), new(Bad, 2, 6, null, [6])])]) { Description = Bad }], Html.Text(Bad)).ToHtml(),
        ["dots"] = DotsWithIntervals.Of([new(Bad, [new(Bad, 1, Interval.Between(0, 2))], Interval.Between(-3, 3)) { DifferenceFrom = Bad, AxisTitle = Bad }], Html.Text(Bad)).ToHtml(),
        ["bars"] = CompositionBars.Of(Bad, [new(MadeOf.Water, Bad)], [new(Bad, [0.4])], Html.Text(Bad)).ToHtml(),
        ["map"] = RatioMap.Of(Bad, new(Bad, Interval.Between(1, 2)), new(Bad, null), [new(Bad, 1, 1)], Html.Text(Bad), Bad).ToHtml(),
        ["curves"] = CurveChart.Of([PhysicsSamples.Curves(Bad)], Html.Text(Bad)).ToHtml(),
        ["curves of panels"] = CurveChart.Of([PhysicsSamples.Curves(Bad), PhysicsSamples.Curves(Bad)], Html.Text(Bad)).ToHtml(),
        ["ladder"] = PhysicsSamples.Ladder(Bad).ToHtml(),
        ["water"] = WaterMoving.Of(PhysicsSamples.Water(Bad, Bad + "2"), Html.Text(Bad)).ToHtml() + WaterMoving.Sentences([KeepingDays.Of(PhysicsSamples.Stack(Bad), Bad, 2, detail: new(6, 40))])
            + WaterMoving.ByThickness(Bad, KeepingDays.ByThickness(PhysicsSamples.Stack(Bad), 0, [0, 0.1], Bad, 2)),
        ["temperature section"] = TemperatureSection.Of(Bad, PhysicsSamples.Piece(Bad, Bad + "2"), PhysicsSamples.Freezing(PhysicsSamples.Piece(Bad, Bad + "2")).Fields, Html.Text(Bad)),
        ["figures of models"] = PredictionTable.Of(Bad, [new(Bad, PhysicsSamples.Figure(Bad, 1, Bad, Interval.Between(0, 2), Bad)) { Means = Html.Text(Bad), Tracked = Bad }, new("", PhysicsSamples.Lacking(Bad, Bad))], Html.Text(Bad)),
        ["predicted and measured"] = PredictedBesideMeasured.Of([new(Bad, Bad, PhysicsSamples.Figure(Bad, 1, Bad, Interval.Between(0, 2)), [PhysicsSamples.Measured(Bad, Bad, 1, Bad)])]),
        ["check-up"] = CheckUpTable.Of([PhysicsSamples.CheckUp(Bad), new() { Component = Bad, NoVerdict = Bad }]),
        ["balance"] = BalanceBars.Of(Bad, [(Bad, PhysicsSamples.Balance)], Html.Text(Bad), Bad).ToHtml(),
        ["markdown"] = MarkdownView.Render($"# {Bad}\n\n[a](javascript:alert(1)) ![b](https://example.org/x.png) <script>alert(1)</script>\n\n<div onclick=alert(1)>x</div>"),
        ["sentence of markdown"] = MarkdownView.RenderSentence($"{Bad} [a](javascript:alert(1)) <script>alert(1)</script>"),
    };

    [Theory]
    [MemberData(nameof(Views))]
    public void View_HostileTextInEveryPlace_StaysText(string view)
    {
        var document = Markup.Read(All[view]);

        if (view == "markdown") Assert.Equal("#", document.QuerySelector("img")?.GetAttribute("src"));
        else Markup.IsQuiet(document);
        Assert.Contains("onerror=alert(1)", document.Body!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Views))]
    public void ChartJson_HostileText_IsJsonWithoutPlotlysMarkup(string view)
    {
        foreach (var script in Markup.Read(All[view]).QuerySelectorAll("script[type='application/json']"))
        {
            using var figure = JsonDocument.Parse(script.TextContent);
            Assert.All(Strings(figure.RootElement), text => Assert.DoesNotContain("<img", text, StringComparison.Ordinal));
            Assert.DoesNotContain("<", script.InnerHtml, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Render_Markdown_RunsAndFetchesNothing()
    {
        var document = Markup.Read(All["markdown"]);

        Assert.Empty(document.QuerySelectorAll("script, div, [onclick]"));
        Assert.All(document.QuerySelectorAll("a"), link => Assert.DoesNotContain("javascript", link.GetAttribute("href")!, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Of_AnyText_IsReadBackAsItself() =>
        Gen.String.Where(text => !text.Any(character => char.IsControl(character) || char.IsSurrogate(character))).Sample(text =>
        {
            var document = Markup.Read(Html.Of($"<p title=\"{text}\">x{text}</p>"));
            Assert.Equal("x" + text, document.QuerySelector("p")!.TextContent);
            Assert.Equal(text, document.QuerySelector("p")!.GetAttribute("title"));
            Assert.Single(document.Body!.Children);
        });

    private static IEnumerable<string> Strings(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.String => [element.GetString()!],
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Strings),
        JsonValueKind.Object => element.EnumerateObject().SelectMany(property => Strings(property.Value)),
        _ => [],
    };
}
