using System.Text;

namespace Tamis.Views;

/// <summary>The texts that the kit brings along: style sheets, scripts, the style of charts. Read once.</summary>
internal static class Assets
{
    private static readonly Lazy<string> Sheet = new(() => string.Join("\n", ((string[])["roles", "dark", "page", "parts", "physics", "work", "weighing", "ballot", "paper", "kitchen"]).Select(name => Own(name + ".css"))));
    private static readonly Lazy<string> Inside = new(() => $"{Own("roles.css")}\n{Own("notebook.css")}\n.tamis {{\n{Own("parts.css")}\n{Own("physics.css")}\n{Own("work.css")}}}\n");
    private static readonly Lazy<string> Draw = new(() => Own("page.js"));
    private static readonly Lazy<string> Charts = new(() => Own("chart-style.json"));
    private static readonly Lazy<string> Plotly = new(() => Read(typeof(Plotly.NET.GenericChart), "Plotly.NET.plotly-2.28.0.min.js"));

    /// <summary>The style sheet of pages.</summary>
    public static string StyleSheet => Sheet.Value;

    /// <summary>The style sheet of views inside somebody else's notebook page: all of it under one class, light only.</summary>
    public static string NotebookStyleSheet => Inside.Value;

    /// <summary>The script that draws the charts of a page.</summary>
    public static string PageScript => Draw.Value;

    /// <summary>Colour roles and the layout template of charts.</summary>
    public static string ChartStyle => Charts.Value;

    /// <summary>plotly.js 2.28.0, from the resource inside Plotly.NET: MIT licence, its notice stands at the head of the script.</summary>
    public static string PlotlyScript => Plotly.Value;

    private static string Own(string name) => Read(typeof(Assets), "Tamis.Views.Pages." + name);

    private static string Read(Type type, string resource)
    {
        using var stream = type.Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"{type.Assembly.GetName().Name} has no resource '{resource}'.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
