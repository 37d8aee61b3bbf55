using Tamis.Tasting;

namespace Tamis.Views;

/// <summary>Draws trials and the words ticked for them.</summary>
public static class WordMapChart
{
    private const double Side = 420, Edge = 26, DotUnits = 4.5;

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
        foreach (var trial in map.Trials) svg.Dot(Names.Same(trial.Name, chosen) ? "dot c-chosen" : "dot", across.At(trial.Across), up.At(trial.Up), DotUnits);
        // The words that were ticked most first: what comes later gives way.
        svg.DrawMap([.. map.Trials.Select(trial => new MapLabel(trial.Name, across.At(trial.Across), up.At(trial.Up), DotUnits))],
            map.Words.OrderByDescending(word => word.Count).Select(word => new MapLabel(word.Name, across.At(word.Across), up.At(word.Up))), chosen, Side);
        svg.Text("t2 ts mid", Side / 2, Side + 8, $"{figures.WholeShare(map.Shares.Across).Text} of what differs lies across, {figures.WholeShare(map.Shares.Up).Text} upwards");
        var table = new DataTable(title, [Column.Words("Trial or word"), Column.Numbers("across"), Column.Numbers("up"), Column.Numbers("ticks")],
            [.. map.Trials.Concat(map.Words).Select(each => new Row(each.Name, figures.Difference(each.Across, 2), figures.Difference(each.Up, 2), figures.Count(each.Count)))]) { Fits = true, IsLong = true };
        return Html.Of($"<figure><p class=\"panel-title\">{title}</p><div class=\"still\">{svg.ToHtml()}</div><figcaption>A word lies in the direction of the trials for which it was ticked more often than for others; near the middle it says little. Where names would lie on each other a thin line leads to the place of the word.</figcaption></figure>\n") + Notes.Folded("The places on the map", table.ToHtml());
    }
}
