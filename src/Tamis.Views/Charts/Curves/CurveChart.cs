namespace Tamis.Views;

/// <summary>Draws curves: each named at its end, limits dashed across, bands tinted, moments upright; the figures at round places in a table.</summary>
public static class CurveChart
{
    /// <summary>The chart of all panels, with the figures in a table.</summary>
    /// <param name="panels">The panels, at least one.</param>
    /// <param name="caption">What is drawn, how sure, where the limits come from.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Of(IReadOnlyList<CurvePanel> panels, Html caption, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        return new([.. panels.Select(panel => Panel(panel, numbers))], caption) { Figures = Table(panels, numbers), Language = numbers.Language, IsDense = panels.Count > 2 };
    }

    private static ChartPanel Panel(CurvePanel panel, Figures figures)
    {
        var frame = new CurveFrame(panel, figures);
        return new(panel.Title, Still(panel, frame, figures), CurveLive.Json(panel, frame), (int)CurveFrame.HeightUnits) { Below = panel.Below };
    }

    private static Html Still(CurvePanel panel, CurveFrame frame, Figures figures)
    {
        var description = panel.Description.Length == 0 ? figures.Language.Words.Chart.CurvesDescription : panel.Description;
        var svg = new Svg(CurveFrame.WidthUnits, CurveFrame.HeightUnits, panel.Title, description);
        var (x, y) = (frame.Across, frame.Up);
        foreach (var band in panel.Bands)
            svg.Box(band.IsDanger ? "danger" : "window", frame.Left, y.Within(band.Y.High), frame.Right, y.Within(band.Y.Low));
        foreach (var tick in y.Ticks())
            svg.Line("grid", frame.Left, y.At(tick), frame.Right, y.At(tick)).Text("t2 ts end", frame.Left - 6, y.At(tick) + 4, frame.UpTick(tick));
        svg.Line("axis", frame.Left, CurveFrame.Bottom, frame.Right, CurveFrame.Bottom);
        foreach (var tick in x.Ticks())
            svg.Line("axis", x.At(tick), CurveFrame.Bottom, x.At(tick), CurveFrame.Bottom + 4).Text("t2 ts mid", x.At(tick), CurveFrame.Bottom + 18, frame.AcrossTick(tick));
        svg.Text("t2 ts mid", (frame.Left + frame.Right) / 2, CurveFrame.Bottom + 38, panel.Across.Title);
        // The title of the upward axis lies across its head: text that stands on its side is hard to read.
        svg.Text("t2 ts", 2, 14, panel.Up.Title);
        var heights = frame.EventLabels();
        foreach (var (at, each) in panel.Events.OrderBy(each => each.X).Index())
            svg.Line("limit", x.Within(each.X), CurveFrame.Top, x.Within(each.X), CurveFrame.Bottom);
        foreach (var limit in panel.Limits)
            svg.Line("limit", frame.Left, y.Within(limit.Y), frame.Right, y.Within(limit.Y));
        for (var at = 0; at < panel.Curves.Count; at++) Draw(svg, panel.Curves[at], frame, at);
        foreach (var (at, each) in panel.Events.OrderBy(each => each.X).Index())
            svg.Text("t2 ts halo", x.Within(each.X) + 4, heights[at], each.Name);
        foreach (var limit in panel.Limits) Name(limit.Name, y.Within(limit.Y) - 5);
        foreach (var band in panel.Bands) Name(band.Name, y.Within(band.Y.High) + 14);
        return svg.ToHtml();

        void Name(string name, double height)
        {
            var isRight = frame.IsBetterRight(name, height - 4);
            svg.Text(isRight ? "t2 ts halo end" : "t2 ts halo", isRight ? frame.Right - 4 : frame.Left + 4, height, name);
        }
    }

    private static void Draw(Svg svg, Curve curve, CurveFrame frame, int at)
    {
        var (hue, isDashed) = frame.Look(at);
        var look = $" c-{hue}";
        if (curve.Between.Count > 1)
            svg.Path("band" + look, [.. curve.Between.Select(each => Place(frame, each.X, each.High)), .. curve.Between.Reverse().Select(each => Place(frame, each.X, each.Low))]);
        foreach (var piece in frame.Pieces(curve))
        {
            if (!curve.IsDots && piece.Count > 1) svg.Path("line" + look + (isDashed ? " dashed" : ""), piece.Select(point => Place(frame, point.X, point.Y)));
            else foreach (var (x, y) in piece) svg.Dot("dot" + look, frame.Across.At(x), frame.Up.Within(y), 4);
        }
        if (curve.Points.Count == 0) return;
        var lines = CurveFrame.LinesOf(curve.Name);
        foreach (var (number, line) in lines.Index()) svg.Text("ts" + look, frame.Right + 8, frame.Labels[at] + (number - (lines.Count - 1) / 2.0) * 13, line);
    }

    private static (double X, double Y) Place(CurveFrame frame, double x, double y) => (frame.Across.Within(x), frame.Up.Within(y));

    private static DataTable Table(IReadOnlyList<CurvePanel> panels, Figures figures)
    {
        var first = panels[0];
        if (panels.Count == 1 && first.Curves.Count <= 7) return Beside(first, figures);
        // Several panels, or more curves than a table has columns: a row a curve and place.
        var words = figures.Language.Words.Chart;
        return new(first.Title, [Column.Words(words.Picture), Column.Words(words.Name), Column.Words(words.Where), Column.Numbers(words.Value)],
            [.. from panel in panels
                let frame = new CurveFrame(panel, figures)
                from curve in panel.Curves
                from point in curve.IsDots ? curve.Points : [.. frame.Across.Ticks().Select(tick => (X: tick, Y: HeightAt(curve, tick))).Where(point => double.IsFinite(point.Y))]
                select new Row(panel.Title, curve.Name, $"{panel.Across.Title} {frame.Write(panel.Across, point.X).Text}", frame.Write(panel.Up, point.Y))]) { IsLong = true };
    }

    private static DataTable Beside(CurvePanel panel, Figures figures)
    {
        var frame = new CurveFrame(panel, figures);
        var places = frame.Across.Ticks().Concat(panel.Curves.Where(curve => curve.IsDots).SelectMany(curve => curve.Points.Select(point => point.X))).Distinct().Order();
        return new($"{panel.Title}: {panel.Up.Title}",
            [Column.Words(panel.Across.Title), .. panel.Curves.Select(curve => Column.Numbers(curve.Name))],
            [.. places.Select(place => new Row([frame.Write(panel.Across, place).Text, .. panel.Curves.Select(curve => (Cell)(HeightAt(curve, place) is var height && double.IsFinite(height) ? frame.Write(panel.Up, height) : Num.Said("")))]))]);
    }

    /// <summary>The height of a curve at a place, in a line between its points; NaN outside it. Dots have a height only where they are.</summary>
    internal static double HeightAt(Curve curve, double x)
    {
        for (var at = 0; at < curve.Points.Count; at++)
        {
            var (here, y) = curve.Points[at];
            if (here == x) return y;
            if (curve.IsDots || at == 0 || here < x || curve.Points[at - 1].X > x) continue;
            var (before, from) = curve.Points[at - 1];
            return from + (y - from) * (x - before) / (here - before);
        }
        return double.NaN;
    }
}
