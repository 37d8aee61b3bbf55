namespace Tamis.Views;

/// <summary>One thing to weigh.</summary>
/// <param name="Amount">How much, as the scale can show it.</param>
/// <param name="Name">What, in the kitchen's word.</param>
/// <param name="Note">What else to know: <c>12 leaves</c>, <c>cold dice</c>; may be empty.</param>
public sealed record WeighingLine(Num Amount, string Name, string Note = "");

/// <summary>One step: what to weigh and what to do with it.</summary>
/// <param name="Lines">What to weigh; none for a step without weighing.</param>
/// <param name="Do">What to do; empty where nobody wrote it.</param>
public sealed record WeighingStep(IReadOnlyList<WeighingLine> Lines, Html Do)
{
    /// <summary>At what temperature, with its unit: <c>150 °C</c>; may be empty.</summary>
    public string Temperature { get; init; } = "";

    /// <summary>How long: <c>18 to 25 min</c>; may be empty.</summary>
    public string Minutes { get; init; } = "";

    /// <summary>What to be careful of; may be empty.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Limits that decide safety, in words; each gets a place to write what was measured, when and by whom. None for most steps.</summary>
    public IReadOnlyList<string> Limits { get; init; } = [];
}

/// <summary>One component on the sheet; never split over two pages, so that sheets can be given out.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Steps">Its steps in order.</param>
public sealed record WeighingComponent(string Name, IReadOnlyList<WeighingStep> Steps)
{
    /// <summary>Where it goes or how it is portioned: <c>12 rings of 160 mm</c>; may be empty.</summary>
    public string Header { get; init; } = "";

    /// <summary>What it should weigh when done, by the formula; null where that is not known, and then only the line to write on stands.</summary>
    public Num? Expected { get; init; }

    /// <summary>Whether there is a mass to weigh at the end; not for putting together.</summary>
    public bool IsWeighed { get; init; } = true;
}

