namespace Tamis.Views;

/// <summary>The live picture of the ladder of water activity: names in margins of fixed width, so that it fits a phone.</summary>
internal static class LadderLive
{
    /// <summary>Its Plotly data and layout.</summary>
    public static string Json(LadderFrame frame, Figures figures)
    {
        var live = new LiveFigure();
        var words = figures.Language.Words.Chart;
        for (var at = 0; at < frame.Rows.Count; at++)
        {
            var (row, x) = (frame.Rows[at], LiveFigure.Number(LadderFrame.PartOf(at)));
            if (row.Spread is { } spread) live.Add("scatter", ("mode", "lines"), ("hoverinfo", "skip"), ("x", (double[])[x, x]), ("y", (double[])[Within(spread.Low), Within(spread.High)]), ("line", new { color = "role:ink-2" }));
            if (row.Measured.Count > 0)
                live.Add("scatter", ("mode", "markers"), ("hoverinfo", "skip"), ("cliponaxis", false), ("x", row.Measured.Select(_ => x).ToArray()), ("y", row.Measured.Select(Within).ToArray()),
                    ("marker", new { symbol = "line-ew-open", size = 14, color = "role:gain", line = new { color = "role:gain", width = 2 } }));
        }
        live.Add("scatter", ("mode", "markers"), ("cliponaxis", false), ("x", frame.Rows.Select((_, at) => LiveFigure.Number(LadderFrame.PartOf(at))).ToArray()), ("y", frame.Rows.Select(row => Within(row.WaterActivity!.Value)).ToArray()),
            ("marker", new { size = 10, color = frame.Rows.Select(row => row.IsGuess ? "role:paper" : "role:chosen").ToArray(), line = new { color = frame.Rows.Select(row => row.IsGuess ? "role:ink-2" : "role:chosen").ToArray() } }),
            ("text", frame.Rows.Select(row => LiveFigure.Text(row.Name)).ToArray()), ("customdata", frame.Rows.Select(row => Shown(row, figures)).ToArray()), ("hovertemplate", "%{text}: %{customdata}<extra></extra>"));
        return live.Layout(("height", (int)frame.Height),
            ("margin", new { l = (int)frame.Left, r = (int)(frame.WidthUnits - frame.Right), t = (int)LadderFrame.Top, b = 14, pad = 0 }),
            ("xaxis", new { range = (double[])[0, 1], visible = false }), ("yaxis", new { range = (double[])[LadderFrame.Lowest, 1], visible = false }),
            ("shapes", (object[])[
                Stroke(0, 0, 0, 1, "role:rule-2", "solid"),
                .. frame.Rungs.Select(rung => Stroke(0, Paper(frame.Up.Within(rung.WaterActivity)), 1, Paper(frame.Up.Within(rung.WaterActivity)), "role:ink-2", "5px,4px")),
                .. frame.Rungs.Select((rung, at) => new
                {
                    type = "line", xref = "paper", yref = "paper", xsizemode = "pixel", xanchor = 0, x0 = (int)(4 - LadderFrame.RungGap), y0 = Paper(frame.RungLabels[at]), x1 = 0, y1 = Paper(frame.Up.Within(rung.WaterActivity)),
                    line = new { color = "role:rule-2", width = 1 },
                }),
                .. frame.Rows.Select((row, at) => Stroke(LadderFrame.PartOf(at), Paper(frame.Up.Within(row.WaterActivity!.Value)), 1, Paper(frame.RowLabels[at]), "role:rule", "solid")),
            ]),
            ("annotations", (object[])[
                Said(words.NoGrowthUnder, 0, 1, "right", -LadderFrame.RungGap, "role:ink-2", 16), Said(words.WaterActivity, 1, 1, "left", 6, "role:ink-2", 16),
                .. frame.Rungs.Select((rung, at) => Said(rung.Name, 0, Paper(frame.RungLabels[at]), "right", -LadderFrame.RungGap, "role:ink")),
                .. frame.Rows.Select((row, at) => Said(frame.NameOf(row), 1, Paper(frame.RowLabels[at]), "left", 6, "role:ink")),
            ])).ToJson();

        double Paper(double units) => LiveFigure.Number((frame.Bottom - units) / (frame.Bottom - LadderFrame.Top));

        static double Within(double activity) => LiveFigure.Number(Math.Clamp(activity, LadderFrame.Lowest, 1));

        static object Stroke(double x1, double y1, double x2, double y2, string color, string dash) => new
        {
            type = "line", layer = "below", xref = "paper", yref = "paper", x0 = LiveFigure.Number(x1), y0 = y1, x1 = LiveFigure.Number(x2), y1 = y2, line = new { color, width = 1, dash },
        };

        static object Said(string text, double x, double y, string anchor, double shift, string color, int up = 0) => new
        {
            xref = "paper", yref = "paper", x, y, xanchor = anchor, yanchor = "middle", xshift = (int)shift, yshift = up, text = LiveFigure.Text(text), font = new { size = 12, color },
        };
    }

    private static string Shown(LadderRow row, Figures figures) =>
        figures.WaterActivity(row.WaterActivity).Text + (row.Spread is { } spread ? $" ({figures.Between(spread, 2, "")})" : "");
}
