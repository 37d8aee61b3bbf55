namespace Tamis.Views.Tests.Charts;

public class LabelPlacesTests
{
    private const double Side = 420, Dot = 4.5;

    private static bool Overlap((double Left, double Top, double Right, double Bottom) one, (double Left, double Top, double Right, double Bottom) other) =>
        Math.Min(one.Right, other.Right) > Math.Max(one.Left, other.Left) && Math.Min(one.Bottom, other.Bottom) > Math.Max(one.Top, other.Top);

    private static (double, double, double, double) BoxOf((double X, double Y, double Radius) dot) => (dot.X - dot.Radius, dot.Y - dot.Radius, dot.X + dot.Radius, dot.Y + dot.Radius);

    private static void IsClear(IReadOnlyList<PlacedLabel> placed, (double X, double Y, double Radius)[] dots)
    {
        for (var at = 0; at < placed.Count; at++)
        {
            Assert.All(placed.Skip(at + 1), other => Assert.False(Overlap(placed[at].Box, other.Box), $"{placed[at].Label.Text} lies on {other.Label.Text}"));
            Assert.All(dots, dot => Assert.False(Overlap(placed[at].Box, BoxOf(dot)), $"{placed[at].Label.Text} covers a dot"));
            Assert.True(placed[at].Box is { Left: >= 0, Top: >= 0, Right: <= Side, Bottom: <= Side }, $"{placed[at].Label.Text} leaves the picture");
        }
    }

    // Five trials and twenty words within a thumb's breadth, some on one spot, some in a corner.
    [Fact]
    public void Of_Crowded_CoversNothing()
    {
        for (var seed = 1; seed <= 40; seed++)
        {
            Random random = new(seed);
            var (x, y) = (random.Next(20, 400), random.Next(20, 400));
            (double X, double Y, double Radius)[] dots = [.. Enumerable.Range(0, 5).Select(_ => (Math.Clamp(x + random.Next(-25, 25), 10.0, 410), Math.Clamp(y + random.Next(-25, 25), 10.0, 410), Dot))];
            MapLabel[] labels = [.. dots.Select((dot, at) => new MapLabel($"T{at}", dot.X, dot.Y, Dot)),
                .. Enumerable.Range(0, 20).Select(at => new MapLabel(new string('m', 4 + at % 11), at < 6 ? x : dots[at % 5].X, at < 6 ? y : dots[at % 5].Y))];

            var placed = LabelPlaces.Of(labels, dots, Side);

            Assert.Equal(labels, placed.Select(label => label.Label));
            IsClear(placed, dots);
            Assert.Equal(placed, LabelPlaces.Of(labels, dots, Side));
        }
    }

    [Fact]
    public void Of_RoomEnough_StandsOnItsPointOrBesideItsDot()
    {
        var placed = LabelPlaces.Of([new("T1", 100, 100, Dot), new("jammy", 300, 300)], [(100, 100, Dot)], Side);

        Assert.True(placed[0].X > 100 && placed[0].Y < 100);
        Assert.Equal((300, 300), (placed[1].X, placed[1].Y));
        Assert.All(placed, label => Assert.Null(label.Lead));
    }

    // A second word on the same spot moves, and a line leads to the spot when it stands further than beside it.
    [Fact]
    public void Lead_MovedAway_EndsAtItsPoint()
    {
        var placed = LabelPlaces.Of([.. Enumerable.Range(0, 12).Select(at => new MapLabel("bread crust", 200, 200))], [], Side);

        IsClear(placed, []);
        Assert.Contains(placed, label => label.Lead is { FromX: 200, FromY: 200 });
        Assert.Null(placed[0].Lead);
    }
}
