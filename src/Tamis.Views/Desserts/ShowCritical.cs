using Tamis.Desserts;
using Tamis.Physics;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>Where time and temperature decide safety: the step, the limit, the record to keep, and what was recorded against it.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="plan">A plan of work whose times stand beside the steps; null without.</param>
    public static Html CriticalSteps(Dessert dessert, string trial, PlanOfWork? plan = null)
    {
        var steps = CriticalStep.Of(dessert, trial);
        var deferral = Notes.Caution(Html.Of($"{CoolingRule.Deferral}"));
        if (steps.Count == 0) return deferral + Notes.Paragraph(Html.Of($"No step of {trial} is marked: no step in steps.csv writes a temperature that a rule of the kit marks. That is no statement of safety."));
        var judged = steps.Select(step => (step, readings: CriticalLog.Of(dessert, trial, step))).Select(each => (each.step, each.readings, outcome: each.step.Judge(each.readings))).ToArray();
        var outside = judged.Where(each => each.outcome == CriticalOutcome.Outside).ToArray();
        var open = judged.Count(each => each.outcome is CriticalOutcome.NotRecorded or CriticalOutcome.TooLittle);
        return deferral
            + Html.Join(outside.Select(each => Notes.LookAt(Html.Of($"{Name(each.step)}, {each.step.Kind}: what was recorded is outside {Typeset.Text(each.step.Limit)}."))))
            + Notes.Paragraph(Html.Of($"{Counted(steps.Count, "step")} where time and temperature decide; {(open == 0 ? "all are recorded" : $"{open} without a record that settles them")}. Records go into {CriticalLog.File} of the dessert folder, a row a reading."))
            + new DataTable("Where time and temperature decide safety",
                [Column.Words("Step"), .. plan?.Answer.Schedule is null ? (Column[])[] : [Column.Words("planned")], Column.Words("kind"), Column.Words("limit"), Column.Words("record to keep"), Column.Words("recorded")],
                [.. judged.Select(each => new Row([Name(each.step), .. plan?.Answer.Schedule is null ? (Cell[])[] : [Planned(plan, each.step)], each.step.Kind,
                    ((Cell)Typeset.Text(each.step.Limit)) with { From = Typeset.Text(each.step.Source.ToString()) }, $"{each.step.What}: {each.step.Record}", Recorded(each.readings, each.outcome)])
                { Kind = each.outcome == CriticalOutcome.Outside ? RowKind.Chosen : RowKind.Line })])
            { IsWide = true, IsLong = true, LeastRem = 46 }.ToHtml()
            + (steps.Any(step => step.Kind == CriticalStep.Chill) ? Notes.Folded("Cooling rules that the kit knows", Rules()) : Html.Empty);
    }

    private static Html Rules() => Notes.List(CoolingRule.All.Where(rule => rule.ToCelsius < rule.FromCelsius).Select(rule =>
        Html.Of($"<b>{rule.Rule}</b>, {rule.Stage}: {Figures.Celsius(rule.FromCelsius).Text} to {Figures.Celsius(rule.ToCelsius).Text} in {KitchenTime.InWords(rule.MostHours * 60)} at most{(rule.Unless.Length > 0 ? $"; {rule.Unless}" : "")} <small>({rule.Source})</small>")));

    private static string Name(CriticalStep step) => step.Step is { } own ? $"{step.Component} {own.Step}" : $"{step.Component}, kept";

    private static string Planned(PlanOfWork plan, CriticalStep step)
    {
        var times = plan.Answer.Schedule!.Tasks.Where(task => plan.StepOf(task).Step == step.Step).ToArray();
        return times.Length == 0 ? "" : string.Join("; ", times.Select(task => $"{Brief(plan.At(task.StartMinutes))} to {Brief(plan.At(task.EndMinutes))}"));
    }

    private static Html Recorded(IReadOnlyList<Measurement> readings, CriticalOutcome outcome)
    {
        var words = outcome switch { CriticalOutcome.Within => "within the limit", CriticalOutcome.Outside => "outside the limit", CriticalOutcome.TooLittle => "too little to tell", _ => "nothing yet" };
        var values = readings.Count == 0 ? "" : readings.Count == 1 ? $" ({Figures.OneDecimal(readings[0].Value, "°C").Text})" : $" ({readings.Count} readings, {Figures.OneDecimal(readings.Min(reading => reading.Value)).Text} to {Figures.OneDecimal(readings.Max(reading => reading.Value), "°C").Text})";
        return outcome == CriticalOutcome.Outside ? Html.Of($"<b>{words}</b>{values}") : Html.Of($"{words}{values}");
    }
}