/// <summary>A sheet to weigh by, for paper first: masses readable at arm's length, boxes to tick, lines to write on.</summary>
/// <param name="Title">What and how many: <c>Weighing sheet: twelve tarts, trial T10</c>.</param>
/// <param name="Components">Its components in the order of work.</param>
[TypeFormatterSource(typeof(ViewFormatters<WeighingSheet>), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed record WeighingSheet(string Title, IReadOnlyList<WeighingComponent> Components) : IView
{
    /// <summary>What else stands at the head: the day, the factors of the formula.</summary>
    public IReadOnlyList<string> Facts { get; init; } = [];

    /// <summary>What it contains that some people must not eat; may be empty.</summary>
    public Html Contains { get; init; }

    /// <summary>Whether it stands under a heading of a longer page, and needs no title of its own.</summary>
    public bool IsPart { get; init; }

    /// <summary>What it is said with.</summary>
    public Language Language { get; init; } = Language.English;

    /// <inheritdoc/>
    public Html ToHtml()
    {
        var words = Language.Words.Weighing;
        var facts = Html.Join([.. Facts.Select(fact => Html.Of($"<li>{fact}</li>")), Html.Of($"<li>{words.MadeBy} {Fill}</li>"), Html.Of($"<li>{words.Date} {Fill}</li>")]);
        var contains = Contains.IsEmpty ? Html.Empty : Html.Of($"<p class=\"caution\">{Contains}</p>\n");
        return Html.Of($"{(IsPart ? Html.Empty : Html.Of($"<h1>{Title}</h1>\n"))}<ul class=\"facts\">{facts}</ul>\n{contains}{Components.Select(Component)}");
    }

    /// <summary>A mass as a scale shows it: to its smallest step, or one decimal under 10 g and whole grams above.</summary>
    /// <param name="grams">The mass.</param>
    /// <param name="stepGrams">The smallest step of the scale; null for the usual rule.</param>
    /// <param name="figures">The numbers of the page; English if null.</param>
    public static Num OnScale(double grams, double? stepGrams = null, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        if (stepGrams is not { } step || step <= 0) return numbers.Mass(grams);
        var decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 4);
        return numbers.Number(Math.Round(grams / step, MidpointRounding.AwayFromZero) * step, decimals, "g");
    }

    private static Html Fill => Html.Of($"<span class=\"fill\">\u00a0</span>");

    private Html Component(WeighingComponent component)
    {
        var header = component.Header.Length == 0 ? Html.Empty : Html.Of($"<p>{component.Header}</p>");
        var plain = component.Steps.All(step => step.Lines.Count == 0) ? " plain" : "";
        return Html.Of($"<section class=\"make{plain}\"><header><h2>{component.Name}</h2>{header}</header>\n<ol class=\"steps\">{Groups(component.Steps).Select(Group)}</ol>{After(component)}</section>\n");
    }

    // What is to be done after a weighing stands under what is done with it, beside the masses: a sheet without empty halves is a sheet fewer.
    private static List<List<WeighingStep>> Groups(IReadOnlyList<WeighingStep> steps)
    {
        List<List<WeighingStep>> groups = [];
        foreach (var step in steps)
            if (groups.Count > 0 && groups[^1][0].Lines.Count > 0 && step.Lines.Count == 0) groups[^1].Add(step);
            else groups.Add([step]);
        return groups;
    }

    private Html After(WeighingComponent component)
    {
        if (!component.IsWeighed) return Html.Empty;
        var words = Language.Words.Weighing;
        var expected = component.Expected is { } mass ? Html.Of($"<span>{words.ShouldWeigh} <b class=\"n\">{mass.Text}</b></span> ") : Html.Empty;
        return Html.Of($"<div class=\"after\">{expected}<span>{words.Weighed} {Fill} {words.Grams}</span></div>");
    }

    private Html Group(List<WeighingStep> steps)
    {
        var weigh = steps[0].Lines.Count == 0 ? Html.Empty : Html.Of($"<ul class=\"weigh\">{steps[0].Lines.Select(Line)}</ul>");
        return Html.Of($"<li{(weigh.IsEmpty ? Html.Of($" class=\"only\"") : Html.Empty)}>{weigh}<div class=\"dos\">{steps.Select(Doing)}</div></li>\n");
    }

    private Html Line(WeighingLine line)
    {
        var note = line.Note.Length == 0 ? Html.Empty : Html.Of($"<small>{line.Note}</small>");
        return Html.Of($"<li>{Box}<b>{line.Amount.Cell}<small>{line.Amount.Unit}</small></b> <span>{line.Name}{note}</span></li>");
    }

    private Html Doing(WeighingStep step)
    {
        if (step.Do.IsEmpty && step.Temperature.Length == 0 && step.Minutes.Length == 0 && step.Caution.Length == 0) return Html.Empty;
        var minutes = step.Minutes.Length == 0 ? Html.Empty : Html.Of($" <span>{step.Minutes}</span>");
        var heat = step.Temperature.Length == 0 && minutes.IsEmpty ? Html.Empty : Html.Of($"<div class=\"heat\">{step.Temperature}{minutes}</div>");
        var caution = step.Caution.Length == 0 ? Html.Empty : Html.Of($"<p class=\"caution\"><b>{Language.Words.Caution}</b> {step.Caution}</p>");
        var limits = Html.Join(step.Limits.Select(limit => Html.Of($"<p class=\"limit\"><b>{limit}</b> <span>{Language.Words.Weighing.Measured} {Fill}</span> <span>{Language.Words.Weighing.At} {Fill}</span> <span>{Language.Words.Weighing.By} {Fill}</span></p>")));
        return Html.Of($"<div class=\"do\">{Box}<div><p>{step.Do}</p>{heat}{caution}{limits}</div></div>");
    }

    private Html Box => Html.Of($"<span class=\"box\" role=\"img\" aria-label=\"{Language.Words.Weighing.Tick}\"></span>");
}
