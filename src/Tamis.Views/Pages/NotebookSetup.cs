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

    /// <summary>A view in the frame that the notebook's style applies to; a page shows the frame's content as its own.</summary>
    internal static Html Framed(Html view) => Views.Html.Of($"<div class=\"tamis\">{view}</div>");
}
