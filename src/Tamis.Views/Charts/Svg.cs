using System.Globalization;

namespace Tamis.Views;

/// <summary>Writes a still picture: a line an element, colours by class, coordinates to a tenth.</summary>
/// <param name="widthUnits">The width in units, 300 to 480, so that 12 px text stays readable on a phone.</param>
/// <param name="heightUnits">The height in units.</param>
/// <param name="title">What against what; read out.</param>
/// <param name="description">What is seen, in one sentence; read out.</param>
internal sealed class Svg(double widthUnits, double heightUnits, string title, string description)
{
    private Html content;

    /// <summary>Text is taken to be this wide a character at the small size; the browser's own measure is not known here.</summary>
    public const double CharacterUnits = 6.4;

    public Svg Line(string kind, double x1, double y1, double x2, double y2) =>
        Add(Html.Of($"<path class=\"{kind}\" d=\"M{At(x1)} {At(y1)}L{At(x2)} {At(y2)}\"/>"));

    public Svg Path(string kind, IEnumerable<(double X, double Y)> points) =>
        Add(Html.Of($"<path class=\"{kind}\" d=\"M{string.Join('L', points.Select(point => $"{At(point.X)} {At(point.Y)}"))}\"/>"));

    /// <summary>A closed shape; several outlines leave holes in each other.</summary>
    public Svg Area(string kind, params IReadOnlyList<IEnumerable<(double X, double Y)>> outlines) =>
        Add(Html.Of($"<path class=\"{kind}\" fill-rule=\"evenodd\" d=\"{string.Concat(outlines.Select(outline => $"M{string.Join('L', outline.Select(point => $"{At(point.X)} {At(point.Y)}"))}Z"))}\"/>"));

    public Svg Box(string kind, double left, double top, double right, double bottom) =>
        Add(Html.Of($"<rect class=\"{kind}\" x=\"{At(left)}\" y=\"{At(top)}\" width=\"{At(Math.Max(0, right - left))}\" height=\"{At(Math.Max(0, bottom - top))}\"/>"));

    public Svg Dot(string kind, double x, double y, double radius) =>
        Add(Html.Of($"<circle class=\"{kind}\" cx=\"{At(x)}\" cy=\"{At(y)}\" r=\"{At(radius)}\"/>"));

    public Svg Text(string kind, double x, double y, string text) =>
        Add(Html.Of($"<text class=\"{kind}\" x=\"{At(x)}\" y=\"{At(y)}\">{text}</text>"));

    public Html ToHtml() => Html.Of(
        $"<svg viewBox=\"0 0 {At(widthUnits)} {At(heightUnits)}\" width=\"{At(widthUnits)}\" height=\"{At(heightUnits)}\" role=\"img\"><title>{title}</title><desc>{description}</desc>{content}</svg>");

    /// <summary>Room for a text at the small size.</summary>
    public static double WidthOf(string text) => text.Length * CharacterUnits;

    /// <summary>The places of labels pushed apart so that none covers another, in the order given; kept within the frame where they fit.</summary>
    public static IReadOnlyList<double> Apart(IReadOnlyList<double> wanted, double gap, double top, double bottom)
    {
        var order = Enumerable.Range(0, wanted.Count).OrderBy(at => wanted[at]).ThenBy(at => at).ToArray();
        var placed = wanted.ToArray();
        for (var at = 0; at < order.Length; at++)
            placed[order[at]] = Math.Max(placed[order[at]], at == 0 ? top : placed[order[at - 1]] + gap);
        for (var at = order.Length - 1; at >= 0; at--)
            placed[order[at]] = Math.Min(placed[order[at]], at == order.Length - 1 ? bottom : placed[order[at + 1]] - gap);
        return placed;
    }

    private Svg Add(Html element)
    {
        content += element;
        return this;
    }

    private static string At(double value) => (Math.Round(value, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);
}
