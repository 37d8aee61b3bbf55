namespace Tamis.Views;

/// <summary>A dot with its interval.</summary>
/// <param name="Name">What it is of: a trial, an attribute.</param>
/// <param name="Value">Where it stands.</param>
/// <param name="Interval">Its interval, or null where the data give no spread.</param>
public sealed record DotRow(string Name, double Value, Interval? Interval)
{
    /// <summary>Whether it belongs to the trial that the page speaks of.</summary>
    public bool IsChosen { get; init; }

    /// <summary>How many people are behind it, or null where that is said elsewhere.</summary>
    public int? People { get; init; }
}

/// <summary>Dots with intervals, one under the other: means by trial on the scale that was asked, or differences around a reference.</summary>
/// <param name="Title">What against what.</param>
/// <param name="Rows">The dots, from above.</param>
/// <param name="Axis">The two ends of the axis.</param>
public sealed record DotPanel(string Title, IReadOnlyList<DotRow> Rows, Interval Axis)
{
    /// <summary>For differences: what they are differences from; their dots are filled where the interval, as printed, leaves zero. Null for means.</summary>
    public string? DifferenceFrom { get; init; }

    /// <summary>The title of the axis, with its unit in words; may be empty.</summary>
    public string AxisTitle { get; init; } = "";

    /// <summary>What is seen, in one sentence; read out with the picture.</summary>
    public string Description { get; init; } = "";

    /// <summary>What is seen and how sure, under the picture.</summary>
    public Html Below { get; init; }

    /// <summary>The two ends of an axis of differences that holds every interval, the same way to both sides, whole points at least.</summary>
    public static Interval AxisAround(IEnumerable<DotRow> rows)
    {
        var far = rows.SelectMany(row => (double[])[Math.Abs(row.Value), Math.Abs(row.Interval?.Low ?? 0), Math.Abs(row.Interval?.High ?? 0)]).Append(1).Max();
        var end = Math.Ceiling(far * 2 + 0.2) / 2;
        return Interval.Between(-end, end);
    }
}

/// <summary>Draws dots with intervals: a bare line as long as the doubt, a dot at the estimate.</summary>
public static class DotsWithIntervals
{
    private const double Head = 22, RowUnits = 25, WidthUnits = 300;

    /// <summary>The chart of all panels, with the figures in a table.</summary>
    public static ChartView Of(IReadOnlyList<DotPanel> panels, Html caption, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        return new([.. panels.Select(panel => Panel(panel, numbers))], caption) { Figures = Table(panels, numbers), Language = numbers.Language, IsDense = panels.Count > 2 };
    }

    private static ChartPanel Panel(DotPanel panel, Figures figures)
    {
        var foot = Head + panel.Rows.Count * RowUnits;
        var height = foot + (panel.AxisTitle.Length == 0 ? 30 : 46);
        return new(panel.Title, Still(panel, figures, foot, height), Live(panel, figures, height), (int)height) { Below = panel.Below };
    }

    private static Html Still(DotPanel panel, Figures figures, double foot, double height)
    {
        var description = panel.Description.Length == 0 ? figures.Language.Words.Chart.DotsDescription : panel.Description;
        var svg = new Svg(WidthUnits, height, panel.Title, description);
        var left = Math.Clamp(panel.Rows.Select(row => Svg.WidthOf(row.Name)).DefaultIfEmpty(0).Max() + 14, 40, 160);
        var across = new Scale(panel.Axis.Low, panel.Axis.High, left, WidthUnits - 12);
        svg.Line("axis", left, foot, WidthUnits - 10, foot);
        foreach (var tick in across.Ticks())
        {
            if (panel.DifferenceFrom is null) svg.Line("grid", across.At(tick), Head - 8, across.At(tick), foot);
            svg.Line("axis", across.At(tick), foot, across.At(tick), foot + 4).Text("t2 ts mid", across.At(tick), foot + 17, Tick(panel, tick, across, figures));
        }
        if (panel.AxisTitle.Length > 0) svg.Text("t2 ts mid", (left + WidthUnits - 12) / 2, foot + 36, panel.AxisTitle);
        if (panel.DifferenceFrom is { } other)
        {
            var words = figures.Language.Words;
            svg.Line("axis", across.At(0), 0, across.At(0), foot)
                .Text("t2 ts end", across.At(0) - 6, 12, words.Less).Text("t2 ts", across.At(0) + 6, 12, words.MoreThan.Fill(("other", other)).ToPlainText());
        }
        for (var at = 0; at < panel.Rows.Count; at++)
        {
            var row = panel.Rows[at];
            var y = Head + (at + 0.5) * RowUnits;
            var kind = Kind(panel, row) switch { "gain" => " c-up", "loss" => " c-down", "chosen" => " c-chosen", _ => "" };
            svg.Text("ts end" + (row.IsChosen ? " c-chosen" : ""), left - 8, y + 4, row.Name);
            if (row.Interval is { } range) svg.Line("line" + kind, across.Within(range.Low), y, across.Within(range.High), y);
            svg.Dot("dot" + kind, across.Within(row.Value), y, 4.5);
        }
        return svg.ToHtml();
    }

