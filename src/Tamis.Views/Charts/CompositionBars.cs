using System.Globalization;

namespace Tamis.Views;

/// <summary>What a mixture is made of, by its function; each has a tint of its own on every page.</summary>
public enum MadeOf
{
    /// <summary>Water.</summary>
    Water,
    /// <summary>Sugars.</summary>
    Sugars,
    /// <summary>Fat.</summary>
    Fat,
    /// <summary>Protein.</summary>
    Protein,
    /// <summary>Fibre.</summary>
    Fibre,
    /// <summary>The rest that is known.</summary>
    Other,
    /// <summary>Sugars of a second kind beside the first.</summary>
    Sugars2,
    /// <summary>Sugars of a third kind, or what does their work.</summary>
    Sugars3,
    /// <summary>Fat of a second kind.</summary>
    Fat2,
    /// <summary>Fat of a third kind.</summary>
    Fat3,
    /// <summary>Solids of cocoa.</summary>
    Cocoa,
    /// <summary>Solids of egg.</summary>
    Egg,
    /// <summary>Alcohol.</summary>
    Alcohol,
    /// <summary>Mass for which nobody has a figure: a mesh, never zero.</summary>
    Unknown,
}

/// <summary>A kind of which bars are made, with its name on this page.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Name">Its name: <c>starch, cocoa, minerals</c>.</param>
public sealed record BarPart(MadeOf Kind, string Name);

/// <summary>One bar.</summary>
/// <param name="Name">Its component.</param>
/// <param name="Shares">The share of each part, 0 to 1, in the order of the parts; null where it is not known.</param>
public sealed record Bar(string Name, IReadOnlyList<double?> Shares)
{
    /// <summary>Its mass, for the table; null where it is not shown.</summary>
    public double? MassGrams { get; init; }

    /// <summary>Whether it is the whole of the other bars.</summary>
    public bool IsTotal { get; init; }
}

/// <summary>Stacked bars to 100 %: what each component is made of. What no part accounts for is a mesh.</summary>
public static class CompositionBars
{
    private const double LeastShareWithNumber = 0.06;

    /// <summary>The chart, with the figures in a table.</summary>
    /// <param name="title">What is shown, with its unit in words.</param>
    /// <param name="parts">The parts, in the order of the bars.</param>
    /// <param name="bars">The bars, from above.</param>
    /// <param name="caption">What is drawn and for how much of it figures are known.</param>
    /// <param name="massUnit">The unit of the masses in words: <c>g a tart</c>.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    /// <exception cref="ArgumentException">A bar has not one share a part.</exception>
    public static ChartView Of(string title, IReadOnlyList<BarPart> parts, IReadOnlyList<Bar> bars, Html caption, string massUnit = "g", Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        foreach (var bar in bars)
            if (bar.Shares.Count != parts.Count) throw new ArgumentException($"There are {parts.Count} parts, but the bar '{bar.Name}' has {bar.Shares.Count} shares.");
        BarPart[] all = [.. parts, .. bars.Any(bar => Unknown(bar) > 0) ? (BarPart[])[new(MadeOf.Unknown, numbers.Language.Words.Unknown)] : []];
        var panel = new ChartPanel(title, Still(all, bars, numbers), Live(all, bars, numbers), 36 + 32 * Math.Max(1, bars.Count)) { Above = Key(all) };
        return new([panel], caption) { Figures = Table(parts, bars, massUnit, numbers), Language = numbers.Language };
    }

