namespace Tamis.Views;

/// <summary>A name beside a point of a picture, in units of the picture.</summary>
/// <param name="Text">The name, at the small size.</param>
/// <param name="X">The point across.</param>
/// <param name="Y">The point downwards.</param>
/// <param name="Radius">What of the point must stay free: the radius of its dot; 0 where the name may stand on the point itself.</param>
/// <param name="IsOutward">Whether it is the end of a line from the middle, so that its name stands beyond it where there is room.</param>
internal readonly record struct MapLabel(string Text, double X, double Y, double Radius = 0, bool IsOutward = false);

/// <summary>Where a name stands: its middle, in units of the picture.</summary>
/// <param name="Label">The name.</param>
/// <param name="X">Its middle across.</param>
/// <param name="Y">Its middle downwards.</param>
internal readonly record struct PlacedLabel(MapLabel Label, double X, double Y)
{
    /// <summary>The box that the name fills.</summary>
    public (double Left, double Top, double Right, double Bottom) Box => LabelPlaces.BoxOf(Label.Text, X, Y);

    /// <summary>The line from the point to the name where the name had to move away from it; null where it stands beside it.</summary>
    public (double FromX, double FromY, double ToX, double ToY)? Lead
    {
        get
        {
            var (x, y) = (Math.Clamp(Label.X, Box.Left, Box.Right), Math.Clamp(Label.Y, Box.Top, Box.Bottom));
            return Math.Sqrt(Math.Pow(x - Label.X, 2) + Math.Pow(y - Label.Y, 2)) > Label.Radius + LabelPlaces.BesideUnits ? (Label.X, Label.Y, x, y) : null;
        }
    }
}

/// <summary>Puts names on a map so that no name covers another or a dot, the same way every time.</summary>
internal static class LabelPlaces
{
    /// <summary>A name this far from its point still reads as beside it.</summary>
    public const double BesideUnits = 9;

    // A name has a halo of paper about it, and a chosen one is set bold.
    private const double High = 15, Halo = 4, Clear = 1, Step = 5;

    // Right and a little up first: where a reader looks for the name of a dot.
    private static readonly (double Across, double Down)[] Sides = [(1, -0.6), (1, 0), (-1, -0.6), (0, -1), (1, 0.6), (0, 1), (-1, 0), (-1, 0.6)];

    /// <summary>Places names one after the other, each at the free place nearest to its point; where none is free, at the one that covers least.</summary>
    /// <param name="labels">The names, in the order of their importance.</param>
    /// <param name="dots">What no name may cover: dots by middle and radius.</param>
    /// <param name="side">The side of the square picture.</param>
    public static IReadOnlyList<PlacedLabel> Of(IReadOnlyList<MapLabel> labels, IReadOnlyList<(double X, double Y, double Radius)> dots, double side)
    {
        List<(double Left, double Top, double Right, double Bottom)> taken = [.. dots.Select(dot => (dot.X - dot.Radius, dot.Y - dot.Radius, dot.X + dot.Radius, dot.Y + dot.Radius))];
        List<PlacedLabel> placed = [];
        foreach (var label in labels)
        {
            var (best, least) = (new PlacedLabel(label, label.X, label.Y), double.PositiveInfinity);
            foreach (var (x, y) in PlacesFor(label, side))
            {
                var tried = new PlacedLabel(label, x, y);
                var covered = taken.Sum(box => Shared(box, tried.Box)) + Outside(tried.Box, side);
                if (covered < least) (best, least) = (tried, covered);
                if (least == 0) break;
            }
            placed.Add(best);
            taken.Add(best.Box);
        }
        return placed;
    }

    /// <summary>The box of a name about its middle.</summary>
    public static (double Left, double Top, double Right, double Bottom) BoxOf(string text, double x, double y) =>
        (x - WidthOf(text) / 2, y - High / 2, x + WidthOf(text) / 2, y + High / 2);

    private static double WidthOf(string text) => Svg.WidthOf(text) + 2 * Halo;

    // On the point or beside it; else anywhere, the shortest line first.
    private static IEnumerable<(double X, double Y)> PlacesFor(MapLabel label, double side)
    {
        if (label.Radius == 0) yield return (label.X, label.Y);
        var half = WidthOf(label.Text) / 2;
        var away = label.Radius + Clear;
        foreach (var (across, down) in label.IsOutward ? Sides.OrderByDescending(one => one.Across * (label.X - side / 2) + one.Down * (label.Y - side / 2)) : Sides.AsEnumerable())
            yield return (label.X + across * (half + away), label.Y + down * (High / 2 + away));
        foreach (var place in from x in Steps(half, side - half) from y in Steps(High / 2, side - High / 2) let line = Line(x, y) where line >= label.Radius orderby line, y, x select (x, y)) yield return place;

        double Line(double x, double y) => Math.Sqrt(Math.Pow(Math.Max(0, Math.Abs(x - label.X) - half), 2) + Math.Pow(Math.Max(0, Math.Abs(y - label.Y) - High / 2), 2));
    }

    private static IEnumerable<double> Steps(double from, double to)
    {
        for (var at = from; at <= to; at += Step) yield return at;
    }

    private static double Shared((double Left, double Top, double Right, double Bottom) one, (double Left, double Top, double Right, double Bottom) other) =>
        Math.Max(0, Math.Min(one.Right, other.Right) - Math.Max(one.Left, other.Left)) * Math.Max(0, Math.Min(one.Bottom, other.Bottom) - Math.Max(one.Top, other.Top));

    private static double Outside((double Left, double Top, double Right, double Bottom) box, double side) =>
        (box.Right - box.Left) * (box.Bottom - box.Top) - Shared(box, (0, 0, side, side));

    /// <summary>Places and writes the names of a map of trials: trials first, and what else is on it gives way to them.</summary>
    /// <param name="svg">The picture.</param>
    /// <param name="trials">The trials, with the dots that no name may cover.</param>
    /// <param name="others">The other names, in the order of their importance.</param>
    /// <param name="chosen">The trial that the page speaks of, or null.</param>
    /// <param name="side">The side of the square picture.</param>
    /// <returns>Where each name stands, the trials first.</returns>
    public static IReadOnlyList<PlacedLabel> DrawMap(this Svg svg, IReadOnlyList<MapLabel> trials, IEnumerable<MapLabel> others, string? chosen, double side)
    {
        var names = Of([.. trials, .. others], [.. trials.Select(trial => (trial.X, trial.Y, trial.Radius))], side);
        svg.Draw(names.Skip(trials.Count), _ => "t2").Draw(names.Take(trials.Count), name => Names.Same(name, chosen) ? "c-chosen" : "");
        return names;
    }

    /// <summary>Writes names that were placed, with a line to the point where a name had to move away.</summary>
    /// <param name="svg">The picture.</param>
    /// <param name="labels">The names.</param>
    /// <param name="kindOf">The class of a name's text.</param>
    public static Svg Draw(this Svg svg, IEnumerable<PlacedLabel> labels, Func<string, string> kindOf)
    {
        const double baseline = 4;
        PlacedLabel[] all = [.. labels];
        foreach (var label in all)
            if (label.Lead is { } lead) svg.Line("axis", lead.FromX, lead.FromY, lead.ToX, lead.ToY);
        foreach (var label in all) svg.Text($"{kindOf(label.Label.Text)} ts mid halo", label.X, label.Y + baseline, label.Label.Text);
        return svg;
    }
}
