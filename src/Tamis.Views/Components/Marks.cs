using System.Globalization;

namespace Tamis.Views;

/// <summary>Marks that a cell or a sentence can carry: coverage, a range as a line, a gauge, a tracked figure.</summary>
public static class Marks
{
    /// <summary>For which share of the mass a figure is known: solid is known, mesh is not.</summary>
    /// <param name="coveredShare">The share, 0 to 1.</param>
    /// <param name="language">The language of the page; English if null.</param>
    public static Html Known(double coveredShare, Language? language = null)
    {
        var figures = new Figures(language ?? Language.English);
        // 99.7 % must not read as all of it, nor 0.3 % as none.
        var percent = coveredShare >= 1 - 1e-9 ? 100 : Math.Clamp(Math.Round(coveredShare * 100), coveredShare > 0 ? 1 : 0, 99);
        return percent == 100
            ? Html.Text(figures.Language.Words.All)
            : Html.Of($"<span class=\"known\" style=\"--k:{percent}\">{figures.Number(percent, 0, "%").Text}</span>");
    }

    /// <summary>A line as long as the doubt with a dot at the estimate and a hair at the reference; filled only if the interval leaves the reference as printed.</summary>
    /// <param name="difference">What is drawn.</param>
    /// <param name="axis">The two ends of the track, in the same points.</param>
    /// <param name="reference">Where the hair stands.</param>
    public static Html Range(Difference difference, Interval axis, double reference = 0)
    {
        var kind = difference.Finding switch { Finding.Gain => "range up", Finding.Loss => "range down", _ => "range" };
        var range = difference.Interval ?? Interval.At(difference.Points);
        return Html.Of($"<span class=\"{kind}\" style=\"--lo:{At(range.Low, axis)};--at:{At(difference.Points, axis)};--hi:{At(range.High, axis)};--ref:{At(reference, axis)}\" aria-hidden=\"true\"><i></i></span>");
    }

    /// <summary>A usual range as a tinted piece of a line and a value as a bar on it.</summary>
    /// <param name="value">The value.</param>
    /// <param name="window">The usual range, drawn from 30 to 70 per cent of the line.</param>
    public static Html Gauge(double value, Interval window)
    {
        var at = window.IsPoint ? 50 : Math.Clamp(30 + 40 * (value - window.Low) / window.Width, 0, 100);
        return Html.Of($"<span class=\"{(window.Contains(value) ? "gauge" : "gauge out")}\" style=\"--a:30;--b:70;--at:{at:0.#}\" aria-hidden=\"true\"><i></i><b></b></span>");
    }

    /// <summary>Content that shows a tracked figure, so that two runs can be compared by it.</summary>
    /// <param name="figure">The name of the figure, one on a page: <c>T10, shell, rye flour, g</c>.</param>
    /// <param name="content">What is shown.</param>
    public static Html Tracked(string figure, Html content) => Html.Of($"<span data-figure=\"{figure}\">{content}</span>");

    /// <summary>Where a figure came from: sheet, row and column, never a path.</summary>
    public static Html From(string place) => Html.Of($"\n<span class=\"from\">{place}</span>");

    /// <summary>Where a figure came from, with the weight of the source where that is little.</summary>
    public static Html From(Source source) => From(Sources.InWords(source));

    private static string At(double value, Interval axis) =>
        Math.Clamp(100 * (value - axis.Low) / axis.Width, 0, 100).ToString("0.#", CultureInfo.InvariantCulture);
}
