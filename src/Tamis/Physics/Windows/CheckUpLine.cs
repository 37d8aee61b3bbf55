using System.Globalization;

namespace Tamis.Physics;

/// <summary>Where a figure lies beside its window.</summary>
public enum WindowVerdict
{
    /// <summary>Inside, ends included.</summary>
    Inside,
    /// <summary>Under the window.</summary>
    TooLow,
    /// <summary>Over the window.</summary>
    TooHigh,
    /// <summary>Not worked out; something is lacking.</summary>
    NotKnown,
}

/// <summary>One figure of a component beside its window.</summary>
/// <param name="Window">The window.</param>
/// <param name="Found">The figure, with its working.</param>
public sealed record CheckUpLine(Window Window, Predicted Found)
{
    // Sums of the same masses in another order differ in the last digits.
    private const double Rounding = 1e-9;

    /// <summary>A window with the figure of a component beside it.</summary>
    /// <param name="window">The window.</param>
    /// <param name="examined">The component.</param>
    /// <param name="figures">The figures; the kit's own where null.</param>
    public static CheckUpLine Of(Window window, Examined examined, FigureList? figures = null) => new(window, (figures ?? FigureList.Kit).Named(window.Figure).Of(examined, window.On));

    /// <summary>Where it lies.</summary>
    public WindowVerdict Verdict => VerdictOf(Found.Value);

    /// <summary>Whether the verdict is the same wherever in its range the figure truly lies.</summary>
    public bool IsSure => Verdict != WindowVerdict.NotKnown && (Found.Range is not { } range || VerdictOf(range.Low) == Verdict && VerdictOf(range.High) == Verdict);

    /// <summary>By how much it lies outside, above zero, in the unit of the window; 0 where it is inside or not known.</summary>
    public double OutsideBy => Verdict switch
    {
        WindowVerdict.TooLow => Window.Range.Low - Found.Value,
        WindowVerdict.TooHigh => Found.Value - Window.Range.High,
        _ => 0,
    };

    /// <summary>What is seen or felt because of it; empty inside, and where the sheet says nothing.</summary>
    public string Seen => Verdict switch { WindowVerdict.TooLow => Window.WhyLow, WindowVerdict.TooHigh => Window.WhyHigh, _ => "" };

    /// <summary>What to try; empty inside, and where the sheet says nothing.</summary>
    public string Try => Verdict switch { WindowVerdict.TooLow => Window.TryLow, WindowVerdict.TooHigh => Window.TryHigh, _ => "" };

    /// <summary>The line as a cook would say it.</summary>
    public string InWords
    {
        get
        {
            var what = $"{char.ToUpperInvariant(Window.Figure[0])}{Window.Figure[1..]}{(Window.On.Kind == BaseKind.Method ? "" : $" {Window.On.InWords}")}";
            var usual = $"usually {Number(Window.Range.Low)} to {WithUnit(Window.Range.High)}";
            if (Verdict == WindowVerdict.NotKnown) return $"{what}: not known without {string.Join(", ", Found.Lacks)}; {usual}.";
            var doubt = IsSure ? "" : " What is not known of it could change this.";
            if (Verdict == WindowVerdict.Inside) return $"{what}: {WithUnit(Found.Value)}, {usual}.{doubt}";
            var by = Window.Unit == "%" ? $"{Number(OutsideBy)} points" : WithUnit(OutsideBy);
            return $"{what}: {WithUnit(Found.Value)}, {usual}; {by} too {(Verdict == WindowVerdict.TooLow ? "little" : "much")}{(Seen.Length > 0 ? $" ({Seen})" : "")}.{(Try.Length > 0 ? $" Try: {Try}." : "")}{doubt}";
        }
    }

    private WindowVerdict VerdictOf(double value) => double.IsNaN(value) ? WindowVerdict.NotKnown
        : value < Window.Range.Low - Rounding ? WindowVerdict.TooLow : value > Window.Range.High + Rounding ? WindowVerdict.TooHigh : WindowVerdict.Inside;

    private string WithUnit(double value) => Window.Unit.Length > 0 ? $"{Number(value)} {Window.Unit}" : Number(value);

    private static string Number(double value) => value.ToString(Math.Abs(value) < 10 ? "0.##" : "0.#", CultureInfo.InvariantCulture);
}
