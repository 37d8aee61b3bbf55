using Tamis.Physics;

namespace Tamis.Views;

/// <summary>Water moving between the layers of a piece over days: each layer's water activity, its limit, the way through the stack, and what a film buys.</summary>
public static class WaterMoving
{
    /// <summary>Two pictures: the layers' mean water activities over days with the limits, and the water activity through the stack at a few instants.</summary>
    /// <param name="course">How the water moved.</param>
    /// <param name="caption">What is drawn; what the isotherms are worth is said behind it.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Of(WaterCourse course, Html caption = default, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics.Water;
        CurvePanel days = new(words.OverDays, new(words.DaysAxis), new(words.WaterActivity) { Decimals = 2 },
            [.. course.Layers.Select(layer => new Curve(layer.Layer.Name, [.. course.Days.Zip(layer.MeanWaterActivity)]))])
        {
            Bands = [.. course.Stack.Layers.Where(layer => layer.Limit is not null).GroupBy(layer => (layer.Limit!.First, layer.Limit.Last, layer.Limit.Side))
                .Select(group => new CurveBand(LimitName(string.Join(", ", group.Select(layer => layer.Name)), group.Key.Side, words),
                    Interval.Between(Math.Min(group.Key.First, group.Key.Last), Math.Max(group.Key.First, group.Key.Last)), IsDanger: true))],
            Description = string.Join(" ", course.Layers.Select(layer => $"{layer.Layer.Name}: {numbers.WaterActivity(layer.MeanWaterActivity[0]).Text} {numbers.Language.Words.To} {numbers.WaterActivity(layer.MeanWaterActivity[^1]).Text}.")),
        };
        CurvePanel through = new(words.ThroughStack, new(words.HeightAxis), new(words.WaterActivity) { Decimals = 2 },
            [.. course.Profiles.Select(profile => new Curve(KitchenTime.After(profile.Days * 1440, numbers), Steps(course.Stack, profile)))])
        {
            Events = [.. Floors(course.Stack)],
            Below = words.FromBelow.Fill(("layers", string.Join(", ", course.Stack.Layers.Select((layer, at) => $"{numbers.Count(at + 1).Text}{Num.UnitSpace}{layer.Name}")))),
        };
        var said = Illustrative(course.Stack, words);
        return CurveChart.Of([days, through], Html.Join([.. ((Html[])[caption, said]).Where(part => !part.IsEmpty)], " "), numbers);
    }

    /// <summary>A sentence a layer: the day on which it passes its limit, or that it keeps; and where all come to in the end.</summary>
    public static Html Sentences(IReadOnlyList<KeepingDays> keeping, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics.Water;
        var lines = keeping.Select(each => each.IsPassedAtStart
            ? words.PastAtStart.Fill(("layer", Show.Capital(each.Layer)), ("activity", numbers.WaterActivity(each.Start.WaterActivity).InText), ("limit", numbers.WaterActivity(each.Limit.Figure.Value).InText),
                ("least", numbers.Number(each.LimitWaterPercent, 1, "%").InText), ("water", numbers.Number(100 * each.Start.WaterGramsPerGramDry / (1 + each.Start.WaterGramsPerGramDry), 1, "%").InText))
            : each.IsKept
            ? words.Keeps.Fill(("layer", Show.Capital(each.Layer)), ("limit", numbers.WaterActivity(each.Limit.Figure.Value).InText), ("days", Days(each.LookedDays, numbers)))
            : words.PassesOn.Fill(("layer", Show.Capital(each.Layer)), ("limit", numbers.WaterActivity(each.Limit.Figure.Value).InText), ("days", Html.Of($"{Days(each.Days.Value, numbers)} <span class=\"sure\">({Range(each, numbers)})</span>"))));
        Html end = keeping.Count > 0 ? words.InTheEnd.Fill(("activity", numbers.WaterActivity(keeping[0].EquilibriumWaterActivity).InText)) : default;
        return Notes.Paragraph(Html.Join([.. lines, .. end.IsEmpty ? (Html[])[] : [end]], " "));
    }

    /// <summary>The table of thicknesses and days.</summary>
    /// <param name="film">What the film is of.</param>
    /// <param name="rows">Each thickness with how long the layer keeps.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static Html ByThickness(string film, IReadOnlyList<(double ThicknessMillimetres, KeepingDays Keeping)> rows, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics.Water;
        if (rows.Count == 0) return Html.Empty;
        return new DataTable(words.FilmBuys.Fill(("layer", rows[0].Keeping.Layer)).ToPlainText(),
            [Column.Words(words.Film), Column.Words(words.KeepsFor), Column.Words(words.MayBe)],
            [.. rows.Select(row => new Row(
                row.ThicknessMillimetres == 0 ? words.NoFilm : $"{film}, {(numbers.Part(row.ThicknessMillimetres) with { Unit = "mm" }).Text}",
                ((Cell)Html.Text(row.Keeping.IsPassedAtStart ? words.FromTheStart : row.Keeping.IsKept ? $"{words.MoreThan} {Days(row.Keeping.LookedDays, numbers)}" : Days(row.Keeping.Days.Value, numbers))).Tracked($"{row.Keeping.Layer}, {film} {numbers.Number(row.ThicknessMillimetres, 2).Text} mm, days"),
                row.Keeping.IsPassedAtStart ? "" : Range(row.Keeping, numbers)))])
        { Fits = true, Caption = words.FilmBuys.Fill(("layer", rows[0].Keeping.Layer)) }.ToHtml();
    }

    private static string LimitName(string layers, LimitSide side, WaterWords words) =>
        (side == LimitSide.SoftAbove ? words.SoftAbove : words.DryBelow).Fill(("layer", layers)).ToPlainText();

    // Half a layer keeps its own curve: where a film lies between two, the activity jumps, and the curve is parted there.
    private static IReadOnlyList<(double X, double Y)> Steps(WaterStack stack, WaterProfile profile)
    {
        var cells = profile.HeightMillimetres.Count / stack.Layers.Count;
        List<(double, double)> points = [];
        for (var at = 0; at < profile.HeightMillimetres.Count; at++)
        {
            if (at > 0 && at % cells == 0) points.Add((profile.HeightMillimetres[at], double.NaN));
            points.Add((profile.HeightMillimetres[at], profile.WaterActivity[at]));
        }
        return points;
    }

    private static IEnumerable<CurveEvent> Floors(WaterStack stack)
    {
        double floor = 0;
        // Numbers, not names: some layers are thinner than a word.
        foreach (var (at, layer) in stack.Layers.Index())
        {
            yield return new((at + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), floor);
            floor += layer.ThicknessMillimetres;
        }
    }

    private static Html Illustrative(WaterStack stack, WaterWords words) =>
        stack.Layers.Where(layer => layer.Isotherm.IsIllustrative).Select(layer => layer.Name).ToArray() is { Length: > 0 } layers
            ? words.Illustrative.Fill(("layers", string.Join(", ", layers))) : Html.Empty;

    private static string Days(double days, Figures figures) => KitchenTime.Roughly(days * 1440, figures);

    private static string Range(KeepingDays keeping, Figures figures)
    {
        var words = figures.Language.Words;
        var (early, late) = keeping.Between;
        return (early, late) switch
        {
            ({ } from, { } until) => $"{Days(from, figures)} {words.To} {Days(until, figures)}",
            ({ } from, null) => $"{Days(from, figures)} {words.To} {words.Physics.Water.MoreThan} {Days(keeping.LookedDays, figures)}",
            _ => $"{words.Physics.Water.MoreThan} {Days(keeping.LookedDays, figures)}",
        };
    }
}
