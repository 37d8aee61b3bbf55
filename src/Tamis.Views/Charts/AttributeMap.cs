using Tamis.Tasting;

namespace Tamis.Views;

/// <summary>Draws the trials of a tasting by their intensities, with ellipses of doubt and the directions of the scales.</summary>
public static class AttributeMap
{
    private const double Side = 420, Edge = 26, DotUnits = 4.5;

    /// <summary>The chart, with the figures in a table.</summary>
    /// <param name="map">The map.</param>
    /// <param name="chosen">The trial that the page speaks of, or null.</param>
    /// <param name="caption">What is drawn and how to read it.</param>
    public static ChartView Of(TrialMap map, string? chosen, Html caption)
    {
        var figures = Figures.English;
        var far = map.Trials.SelectMany(trial => trial.Outline.Append((trial.Across, trial.Up))).Max(point => Math.Max(Math.Abs(point.Item1), Math.Abs(point.Item2))) * 1.05;
        var longest = map.Scales.Max(scale => Math.Sqrt(scale.Across * scale.Across + scale.Up * scale.Up));
        var arrows = map.Scales.Where(scale => Length(scale) > 0.3 * longest).Select(scale => (scale, X: scale.Across / longest * far * 0.8, Y: scale.Up / longest * far * 0.8)).ToArray();
        var title = $"The trials of {map.Session.Name} by their intensities";
        var (across, up) = (new Scale(-far, far, Edge, Side - Edge), new Scale(-far, far, Side - Edge, Edge));
        var svg = new Svg(Side, Side + 16, title, $"{map.Trials.Count} trials with ellipses, and {arrows.Length} scales as directions.");
        svg.Line("grid", across.At(0), Edge, across.At(0), Side - Edge).Line("grid", Edge, up.At(0), Side - Edge, up.At(0));
        foreach (var (_, x, y) in arrows) svg.Line("axis", across.At(0), up.At(0), across.At(x), up.At(y));
        foreach (var trial in map.Trials)
        {
            var kind = Names.Same(trial.Trial, chosen) ? " c-chosen" : "";
            if (trial.Outline.Count > 0) svg.Path("line" + kind, trial.Outline.Append(trial.Outline[0]).Select(point => (across.At(point.Across), up.At(point.Up))));
            svg.Dot("dot" + kind, across.At(trial.Across), up.At(trial.Up), DotUnits);
        }
        var names = svg.DrawMap([.. map.Trials.Select(trial => new MapLabel(trial.Trial, across.At(trial.Across), up.At(trial.Up), DotUnits))],
            arrows.Select(arrow => new MapLabel(arrow.scale.Attribute.Name, across.At(arrow.X), up.At(arrow.Y), 1, IsOutward: true)), chosen, Side);
        svg.Text("t2 ts mid", Side / 2, Side + 8, AxisTitle(map, figures));
        return new([new(title, svg.ToHtml(), Live(map, arrows, [.. names.Select(name => (name.Label.Text, across.Back(name.X), up.Back(name.Y)))], chosen, far), (int)Side + 16)], caption)
        {
            Figures = new DataTable(title, [Column.Words("Trial or scale"), Column.Numbers("across"), Column.Numbers("up")],
                [.. map.Trials.Select(trial => new Row(trial.Trial, figures.Difference(trial.Across, 1), figures.Difference(trial.Up, 1))), .. map.Scales.Select(scale => new Row(scale.Attribute.Name, figures.Difference(scale.Across, 2), figures.Difference(scale.Up, 2)))]) { Fits = true, IsLong = true },
        };
    }

    private static double Length(MappedScale scale) => Math.Sqrt(scale.Across * scale.Across + scale.Up * scale.Up);

    private static string AxisTitle(TrialMap map, Figures figures) => $"{figures.WholeShare(map.Shares.Across).Text} of what differs lies across, {figures.WholeShare(map.Shares.Up).Text} upwards";

    private static string Live(TrialMap map, IReadOnlyList<(MappedScale Scale, double X, double Y)> arrows, IReadOnlyList<(string Name, double X, double Y)> names, string? chosen, double far)
    {
        var live = new LiveFigure();
        foreach (var (_, x, y) in arrows)
            live.Add("scatter", ("mode", "lines"), ("hoverinfo", "skip"), ("x", LiveFigure.Numbers([0, x])), ("y", LiveFigure.Numbers([0, y])), ("line", new { color = "role:rule-2", width = 1 }));
        foreach (var trial in map.Trials)
        {
            var color = Names.Same(trial.Trial, chosen) ? "role:chosen" : "role:ink-2";
            var outline = trial.Outline.Count > 0 ? trial.Outline.Append(trial.Outline[0]).ToArray() : [];
            live.Add("scatter", ("mode", "lines"), ("hoverinfo", "skip"), ("x", LiveFigure.Numbers(outline.Select(point => point.Across))), ("y", LiveFigure.Numbers(outline.Select(point => point.Up))), ("line", new { color, width = 1.5 }));
            live.Add("scatter", ("mode", "markers"), ("hoverinfo", "skip"), ("x", LiveFigure.Numbers([trial.Across])), ("y", LiveFigure.Numbers([trial.Up])), ("marker", new { color = "role:paper", line = new { color } }));
        }
        // The names stand where the still picture has them: the live one is no smaller.
        for (var at = 0; at < names.Count; at++)
            live.Add("scatter", ("mode", "text"), ("hoverinfo", "skip"), ("x", LiveFigure.Numbers([names[at].X])), ("y", LiveFigure.Numbers([names[at].Y])), ("text", (string[])[LiveFigure.Text(names[at].Name)]),
                ("textfont", new { size = 12, color = at >= map.Trials.Count ? "role:ink-2" : Names.Same(names[at].Name, chosen) ? "role:chosen" : "role:ink" }));
        return live.Layout(("height", (int)Side + 16), ("margin", new { l = 8, r = 8, t = 8, b = 8 }),
            ("xaxis", new { range = LiveFigure.Numbers([-far, far]), showticklabels = false, zeroline = true, showgrid = false, showline = false, ticks = "" }),
            ("yaxis", new { range = LiveFigure.Numbers([-far, far]), showticklabels = false, zeroline = true, showgrid = false, showline = false, ticks = "", scaleanchor = "x" })).ToJson();
    }
}
