using Tamis.Tasting;

namespace Tamis.Views;

/// <summary>Draws what people like differently: trials as dots, groups of people as directions.</summary>
public static class PreferenceMapChart
{
    private const double Side = 420, Edge = 26, DotUnits = 4.5, Least = 1e-9;

    /// <summary>The drawing.</summary>
    /// <param name="map">The map.</param>
    /// <param name="chosen">The trial that the page speaks of, or null.</param>
    public static Html Of(PreferenceMap map, string? chosen)
    {
        var figures = Figures.English;
        var far = Math.Max(Least, map.Trials.Max(trial => Math.Max(Math.Abs(trial.Across), Math.Abs(trial.Up)))) * 1.15;
        var (across, up) = (new Scale(-far, far, Edge, Side - Edge), new Scale(-far, far, Side - Edge, Edge));
        // A group points to the trials that it likes beyond its own mean.
        var groups = map.Groups.Count < 2 ? [] : map.Groups.Select((group, at) => (Name: $"group {at + 1}, {group.People}", X: Along(group, map, trial => trial.Across), Y: Along(group, map, trial => trial.Up))).ToArray();
        var longest = Math.Max(Least, groups.Select(group => Math.Sqrt(group.X * group.X + group.Y * group.Y)).DefaultIfEmpty(1).Max());
        var title = $"What people like differently in {map.Session.Name}";
        var svg = new Svg(Side, Side + 16, title, $"{map.Trials.Count} trials, and {groups.Length} groups of {map.People} people as directions.");
        svg.Line("grid", across.At(0), Edge, across.At(0), Side - Edge).Line("grid", Edge, up.At(0), Side - Edge, up.At(0));
        var ends = groups.Select(group => (group.Name, X: group.X / longest * far * 0.6, Y: group.Y / longest * far * 0.6)).ToArray();
        foreach (var (_, x, y) in ends) svg.Line("axis", across.At(0), up.At(0), across.At(x), up.At(y));
        foreach (var (trial, x, y) in map.Trials) svg.Dot(Names.Same(trial, chosen) ? "dot c-chosen" : "dot", across.At(x), up.At(y), DotUnits);
        svg.DrawMap([.. map.Trials.Select(trial => new MapLabel(trial.Trial, across.At(trial.Across), up.At(trial.Up), DotUnits))],
            ends.Select(end => new MapLabel(end.Name, across.At(end.X), up.At(end.Y), 1, IsOutward: true)), chosen, Side);
        svg.Text("t2 ts mid", Side / 2, Side + 8, $"{figures.WholeShare(map.Shares.Across).Text} of what people differ in lies across, {figures.WholeShare(map.Shares.Up).Text} upwards");
        return Html.Of($"<figure><p class=\"panel-title\">{title}</p><div class=\"still\">{svg.ToHtml()}</div><figcaption>Trials that lie far apart are liked by different people; a line points to what a group likes beyond the others, with how many people it holds.</figcaption></figure>\n");
    }

    private static double Along(TasteGroup group, PreferenceMap map, Func<(string Trial, double Across, double Up), double> part)
    {
        var own = group.MeanLiking.Average(each => each.Points);
        return group.MeanLiking.Sum(each => (each.Points - own) * part(map.Trials.First(trial => trial.Trial == each.Trial)));
    }
}
