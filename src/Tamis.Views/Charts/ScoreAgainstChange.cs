namespace Tamis.Views;

/// <summary>A trial in one tasting: how much of what changed it has, and how it was scored.</summary>
/// <param name="Trial">Its name.</param>
/// <param name="Dose">How much it has of what changed, in the unit of the panel's axis.</param>
/// <param name="MeanPoints">The mean score.</param>
/// <param name="Interval">The interval of the mean, or null where the data give no spread.</param>
/// <param name="AssessorPoints">The score of each assessor, unnamed.</param>
public sealed record ScoredDose(string Trial, double Dose, double MeanPoints, Interval? Interval, IReadOnlyList<double> AssessorPoints);

/// <summary>The trials of one tasting that share a line: only what was tasted together is joined.</summary>
/// <param name="Tasting">Its name.</param>
/// <param name="Points">Its trials, two as a rule.</param>
public sealed record ScoredSeries(string Tasting, IReadOnlyList<ScoredDose> Points)
{
    /// <summary>Whether the trial that the page speaks of is in it.</summary>
    public bool IsChosen { get; init; }

    /// <summary>What stands at the end of its line.</summary>
    internal string Label(Language language) => $"{Tasting}: {string.Join($" {language.Words.To} ", Points.OrderBy(point => point.Dose).Select(point => point.Trial).Distinct())}";
}

/// <summary>One attribute against one thing that changed.</summary>
/// <param name="Title">Attribute and change: <c>Mousse firmness and gelatine</c>.</param>
/// <param name="Attribute">The attribute.</param>
/// <param name="AxisTitle">What changed, with its unit in words: <c>gelatine in the mousse, %</c>.</param>
/// <param name="Series">The tastings.</param>
public sealed record ScorePanel(string Title, string Attribute, string AxisTitle, IReadOnlyList<ScoredSeries> Series)
{
    /// <summary>The scale that was asked.</summary>
    public Interval ScalePoints { get; init; } = Interval.Between(0, 10);

    /// <summary>The decimals of the doses; null for as many as they need, two at most.</summary>
    public int? DoseDecimals { get; init; }

    /// <summary>What is seen, in one sentence; read out with the picture.</summary>
    public string Description { get; init; } = "";

    /// <summary>What is seen and how sure, under the picture.</summary>
    public Html Below { get; init; }
}

/// <summary>Did the score follow the change? One panel an attribute and a change: doses across, scores up, one line a tasting, assessors faint behind the means.</summary>
public static class ScoreAgainstChange
{
    private const double Top = 10, Bottom = 186, Left = 26, HeightUnits = 226;

    /// <summary>The chart of all panels, with the figures in a table.</summary>
    public static ChartView Of(IReadOnlyList<ScorePanel> panels, Html caption, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        return new([.. panels.Select(panel => Panel(panel, numbers))], caption) { Figures = Table(panels, numbers), Language = numbers.Language };
    }

    private static ChartPanel Panel(ScorePanel panel, Figures figures)
    {
        var frame = new Frame(panel, figures);
        return new(panel.Title, Still(panel, frame), Live(panel, frame), (int)HeightUnits) { Below = panel.Below };
    }

    private static Html Still(ScorePanel panel, Frame frame)
    {
        var svg = new Svg(frame.WidthUnits, HeightUnits, panel.Title, panel.Description.Length == 0 ? frame.Described() : panel.Description);
        foreach (var tick in frame.Up.Ticks())
            svg.Line("grid", Left, frame.Up.At(tick), frame.Right, frame.Up.At(tick)).Text("t2 ts end", Left - 6, frame.Up.At(tick) + 4, frame.Write(tick, 0));
        svg.Line("axis", Left, Bottom, frame.Right, Bottom);
        foreach (var (dose, name) in frame.DoseTicks)
            svg.Line("axis", frame.Across.At(dose), Bottom, frame.Across.At(dose), Bottom + 4).Text("t2 ts mid", frame.Across.At(dose), 203, name);
        svg.Text("t2 ts mid", (Left + frame.Right) / 2, 222, panel.AxisTitle);

        for (var at = 0; at < panel.Series.Count; at++)
        {
            var series = panel.Series[at];
            var chosen = series.IsChosen ? " c-chosen" : "";
            foreach (var (dose, points) in frame.Spread(series, at)) svg.Dot("faint", frame.Across.At(dose), frame.Up.Within(points), 2.2);
            var places = series.Points.OrderBy(point => point.Dose).Select(point => (X: frame.Across.At(frame.Shifted(point.Dose, at)), Point: point)).ToArray();
            if (places.Length > 1) svg.Path("line" + chosen, places.Select(place => (place.X, frame.Up.Within(place.Point.MeanPoints))));
            foreach (var (x, point) in places)
            {
                if (point.Interval is { } range) svg.Line("line" + chosen, x, frame.Up.Within(range.Low), x, frame.Up.Within(range.High));
                svg.Dot("dot" + chosen, x, frame.Up.Within(point.MeanPoints), 4.5);
            }
        }
        for (var at = 0; at < panel.Series.Count; at++)
            svg.Text("ts halo" + (panel.Series[at].IsChosen ? " c-chosen" : ""), frame.Right - 2, frame.LabelPlaces[at] + 4, frame.Labels[at]);
        return svg.ToHtml();
    }

