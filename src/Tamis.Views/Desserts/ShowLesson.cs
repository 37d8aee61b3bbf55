using Tamis.Desserts;
using Tamis.Losses;
using Tamis.Physics;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The shares of a raw component beside the windows of its family: what is inside, what is not, and what one would see.</summary>
    public static Html Windows(Dessert dessert, string trial, string component)
    {
        var windows = WindowsOf(dessert, trial, component);
        var beside = Beside(dessert, trial, component, windows);
        if (windows.Count == 0) return Notes.Small(Html.Of($"No windows are known for the family of {component}: name a family in components.csv, such as “tart shell, lined”."));
        return new DataTable($"Shares of the raw {component} of {trial}",
            [Column.Words("Share of the raw mixture"), Column.Numbers(trial, "%"), Column.Words("window"), Column.Words("what you would see")],
            [.. beside.Select(line => new Row(
                Names.Same(line.Window.Figure, "water") ? "water, of all lines" : line.Window.Figure,
                line.Found.IsKnown ? ((Cell)Figures.Number(line.Found.Value, 1)).Tracked($"{trial}, {component}, {line.Window.Figure}, % raw") : Figures.NotKnown,
                line.Found.IsKnown ? Marks.Gauge(line.Found.Value, line.Window.Range) : "",
                Seen(line)))])
        { Notes = [Html.Of($"Windows: {windows[0].Source}.")] }.ToHtml();
    }

    /// <summary>How the shares of every trial of a component moved: a row a trial, one column a part, with those outside their windows named.</summary>
    public static Html WhatMoves(Dessert dessert, string component)
    {
        var first = FirstTrialWith(dessert, component);
        var windows = WindowsOf(dessert, first, component);
        if (windows.Count == 0) return RatiosAcross(dessert, component);
        return new DataTable($"Every {component} beside the windows of {first}",
            [Column.Words("Trial"), .. windows.Select(window => Column.Numbers(window.Figure, "%")), Column.Words("outside the window")],
            [.. TrialsWith(dessert, component).Select(trial => (Trial: trial, Beside: Beside(dessert, trial, component, windows)))
                .Select(each => new Row([each.Trial, .. each.Beside.Select(line => (Cell)Figures.Number(Known(line), 1)),
                    string.Join("; ", each.Beside.Where(line => line.OutsideBy > 0).Select(Seen)) is { Length: > 0 } outside ? outside : "inside all"]))])
        { LeastRem = 34 }.ToHtml();
    }

    /// <summary>The map of a family: the share of one part across, of another upwards, the window as a field, every trial a dot.</summary>
    /// <remarks>The parts are the first two windows besides flour and water; without windows, the two heaviest lines besides the base.</remarks>
    public static Html Map(Dessert dessert, string component)
    {
        var first = FirstTrialWith(dessert, component);
        var windows = WindowsOf(dessert, first, component);
        string[] parts = windows.Where(window => !Names.Same(window.Figure, "flour") && !Names.Same(window.Figure, "water")).Select(window => window.Figure).Take(2).ToArray() is { Length: 2 } two
            ? two : [.. HeaviestBeside(dessert, first, component)];
        if (parts.Length < 2) return Notes.Small(Html.Of($"A map needs two lines beside the base; the {component} has {(parts.Length == 0 ? "none" : "one")}."));
        var (across, up) = (parts[0], parts[1]);
        MapPoint[] points = [.. TrialsWith(dessert, component)
            .Select(trial => new MapPoint(trial, PercentOf(trial, across), PercentOf(trial, up)) { IsChosen = Names.Same(trial, first) })];
        return RatioMap.Of($"{Capital(component)}: {across} against {up}", Axis(across), Axis(up), points,
            Html.Of($"Share of the raw mixture, %. Tinted: where a {UseOf(dessert, first, component)} {component} usually lies{(windows.Count > 0 ? $" ({windows[0].Source})" : "")}."),
            $"{Capital(up)} against {across} of {points.Length} formulas of the {component}, with the window of {first}.").ToHtml();

        Window? WindowOf(string part) => windows.FirstOrDefault(window => Names.Same(window.Figure, part));
        MapAxis Axis(string part) => new($"{part}, % of the raw mixture", WindowOf(part)?.Range);
        double PercentOf(string trial, string part) => WindowOf(part) is { } window && Known(Beside(dessert, trial, component, [window])[0]) is { } percent
            ? percent : ComponentOf(dessert, trial, component).LineShare(part) * 100;
    }

    /// <summary>A ratio scaled to a mass: what to weigh so that a component weighs so much when raw.</summary>
    public static Html ScaledTo(Dessert dessert, string trial, string component, double massGrams)
    {
        var made = ComponentOf(dessert, trial, component);
        var scaled = made.Weighed.ScaledToTotal(massGrams);
        return new DataTable($"{component} of {trial}, {Figures.Mass(massGrams).Text} raw",
            [Column.Words("Line"), Column.Numbers("parts", "%"), Column.Numbers("to weigh", "g")],
            [.. made.Lines.Select(line => line.Name).Distinct(Names.Comparer).Select(line => new Row(line, Figures.Share(made.LineShare(line)).WithoutUnit(), Figures.Mass(scaled.MassGrams(line)).WithoutUnit())),
             new Row("all that goes in", Figures.Share(1).WithoutUnit(), Figures.Mass(massGrams).WithoutUnit()) { Kind = RowKind.Total }])
        { Fits = true }.ToHtml();
    }

    private static string Seen(CheckUpLine line) => line.Verdict switch
    {
        WindowVerdict.NotKnown => "not known: a line has no food behind it",
        WindowVerdict.TooLow => $"{line.Window.Figure} too little: {line.Seen}",
        WindowVerdict.TooHigh => $"{line.Window.Figure} too much: {line.Seen}",
        _ => $"inside {Figures.Between(line.Window.Range, Figures.Round(line.Window.Range.High, 0) == line.Window.Range.High ? 0 : 1, "")}",
    };

    private static double? Known(CheckUpLine line) => line.Found.IsKnown ? line.Found.Value : null;

    // The windows on the raw mixture; one about lines that no trial weighs in (salt in a lesson without) is left out.
    private static IReadOnlyList<Window> WindowsOf(Dessert dessert, string trial, string component)
    {
        var note = dessert.Components.Of(component, dessert.LineOf(trial));
        Window[] raw = [.. dessert.Windows.For(note?.Family, note?.Use).Windows.Where(window => window.On.Kind == BaseKind.RawMixture)];
        var all = TrialsWith(dessert, component).SelectMany(each => Beside(dessert, each, component, raw)).ToLookup(line => line.Window);
        return [.. raw.Where(window => all[window].Any(line => line.Found.Value != 0))];
    }

    private static IReadOnlyList<CheckUpLine> Beside(Dessert dessert, string trial, string component, IReadOnlyList<Window> windows)
    {
        var examined = dessert.Examine(trial, component);
        return [.. windows.Select(window => CheckUpLine.Of(window, examined))];
    }

    private static IEnumerable<string> TrialsWith(Dessert dessert, string component) =>
        dessert.Batches.Where(batch => batch.Find(component) is { MassInGrams: > 0 }).Select(batch => batch.Trial);

    private static IEnumerable<string> HeaviestBeside(Dessert dessert, string trial, string component)
    {
        var ratios = dessert.RatiosOf(trial, component);
        return ratios.Lines.Where(line => !ratios.Base.Contains(line.Name, Names.Comparer)).OrderByDescending(line => line.MassGrams).Take(2).Select(line => line.Name);
    }

    private static string UseOf(Dessert dessert, string trial, string component) => dessert.Components.Of(component, dessert.LineOf(trial))?.Use ?? "usual";

    private static ComponentBatch ComponentOf(Dessert dessert, string trial, string component) =>
        dessert.Trial(trial).Find(component) ?? throw new KeyNotFoundException($"{trial} has no component '{component}'; it has {string.Join(", ", dessert.Trial(trial).Components.Select(each => each.Name))}.");

    private static string FirstTrialWith(Dessert dessert, string component) =>
        dessert.Batches.First(batch => batch.Find(component) is { MassInGrams: > 0 }).Trial;
}
