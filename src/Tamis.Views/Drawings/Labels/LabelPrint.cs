using System.Globalization;
using Tamis.Labels;

namespace Tamis.Views;

/// <summary>A label as files for print, at its real size. A draft is refused.</summary>
public static class LabelPrint
{
    /// <summary>The name of a label's files, without what stands behind the point.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="market">The market.</param>
    /// <param name="face">Which face of several; null where all stands on one.</param>
    public static string FileName(string trial, string market, int? face = null) =>
        $"label-{WeighingPages.Slug(trial)}-{WeighingPages.Slug(market)}{(face is { } number ? $"-face-{number.ToString(CultureInfo.InvariantCulture)}" : "")}";

    /// <summary>The label as an SVG file, its unit the millimetre.</summary>
    /// <exception cref="InvalidOperationException">The label is a draft; the message says why.</exception>
    public static string Svg(LabelDrawing drawing) => $"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{LabelSvg.Face(Ready(drawing)).Markup.ReplaceLineEndings("\n")}";

    /// <summary>The label as an HTML document whose only page is the face of the pack: printed or saved as PDF it has that size.</summary>
    /// <exception cref="InvalidOperationException">The label is a draft; the message says why.</exception>
    public static string Page(LabelDrawing drawing)
    {
        var size = string.Create(CultureInfo.InvariantCulture, $"{Ready(drawing).WidthMillimetres:0.###}mm {drawing.HeightMillimetres:0.###}mm");
        var language = drawing.Content.Languages.Select(each => each.Language).FirstOrDefault(code => code.Length > 0) ?? "en";
        var document = Html.Of($"""
            <!DOCTYPE html>
            <html lang="{language}">
            <head>
            <meta charset="utf-8">
            <title>Label, {drawing.Content.Rules.Title}</title>
            <link rel="icon" href="data:,">
            <style>{Html.Trusted($"@page {{ size: {size}; margin: 0 }} html, body {{ margin: 0; padding: 0 }} svg {{ display: block; break-inside: avoid }}")}</style>
            </head>
            <body>
            {LabelSvg.Face(drawing)}</body>
            </html>

            """);
        return document.Markup.ReplaceLineEndings("\n");
    }

    private static LabelDrawing Ready(LabelDrawing drawing) => !drawing.IsDraft
        ? drawing
        : throw new InvalidOperationException($"A draft is not printed. {string.Join(" ", drawing.DraftReasons)}");
}
