using Tamis.Desserts;
using Tamis.Losses;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The shares of a raw component beside the windows of its family: what is inside, what is not, and what one would see.</summary>
    public static Html Windows(Dessert dessert, string trial, string component)
    {
        var made = ComponentOf(dessert, trial, component);
        var windows = WindowsOf(dessert, trial, component);
        if (windows.Count == 0) return Notes.Small(Html.Of($"No windows are known for the family of {component}: name a family in components.csv, such as “tart shell, lined”."));
        return new DataTable($"Shares of the raw {component} of {trial}",
            [Column.Words("Share of the raw mixture"), Column.Numbers(trial, "%"), Column.Words("window"), Column.Words("what you would see")],
            [.. windows.Select(window => (window, percent: window.PercentOf(made))).Select(each => new Row(
                Names.Same(each.window.Part, "water") ? "water, of all lines" : each.window.Part,
                each.percent is { } known ? ((Cell)Figures.Number(known, 1)).Tracked($"{trial}, {component}, {each.window.Part}, % raw") : Figures.NotKnown,
                each.percent is { } at ? Marks.Gauge(at, each.window.Percent) : "",
                Seen(each.window, each.percent)))])
        { Notes = [Html.Of($"Windows: {windows[0].Source}.")] }.ToHtml();
    }

    /// <summary>How the shares of every trial of a component moved: a row a trial, one column a part, with those outside their windows named.</summary>
    public static Html WhatMoves(Dessert dessert, string component)
    {
        var first = FirstTrialWith(dessert, component);
        var windows = WindowsOf(dessert, first, component);
        if (windows.Count == 0) return RatiosAcross(dessert, component);
        return new DataTable($"Every {component} beside the windows of {first}",
            [Column.Words("Trial"), .. windows.Select(window => Column.Numbers(window.Part, "%")), Column.Words("outside the window")],
            [.. dessert.Batches.Where(batch => batch.Find(component) is { MassInGrams: > 0 }).Select(batch => (batch.Trial, Made: batch.Find(component)!))
                .Select(each => new Row([each.Trial, .. windows.Select(window => (Cell)Figures.Number(window.PercentOf(each.Made), 1)),
                    string.Join("; ", windows.Where(window => window.PercentOf(each.Made) is { } percent && !window.Percent.Contains(percent)).Select(window => Seen(window, window.PercentOf(each.Made)))) is { Length: > 0 } outside ? outside : "inside all"]))])
        { LeastRem = 34 }.ToHtml();
    }

    /// <summary>The map of a family: the share of one part across, of another upwards, the window as a field, every trial a dot.</summary>
    /// <remarks>The parts are the first two windows besides flour and water; without windows, the two heaviest lines besides the base.</remarks>
    public static Html Map(Dessert dessert, string component)
    {
        var first = FirstTrialWith(dessert, component);
        var windows = WindowsOf(dessert, first, component);
        string[] parts = windows.Where(window => !Names.Same(window.Part, "flour") && !Names.Same(window.Part, "water")).Select(window => window.Part).Take(2).ToArray() is { Length: 2 } two
            ? two : [.. HeaviestBeside(dessert, first, component)];
        if (parts.Length < 2) return Notes.Small(Html.Of($"A map needs two lines beside the base; the {component} has {(parts.Length == 0 ? "none" : "one")}."));
        var (across, up) = (parts[0], parts[1]);
        MapPoint[] points = [.. dessert.Batches.Where(batch => batch.Find(component) is { MassInGrams: > 0 })
            .Select(batch => new MapPoint(batch.Trial, PercentOf(batch.Find(component)!, across), PercentOf(batch.Find(component)!, up)) { IsChosen = Names.Same(batch.Trial, first) })];
        return RatioMap.Of($"{Capital(component)}: {across} against {up}", Axis(across), Axis(up), points,
            Html.Of($"Share of the raw mixture, %. Tinted: where a {UseOf(dessert, first, component)} {component} usually lies{(windows.Count > 0 ? $" ({windows[0].Source})" : "")}."),
            $"{Capital(up)} against {across} of {points.Length} formulas of the {component}, with the window of {first}.").ToHtml();

        FamilyWindow? WindowOf(string part) => windows.FirstOrDefault(window => Names.Same(window.Part, part) || Names.Same(window.NamesWith, part));
        MapAxis Axis(string part) => new($"{part}, % of the raw mixture", WindowOf(part)?.Percent);
        double PercentOf(ComponentBatch made, string part) => (WindowOf(part)?.PercentOf(made) ?? made.LineShare(part) * 100);
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

    private static string Seen(FamilyWindow window, double? percent) => percent switch
    {
        null => "not known: a line has no food behind it",
        { } low when low < window.Percent.Low => $"{window.Part} too little: {window.TooLittle}",
        { } high when high > window.Percent.High => $"{window.Part} too much: {window.TooMuch}",
        _ => $"inside {Figures.Between(window.Percent, Figures.Round(window.Percent.High, 0) == window.Percent.High ? 0 : 1, "")}",
    };

    private static IReadOnlyList<FamilyWindow> WindowsOf(Dessert dessert, string trial, string component) =>
        dessert.Components.Of(component, dessert.LineOf(trial)) is { Family: { } family } note
            ? FamilyWindow.For(KitData.Windows, family, note.Use) : [];

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
