using Tamis.Physics;

namespace Tamis.Views;

/// <summary>Temperature against time: a piece that freezes or thaws, a log against a target of lethality.</summary>
public static class HeatCurves
{
    private const double HoursFromMinutes = 150;

    /// <summary>The warmest and the coldest place and the mean of a piece against time.</summary>
    /// <param name="title">What is drawn.</param>
    /// <param name="history">What a march found.</param>
    /// <param name="caption">What is drawn and how sure.</param>
    /// <param name="limits">Temperatures to reach or not to pass.</param>
    /// <param name="events">Moments, in minutes: out of the freezer, into the refrigerator.</param>
    /// <param name="measured">What a probe read, minutes and °C, beside the curves.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Course(string title, TemperatureHistory history, Html caption, IReadOnlyList<CurveLimit>? limits = null, IReadOnlyList<CurveEvent>? events = null, IReadOnlyList<(double Minutes, double Celsius)>? measured = null, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics;
        var (axis, per) = TimeAxis(history.Readings[^1].Minutes, words.Heat);
        CurvePanel panel = new(title, axis, new(words.Heat.Temperature) { Decimals = 0 },
        [
            new(words.Heat.Warmest, [.. history.Readings.Select(reading => (reading.Minutes / per, reading.WarmestCelsius))]),
            new(words.Heat.Mean, [.. history.Readings.Select(reading => (reading.Minutes / per, reading.MeanCelsius))]),
            new(words.Heat.Coldest, [.. history.Readings.Select(reading => (reading.Minutes / per, reading.ColdestCelsius))]),
            .. measured is { Count: > 0 } ? (Curve[])[new(words.Measured, [.. measured.Select(each => (each.Minutes / per, each.Celsius))]) { IsDots = true, IsChosen = true }] : [],
        ])
        { Limits = limits ?? [], Events = [.. (events ?? []).Select(each => each with { X = each.X / per })] };
        return CurveChart.Of([panel], caption, numbers);
    }

    /// <summary>A cooking log: temperature against time, and the effect so far against the chosen target.</summary>
    /// <param name="log">The log, recorded or planned.</param>
    /// <param name="reference">What it is held against.</param>
    /// <param name="caption">What is drawn; the caution is said behind it.</param>
    /// <param name="bands">Ranges of temperature that are not to be dwelt in.</param>
    /// <param name="figures">The numbers and the language; English if null.</param>
    public static ChartView Lethality(TemperatureLog log, LethalityReference reference, Html caption = default, IReadOnlyList<CurveBand>? bands = null, Figures? figures = null)
    {
        var numbers = figures ?? Figures.English;
        var words = numbers.Language.Words.Physics.Heat;
        var course = Physics.Lethality.Course(Finely(log), reference);
        var (axis, per) = TimeAxis(course[^1].Minutes, words);
        var (at, target, all) = (numbers.Celsius(reference.Temperature.Value).Text, reference.Target.Value, course[^1].EffectMinutes);
        var met = course.FirstOrDefault(each => each.EffectMinutes >= target);
        var sentence = all >= target
            ? words.Met.Fill(("when", KitchenTime.After(met.Minutes, numbers)), ("effect", Effect(all)), ("reference", at))
            : words.NotMet.Fill(("effect", Effect(all)), ("reference", at), ("target", Effect(target)));
        return CurveChart.Of(
        [
            new(words.LogTitle, axis, new(words.Temperature) { Decimals = 0 }, [new(words.Log, [.. course.Select(each => (each.Minutes / per, each.Celsius))])])
            { Bands = bands ?? [], Limits = [new(at, reference.Temperature.Value)] },
            new(words.EffectTitle.Fill(("reference", at)).ToPlainText(), axis, new(words.Effect), [new(words.SoFar, [.. course.Select(each => (each.Minutes / per, each.EffectMinutes))])])
            { Limits = [new(words.Target.Fill(("minutes", Effect(target).ToPlainText())).ToPlainText(), target)] },
        ], Html.Join([.. ((Html[])[caption, sentence, Html.Text(words.Deferral)]).Where(part => !part.IsEmpty)], " "), numbers);

        Html Effect(double minutes) => numbers.Number(minutes, minutes >= 10 || minutes == Math.Round(minutes) ? 0 : minutes < 0.1 ? 2 : 1, numbers.Language.Words.Minutes).InText;
    }

    // The effect bends between readings that lie far apart; the curve follows it in steps, at most a hundredth of the log long.
    private static TemperatureLog Finely(TemperatureLog log)
    {
        var longest = (log.Readings[^1].Minutes - log.Readings[0].Minutes) / 100;
        List<(double, double)> all = [log.Readings[0]];
        for (var i = 1; i < log.Readings.Count; i++)
        {
            var (from, to) = (log.Readings[i - 1], log.Readings[i]);
            var steps = Math.Max(1, (int)Math.Ceiling((to.Minutes - from.Minutes) / longest));
            for (var step = 1; step < steps; step++) all.Add((from.Minutes + (to.Minutes - from.Minutes) * step / steps, from.Celsius + (to.Celsius - from.Celsius) * step / steps));
            all.Add(to);
        }
        return TemperatureLog.Of(all, log.Source);
    }

    private static (CurveAxis Axis, double MinutesPerUnit) TimeAxis(double minutes, HeatWords words) =>
        minutes > HoursFromMinutes ? (new(words.HoursAxis), 60) : (new(words.MinutesAxis) { Decimals = 0 }, 1);
}