    private static Html Key(IReadOnlyList<BarPart> parts) =>
        Html.Of($"<ul class=\"key\">{parts.Select(part => Html.Of($"<li class=\"{Class(part.Kind)}\">{part.Name}</li>"))}</ul>\n");

    private static Html Still(IReadOnlyList<BarPart> parts, IReadOnlyList<Bar> bars, Figures figures)
    {
        var rows = bars.Select(bar => Html.Of($"<b>{bar.Name}</b><div class=\"bar\">{parts.Select((part, at) => Segment(part, Share(bar, at), figures))}</div>\n"));
        return Html.Of($"<div role=\"img\" aria-label=\"{figures.Language.Words.Chart.BarsDescription}\"><div class=\"bars\">{rows}</div></div>");
    }

    private static Html Segment(BarPart part, double share, Figures figures) => share <= 0 ? Html.Empty
        : Html.Of($"<span class=\"{Class(part.Kind)}\" style=\"--v:{(share * 100).ToString("0.#", CultureInfo.InvariantCulture)}\">{Number(share, figures)}</span>");

    private static string Live(IReadOnlyList<BarPart> parts, IReadOnlyList<Bar> bars, Figures figures)
    {
        var live = new LiveFigure();
        var names = bars.Select(bar => LiveFigure.Text(bar.Name)).ToArray();
        for (var at = 0; at < parts.Count; at++)
        {
            var shares = bars.Select(bar => Share(bar, at)).ToArray();
            object marker = parts[at].Kind == MadeOf.Unknown
                ? new { color = "role:paper", pattern = new { shape = "x", fgcolor = "role:ink-2", size = 5, solidity = 0.2 } }
                : new { color = Role(parts[at].Kind) };
            live.Add("bar", ("orientation", "h"), ("y", names), ("x", LiveFigure.Numbers(shares.Select(share => 100 * share))), ("marker", marker),
                ("text", shares.Select(share => Number(share, figures)).ToArray()),
                ("customdata", shares.Select(share => LiveFigure.Text($"{parts[at].Name} {figures.WholeShare(share).Text}")).ToArray()),
                ("hovertemplate", "%{y}: %{customdata}<extra></extra>"));
        }
        return live.Layout(("height", 36 + 32 * Math.Max(1, bars.Count)), ("barmode", "stack"), ("margin", new { l = 8, r = 8, t = 4, b = 30 }),
            ("xaxis", new { range = (int[])[0, 100], ticksuffix = Num.UnitSpace + "%", showline = false, ticks = "" }),
            ("yaxis", new { type = "category", autorange = "reversed", dtick = 1, showgrid = false, tickfont = new { color = "role:ink" } })).ToJson();
    }

    private static DataTable Table(IReadOnlyList<BarPart> parts, IReadOnlyList<Bar> bars, string massUnit, Figures figures)
    {
        var words = figures.Language.Words.Chart;
        var weighed = bars.Any(bar => bar.MassGrams is not null);
        return new DataTable(words.MadeOf,
            [Column.Words(words.Component), .. weighed ? (Column[])[Column.Numbers(words.Mass, massUnit)] : [], .. parts.Select(part => Column.Numbers(part.Name, "%"))],
            [.. bars.Select(bar => new Row([bar.Name, .. weighed ? (Cell[])[figures.Mass(bar.MassGrams)] : [], .. bar.Shares.Select(share => (Cell)figures.Share(share).WithoutUnit())])
                { Kind = bar.IsTotal ? RowKind.Total : RowKind.Line })]) { LeastRem = 38 };
    }

    private static double Share(Bar bar, int at) => at < bar.Shares.Count ? bar.Shares[at] ?? 0 : Unknown(bar);

    // Shares that were rounded may lack half a per cent; where a share is not known, what is missing is a gap however small.
    private static double Unknown(Bar bar) =>
        1 - bar.Shares.Sum(share => share ?? 0) is var rest && rest > (bar.Shares.Any(share => share is null) ? 0.0005 : 0.005) ? rest : 0;

    private static string Number(double share, Figures figures) => share >= LeastShareWithNumber ? figures.Number(share * 100, 0).Text : "";

    private static string Class(MadeOf kind) => "p-" + Word(kind);

    private static string Role(MadeOf kind) => "role:" + Word(kind);

    private static string Word(MadeOf kind) => kind switch
    {
        MadeOf.Sugars2 => "sugars-2",
        MadeOf.Sugars3 => "sugars-3",
        MadeOf.Fat2 => "fat-2",
        MadeOf.Fat3 => "fat-3",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
