namespace Tamis.Views;

/// <summary>How a figure was worked out: its steps in the order of use, each with where it came from, the figure itself last.</summary>
public static class WorkingView
{
    /// <summary>The steps, folded under a line that names the figure.</summary>
    /// <param name="working">The figure and the steps that it used.</param>
    /// <param name="figures">The numbers and the language of the page; English if null.</param>
    /// <param name="summary">The line over the steps; null for the usual one.</param>
    /// <param name="open">Whether the steps are open from the start.</param>
    public static Html Of(Working working, Figures? figures = null, string? summary = null, bool open = false)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Working;
        var heading = summary is null
            ? words.HowItWas.Fill(("figure", Html.Of($"{working.Step}, {Value(working, numbers).Text}")))
            : Html.Text(summary);
        return Html.Of($"<details class=\"working\"{(open ? Html.Of($" open") : Html.Empty)}><summary>{heading}</summary>\n{Steps(working, numbers)}</details>\n");
    }

    private static Html Steps(Working working, Figures figures) =>
        Html.Of($"<ol>{working.From.Append(working with { From = [] }).Select(step => Step(step, figures))}</ol>");

    private static Html Step(Working step, Figures figures)
    {
        // A step says its figure unless it is a remark without one.
        var figure = double.IsNaN(step.Value) && step.Unit.Length == 0 ? Html.Empty : Html.Of($": {Value(step, figures).InText}");
        var used = step.From.Count == 0 ? Html.Empty
            : Html.Of($"<details><summary>{figures.Language.Words.Working.Used.Fill(step.From.Count)}</summary><ol>{step.From.Select(inner => Step(inner, figures))}</ol></details>");
        return Html.Of($"<li>{step.Step}{figure}{Marks.From(step.Source)}{used}</li>\n");
    }

    // Steps show four digits, one more than a page does, so that a reader can follow a sum; the declared figure itself stands as the rule rounds it.
    private static Num Value(Working step, Figures figures) => figures.Significant(step.Value, step.Unit, digits: 4) is var shown && shown.Decimals.Length > 0
        ? Trimmed(shown)
        : shown;

    private static Num Trimmed(Num number)
    {
        var decimals = number.Decimals.TrimEnd('0');
        return number with { Decimals = decimals.Any(char.IsAsciiDigit) ? decimals : "" };
    }
}
