using Newtonsoft.Json;
using Plotly.NET;

namespace Tamis.Views;

/// <summary>A live picture as Plotly's data and layout, built on Plotly.NET's own objects, colours by role.</summary>
/// <remarks>The template is not in it: the page has it once, so that a chart costs kilobytes and no second of serialising.</remarks>
internal sealed class LiveFigure
{
    private readonly List<Trace> traces = [];
    private readonly Layout layout = new();

    /// <summary>Adds a trace.</summary>
    /// <param name="type">Plotly's word for it: <c>scatter</c>, <c>bar</c>.</param>
    /// <param name="properties">Its properties in the order in which they are written.</param>
    public LiveFigure Add(string type, params ReadOnlySpan<(string Name, object Value)> properties)
    {
        var trace = new Trace(type);
        foreach (var (name, value) in properties) trace.SetProperty(name, value);
        traces.Add(trace);
        return this;
    }

    /// <summary>Sets properties of the layout.</summary>
    public LiveFigure Layout(params ReadOnlySpan<(string Name, object Value)> properties)
    {
        foreach (var (name, value) in properties) layout.SetProperty(name, value);
        return this;
    }

    /// <summary>The figure as JSON; the same input gives the same bytes.</summary>
    public string ToJson() => JsonConvert.SerializeObject(new { data = traces, layout }, new JsonSerializerSettings { Formatting = Formatting.None, Culture = System.Globalization.CultureInfo.InvariantCulture });

    /// <summary>Text as Plotly shows it: its own small markup is switched off, so that a name from a file stays a name.</summary>
    public static string Text(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal);

    /// <summary>A number with the digits that a picture can use, so that bytes do not hang on the last bit.</summary>
    public static double Number(double value) => Math.Round(value, 6) + 0.0;

    /// <summary>Numbers, as <see cref="Number"/>.</summary>
    public static double[] Numbers(IEnumerable<double> values) => [.. values.Select(Number)];
}
