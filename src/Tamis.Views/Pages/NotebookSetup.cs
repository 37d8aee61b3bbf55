namespace Tamis.Views;

/// <summary>What a notebook shows once, before its first view: the style, the chart script and what draws the charts as cells are run.</summary>
public static class NotebookSetup
{
    /// <summary>By this a page maker knows the setup in a notebook's outputs, to leave it out: a page has its own.</summary>
    public const string Mark = "<!--tamis-setup-->";

    /// <summary>The setup for the language of the charts. About 3.7 MB, most of it the chart script.</summary>
    public static Html Html(Language? language = null) => Views.Html.Trusted($$"""
        {{Mark}}<style>
        {{Assets.NotebookStyleSheet}}</style>
        <script type="application/json" id="chart-style" data-light>{{ChartStyle.JsonFor(language ?? Language.English)}}</script>
        <script>(function () { var define, module, exports; {{Assets.PlotlyScript}}
        }).call(window);</script>
        <script>
        {{Assets.PageScript}}</script>
        """);

    private const string FrameStart = "<div class=\"tamis\">", FrameEnd = "</div>";

    /// <summary>A view in the frame that the notebook's style applies to; nothing stays nothing.</summary>
    internal static Html Framed(Html view) => view.IsEmpty ? view : Views.Html.Trusted(FrameStart + view.Markup + FrameEnd);

    /// <summary>What stands in the frame, for a page, which has its own style; other markup stays as it is.</summary>
    internal static string Unframed(string markup) =>
        markup.StartsWith(FrameStart, StringComparison.Ordinal) && markup.EndsWith(FrameEnd, StringComparison.Ordinal) ? markup[FrameStart.Length..^FrameEnd.Length] : markup;
}
