using System.Globalization;
using Tamis.Labels;

namespace Tamis.Views;

/// <summary>Draws a label as SVG, in mm: one unit of the drawing is one millimetre of the pack.</summary>
internal static class LabelSvg
{
    // The room under the face for the scale and its words.
    private const double ScaleRoomMillimetres = 9;
    private const double ScaleBarMillimetres = 50;
    private const double ScaleTextMillimetres = 3;
    private const double FaceLineMillimetres = 0.15;

    // A screen cuts a line that lies on the edge of the picture: this much is left around it.
    private const double AroundMillimetres = 1;

    /// <summary>The face alone, as it is printed; a draft has that word across it.</summary>
    public static Html Face(LabelDrawing drawing) => Svg(drawing, drawing.WidthMillimetres, drawing.HeightMillimetres, 0, Html.Empty);

    /// <summary>The face with its edge and a bar of known length under it, for a screen.</summary>
    public static Html WithScale(LabelDrawing drawing)
    {
        // What does not fit is shown beyond the edge, and the scale under it.
        var width = Math.Max(drawing.WidthMillimetres, drawing.Marks.Select(mark => mark.RightMillimetres).DefaultIfEmpty(0).Max());
        var height = Math.Max(drawing.HeightMillimetres, drawing.Marks.Select(mark => mark.BottomMillimetres).DefaultIfEmpty(0).Max());
        var y = height + 3;
        var bar = Math.Min(ScaleBarMillimetres, Math.Floor(drawing.WidthMillimetres / 10) * 10);
        var edge = Html.Of($"<rect class=\"label-edge\" x=\"{At(FaceLineMillimetres / 2)}\" y=\"{At(FaceLineMillimetres / 2)}\" width=\"{At(drawing.WidthMillimetres - FaceLineMillimetres)}\" height=\"{At(drawing.HeightMillimetres - FaceLineMillimetres)}\" fill=\"none\" stroke=\"#666666\" stroke-width=\"{At(FaceLineMillimetres)}\"/>\n");
        var scale = Html.Of($"<path class=\"label-scale\" d=\"M0 {At(y - 1)}V{At(y + 1)}M0 {At(y)}H{At(bar)}M{At(bar)} {At(y - 1)}V{At(y + 1)}\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"0.3\"/>\n<text class=\"label-scale-words\" x=\"0\" y=\"{At(y + 4.5)}\" style=\"{Style(ScaleTextMillimetres, false, "currentColor")}\">{At(bar)}\u00a0mm</text>\n");
        return Svg(drawing, width, height + ScaleRoomMillimetres, AroundMillimetres, edge + scale);
    }

    private static Html Svg(LabelDrawing drawing, double width, double height, double around, Html beside)
    {
        var (across, down) = (drawing.WidthMillimetres, drawing.HeightMillimetres);
        var colours = drawing.Content.Colours;
        var title = $"Label of {drawing.Content.Rules.Title}";
        var marks = Html.Join(drawing.Marks.Select(mark => Mark(mark, mark.Ink ?? colours.Ink)));
        return Html.Of($"""
            <svg xmlns="http://www.w3.org/2000/svg" class="label-drawing" width="{At(width + 2 * around)}mm" height="{At(height + 2 * around)}mm" viewBox="{At(-around)} {At(-around)} {At(width + 2 * around)} {At(height + 2 * around)}" role="img" style="font-kerning:none;font-variant-ligatures:none;letter-spacing:normal;text-rendering:geometricPrecision">
            <title>{title}</title><desc>{drawing.Layout.ToString()}, on a face of {drawing.Content.Pack.ToString()}.</desc>
            <rect class="label-ground" width="{At(across)}" height="{At(down)}" fill="{colours.Ground.ToString()}"/>
            <g class="label-print" fill="{colours.Ink.ToString()}">
            {marks}</g>
            {(drawing.IsDraft ? Draft(across, down) : Html.Empty)}{beside}</svg>

            """);
    }

