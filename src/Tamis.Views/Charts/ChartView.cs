namespace Tamis.Views;

/// <summary>One picture of a chart: a still one with its meaning, and a live one that covers it where scripts run.</summary>
/// <param name="Title">What against what; stands above it. May be empty.</param>
/// <param name="Still">The still picture: SVG or HTML with a name that is read out.</param>
/// <param name="LiveJson">The live picture as Plotly data and layout, colours by role.</param>
/// <param name="HeightPixels">The height of the live picture.</param>
public sealed record ChartPanel(string Title, Html Still, string LiveJson, int HeightPixels)
{
    /// <summary>What is seen, in words, under the picture.</summary>
    public Html Below { get; init; }

    /// <summary>Marks above the picture, such as the key of stacked bars.</summary>
    public Html Above { get; init; }

    internal Html ToHtml(bool alone)
    {
        var title = Title.Length == 0 ? Html.Empty : alone ? Html.Of($"<p class=\"panel-title\">{Title}</p>") : Html.Of($"<h3>{Title}</h3>");
        var below = Below.IsEmpty ? Html.Empty : Html.Of($"<p class=\"small\">{Below}</p>");
        return Html.Of($"""
            {title}{Above}<div class="chart">
            <div class="still">{Still}</div>
            <div class="live" style="height:{HeightPixels}px" aria-hidden="true"></div>
            <script type="application/json">{Html.Trusted(ChartStyle.ForScript(LiveJson))}</script>
            </div>{below}
            """);
    }
}

/// <summary>A chart of one or several panels, with what is drawn in words and with its figures in a table.</summary>
/// <param name="Panels">The panels, at least one.</param>
/// <param name="Caption">What is drawn, of how many, how sure.</param>
[TypeFormatterSource(typeof(ViewFormatters<ChartView>), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed record ChartView(IReadOnlyList<ChartPanel> Panels, Html Caption) : IView
{
    /// <summary>What marks a chart in a page's markup.</summary>
    internal const string Mark = "<div class=\"chart\">";

    /// <summary>The figures of all panels, folded under the picture.</summary>
    public DataTable? Figures { get; init; }

    /// <summary>The language of its fixed words.</summary>
    public Language Language { get; init; } = Language.English;

    /// <summary>Whether three panels stand side by side where there is room, instead of two.</summary>
    public bool IsDense { get; init; }

    /// <inheritdoc/>
    public Html ToHtml()
    {
        var alone = Panels.Count == 1;
        var figures = Figures is null ? Html.Empty : Notes.Folded(Language.Words.FiguresBehind, Figures.ToHtml());
        var caption = Caption.IsEmpty ? Html.Empty : Html.Of($"<figcaption>{Caption}</figcaption>\n");
        var panels = alone ? Panels[0].ToHtml(alone: true)
            : Html.Of($"<div class=\"panels {(IsDense ? "three" : "two")}\">\n{Panels.Select(panel => Html.Of($"<div>{panel.ToHtml(alone: false)}</div>\n"))}</div>\n");
        return Html.Of($"<figure{(alone ? Html.Empty : Html.Of($" class=\"wide\""))}>{panels}{caption}{figures}</figure>\n").WithUnixLineEnds();
    }
}
