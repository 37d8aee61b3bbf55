using System.Text.RegularExpressions;
using AngleSharp.Dom;
using Tamis.Physics;

namespace Tamis.Views.Tests.Kitchen;

public class PhysicsViewTests
{
    private static readonly Dictionary<string, Func<Html>> All = new()
    {
        ["curves"] = () => CurveChart.Of([PhysicsSamples.Curves()], default).ToHtml(),
        ["ladder"] = () => PhysicsSamples.Ladder().ToHtml(),
        ["water"] = () => WaterMoving.Of(PhysicsSamples.Water()).ToHtml() + WaterMoving.Sentences([KeepingDays.Of(PhysicsSamples.Stack(), "shell", 2, detail: new(6, 40))]) + WaterMoving.ByThickness("cocoa butter", KeepingDays.ByThickness(PhysicsSamples.Stack(), 0, [0, 0.1], "shell", 2)),
        ["section"] = () => TemperatureSection.Of("A mousse", PhysicsSamples.Piece(), PhysicsSamples.Freezing(PhysicsSamples.Piece()).Fields, default),
        ["freezing"] = () => HeatCurves.Course("Freezing", PhysicsSamples.Freezing(PhysicsSamples.Piece()), default).ToHtml(),
        ["lethality"] = () => HeatCurves.Lethality(PhysicsSamples.Log, LethalityReference.CookChill).ToHtml(),
        ["solid fat"] = () => TemperatureCurves.SolidFat([("ganache", new(80, 90, 40)), ("gel", default)], Interval.Between(15, 40)).ToHtml(),
        ["figures"] = () => PredictionTable.Of("Figures", [new("gelatine", PhysicsSamples.Figure("g", 1.23456789012345, "%", Interval.Between(1.1, 1.4))), new("acid", PhysicsSamples.Lacking("acid", "the pH"))]),
        ["measured"] = () => PredictedBesideMeasured.Of([new("shell", "yield", PhysicsSamples.Figure("y", 397.123456789012, "g", Interval.Between(390, 404)), [PhysicsSamples.Measured("shell", "yield", 396, "g")])]),
        ["check-up"] = () => CheckUpTable.Of([PhysicsSamples.CheckUp()]),
        ["balance"] = () => BalanceBars.Of("Made of", [("ganache", PhysicsSamples.Balance)], default).ToHtml(),
    };

