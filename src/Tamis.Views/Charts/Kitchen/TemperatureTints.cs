namespace Tamis.Views;

/// <summary>The tints of temperatures: the same temperature has the same tint on every page, so that pictures can be compared.</summary>
/// <remarks>Blue below freezing, paper around it, amber above; each step is also named in the key.</remarks>
internal static class TemperatureTints
{
    // Where one tint ends and the next begins, °C; the tints tint-0 to tint-9 stand in roles.css.
    private static readonly double[] Edges = [-24, -18, -12, -6, -1, 4, 12, 25, 45];

    /// <summary>The tint of a temperature.</summary>
    public static int Of(double celsius)
    {
        var tint = 0;
        while (tint < Edges.Length && celsius >= Edges[tint]) tint++;
        return tint;
    }

    /// <summary>The temperatures of a tint, in words.</summary>
    public static string Name(int tint, Figures figures) =>
        tint == 0 ? $"{figures.Language.Words.Under} {figures.Celsius(Edges[0]).Text}"
        : tint == Edges.Length ? figures.Celsius(Edges[^1]).Text + " " + figures.Language.Words.Chart.AndMore
        : $"{figures.Number(Edges[tint - 1], 0).Text} {figures.Language.Words.To} {figures.Celsius(Edges[tint]).Text}";

    /// <summary>The key of the tints that a picture uses, coldest first.</summary>
    public static Html Key(IEnumerable<int> tints, Figures figures) =>
        Html.Of($"<ul class=\"key\">{tints.Distinct().Order().Select(tint => Html.Of($"<li class=\"tint-{tint}\">{Name(tint, figures)}</li>"))}</ul>\n");
}
