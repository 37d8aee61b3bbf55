using Tamis.Tasting;

namespace Tamis.Views;

/// <summary>Draws trials and the words ticked for them.</summary>
public static class WordMapChart
{
    private const double Side = 420, Edge = 26, LineHeight = 14;

    /// <summary>The drawing, with its places in a table.</summary>
    /// <param name="map">The map.</param>
    /// <param name="chosen">The trial that the page speaks of, or null.</param>
    public static Html Of(WordMap map, string? chosen)
    {
        var figures = Figures.English;
        var far = map.Trials.Concat(map.Words).Max(each => Math.Max(Math.Abs(each.Across), Math.Abs(each.Up))) * 1.1;
        var (across, up) = (new Scale(-far, far, Edge, Side - Edge), new Scale(-far, far, Side - Edge, Edge));
        var title = $"Trials and ticked words of {map.Session.Name}";
        var svg = new Svg(Side, Side + 16, title, $"{map.Trials.Count} trials and {map.Words.Count} words.");
        svg.Line("grid", across.At(0), Edge, across.At(0), Side - Edge).Line("grid", Edge, up.At(0), Side - Edge, up.At(0));
        var heights = Svg.Apart([.. map.Words.Select(word => up.At(word.Up))], LineHeight, Edge, Side - Edge);
        for (var at = 0; at < map.Words.Count; at++)
        {
            var x = across.At(map.Words[at].Across);
            svg.Text($"t2 ts{(x > Side / 2 ? " end" : "")}", x, heights[at] + 4, map.Words[at].Name);
        }
        foreach (var trial in map.Trials)
        {
            var kind = Names.Same(trial.Name, chosen) ? " c-chosen" : "";
            svg.Dot("dot" + kind, across.At(trial.Across), up.At(trial.Up), 4.5).Text("ts halo" + kind, across.At(trial.Across) + 7, up.At(trial.Up) - 6, trial.Name);
        }
        svg.Text("t2 ts mid", Side / 2, Side + 8, $"{figures.WholeShare(map.Shares.Across).Text} of what differs lies across, {figures.WholeShare(map.Shares.Up).Text} upwards");
        var table = new DataTable(title, [Column.Words("Trial or word"), Column.Numbers("across"), Column.Numbers("up"), Column.Numbers("ticks")],
            [.. map.Trials.Concat(map.Words).Select(each => new Row(each.Name, figures.Difference(each.Across, 2), figures.Difference(each.Up, 2), figures.Count(each.Count)))]) { Fits = true, IsLong = true };
        return Html.Of($"<figure><div class=\"still\">{svg.ToHtml()}</div><figcaption>A word lies in the direction of the trials for which it was ticked more often than for others; near the middle it says little.</figcaption></figure>\n") + Notes.Folded("The places on the map", table.ToHtml());
    }
}
