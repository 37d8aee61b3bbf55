namespace Tamis.Views;

/// <summary>A bar of a count.</summary>
/// <param name="Name">What it counts.</param>
/// <param name="Count">How many.</param>
/// <param name="IsChosen">Whether it is among those spoken of.</param>
public sealed record CountBar(string Name, int Count, bool IsChosen);

/// <summary>Bars of counts side by side: how many groups had so many right answers.</summary>
public static class CountBars
{
    private const double Width = 420, Height = 220, Left = 40, Right = 410, Top = 14, Bottom = 176;

    /// <summary>The chart, with the figures in a table.</summary>
    /// <param name="title">What is counted.</param>
    /// <param name="axisTitle">What the bars stand for.</param>
    /// <param name="bars">The bars from left to right.</param>
    /// <param name="description">What is seen, in one sentence.</param>
    /// <param name="caption">What is drawn.</param>
    public static ChartView Of(string title, string axisTitle, IReadOnlyList<CountBar> bars, string description, Html caption)
    {
        var figures = Figures.English;
        var up = new Scale(0, Math.Max(1, bars.Max(bar => bar.Count)), Bottom, Top);
        var wide = (Right - Left) / bars.Count;
        var svg = new Svg(Width, Height, title, description);
        foreach (var tick in up.Ticks()) svg.Line("grid", Left, up.At(tick), Right, up.At(tick)).Text("t2 ts end", Left - 6, up.At(tick) + 4, figures.Number(tick, 0).Text);
        for (var at = 0; at < bars.Count; at++)
        {
            var (x, bar) = (Left + at * wide, bars[at]);
            svg.Box(bar.IsChosen ? "bar-chosen" : "bar-plain", x + 1.5, up.At(bar.Count), x + wide - 1.5, Bottom);
            if (at % Math.Max(1, (int)Math.Ceiling(16 / wide)) == 0) svg.Text("t2 ts mid", x + wide / 2, Bottom + 16, bar.Name);
        }
        svg.Line("axis", Left, Bottom, Right, Bottom).Text("t2 ts mid", (Left + Right) / 2, Bottom + 38, axisTitle);
        return new([new(title, svg.ToHtml(), Live(axisTitle, bars), (int)Height)], caption)
        {
            Figures = new DataTable(title, [Column.Words(Show.Capital(axisTitle)), Column.Numbers("how many")], [.. bars.Where(bar => bar.Count > 0).Select(bar => new Row(bar.Name, figures.Count(bar.Count)) { Kind = bar.IsChosen ? RowKind.Chosen : RowKind.Line })]) { Fits = true, IsLong = true },
        };
    }

    private static string Live(string axisTitle, IReadOnlyList<CountBar> bars) => new LiveFigure()
        .Add("bar", ("x", bars.Select(bar => LiveFigure.Text(bar.Name)).ToArray()), ("y", LiveFigure.Numbers(bars.Select(bar => (double)bar.Count))),
            ("marker", new { color = bars.Select(bar => bar.IsChosen ? "role:chosen" : "role:faint").ToArray() }), ("hovertemplate", "%{x}: %{y}<extra></extra>"))
        .Layout(("height", (int)Height), ("bargap", 0.15), ("margin", new { l = (int)Left, r = 10, t = (int)Top, b = 44 }),
            ("xaxis", new { type = "category", title = new { text = LiveFigure.Text(axisTitle) } }), ("yaxis", new { rangemode = "tozero" })).ToJson();
}
