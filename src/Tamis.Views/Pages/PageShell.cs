namespace Tamis.Views;

/// <summary>A link of the running header.</summary>
/// <param name="Title">Its short name.</param>
/// <param name="Href">Its address beside this page.</param>
/// <param name="IsCurrent">Whether it is this page.</param>
public sealed record NavLink(string Title, string Href, bool IsCurrent = false);

/// <summary>Where a page finds the script that draws charts.</summary>
public enum ChartScript
{
    /// <summary>In the page itself, once, if it has a chart: the page can be sent on its own.</summary>
    InPage,
    /// <summary>In a file beside the pages, which <see cref="PageShell.WriteScript"/> writes: pages stay small.</summary>
    Beside,
}

/// <summary>A page to be made.</summary>
/// <param name="Title">Its title, in the words of its reader.</param>
/// <param name="Main">Its content, <c>h1</c> first.</param>
public sealed record PageModel(string Title, Html Main)
{
    /// <summary>What it answers, in one sentence.</summary>
    public string Description { get; init; } = "";

    /// <summary>The name of the dessert, in the running header.</summary>
    public string Running { get; init; } = "";

    /// <summary>The pages beside it.</summary>
    public IReadOnlyList<NavLink> Links { get; init; } = [];

    /// <summary>What stands at the foot; the caution of the language if empty.</summary>
    public Html Foot { get; init; }

    /// <summary>The language.</summary>
    public Language Language { get; init; } = Language.English;

    /// <summary>Whether it is a weighing sheet: for paper first, over the whole width.</summary>
    public bool IsSheet { get; init; }

    /// <summary>Where it finds the script that draws charts.</summary>
    public ChartScript ChartScript { get; init; } = ChartScript.InPage;
}

/// <summary>Makes whole pages: one file each, no request to anywhere, whole without scripts.</summary>
public static class PageShell
{
    /// <summary>Where the script that draws charts stands beside the pages.</summary>
    public const string ScriptPath = "scripts/plotly-2.28.0.min.js";

    /// <summary>The page as an HTML document.</summary>
    public static string Render(PageModel page)
    {
        var words = page.Language.Words;
        var links = Html.Join(page.Links.Select(link =>
            Html.Of($"<a href=\"{link.Href}\"{(link.IsCurrent ? Html.Of($" aria-current=\"page\"") : Html.Empty)}>{link.Title}</a>")));
        var nav = page.Links.Count == 0 ? Html.Empty : Html.Of($"<nav aria-label=\"{words.Pages}\">{links}</nav>");
        var running = page.Running.Length == 0 && nav.IsEmpty ? Html.Empty : Html.Of($"<header class=\"running\"><span>{page.Running}</span>{nav}</header>");
        var foot = page.Foot.IsEmpty ? Html.Text(words.Foot) : page.Foot;
        var description = page.Description.Length == 0 ? Html.Empty : Html.Of($"<meta name=\"description\" content=\"{page.Description}\">\n");
        var head = Html.Of($"""
            <!DOCTYPE html>
            <html lang="{page.Language.Tag}">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{page.Title}</title>
            {description}<meta name="color-scheme" content="light dark">
            <link rel="icon" href="data:,">
            <style>
            {Html.Trusted(Assets.StyleSheet)}</style>
            </head>

            """);
        var body = Html.Of($"""
            <body{(page.IsSheet ? Html.Of($" class=\"sheet\"") : Html.Empty)}>
            <a class="skip" href="#text">{words.ToTheText}</a>
            {running}
            <main id="text">
            {page.Main}
            </main>
            <footer class="foot">{foot}</footer>
            {Scripts(page)}</body>
            </html>

            """);
        return (head + body).Markup.ReplaceLineEndings("\n");
    }

    /// <summary>Writes the script that draws charts beside the pages, for pages made with <see cref="ChartScript.Beside"/>.</summary>
    public static void WriteScript(string pagesFolder)
    {
        var path = Path.Combine(pagesFolder, ScriptPath);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, Assets.PlotlyScript);
    }

    private static Html Scripts(PageModel page)
    {
        if (!page.Main.Markup.Contains(ChartView.Mark, StringComparison.Ordinal)) return Html.Empty;
        var plotly = page.ChartScript == ChartScript.InPage
            ? Html.Of($"<script>{Html.Trusted(Assets.PlotlyScript)}</script>")
            : Html.Of($"<script src=\"{ScriptPath}\"></script>");
        return Html.Of($"""
            <script type="application/json" id="chart-style">{Html.Trusted(ChartStyle.JsonFor(page.Language))}</script>
            {plotly}
            <script>
            {Html.Trusted(Assets.PageScript)}</script>

            """);
    }
}
