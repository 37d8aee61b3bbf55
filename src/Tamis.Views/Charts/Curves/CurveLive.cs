namespace Tamis.Views;

/// <summary>The live picture of curves.</summary>
internal static class CurveLive
{
    /// <summary>Its Plotly data and layout.</summary>
    public static string Json(CurvePanel panel, CurveFrame frame)
    {
        var live = new LiveFigure();
        for (var at = 0; at < panel.Curves.Count; at++) Add(live, panel, frame, at);
        if (panel.Curves.Count == 0) live.Add("scatter", ("x", Array.Empty<double>()), ("y", Array.Empty<double>()), ("line", new { color = "role:ink-2" }));
        var marks = panel.Events.OrderBy(each => each.X).ToArray();
        var heights = frame.EventLabels();
        return live.Layout(
            ("height", (int)CurveFrame.HeightUnits),
            ("margin", new { l = (int)frame.Left, r = (int)(CurveFrame.WidthUnits - frame.Right), t = (int)CurveFrame.Top, b = (int)(CurveFrame.HeightUnits - CurveFrame.Bottom) }),
            ("xaxis", new
            {
                title = new { text = LiveFigure.Text(panel.Across.Title) }, range = LiveFigure.Numbers([frame.Across.Low, frame.Across.High]),
                tickvals = LiveFigure.Numbers(frame.Across.Ticks()), ticktext = frame.Across.Ticks().Select(frame.AcrossTick).ToArray(), automargin = false,
            }),
            ("yaxis", new
            {
                range = LiveFigure.Numbers([frame.Up.Low, frame.Up.High]), automargin = false,
                tickvals = LiveFigure.Numbers(frame.Up.Ticks()), ticktext = frame.Up.Ticks().Select(frame.UpTick).ToArray(),
            }),
            ("shapes", (object[])[
                .. panel.Bands.Select(band => new
                {
                    type = "rect", layer = "below", xref = "paper", yref = "y", x0 = 0, x1 = 1, y0 = Within(frame.Up, band.Y.Low), y1 = Within(frame.Up, band.Y.High),
                    fillcolor = band.IsDanger ? "role:danger" : "role:window", line = new { width = 0 },
                }),
                .. panel.Limits.Select(limit => new { type = "line", xref = "paper", yref = "y", x0 = 0, x1 = 1, y0 = Within(frame.Up, limit.Y), y1 = Within(frame.Up, limit.Y), line = Dashed }),
                .. marks.Select(mark => new { type = "line", xref = "x", yref = "paper", x0 = Within(frame.Across, mark.X), x1 = Within(frame.Across, mark.X), y0 = 0, y1 = 1, line = Dashed }),
            ]),
            ("annotations", (object[])[
                new { xref = "paper", yref = "paper", x = 0.0, y = 1.0, xanchor = "left", yanchor = "bottom", xshift = (int)(2 - frame.Left), yshift = 10, text = LiveFigure.Text(panel.Up.Title), font = Quiet },
                .. panel.Limits.Select(limit => Named(limit.Name, limit.Y, -9, "bottom", frame)),
                .. panel.Bands.Select(band => Named(band.Name, band.Y.High, 10, "top", frame)),
                .. marks.Select((mark, at) => new { xref = "x", yref = "paper", x = Within(frame.Across, mark.X), y = 1.0, xanchor = "left", yanchor = "middle", xshift = 4, yshift = (int)(CurveFrame.Top - heights[at] + 4), text = LiveFigure.Text(mark.Name), font = Quiet }),
                .. panel.Curves.Index().Where(each => each.Item.Points.Count > 0).Select(each => new
                {
                    xref = "paper", yref = "paper", x = 1.0, y = 0.0, xanchor = "left", yanchor = "middle", xshift = 8, yshift = (int)Math.Round(CurveFrame.Bottom - frame.Labels[each.Index] + 4),
                    text = string.Join("<br>", CurveFrame.LinesOf(each.Item.Name).Select(LiveFigure.Text)), align = "left", font = new { size = 12, color = "role:" + frame.Look(each.Index).Hue },
                }),
            ])).ToJson();
    }

    private static object Named(string name, double value, double lower, string anchor, CurveFrame frame)
    {
        var isRight = frame.IsBetterRight(name, frame.Up.Within(value) + lower);
        return new
        {
            xref = "paper", yref = "y", x = isRight ? 1.0 : 0.0, y = Within(frame.Up, value), xanchor = isRight ? "right" : "left", yanchor = anchor,
            xshift = isRight ? -4 : 4, yshift = 0, text = LiveFigure.Text(name), font = Quiet,
        };
    }

    private static object Dashed => new { color = "role:ink-2", width = 1.25, dash = "5px,4px" };

    private static object Quiet => new { size = 12, color = "role:ink-2" };

    private static void Add(LiveFigure live, CurvePanel panel, CurveFrame frame, int at)
    {
        var curve = panel.Curves[at];
        var (hue, isDashed) = frame.Look(at);
        if (curve.Between.Count > 1)
        {
            live.Add("scatter", ("mode", "lines"), ("hoverinfo", "skip"), ("line", new { width = 0, color = "role:" + hue }), ("fill", "toself"), ("fillcolor", "role:faint"),
                ("x", LiveFigure.Numbers(curve.Between.Select(each => each.X).Concat(curve.Between.Reverse().Select(each => each.X)))),
                ("y", LiveFigure.Numbers(curve.Between.Select(each => each.High).Concat(curve.Between.Reverse().Select(each => each.Low)))));
        }
        var points = frame.Thinned(curve);
        live.Add("scatter", ("mode", curve.IsDots ? "markers" : "lines"), ("connectgaps", false), ("cliponaxis", !curve.IsDots),
            ("x", points.Select(point => Brief(point.X, frame.Across)).ToArray()), ("y", points.Select(point => Brief(point.Y, frame.Up)).ToArray()),
            ("line", new { color = "role:" + hue, dash = isDashed ? "6px,4px" : "solid" }),
            ("marker", new { size = 8, color = "role:paper", line = new { color = "role:" + hue } }),
            ("customdata", points.Select(point => double.IsFinite(point.Y) ? $"{frame.Write(panel.Across, point.X).Text}: {frame.Write(panel.Up, point.Y).Text}" : "").ToArray()),
            ("name", LiveFigure.Text(curve.Name)),
            ("hovertemplate", "%{data.name}<br>%{customdata}<extra></extra>"));
    }

    private static double Within(Scale scale, double value) => LiveFigure.Number(Math.Clamp(value, scale.Low, scale.High));

    // A picture of some hundred pixels shows four digits of its axis; a gap is null.
    private static double? Brief(double value, Scale scale)
    {
        if (!double.IsFinite(value)) return null;
        var decimals = Math.Clamp(4 - (int)Math.Ceiling(Math.Log10(Math.Max(scale.High - scale.Low, 1e-6))), 0, 8);
        return Math.Round(value, decimals) + 0.0;
    }
}