    // The length is said too: a screen rounds the width of each letter to its dots, and another face must not run into what stands beside it.
    // Sizes and faces stand in the element itself: the style sheet of a page sets the text of every drawing, and would win over attributes.
    private static Html Mark(LabelMark mark, LabelColour ink) => mark switch
    {
        TextMark text => Html.Of($"<text class=\"part-{text.Part.Replace(' ', '-')}\" x=\"{At(text.XMillimetres)}\" y=\"{At(text.BaseLineMillimetres)}\" textLength=\"{At(text.WidthMillimetres)}\" style=\"{Style(text.SizeMillimetres, text.IsBold, ink.ToString())}\"{(text.Language.Length > 0 ? Html.Of($" lang=\"{text.Language}\"") : Html.Empty)} xml:space=\"preserve\">{text.Text}</text>\n"),
        ReserveMark place => Html.Of($"<rect class=\"reserve\" x=\"{At(place.XMillimetres)}\" y=\"{At(place.YMillimetres)}\" width=\"{At(place.WidthMillimetres)}\" height=\"{At(place.HeightMillimetres)}\" fill=\"none\" stroke=\"{ink.ToString()}\" stroke-width=\"0.2\" stroke-dasharray=\"1.2 0.8\"/>\n"),
        GroundMark ground => Html.Of($"<rect class=\"part-ground\" x=\"{At(ground.XMillimetres)}\" y=\"{At(ground.YMillimetres)}\" width=\"{At(ground.WidthMillimetres)}\" height=\"{At(ground.HeightMillimetres)}\" fill=\"{ground.Colour.ToString()}\"/>\n"),
        BarMark bar => Html.Of($"<rect x=\"{At(bar.XMillimetres)}\" y=\"{At(bar.YMillimetres)}\" width=\"{At(bar.WidthMillimetres)}\" height=\"{At(bar.ThicknessMillimetres)}\"{(bar.Ink is null ? Html.Empty : Html.Of($" fill=\"{ink.ToString()}\""))}/>\n"),
        FrameMark frame => Html.Of($"<rect class=\"frame\" x=\"{At(frame.XMillimetres + frame.ThicknessMillimetres / 2)}\" y=\"{At(frame.YMillimetres + frame.ThicknessMillimetres / 2)}\" width=\"{At(frame.WidthMillimetres - frame.ThicknessMillimetres)}\" height=\"{At(frame.HeightMillimetres - frame.ThicknessMillimetres)}\" fill=\"none\" stroke=\"{ink.ToString()}\" stroke-width=\"{At(frame.ThicknessMillimetres)}\"/>\n"),
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "A label has texts, bars, boxes, grounds and places kept free."),
    };

    private static string Style(double sizeMillimetres, bool isBold, string fill) => $"font-family:{Families};font-size:{At(sizeMillimetres)}px;font-weight:{(isBold ? 700 : 400)};fill:{fill}";

    // Across the whole face, so that no cut of it can pass for a finished label.
    private static Html Draft(double width, double height)
    {
        var size = Math.Min(width / 3.4, height / 1.2);
        var angle = -Math.Atan2(height, width) * 180 / Math.PI * 0.7;
        return Html.Of($"<text class=\"label-draft\" x=\"{At(width / 2)}\" y=\"{At(height / 2)}\" style=\"{Style(size, true, "#b00020")}\" text-anchor=\"middle\" dominant-baseline=\"central\" fill-opacity=\"0.28\" transform=\"rotate({At(angle)} {At(width / 2)} {At(height / 2)})\">DRAFT</text>\n");
    }

    private static string Families { get; } = string.Join(",", [.. Typeface.Kit.Families.Select(family => family.Contains(' ') ? $"'{family}'" : family), "sans-serif"]);

    // A micrometre is enough for print.
    private static string At(double value) => (Math.Round(value, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);
}