    private static string Live(ScorePanel panel, Frame frame)
    {
        var live = new LiveFigure();
        for (var at = 0; at < panel.Series.Count; at++)
        {
            var series = panel.Series[at];
            var color = series.IsChosen ? "role:chosen" : "role:ink-2";
            var points = series.Points.OrderBy(point => point.Dose).ToArray();
            var spread = frame.Spread(series, at).ToArray();
            live.Add("scatter", ("mode", "markers"), ("hoverinfo", "skip"), ("marker", new { size = 5, color = "role:faint", line = new { width = 0 } }),
                ("x", LiveFigure.Numbers(spread.Select(dot => dot.Dose))), ("y", LiveFigure.Numbers(spread.Select(dot => dot.Points))));
            live.Add("scatter", ("mode", "lines+markers"),
                ("x", LiveFigure.Numbers(points.Select(point => frame.Shifted(point.Dose, at)))), ("y", LiveFigure.Numbers(points.Select(point => point.MeanPoints))),
                ("line", new { color }), ("marker", new { color = series.IsChosen ? color : "role:paper", line = new { color } }),
                ("error_y", new
                {
                    type = "data",
                    symmetric = false,
                    array = LiveFigure.Numbers(points.Select(point => (point.Interval?.High ?? point.MeanPoints) - point.MeanPoints)),
                    arrayminus = LiveFigure.Numbers(points.Select(point => point.MeanPoints - (point.Interval?.Low ?? point.MeanPoints))),
                    color,
                }),
                ("text", points.Select(point => LiveFigure.Text($"{series.Tasting}, {point.Trial}")).ToArray()),
                ("customdata", points.Select(point => LiveFigure.Text(frame.Count(point.AssessorPoints.Count))).ToArray()),
                ("hovertemplate", "%{text}: %{y:.1f}<br>%{customdata}<extra></extra>"));
        }
        return live.Layout(
            ("height", (int)HeightUnits), ("margin", new { l = (int)Left, r = (int)(frame.WidthUnits - frame.Right), t = (int)Top, b = 40 }),
            ("xaxis", new
            {
                title = new { text = LiveFigure.Text(panel.AxisTitle) },
                tickvals = LiveFigure.Numbers(frame.DoseTicks.Select(tick => tick.Dose)),
                ticktext = frame.DoseTicks.Select(tick => tick.Name).ToArray(),
                range = LiveFigure.Numbers([frame.Across.Low, frame.Across.High]),
            }),
            ("yaxis", new { range = LiveFigure.Numbers([panel.ScalePoints.Low - 0.1, panel.ScalePoints.High + 0.1]), tickvals = LiveFigure.Numbers(frame.Up.Ticks()) }),
            ("annotations", panel.Series.Select((series, at) => new
            {
                xref = "paper",
                x = 1.0,
                xanchor = "left",
                xshift = -2,
                yref = "y",
                y = LiveFigure.Number(frame.ValueAt(frame.LabelPlaces[at])),
                text = LiveFigure.Text(frame.Labels[at]),
                font = new { size = 12, color = series.IsChosen ? "role:chosen" : "role:ink" },
            }).ToArray())).ToJson();
    }

