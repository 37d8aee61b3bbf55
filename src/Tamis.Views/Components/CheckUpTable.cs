using Tamis.Physics;

namespace Tamis.Views;

/// <summary>A component beside the windows of its family and use: what lies outside and by how much, what is seen then and what to try, what lies inside.</summary>
public static class CheckUpTable
{
    /// <summary>Every component: what lies outside in the open, the rest folded; components without windows in a list with the reason.</summary>
    /// <param name="checkUps">The components.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static Html Of(IReadOnlyList<CheckUp> checkUps, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics.Windows;
        Html[] silent = [.. checkUps.Where(each => each.NoVerdict.Length > 0).Select(each => words.NoVerdict.Fill(("component", Show.Capital(each.Component)), ("reason", Typeset.Text(each.NoVerdict))))];
        return Notes.Small(Html.Of($"{words.Usual}")) + Html.Join(checkUps.Where(each => each.NoVerdict.Length == 0).Select(each => Of(each, numbers))) + (silent.Length == 0 ? Html.Empty : Notes.List(silent));
    }

    /// <summary>One component.</summary>
    /// <param name="checkUp">The component.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static Html Of(CheckUp checkUp, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics.Windows;
        if (checkUp.NoVerdict.Length > 0) return Notes.Small(words.NoVerdict.Fill(("component", Show.Capital(checkUp.Component)), ("reason", Typeset.Text(checkUp.NoVerdict))));
        var counts = words.InsideOf.Fill(("inside", checkUp.Inside.Count), ("known", checkUp.Lines.Count - checkUp.NotKnown.Count))
            + (checkUp.NotKnown.Count == 0 ? Html.Empty : Html.Of($", {words.NotKnown.Fill(checkUp.NotKnown.Count)}"));
        var heading = Html.Of($"<h3>{Show.Capital(checkUp.Component)}</h3>\n<p class=\"small\">{checkUp.Family}: {checkUp.Use}</p>\n");
        var outside = checkUp.Outside.Count == 0 ? Html.Empty : Table(checkUp.Component, checkUp.Outside, numbers, says: true).ToHtml();
        CheckUpLine[] rest = [.. checkUp.Inside, .. checkUp.NotKnown];
        return heading + outside + (rest.Length == 0 ? Html.Empty
            : Notes.Folded(counts.ToPlainText(), Table(checkUp.Component, rest, numbers, says: false).ToHtml() + Html.Join(rest.Where(line => line.Found.IsKnown).Select(line => WorkingView.Of(line.Found.Working, numbers, NameOf(line))))));
    }

    /// <summary>The smallest changes that bring a component inside, in words.</summary>
    /// <param name="mending">What was found.</param>
    public static Html Of(Mending mending) => Notes.Paragraph(Html.Of($"{Typeset.Text(mending.InWords)}"));

    private static DataTable Table(string component, IReadOnlyList<CheckUpLine> lines, Figures figures, bool says)
    {
        var words = figures.Language.Words.Physics;
        return new(component,
            [Column.Words(words.Figure), Column.Numbers(words.Windows.Found), Column.Words(words.Windows.Window), Column.Words(words.Windows.Beside), .. says ? (Column[])[Column.Words(words.Windows.SeenAndTry)] : []],
            [.. lines.Select(line => new Row([NameOf(line), ((Cell)Number(line.Found.IsKnown ? line.Found.Value : null, line, figures)).Tracked($"{component}, {NameOf(line)}"), Between(line, figures), Verdict(line, figures), .. says ? (Cell[])[Seen(line, words.Windows)] : []]))])
        { IsWide = true, LeastRem = says ? 40 : 30 };
    }

    private static string NameOf(CheckUpLine line) => line.Window.On.Kind == BaseKind.Method ? line.Window.Figure : $"{line.Window.Figure} {line.Window.On.InWords}";

    private static Html Verdict(CheckUpLine line, Figures figures)
    {
        var words = figures.Language.Words.Physics.Windows;
        var unit = line.Window.Unit == "%" ? words.Points : line.Window.Unit;
        var by = figures.Number(line.OutsideBy, DecimalsOf(line), unit).InText;
        return line.Verdict switch
        {
            WindowVerdict.NotKnown => PredictionTable.Doubt(line.Found, figures),
            WindowVerdict.Inside => Html.Of($"{Marks.Gauge(line.Found.Value, line.Window.Range)} {words.Inside}"),
            WindowVerdict.TooLow => Html.Of($"{Marks.Gauge(line.Found.Value, line.Window.Range)} {words.TooLow.Fill(("by", by))}"),
            _ => Html.Of($"{Marks.Gauge(line.Found.Value, line.Window.Range)} {words.TooHigh.Fill(("by", by))}"),
        };
    }

    private static Html Seen(CheckUpLine line, WindowWords words) => Html.Join([
        .. ((Html[])[
            line.Seen.Length == 0 ? Html.Empty : Html.Of($"{Show.Capital(Typeset.Text(line.Seen))}."),
            line.Try.Length == 0 ? Html.Empty : Html.Of($"<b>{words.Try}</b> {Typeset.Text(line.Try)}."),
            line.IsSure ? Html.Empty : Html.Of($"{words.NotSure}"),
        ]).Where(part => !part.IsEmpty)], " ") + Marks.From(line.Window.Source);

    private static string Between(CheckUpLine line, Figures figures) => figures.Between(line.Window.Range, DecimalsOf(line), line.Window.Unit);

    private static Num Number(double? value, CheckUpLine line, Figures figures) => figures.Number(value, DecimalsOf(line), line.Window.Unit);

    // As fine as the window is written: a window of 0.9 to 1.2 needs tenths, one of 40 to 60 none; a figure at its edge one place more.
    private static int DecimalsOf(CheckUpLine line)
    {
        var ends = Math.Max(Written(line.Window.Range.Low), Written(line.Window.Range.High));
        var hidden = line.Verdict is WindowVerdict.TooLow or WindowVerdict.TooHigh && Math.Round(line.OutsideBy, ends) == 0;
        return Math.Min(ends + (hidden || line.Window.Range.High < 20 ? 1 : 0), 3);
    }

    private static int Written(double value)
    {
        var decimals = 0;
        while (decimals < 3 && Math.Abs(value - Math.Round(value, decimals)) > 1e-9) decimals++;
        return decimals;
    }
}
