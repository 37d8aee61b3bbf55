using System.Text.Json.Nodes;

namespace Tamis.Views;

/// <summary>The style of charts: colour roles for light and dark, the layout template, the settings. Data, in <c>Pages/chart-style.json</c>.</summary>
internal static class ChartStyle
{
    /// <summary>The style with the marks of a language, for one script element of a page.</summary>
    public static string JsonFor(Language language)
    {
        var style = JsonNode.Parse(Assets.ChartStyle)!;
        style["template"]!["layout"]!["separators"] = language.Separators;
        return ForScript(style.ToJsonString());
    }

    /// <summary>JSON that can stand in a script element: no text in it can end the element or open a comment.</summary>
    public static string ForScript(string json) => json.Replace("<", "\\u003c", StringComparison.Ordinal);
}