    private static DataTable Table(IReadOnlyList<ScorePanel> panels, Figures figures)
    {
        var words = figures.Language.Words.Chart;
        return new DataTable(words.Scores,
            [Column.Words(words.Attribute), Column.Words(words.Tasting), Column.Words(words.Trial), Column.Words(words.Changed), Column.Numbers(words.Mean), Column.Numbers(words.Interval), Column.Numbers(words.People)],
            [.. from panel in panels
                from series in panel.Series
                from point in series.Points.OrderBy(point => point.Dose)
                let shown = figures.Estimate(point.MeanPoints, point.Interval, decimals: 1)
                select new Row(panel.Attribute, series.Tasting, point.Trial, $"{panel.AxisTitle}: {Frame.DoseOf(panel, point.Dose, figures)}",
                    shown.Value, Num.Said(shown.Range), figures.Count(point.AssessorPoints.Count))]) { LeastRem = 38, IsLong = true };
    }

    /// <summary>Where everything of a panel stands.</summary>
    private sealed class Frame
    {
        private readonly Figures figures;
        private readonly double shift;
        private readonly int count;

        public Frame(ScorePanel panel, Figures figures)
        {
            this.figures = figures;
            count = panel.Series.Count;
            Labels = [.. panel.Series.Select(series => series.Label(figures.Language))];
            // The names at the ends of the lines get the room that they need, the plot at least 150 units.
            var names = Math.Max(40, Labels.Select(Svg.WidthOf).DefaultIfEmpty(0).Max() + 4);
            WidthUnits = Math.Max(300, Left + 150 + names);
            Right = WidthUnits - names;

            double[] doses = [.. panel.Series.SelectMany(series => series.Points).Select(point => point.Dose).Distinct().Order()];
            var (low, high) = doses.Length == 0 ? (0, 1) : (doses[0], doses[^1]);
            var width = high > low ? high - low : Math.Max(Math.Abs(high), 1) * 0.2;
            shift = width * 0.05;
            Across = new(low - width * 0.28, high + width * 0.28, Left, Right);
            Up = new(panel.ScalePoints.Low, panel.ScalePoints.High, Bottom, Top);
            DoseTicks = Spaced([.. doses.Select(dose => (dose, DoseOf(panel, dose, figures)))]);
            LabelPlaces = Svg.Apart([.. panel.Series.Select(series => Up.Within(series.Points.Count == 0 ? Up.Low : series.Points.MaxBy(point => point.Dose)!.MeanPoints))], 16, Top + 4, Bottom - 4);
        }

        public double WidthUnits { get; }
        public double Right { get; }
        public Scale Across { get; }
        public Scale Up { get; }
        public IReadOnlyList<string> Labels { get; }
        public IReadOnlyList<double> LabelPlaces { get; }
        public IReadOnlyList<(double Dose, string Name)> DoseTicks { get; }

        /// <summary>Tastings of the same dose stand side by side, so that none covers another.</summary>
        public double Shifted(double dose, int series) => dose + (count < 2 ? 0 : (series - (count - 1) / 2.0) * 2 * shift / Math.Max(1, count - 1));

        /// <summary>The scores of single assessors beside their mean, in a fixed pattern so that equal scores do not cover each other.</summary>
        public IEnumerable<(double Dose, double Points)> Spread(ScoredSeries series, int at) =>
            from point in series.Points.OrderBy(point => point.Dose)
            from dot in point.AssessorPoints.Select((points, number) => (points, number))
            select (Shifted(point.Dose, at) + shift * 0.55 * (dot.number % 5 - 2) / 2.0, dot.points);

        public double ValueAt(double place) => Up.Low + (place - Up.From) / (Up.To - Up.From) * (Up.High - Up.Low);

        public string Write(double value, int decimals) => figures.Number(value, decimals).Text;

        public string Count(int people) => figures.Language.Words.Assessors.Fill(people).ToPlainText();

        public string Described() => string.Join("; ", Labels);

        public static string DoseOf(ScorePanel panel, double dose, Figures figures) =>
            panel.DoseDecimals is { } decimals ? figures.Number(dose, decimals).Text : figures.Part(dose).Text;

        // Marks that would run into each other are left out; every dose stands in the table.
        private List<(double Dose, string Name)> Spaced(IReadOnlyList<(double Dose, string Name)> all)
        {
            List<(double Dose, string Name)> kept = [];
            foreach (var tick in all)
                if (kept.Count == 0 || Across.At(tick.Dose) - Across.At(kept[^1].Dose) >= Svg.WidthOf(tick.Name) + 8) kept.Add(tick);
            return kept;
        }
    }
}