    public static TheoryData<string> Names => [.. All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void View_SameInput_GivesTheSameBytes(string name) => Assert.Equal(All[name]().Markup, All[name]().Markup);

    [Theory]
    [MemberData(nameof(Names))]
    public void View_Text_HasShortFiguresAndNoTypeNames(string name)
    {
        var document = Markup.Read(All[name]());
        foreach (var script in document.QuerySelectorAll("script").ToArray()) script.Remove();
        var text = string.Join(' ', document.Body!.Descendants<IText>().Select(node => node.Data));

        Assert.Empty(Regex.Matches(text, @"\d\.\d{5,}").Select(match => match.Value));
        Assert.Empty(Regex.Matches(text, @"Tamis\.|System\.|NaN|E-\d|Infinity|∞|\bTrue\b|\bFalse\b|\{[a-z_]+\}").Select(match => match.Value));
        Assert.Empty(Regex.Matches(text, @"(?<![\w-])-\d").Select(match => match.Value));
        Assert.Empty(document.QuerySelectorAll("[id]"));
    }

    [Fact]
    public void CurveChart_AGap_PartsTheCurve()
    {
        var still = Markup.Read(CurveChart.Of([PhysicsSamples.Curves()], default).Panels[0].Still);

        Assert.Equal(2, still.QuerySelectorAll("path.line.c-curve-1").Length);
        Assert.Single(still.QuerySelectorAll("path.band"));
        Assert.Single(still.QuerySelectorAll("circle.c-chosen"));
    }

    [Fact]
    public void CurveChart_NamesOfEventsCloseTogether_StandOnTwoLines()
    {
        var names = Markup.Read(CurveChart.Of([PhysicsSamples.Curves("a long name")], default).Panels[0].Still).QuerySelectorAll("text.halo").Take(2).Select(text => text.GetAttribute("y")).ToArray();

        Assert.Equal(2, names.Distinct().Count());
    }

    [Fact]
    public void CurveChart_ALimitThatACurveCovers_IsNamedAtTheOtherEnd()
    {
        CurvePanel panel = new("x", new("minutes"), new("°C"), [new("log", [(0, 10), (5, 10.5), (10, 90)])]) { Limits = [new("a limit with a name", 10)] };

        Assert.Contains(Markup.Read(CurveChart.Of([panel], default).Panels[0].Still).QuerySelectorAll("text.end.halo"), text => text.TextContent == "a limit with a name");
    }

    [Fact]
    public void HeightAt_BetweenPoints_IsStraightAndOutsideNothing()
    {
        Curve curve = new("x", [(0, 0), (2, 4)]);

        Assert.Equal(1, CurveChart.HeightAt(curve, 0.5));
        Assert.True(double.IsNaN(CurveChart.HeightAt(curve, 3)));
    }

    [Fact]
    public void Ladder_AComponentBelowItsFoot_HasAnArrowAndOneWithoutAModelIsNamed()
    {
        var ladder = PhysicsSamples.Ladder();

        Assert.Contains("gel 2 0.31 ↓", ladder.Panels[0].Still.Markup, StringComparison.Ordinal);
        Assert.Contains("speaks for gel 3", ladder.Panels[0].Below.Markup, StringComparison.Ordinal);
        Assert.Contains("not a shelf-life study", ladder.Caption.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Section_EveryPicture_IsToScaleAndCoversThePiece()
    {
        var piece = PhysicsSamples.Piece();
        var document = Markup.Read(TemperatureSection.Of("A mousse", piece, PhysicsSamples.Freezing(piece).Fields, default));

        var pictures = document.QuerySelectorAll(".panels svg").ToArray();
        Assert.Equal(3, pictures.Length);
        // 140 mm across and 30 high on 292 units across.
        Assert.All(pictures, picture => Assert.Equal(292.0 / 140 * 30 + 8, double.Parse(picture.GetAttribute("height")!, System.Globalization.CultureInfo.InvariantCulture), 0.1));
        Assert.All(pictures, picture => Assert.True(picture.QuerySelectorAll("rect").Length >= piece.Axes.Floors));
        Assert.Equal(["at the start", "after 30 min", "after 2 h"], document.QuerySelectorAll(".panels h3").Select(heading => heading.TextContent.Replace('\u202f', ' ')));
        Assert.Equal(["mousse", "gel"], document.QuerySelectorAll("tbody th").Select(cell => cell.TextContent));
    }

    [Fact]
    public void Section_AFieldOfAnotherPiece_IsRefused() =>
        Assert.Throws<ArgumentException>(() => TemperatureSection.Of("x", PhysicsSamples.Piece(), [new(0, new([0, 1], [0, 1]), [5])], default));

    [Theory]
    [InlineData(-30, 0)]
    [InlineData(-18, 2)]
    [InlineData(0, 5)]
    [InlineData(99, 9)]
    public void Tint_OfATemperature_IsAlwaysTheSame(double celsius, int tint) => Assert.Equal(tint, TemperatureTints.Of(celsius));

    [Fact]
    public void Water_IllustrativeIsotherms_AreNeverShownAsMeasured() =>
        Assert.Contains("The isotherms of shell, sponge are illustrative, not measured", WaterMoving.Of(PhysicsSamples.Water()).Caption.Markup, StringComparison.Ordinal);

    [Fact]
    public void Lethality_OfALog_SaysWhetherTheTargetIsMetAndWhatItIsNot()
    {
        var caption = HeatCurves.Lethality(PhysicsSamples.Log, LethalityReference.CookChill).Caption.ToPlainText();

        Assert.Contains("The target is met after", caption, StringComparison.Ordinal);
        Assert.Contains("no proof", caption, StringComparison.Ordinal);
    }

    [Fact]
    public void PredictedBesideMeasured_EveryMeasurement_HasItsMissAndItsPlace()
    {
        var rows = Markup.Read(PredictedBesideMeasured.Of([new("shell", "yield", PhysicsSamples.Figure("y", 397, "g", Interval.Between(390, 404)), [PhysicsSamples.Measured("shell", "yield", 396, "g"), PhysicsSamples.Measured("shell", "yield", 411, "g", 2)])]))
            .QuerySelectorAll("tbody tr").Select(row => row.TextContent.Replace('\u202f', ' ')).ToArray();

        Assert.Equal(2, rows.Length);
        Assert.Contains("−1 ginside", rows[0], StringComparison.Ordinal);
        Assert.Contains("T1, make 2", rows[1], StringComparison.Ordinal);
        Assert.Contains("+14 gabove it", rows[1], StringComparison.Ordinal);
    }

    [Fact]
    public void PredictionTable_WhatIsLackingOrOutside_IsSaid()
    {
        var text = PredictionTable.Of("x", [new("acid", PhysicsSamples.Lacking("acid", "the pH of the puree")), new("set", PhysicsSamples.Figure("set", 20, "°C", null, "the dose is 0.1 %, the equation holds from 1 to 3 %"))]).ToPlainText();

        Assert.Contains("Not known without the pH of the puree.", text, StringComparison.Ordinal);
        Assert.Contains("Outside what was tested:", text, StringComparison.Ordinal);
    }

    [Fact]
    public void CheckUp_OutsideAWindow_SaysByHowMuchWhatIsSeenAndWhatToTry()
    {
        var document = Markup.Read(CheckUpTable.Of(PhysicsSamples.CheckUp()));

        var row = document.QuerySelector("tbody tr")!.TextContent.Replace('\u202f', ' ');
        Assert.Contains("0.93 %", row, StringComparison.Ordinal);
        Assert.Contains("0.07 points too little", row, StringComparison.Ordinal);
        Assert.Contains("Try: gelatine.", row, StringComparison.Ordinal);
        Assert.Contains("1 of 2 figures inside, one not known", document.QuerySelector("summary")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.4, "0 min")]
    [InlineData(25, "25 min")]
    [InlineData(150, "2 h 30 min")]
    [InlineData(119.8, "2 h")]
    [InlineData(1500, "25 h")]
    [InlineData(5 * 1440, "5 days")]
    [InlineData(5.5 * 1440, "5.5 days")]
    [InlineData(27.4 * 1440, "27 days")]
    public void KitchenTime_InWords_IsAsAKitchenSaysIt(double minutes, string expected) => Assert.Equal(expected, KitchenTime.InWords(minutes).Replace('\u202f', ' '));

    [Theory]
    [InlineData(20, "under 1 h")]
    [InlineData(171, "3 h")]
    public void KitchenTime_Roughly_IsNotFinerThanItIsKnown(double minutes, string expected) => Assert.Equal(expected, KitchenTime.Roughly(minutes).Replace('\u202f', ' '));
}
