using System.Globalization;
using Tamis.Production;

namespace Tamis.Views;

/// <summary>A plan of work over time: a picture a day, a row for each person and each thing, the tasks by their numbers in the table.</summary>
public static class WorkChart
{
    private const double Width = 480, Names = 96, LaneHeight = 20, Top = 22, Gap = 6;
    private const int MinutesPerDay = 1440, MinutesPerHour = 60;

    /// <summary>The pictures, one a day with work.</summary>
    /// <param name="schedule">The plan.</param>
    /// <param name="start">The day and hour of its minute 0, a midnight.</param>
    /// <param name="numbers">The number of each task in the table.</param>
    public static Html Of(WorkSchedule schedule, DateTime start, IReadOnlyDictionary<string, int> numbers)
    {
        var days = schedule.Tasks.SelectMany(task => new[] { task.StartMinutes / MinutesPerDay, Math.Max(task.StartMinutes, task.EndMinutes - 1) / MinutesPerDay }).Distinct().Order().ToArray();
        var attended = schedule.Problem.Attended;
        return Html.Of($"<figure class=\"work wide\"><ul class=\"key\"><li class=\"k-hands\">hands</li><li class=\"k-waits\">waiting, in something</li><li class=\"k-critical\">critical: late when it is late</li></ul>\n{days.Select(Day)}<figcaption>The numbers are those of the table below. Hours that nobody works are left out at both ends of a day; a mark at the edge says that a task goes on.</figcaption></figure>\n");

        Html Day(int day)
        {
            var (first, last) = (day * MinutesPerDay, (day + 1) * MinutesPerDay);
            int[] starts = [.. attended.Where(time => time.To > first && time.From < last).SelectMany(time => new[] { Math.Max(first, time.From), Math.Min(last, time.To) }),
                .. schedule.Tasks.SelectMany(task => new[] { task.StartMinutes, task.EndMinutes }).Where(at => at > first && at < last)];
            var (from, to) = (starts.Min() / MinutesPerHour * MinutesPerHour, (starts.Max() + MinutesPerHour - 1) / MinutesPerHour * MinutesPerHour);
            return Html.Of($"<h3>{start.AddMinutes(first).ToString("dddd d MMMM", CultureInfo.InvariantCulture)}</h3><div class=\"still\">{Picture(schedule, numbers, start, from, to)}</div>\n");
        }
    }

    private static Html Picture(WorkSchedule schedule, IReadOnlyDictionary<string, int> numbers, DateTime start, int from, int to)
    {
        var rows = schedule.Problem.Resources.Select(resource => (Resource: resource, Lanes: Lanes(schedule.UsesOf(resource.Name).Where(use => use.To > from && use.From < to && use.To > use.From)))).Where(row => row.Lanes.Count > 0).ToArray();
        var high = Top + rows.Sum(row => row.Lanes.Count * LaneHeight + Gap) + 4;
        var day = start.AddMinutes(from).ToString("d MMMM", CultureInfo.InvariantCulture);
        var svg = new Svg(Width, high, $"Plan of work, {day}: who and what against the hour", $"{rows.Length} rows from {Hour(from)} to {Hour(to)}; the table below has every task.");
        double X(int minutes) => Names + (Width - Names - 8) * (Math.Clamp(minutes, from, to) - from) / (to - from);
        var every = (to - from) / MinutesPerHour > 10 ? 2 : 1;
        for (var at = from; at <= to; at += MinutesPerHour * every)
            svg.Line("grid", X(at), Top - 4, X(at), high - 4).Text("ts mid", X(at), Top - 8, Hour(at));
        var y = Top;
        foreach (var (resource, lanes) in rows)
        {
            foreach (var (away, until) in resource.Away.Where(away => away.To > from && away.From < to)) svg.Box("away", X(away), y, X(until), y + lanes.Count * LaneHeight);
            svg.Text("ts", 0, y + 14, Short(resource.Name));
            foreach (var lane in lanes)
            {
                foreach (var use in lane)
                {
                    var isCritical = use.Task.IsCritical;
                    svg.Box($"{(resource.IsPerson ? "hands" : "waits")}{(isCritical ? " critical" : "")}", X(use.From), y + 1, X(use.To), y + LaneHeight - 2);
                    var number = numbers[use.Task.Task.Name].ToString(CultureInfo.InvariantCulture);
                    if (X(use.To) - X(use.From) >= number.Length * Svg.CharacterUnits) svg.Text("ts mid on", (X(use.From) + X(use.To)) / 2, y + 14, number);
                    if (use.To > to) svg.Path("on-and-on", [(X(to) - 5, y + 5), (X(to), y + LaneHeight / 2), (X(to) - 5, y + LaneHeight - 5)]);
                    if (use.From < from) svg.Path("on-and-on", [(X(from), y + 5), (X(from) + 5, y + LaneHeight / 2), (X(from), y + LaneHeight - 5)]);
                }
                y += LaneHeight;
            }
            y += Gap;
        }
        return svg.ToHtml();

        static string Hour(int minutes) => ((minutes / MinutesPerHour) % 24).ToString(CultureInfo.InvariantCulture);
    }

    // What is there at the same time stands in lanes under each other.
    private static List<List<(PlacedTask Task, int From, int To, int Demand, double? Celsius)>> Lanes(IEnumerable<(PlacedTask Task, int From, int To, int Demand, double? Celsius)> uses)
    {
        List<List<(PlacedTask Task, int From, int To, int Demand, double? Celsius)>> lanes = [];
        foreach (var use in uses.OrderBy(use => use.From))
            if (lanes.FirstOrDefault(lane => lane[^1].To <= use.From) is { } free) free.Add(use);
            else lanes.Add([use]);
        return lanes;
    }

    private static string Short(string name) => name.Length <= 15 ? name : name[..14] + "…";
}
