namespace Tamis.Views.Tests.Components;

public class ComponentTests
{
    [Fact]
    public void DataTable_Numbers_StandOnTheirDecimalMark()
    {
        var rows = Markup.Read(Samples.Changes.ToHtml()).QuerySelectorAll("tbody tr").ToArray();

        Assert.Equal("90<i></i>", rows[0].Children[2].InnerHtml);
        Assert.Equal("8<i>.0</i>", rows[1].Children[2].InnerHtml);
        Assert.Equal("num d1", rows[0].Children[2].ClassName);
        Assert.Equal("num", rows[0].Children[1].ClassName);
        Assert.Equal("num d1 said", rows[2].Children[2].ClassName);
        Assert.Equal("T10, mousse, gelatine leaf, g", rows[1].Children[2].GetAttribute("data-figure"));
        Assert.Equal("total", rows[3].ClassName);
    }

    [Fact]
    public void DataTable_Scrolling_IsFocusableAndNamed()
    {
        var across = Markup.Read(Samples.Changes.ToHtml()).QuerySelector(".across")!;

        Assert.Equal(("0", "region", "Changes of T10 against T8"), (across.GetAttribute("tabindex"), across.GetAttribute("role"), across.GetAttribute("aria-label")));
    }

    [Fact]
    public void DataTable_RowWithoutACell_IsRefused() =>
        Assert.Contains("has 2 columns, but a row has 1", Assert.Throws<ArgumentException>(() => new DataTable("x", [Column.Words("a"), Column.Words("b")], [new Row("one")]).ToHtml()).Message, StringComparison.Ordinal);

    [Fact]
    public void DataTable_MixedUnits_StandBesideTheNumbers() =>
        Assert.Equal("1.5\u202fmg", Markup.Read(new DataTable("x", [Column.Words("a"), Column.Numbers("b")], [new Row("c", new Num("1", ".5", "mg"))]).ToHtml()).QuerySelector("td")!.TextContent);

    [Theory]
    [InlineData(1.0, "all")]
    [InlineData(0.997, "99\u202f%")]
    [InlineData(0.003, "1\u202f%")]
    [InlineData(0.0, "0\u202f%")]
    public void Known_NearlyAll_IsNotCalledAll(double share, string expected) => Assert.Equal(expected, Marks.Known(share).ToPlainText());

    [Theory]
    [InlineData(1.3, 0.5, 2.1, "range up")]
    [InlineData(-0.9, -1.6, -0.2, "range down")]
    [InlineData(0.8, 0.01, 1.6, "range")]
    public void Range_Dot_IsFilledOnlyWhereThePrintedIntervalLeavesTheLine(double points, double low, double high, string expected) =>
        Assert.Equal(expected, Markup.Read(Marks.Range(new(points, Interval.Between(low, high)), Interval.Between(-3, 3))).QuerySelector("span")!.ClassName);

    [Fact]
    public void Gauge_OutsideTheWindow_SaysSo()
    {
        Assert.Equal("gauge", Markup.Read(Marks.Gauge(60, Interval.Between(45, 65))).QuerySelector("span")!.ClassName);
        Assert.Equal("gauge out", Markup.Read(Marks.Gauge(66, Interval.Between(45, 65))).QuerySelector("span")!.ClassName);
    }

    [Fact]
    public void WorkingView_Steps_StandInTheOrderOfUseWithTheFigureLast()
    {
        var steps = Markup.Read(WorkingView.Of(Samples.Fibre)).QuerySelectorAll("details > ol > li").Where(step => step.ParentElement!.ParentElement!.ClassName == "working").ToArray();

        Assert.Equal(4, steps.Length);
        Assert.StartsWith("fibre in the batter: 56.68\u202fg", steps[0].TextContent, StringComparison.Ordinal);
        Assert.Equal(2, steps[0].QuerySelectorAll("li").Length);
        Assert.Contains("from memory", steps[3].QuerySelector(".from")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void TrialTree_Children_HangFromTheirParent()
    {
        var document = Markup.Read(TrialTree.Of(Samples.Trials));

        Assert.Equal("T10", document.QuerySelector(".tree > li > .kids > li > .kids > li > .chosen > b")!.TextContent);
        Assert.Equal(["up", "flat"], document.QuerySelectorAll(".tree > li > .kids > li:first-child > div .effects li").Select(effect => effect.ClassName));
    }

    [Fact]
    public void Verdict_EmptyHeadings_AreLeftOut() =>
        Assert.Equal(["Shown"], Markup.Read(Notes.Verdict([Html.Of($"x")], [], [], [])).QuerySelectorAll("dt").Select(heading => heading.TextContent));
}
