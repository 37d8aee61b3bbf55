using Tamis.Physics;

namespace Tamis.Views;

/// <summary>How warm a round piece is inside, drawn to scale at several instants; the same tint is the same temperature in every picture.</summary>
public static class TemperatureSection
{
    private const double WidthUnits = 300, LabelledUnits = 440, LabelGap = 15, Overlap = 0.5;

    /// <summary>The piece with its parts named, then one picture an instant, with the key of the tints and the mean temperature of each part in a table.</summary>
    /// <param name="title">What is drawn.</param>
    /// <param name="piece">What lies where.</param>
    /// <param name="fields">The instants, earliest first, as a march of this piece kept them.</param>
    /// <param name="caption">What is drawn and how sure.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    /// <exception cref="ArgumentException">A field is not of this piece.</exception>
    public static Html Of(string title, MouldedPiece piece, IReadOnlyList<TemperatureField> fields, Html caption, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        foreach (var field in fields)
            if (field.Celsius.Count != piece.Cells) throw new ArgumentException(FormattableString.Invariant($"The field at {field.Minutes:0} minutes has {field.Celsius.Count} temperatures, the piece {piece.Cells} cells."), nameof(fields));
        var key = TemperatureTints.Key(fields.SelectMany(field => field.Celsius).Where(double.IsFinite).Select(TemperatureTints.Of), numbers);
        var pictures = fields.Select(field => Html.Of($"<div><h3>{KitchenTime.After(field.Minutes, numbers)}</h3>\n<div class=\"field\">{Picture(title, piece, field, numbers)}</div></div>\n"));
        var table = fields.Count == 0 ? Html.Empty : Notes.Folded(numbers.Language.Words.FiguresBehind, Table(title, piece, fields, numbers).ToHtml());
        return Html.Of($"""
            <figure class="wide"><p class="panel-title">{title}</p>
            <div class="field plain">{Named(title, piece, numbers)}</div>
            {key}<div class="panels {(fields.Count > 2 ? "three" : "two")}">
            {Html.Join(pictures)}</div>
            <figcaption>{caption}</figcaption>{table}</figure>

            """).WithUnixLineEnds();
    }

    // The piece alone, each part named beside it: the parts are too thin for words inside them.
    private static Html Named(string title, MouldedPiece piece, Figures figures)
    {
        var parts = SectionOutline.PartsOf(piece);
        var room = parts.Select(part => Svg.WidthOf(part.Name)).DefaultIfEmpty(0).Max() * 1.12 + 24;
        SectionScale scale = new(piece, LabelledUnits - room);
        var height = Math.Max(scale.Height, parts.Count * LabelGap + 8);
        var lower = (height - scale.Height) / 2;
        var svg = new Svg(LabelledUnits, height + 22, title, $"{title}: {string.Join(", ", parts.Select(part => part.Name))}");
        svg.Area("outline", SectionOutline.Of(piece, scale, lower));
        double[] seen = [.. parts.Select(part => lower + scale.Y(part.HeightMillimetres))];
        var heights = Svg.Apart(seen, LabelGap, 8, height - 6);
        for (var at = 0; at < parts.Count; at++)
        {
            var x = scale.X(parts[at].RadiusMillimetres);
            svg.Path("lead", [(x, seen[at]), (LabelledUnits - room, heights[at]), (LabelledUnits - room + 6, heights[at])]).Dot("tip", x, seen[at], 2.6).Text("ts", LabelledUnits - room + 10, heights[at] + 4, parts[at].Name);
        }
        var (left, right) = (scale.X(-scale.RadiusMillimetres), scale.X(scale.RadiusMillimetres));
        return svg.Line("axis", left, height + 4, right, height + 4).Line("axis", left, height, left, height + 8).Line("axis", right, height, right, height + 8)
            .Text("t2 ts mid", (left + right) / 2, height + 19, figures.Number(2 * scale.RadiusMillimetres, 0, "mm").Text).ToHtml();
    }

    private static Html Picture(string title, MouldedPiece piece, TemperatureField field, Figures figures)
    {
        SectionScale scale = new(piece, WidthUnits);
        double[] known = [.. field.Celsius.Where(double.IsFinite)];
        var description = known.Length == 0 ? figures.NotKnown.Text : $"{figures.Celsius(known.Min()).Text} {figures.Language.Words.To} {figures.Celsius(known.Max()).Text}";
        var svg = new Svg(WidthUnits, scale.Height, $"{title}, {KitchenTime.After(field.Minutes, figures)}", description);
        var (radius, levels) = (field.Axes.RadiusMillimetres, field.Axes.HeightMillimetres);
        // From above, each floor a little deeper than it is, and each ring over the ones outside it: nothing shines through between boxes.
        for (var floor = field.Axes.Floors - 1; floor >= 0; floor--)
        {
            var (top, bottom) = (scale.Y(levels[floor + 1]), scale.Y(levels[floor]) + (floor > 0 ? Overlap : 0));
            foreach (var (_, to, tint) in Runs(field, floor).Reverse().SkipWhile(run => run.Tint < 0))
                svg.Box(tint < 0 ? "air" : $"tint-{tint}", scale.X(-radius[to]), top, scale.X(radius[to]), bottom);
        }
        return svg.Area("outline", SectionOutline.Of(piece, scale, 0)).ToHtml();
    }

    /// <summary>The cells of a floor that have one tint, as ranges of edges; −1 where nothing stands.</summary>
    internal static IEnumerable<(int From, int To, int Tint)> Runs(TemperatureField field, int floor)
    {
        var start = 0;
        for (var ring = 1; ring <= field.Axes.Rings; ring++)
        {
            var tint = TintAt(start);
            if (ring < field.Axes.Rings && TintAt(ring) == tint) continue;
            yield return (start, ring, tint);
            start = ring;
        }

        int TintAt(int ring) => field.At(ring, floor) is var celsius && double.IsFinite(celsius) ? TemperatureTints.Of(celsius) : -1;
    }

    private static DataTable Table(string title, MouldedPiece piece, IReadOnlyList<TemperatureField> fields, Figures figures)
    {
        var means = fields.Select(piece.ByDisc).ToArray();
        return new(title,
            [Column.Words(figures.Language.Words.Chart.Part), .. fields.Select(field => Column.Numbers(KitchenTime.After(field.Minutes, figures), "°C"))],
            [.. means.Length == 0 ? [] : means[0].Select((disc, at) => new Row([disc.Name, .. means.Select(mean => (Cell)figures.Number(mean[at].MeanCelsius, 1))]))])
        { Notes = [Html.Of($"{figures.Language.Words.Chart.MeanByVolume}")] };
    }
}