    private static string Live(DotPanel panel, Figures figures, double height)
    {
        var live = new LiveFigure();
        var names = panel.Rows.Select(row => LiveFigure.Text(row.Name)).ToArray();
        for (var at = 0; at < panel.Rows.Count; at++)
            if (panel.Rows[at].Interval is { } range)
                live.Add("scatter", ("mode", "lines"), ("hoverinfo", "skip"), ("x", LiveFigure.Numbers([range.Low, range.High])), ("y", (string[])[names[at], names[at]]), ("line", new { color = Color(panel, panel.Rows[at]) }));
        live.Add("scatter", ("mode", "markers"), ("x", LiveFigure.Numbers(panel.Rows.Select(row => row.Value))), ("y", names),
            ("marker", new
            {
                color = panel.Rows.Select(row => Kind(panel, row) is { Length: > 0 } kind ? "role:" + kind : "role:paper").ToArray(),
                line = new { color = panel.Rows.Select(row => Color(panel, row)).ToArray() },
            }),
            ("customdata", panel.Rows.Select(row => LiveFigure.Text(Shown(panel, row, figures).Text)).ToArray()),
            ("hovertemplate", "%{y}: %{customdata}<extra></extra>"));
        var across = new Scale(panel.Axis.Low, panel.Axis.High, 0, 1);
        var words = figures.Language.Words;
        object[] annotations = panel.DifferenceFrom is not { } other ? [] :
        [
            Said(words.Less, "right", -4), Said(words.MoreThan.Fill(("other", other)).ToPlainText(), "left", 4),
        ];
        return live.Layout(
            ("height", (int)height), ("margin", new { l = 8, r = 10, t = (int)Head, b = panel.AxisTitle.Length == 0 ? 34 : 46 }),
            ("xaxis", new
            {
                title = new { text = LiveFigure.Text(panel.AxisTitle) },
                range = LiveFigure.Numbers([panel.Axis.Low, panel.Axis.High]),
                tickvals = LiveFigure.Numbers(across.Ticks()),
                ticktext = across.Ticks().Select(tick => Tick(panel, tick, across, figures)).ToArray(),
                showgrid = panel.DifferenceFrom is null,
                gridcolor = "role:rule",
                zeroline = panel.DifferenceFrom is not null,
                zerolinecolor = "role:rule-2",
            }),
            ("yaxis", new { type = "category", autorange = "reversed", dtick = 1, showgrid = false, tickfont = new { color = "role:ink", size = 12 } }),
            ("annotations", annotations)).ToJson();

        static object Said(string text, string anchor, int shift) => new
        {
            xref = "x", yref = "paper", x = 0, y = 1, yanchor = "bottom", xanchor = anchor, xshift = shift,
            text = LiveFigure.Text(text), font = new { size = 12, color = "role:ink-2" },
        };
    }

    private static DataTable Table(IReadOnlyList<DotPanel> panels, Figures figures)
    {
        var words = figures.Language.Words.Chart;
        var several = panels.Count > 1;
        var people = panels.SelectMany(panel => panel.Rows).Any(row => row.People is not null);
        Column[] columns = [.. several ? (Column[])[Column.Words("")] : [], Column.Words(words.Name), Column.Numbers(words.Mean), Column.Numbers(words.Interval), .. people ? (Column[])[Column.Numbers(words.People)] : []];
        return new DataTable(panels.Count == 1 ? panels[0].Title : words.Mean, several ? [Column.Words(words.Changed), .. columns[1..]] : columns,
            [.. from panel in panels
                from row in panel.Rows
                let shown = Shown(panel, row, figures)
                select new Row([.. several ? (Cell[])[panel.Title] : [], row.Name, shown.Value, Num.Said(shown.Range), .. people ? (Cell[])[row.People is { } count ? figures.Count(count) : Num.Said("")] : []])
                { Kind = row.IsChosen ? RowKind.Chosen : RowKind.Line }]) { IsLong = true };
    }

    private static Estimate Shown(DotPanel panel, DotRow row, Figures figures) =>
        figures.Estimate(row.Value, row.Interval, decimals: 1, signed: panel.DifferenceFrom is not null);

    private static string Kind(DotPanel panel, DotRow row) => panel.DifferenceFrom is null
        ? row.IsChosen ? "chosen" : ""
        : new Difference(row.Value, row.Interval).Finding switch { Finding.Gain => "gain", Finding.Loss => "loss", _ => "" };

    private static string Color(DotPanel panel, DotRow row) => Kind(panel, row) is { Length: > 0 } kind ? "role:" + kind : "role:ink-2";

    private static string Tick(DotPanel panel, double tick, Scale across, Figures figures) =>
        (panel.DifferenceFrom is null ? figures.Number(tick, across.TickDecimals()) : figures.Difference(tick, across.TickDecimals())).Text;
}
