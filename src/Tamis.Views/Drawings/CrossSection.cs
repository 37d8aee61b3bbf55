using System.Globalization;
using Tamis.Montage;

namespace Tamis.Views;

/// <summary>A piece cut through the middle, drawn to scale, with what each layer weighs.</summary>
public static class CrossSection
{
    private const double Width = 480, Drawing = 270, Margin = 12, LabelGap = 19, LeastFilm = 1.4;
    private const int Tints = 8, Levels = 24;

    /// <summary>The drawing with its labels, and its figures in a table.</summary>
    /// <param name="name">The name of the piece, for the title.</param>
    /// <param name="piece">The piece.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    /// <param name="tinted">Components in the order of the tints, so that one has the same tint in several drawings; those of the piece where null.</param>
    public static Html Of(string name, AssembledPiece piece, Figures? figures = null, IReadOnlyList<string>? tinted = null)
    {
        var numbers = figures ?? Figures.English;
        PlacedLayer[] drawn = [.. piece.Layers.Where(layer => layer.As != Placing.Piece && layer.Outer.HeightMillimetres > 0)];
        if (drawn.Length == 0) return Html.Of($"{Masses(piece, numbers)}");
        var remarks = piece.Remarks.Count == 0 ? Html.Empty : Html.Of($"{piece.Remarks.Select(remark => Notes.LookAt(Html.Of($"{remark}.")))}");
        return Html.Of($"<figure class=\"section\"><div class=\"still\">{Picture(name, piece, drawn, numbers, tinted ?? [.. piece.Layers.Select(layer => layer.Component)])}</div><figcaption>Cut through the middle, to scale. {Whole(piece, numbers)}</figcaption></figure>\n{remarks}{Masses(piece, numbers)}");
    }

    /// <summary>The drawing with its labels alone, for a page that has its masses elsewhere.</summary>
    /// <param name="name">The name of the piece, for the title.</param>
    /// <param name="piece">The piece.</param>
    public static Html PictureOf(string name, AssembledPiece piece)
    {
        PlacedLayer[] drawn = [.. piece.Layers.Where(layer => layer.As != Placing.Piece && layer.Outer.HeightMillimetres > 0)];
        return drawn.Length == 0 ? Html.Empty : Html.Of($"<figure class=\"section\">{Picture(name, piece, drawn, Figures.English, [.. piece.Layers.Select(layer => layer.Component)])}</figure>");
    }

    private static Html Whole(AssembledPiece piece, Figures numbers) =>
        Html.Of($"{numbers.Millimetres(piece.WidthMillimetres)} across, {numbers.Millimetres(piece.HeightMillimetres)} high{(piece.MassGrams is { } grams ? Html.Of($", {numbers.Mass(grams)}") : Html.Empty)}.");

    private static Html Picture(string name, AssembledPiece piece, IReadOnlyList<PlacedLayer> drawn, Figures numbers, IReadOnlyList<string> tinted)
    {
        var scale = Math.Min(Drawing / piece.WidthMillimetres, 260 / piece.HeightMillimetres);
        var labels = drawn.Concat(piece.Layers.Where(layer => layer.As == Placing.Piece)).ToArray();
        var high = Math.Max(piece.HeightMillimetres * scale, labels.Length * LabelGap) + 2 * Margin;
        var (middle, floor) = (Margin + Drawing / 2, high - Margin - (high - 2 * Margin - piece.HeightMillimetres * scale) / 2);
        var svg = new Svg(Width, high, $"Cross-section of {name}, to scale", Described(piece, numbers));
        // A component that stands in no other drawing comes after those that do.
        int Place(PlacedLayer layer) => tinted.TakeWhile(component => !Names.Same(component, layer.Component)).Count();
        (double X, double Y) At(double x, double z) => (middle + x * scale, floor - z * scale);

        foreach (var layer in drawn.OrderBy(Depth))
            Draw(svg, layer, $"layer l-{Place(layer) % Tints}", At, scale);

        // From above, as the labels stand; each points at the right half of its layer.
        var tips = labels.Select(layer => TipOf(layer, drawn, At)).ToArray();
        var places = Svg.Apart([.. tips.Select(tip => tip.Y)], LabelGap, Margin + 6, high - Margin);
        for (var i = 0; i < labels.Length; i++)
        {
            var left = Margin + Drawing + 14;
            if (labels[i].As != Placing.Piece) svg.Path("lead", [tips[i], (left - 10, places[i]), (left - 3, places[i])]).Dot("tip", tips[i].X, tips[i].Y, 2.6);
            svg.Text("ts", left, places[i] + 4, LabelOf(labels[i], numbers));
        }
        return svg.ToHtml();
    }

    private static void Draw(Svg svg, PlacedLayer layer, string kind, Func<double, double, (double X, double Y)> at, double scale)
    {
        if (layer.As == Placing.Film)
        {
            // A film is thinner than a pixel: it is drawn outside what it covers, no thinner than can be seen.
            var thick = Math.Max(layer.ThicknessMillimetres, LeastFilm / scale);
            svg.Area(kind, Outline(layer.Outer, layer.BottomMillimetres, at, thick), Outline(layer.Outer, layer.BottomMillimetres, at));
        }
        else if (layer.Hollow is { } hollow) svg.Area(kind, Around(layer, hollow, at));
        else svg.Area(kind, Outline(layer.Outer, layer.BottomMillimetres, at));
    }

