namespace Tamis.Views;

/// <summary>A formula on the map of its family.</summary>
/// <param name="Name">Its name.</param>
/// <param name="X">Its ratio across.</param>
/// <param name="Y">Its ratio upwards.</param>
public sealed record MapPoint(string Name, double X, double Y)
{
    /// <summary>Whether it is the one that the page speaks of.</summary>
    public bool IsChosen { get; init; }
}

/// <summary>One axis of a map of ratios.</summary>
/// <param name="Title">What it is, with its unit in words: <c>butter, % of the flour</c>.</param>
/// <param name="Window">Where the family usually lies; null where nobody has said.</param>
public sealed record MapAxis(string Title, Interval? Window)
{
    /// <summary>The ends of the axis; null to hold every point and the window with some room.</summary>
    public Interval? Ends { get; init; }
}

/// <summary>Where a ratio stands among its family: two ratios, the window as a tinted field, formulas as named dots.</summary>
public static class RatioMap
{
    private const double WidthUnits = 420, HeightUnits = 320, Left = 44, Top = 12, Bottom = 272;

    /// <summary>The chart, with the figures in a table.</summary>
    /// <param name="title">What against what.</param>
    /// <param name="across">The axis across.</param>
    /// <param name="up">The axis upwards.</param>
    /// <param name="points">The formulas.</param>
    /// <param name="caption">What is drawn, and where the window comes from.</param>
    /// <param name="description">What is seen, in one sentence; read out with the picture.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Of(string title, MapAxis across, MapAxis up, IReadOnlyList<MapPoint> points, Html caption, string description, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var frame = new Frame(
            Ends(across, points.Select(point => point.X)).To(Left, WidthUnits - 16),
            Ends(up, points.Select(point => point.Y)).To(Bottom, Top), points);
        var panel = new ChartPanel(title, Still(title, across, up, points, frame, description, numbers), Live(across, up, points, frame, numbers), (int)HeightUnits);
        return new([panel], caption) { Figures = Table(title, across, up, points, numbers), Language = numbers.Language };
    }

    private static Html Still(string title, MapAxis across, MapAxis up, IReadOnlyList<MapPoint> points, Frame frame, string description, Figures figures)
    {
        var svg = new Svg(WidthUnits, HeightUnits, title, description);
        var (x, y) = (frame.Across, frame.Up);
        foreach (var tick in y.Ticks())
            svg.Line("grid", Left, y.At(tick), WidthUnits - 16, y.At(tick)).Text("t2 ts end", Left - 6, y.At(tick) + 4, figures.Number(tick, y.TickDecimals()).Text);
        svg.Line("axis", Left, Bottom, WidthUnits - 16, Bottom);
        foreach (var tick in x.Ticks())
            svg.Line("axis", x.At(tick), Bottom, x.At(tick), Bottom + 4).Text("t2 ts mid", x.At(tick), Bottom + 18, figures.Number(tick, x.TickDecimals()).Text);
        svg.Text("t2 ts mid", (Left + WidthUnits - 16) / 2, Bottom + 38, across.Title);
        var (wide, high) = frame.Window(across, up);
        if (across.Window is not null || up.Window is not null) svg.Box("window", x.Within(wide.Low), y.Within(high.High), x.Within(wide.High), y.Within(high.Low));
        for (var at = 0; at < points.Count; at++)
        {
            var point = points[at];
            svg.Dot(point.IsChosen ? "dot c-chosen" : "dot", x.Within(point.X), y.Within(point.Y), point.IsChosen ? 6.5 : 4.5);
        }
        for (var at = 0; at < points.Count; at++)
        {
            var (labelX, labelY, end) = frame.Labels[at];
            svg.Text((end ? "ts halo end" : "ts halo") + (points[at].IsChosen ? " c-chosen" : ""), labelX, labelY, points[at].Name);
        }
        // The title of the upward axis lies across its head: text that stands on its side is hard to read.
        return svg.Text("t2 ts halo", Left + 4, Top + 6, up.Title).ToHtml();
    }

    private static string Live(MapAxis across, MapAxis up, IReadOnlyList<MapPoint> points, Frame frame, Figures figures)
    {
        var live = new LiveFigure();
        var (wide, high) = frame.Window(across, up);
        if (across.Window is not null || up.Window is not null)
            live.Add("scatter", ("mode", "lines"), ("fill", "toself"), ("fillcolor", "role:window"), ("line", new { color = "role:gain", width = 1.25 }), ("hoverinfo", "skip"),
                ("x", LiveFigure.Numbers([wide.Low, wide.High, wide.High, wide.Low, wide.Low])), ("y", LiveFigure.Numbers([high.Low, high.Low, high.High, high.High, high.Low])));
        foreach (var chosen in (bool[])[false, true])
        {
            MapPoint[] those = [.. points.Where(point => point.IsChosen == chosen)];
            if (those.Length == 0) continue;
            live.Add("scatter", ("mode", "markers"), ("cliponaxis", false), ("x", LiveFigure.Numbers(those.Select(point => point.X))), ("y", LiveFigure.Numbers(those.Select(point => point.Y))),
                ("text", those.Select(point => LiveFigure.Text(point.Name)).ToArray()),
                ("customdata", those.Select(point => LiveFigure.Text($"{across.Title}: {figures.Significant(point.X).Text}; {up.Title}: {figures.Significant(point.Y).Text}")).ToArray()),
                ("marker", new { size = chosen ? 14 : 9, color = chosen ? "role:chosen" : "role:paper", line = new { color = chosen ? "role:chosen" : "role:ink-2" } }),
                ("hovertemplate", "%{text}<br>%{customdata}<extra></extra>"));
        }
        return live.Layout(("height", (int)HeightUnits), ("margin", new { l = (int)Left, r = 16, t = (int)Top, b = 48 }),
            ("xaxis", new { title = new { text = LiveFigure.Text(across.Title) }, range = LiveFigure.Numbers([frame.Across.Low, frame.Across.High]), tickvals = LiveFigure.Numbers(frame.Across.Ticks()) }),
            ("yaxis", new { range = LiveFigure.Numbers([frame.Up.Low, frame.Up.High]), tickvals = LiveFigure.Numbers(frame.Up.Ticks()) }),
            ("annotations", points.Select((point, at) => Named(point, frame.Labels[at], frame)).Append(new
            {
                xref = "paper", yref = "paper", x = 0.0, y = 1.0, xanchor = "left", yanchor = "top", xshift = 4, yshift = 4,
                text = LiveFigure.Text(up.Title), font = new { size = 12, color = "role:ink-2" },
            }).ToArray())).ToJson();
    }

    private static object Named(MapPoint point, (double X, double Y, bool End) label, Frame frame) => new
    {
        xref = "x", yref = "y", x = LiveFigure.Number(point.X), y = LiveFigure.Number(point.Y),
        xanchor = label.End ? "right" : "left", yanchor = "middle",
        xshift = (int)Math.Round(label.X - frame.Across.Within(point.X)), yshift = (int)Math.Round(frame.Up.Within(point.Y) - label.Y + 4),
        text = LiveFigure.Text(point.Name), font = new { size = 12, color = point.IsChosen ? "role:chosen" : "role:ink" },
    };

    private static DataTable Table(string title, MapAxis across, MapAxis up, IReadOnlyList<MapPoint> points, Figures figures) => new(title,
        [Column.Words(figures.Language.Words.Chart.Name), Column.Numbers(across.Title), Column.Numbers(up.Title)],
        [.. points.Select(point => new Row(point.Name, figures.Significant(point.X), figures.Significant(point.Y)) { Kind = point.IsChosen ? RowKind.Chosen : RowKind.Line })]);

    private static AxisEnds Ends(MapAxis axis, IEnumerable<double> values)
    {
        if (axis.Ends is { } given) return new(given.Low, given.High);
        double[] all = [.. values, .. axis.Window is { } window ? (double[])[window.Low, window.High] : []];
        if (all.Length == 0) return new(0, 1);
        var (low, high) = (all.Min(), all.Max());
        var room = high > low ? (high - low) * 0.15 : Math.Max(Math.Abs(high), 1) * 0.2;
        return new(low >= 0 ? Math.Max(0, low - room) : low - room, high + room);
    }

    private readonly record struct AxisEnds(double Low, double High)
    {
        public Scale To(double from, double to) => new(Low, High, from, to);
    }

    /// <summary>Where everything of a map stands.</summary>
    private sealed class Frame(Scale across, Scale up, IReadOnlyList<MapPoint> points)
    {
        public Scale Across { get; } = across;

        public Scale Up { get; } = up;

        /// <summary>The names beside their dots: on the side where there is room, pushed apart up and down.</summary>
        public IReadOnlyList<(double X, double Y, bool End)> Labels { get; } = Place(across, up, points);

        /// <summary>The window; an axis without one is taken whole.</summary>
        public (Interval Across, Interval Up) Window(MapAxis across, MapAxis up) =>
            (across.Window ?? Interval.Between(Across.Low, Across.High), up.Window ?? Interval.Between(Up.Low, Up.High));

        private static IReadOnlyList<(double X, double Y, bool End)> Place(Scale across, Scale up, IReadOnlyList<MapPoint> points)
        {
            var heights = Svg.Apart([.. points.Select(point => up.Within(point.Y) + 4)], 15, Top + 24, Bottom - 4);
            return [.. points.Select((point, at) =>
            {
                var x = across.Within(point.X);
                var end = x + 10 + Svg.WidthOf(point.Name) > WidthUnits - 4;
                return (end ? x - 10 : x + 10, heights[at], end);
            })];
        }
    }
}
