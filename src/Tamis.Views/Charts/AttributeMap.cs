using Tamis.Tasting;

namespace Tamis.Views;

/// <summary>Draws the trials of a tasting by their intensities, with ellipses of doubt and the directions of the scales.</summary>
public static class AttributeMap
{
    private const double Side = 420, Edge = 26;

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
        var heights = Svg.Apart([.. arrows.Select(arrow => up.At(arrow.Y))], 14, Edge, Side - Edge);
        for (var at = 0; at < arrows.Length; at++) svg.Text($"t2 ts{(arrows[at].X < 0 ? " end" : "")}", across.At(arrows[at].X) + (arrows[at].X < 0 ? -3 : 3), heights[at] + 4, arrows[at].scale.Attribute.Name);
        foreach (var trial in map.Trials)
        {
            var kind = Names.Same(trial.Trial, chosen) ? " c-chosen" : "";
            if (trial.Outline.Count > 0) svg.Path("line" + kind, trial.Outline.Append(trial.Outline[0]).Select(point => (across.At(point.Across), up.At(point.Up))));
            svg.Dot("dot" + kind, across.At(trial.Across), up.At(trial.Up), 4.5).Text("ts halo" + kind, across.At(trial.Across) + 7, up.At(trial.Up) + (IsUnderAName(trial, arrows, far) ? 15 : -6), trial.Trial);
        }
        svg.Text("t2 ts mid", Side / 2, Side + 8, AxisTitle(map, figures));
        return new([new(title, svg.ToHtml(), Live(map, arrows, chosen, far), (int)Side + 16)], caption)
        {
            Figures = new DataTable(title, [Column.Words("Trial or scale"), Column.Numbers("across"), Column.Numbers("up")],
                [.. map.Trials.Select(trial => new Row(trial.Trial, figures.Difference(trial.Across, 1), figures.Difference(trial.Up, 1))), .. map.Scales.Select(scale => new Row(scale.Attribute.Name, figures.Difference(scale.Across, 2), figures.Difference(scale.Up, 2)))]) { Fits = true, IsLong = true },
        };
    }

    // The name of a scale stands at the end of its line; a trial that lies there has its own name below.
    private static bool IsUnderAName(MappedTrial trial, IReadOnlyList<(MappedScale Scale, double X, double Y)> arrows, double far) =>
        arrows.Any(arrow => Math.Abs(arrow.X - trial.Across) < 0.35 * far && arrow.Y - trial.Up is var above && above > -0.05 * far && above < 0.15 * far);

    private static double Length(MappedScale scale) => Math.Sqrt(scale.Across * scale.Across + scale.Up * scale.Up);

    private static string AxisTitle(TrialMap map, Figures figures) => $"{figures.WholeShare(map.Shares.Across).Text} of what differs lies across, {figures.WholeShare(map.Shares.Up).Text} upwards";

    private static string Live(TrialMap map, IReadOnlyList<(MappedScale Scale, double X, double Y)> arrows, string? chosen, double far)
    {
        var live = new LiveFigure();
        foreach (var (scale, x, y) in arrows)
            live.Add("scatter", ("mode", "lines+text"), ("hoverinfo", "skip"), ("x", LiveFigure.Numbers([0, x])), ("y", LiveFigure.Numbers([0, y])), ("line", new { color = "role:rule-2", width = 1 }),
                ("text", (string[])["", LiveFigure.Text(scale.Attribute.Name)]), ("textposition", x < 0 ? "middle left" : "middle right"), ("textfont", new { size = 12, color = "role:ink-2" }));
        foreach (var trial in map.Trials)
        {
            var color = Names.Same(trial.Trial, chosen) ? "role:chosen" : "role:ink-2";
            var outline = trial.Outline.Count > 0 ? trial.Outline.Append(trial.Outline[0]).ToArray() : [];
            live.Add("scatter", ("mode", "lines"), ("hoverinfo", "skip"), ("x", LiveFigure.Numbers(outline.Select(point => point.Across))), ("y", LiveFigure.Numbers(outline.Select(point => point.Up))), ("line", new { color, width = 1.5 }));
            live.Add("scatter", ("mode", "markers+text"), ("hoverinfo", "skip"), ("x", LiveFigure.Numbers([trial.Across])), ("y", LiveFigure.Numbers([trial.Up])), ("marker", new { color = "role:paper", line = new { color } }),
                ("text", (string[])[LiveFigure.Text(trial.Trial)]), ("textposition", IsUnderAName(trial, arrows, far) ? "bottom right" : "top right"), ("textfont", new { size = 13, color }));
        }
        return live.Layout(("height", (int)Side + 16), ("margin", new { l = 8, r = 8, t = 8, b = 8 }),
            ("xaxis", new { range = LiveFigure.Numbers([-far, far]), showticklabels = false, zeroline = true, showgrid = false, showline = false, ticks = "" }),
            ("yaxis", new { range = LiveFigure.Numbers([-far, far]), showticklabels = false, zeroline = true, showgrid = false, showline = false, ticks = "", scaleanchor = "x" })).ToJson();
    }
}