    private static IEnumerable<(double X, double Y)> Outline(Shape shape, double bottom, Func<double, double, (double X, double Y)> at, double wider = 0)
    {
        double[] levels = [.. Enumerable.Range(0, Levels + 1).Select(i => shape.HeightMillimetres * i / Levels)];
        var right = levels.Select(z => (X: shape.HalfWidthAt(z) + wider, Z: bottom + (z == 0 ? 0 : z + wider * z / shape.HeightMillimetres)));
        return [.. right.Select(point => at(point.X, point.Z)), .. right.Reverse().Select(point => at(-point.X, point.Z))];
    }

    // The lining's own outline: up the outside, over the rim, down the inside and along its floor.
    private static IEnumerable<(double X, double Y)> Around(PlacedLayer layer, Shape hollow, Func<double, double, (double X, double Y)> at)
    {
        double[] outside = [.. Enumerable.Range(0, Levels + 1).Select(i => layer.Outer.HeightMillimetres * i / Levels)];
        double[] inside = [.. Enumerable.Range(0, Levels + 1).Select(i => hollow.HeightMillimetres * i / Levels)];
        var wall = outside.Select(z => (X: layer.Outer.HalfWidthAt(z), Z: layer.BottomMillimetres + z))
            .Concat(inside.Reverse().Select(z => (X: hollow.HalfWidthAt(z), Z: layer.BottomMillimetres + layer.ThicknessMillimetres + z))).ToArray();
        return [.. wall.Select(point => at(point.X, point.Z)), .. wall.Reverse().Select(point => at(-point.X, point.Z))];
    }

    private static (double X, double Y) TipOf(PlacedLayer layer, IReadOnlyList<PlacedLayer> drawn, Func<double, double, (double X, double Y)> at)
    {
        if (layer.As == Placing.Piece) return at(0, drawn.Max(each => each.TopMillimetres));
        if (layer.As == Placing.Film) return at(layer.Outer.HalfWidthAt(layer.Outer.HeightMillimetres) * 0.7, layer.TopMillimetres);
        if (layer.Hollow is not null) return at(layer.Outer.HalfWidthAt(0) * 0.94, layer.BottomMillimetres + layer.ThicknessMillimetres / 2);
        // Where something is inside it, what shows of a layer is nearer to its edge or to its top.
        var inside = drawn.Where(each => Names.Same(each.Inside, layer.Component) && each.As == Placing.Insert).ToArray();
        var height = inside.Length == 0 ? layer.Outer.HeightMillimetres / 2 : (inside.Max(each => each.TopMillimetres) + layer.TopMillimetres) / 2 - layer.BottomMillimetres;
        return at(layer.Outer.HalfWidthAt(height) * 0.86, layer.BottomMillimetres + height);
    }

    private static int Depth(PlacedLayer layer) => layer.As switch { Placing.Lining or Placing.Fill => 0, Placing.Moulded => 1, Placing.Film => 2, _ => 3 };

    private static string LabelOf(PlacedLayer layer, Figures numbers) =>
        $"{(layer.Count > 1 ? layer.Count.ToString(CultureInfo.InvariantCulture) + " × " : "")}{layer.Component} {numbers.Mass(layer.MassGrams).Text}";

    private static string Described(AssembledPiece piece, Figures numbers) => "In the order in which it is put together: " + string.Join("; ", piece.Layers.Select(layer =>
        $"{layer.Component}, {(layer.As == Placing.Film ? "a film of " : "")}{numbers.Millimetres(layer.ThicknessMillimetres).Text}{(layer.Inside is { } inside ? $", {(layer.As == Placing.Film ? "on" : "in")} {inside}" : "")}")) + ".";

    private static Html Masses(AssembledPiece piece, Figures numbers)
    {
        var whole = piece.MassGrams;
        return new DataTable("What stands in one piece, from below",
            [Column.Words("Component"), Column.Numbers("Mass", "g"), Column.Numbers("Share", "%"), Column.Numbers("Thick", "mm"), Column.Numbers("Volume", "ml"), Column.Numbers("Density", "g/ml")],
            [.. piece.Layers.Select(layer => new Row(
                layer.Count > 1 ? $"{layer.Component}, {layer.Count}" : layer.Component, numbers.Mass(layer.MassGrams), numbers.Share(layer.MassGrams / whole).WithoutUnit(),
                numbers.Millimetres(layer.ThicknessMillimetres), numbers.Number(layer.VolumeMillilitres, 0, "ml"), numbers.Number(layer.DensityGramsPerMillilitre, 2, "g/ml"))),
             new Row("one piece", numbers.Mass(whole), numbers.Share(whole / whole).WithoutUnit(), numbers.Millimetres(piece.HeightMillimetres), numbers.Number(piece.Layers.Sum(layer => layer.VolumeMillilitres), 0, "ml"), "") { Kind = RowKind.Total }]).ToHtml();
    }
}
