using System.Globalization;
using Tamis.Desserts;
using Tamis.Physics;
using Tamis.Production;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>The plan of work: when to start, a picture by person and thing, the tasks, what is critical; or why there is no plan and what would make one.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pieces">How many; the ordered ones where null.</param>
    /// <param name="aim">What the plan is to be good at.</param>
    /// <param name="montageSheet">A montage sheet of other sizes in the dessert folder.</param>
    public static Html PlanOfWork(Dessert dessert, string trial, int? pieces = null, PlanAim aim = PlanAim.LatestStart, string? montageSheet = null) =>
        PlanOfWork(Desserts.PlanOfWork.Of(dessert, trial, pieces, aim, montageSheet: montageSheet));

    /// <summary>A plan of work that was made before.</summary>
    public static Html PlanOfWork(PlanOfWork plan)
    {
        var what = $"{Counted(plan.Amounts.Amounts.Pieces, "piece")} of {plan.Trial}{(plan.Due is { } due ? $" for {Clock(due)}" : "")}";
        var assumed = Notes.Folded("What was taken for granted", Notes.List(plan.Assumed.Select(each => Html.Of($"{Capital(Typeset.Text(each))}."))));
        if (plan.Answer.Schedule is not { } schedule) return NoPlan(plan, what) + assumed;
        var numbers = plan.Problem.Tasks.Select(task => schedule[task.Name]).OrderBy(task => task.StartMinutes).ThenBy(task => task.EndMinutes).Select((task, i) => (task.Task.Name, i + 1)).ToDictionary();
        var proven = schedule.IsProven ? plan.Problem.Aim == PlanAim.LatestStart ? "no plan can begin later" : "no plan can be done earlier" : $"a plan that is up to {KitchenTime.InWords(schedule.GapMinutes)} better may exist: the search ended before that was settled";
        return Notes.Paragraph(Html.Of($"{what}: begin <strong>{Clock(plan.At(schedule.StartMinutes))}</strong>, done {Clock(plan.At(schedule.EndMinutes))}; {proven}. {Critical(schedule)}"))
            + WorkChart.Of(schedule, plan.Start, numbers) + Tasks(plan, schedule, numbers) + assumed;
    }

    /// <summary>What breaks in a plan when a thing is down, and what could take its place.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="equipment">The thing, as in <c>equipment.csv</c>.</param>
    public static Html WhatIfDown(PlanOfWork plan, string equipment)
    {
        var down = plan.Without(equipment);
        if (down.Broken.Count == 0) return Notes.Paragraph(Html.Of($"Without the {down.Equipment.Name} nothing of this plan breaks."));
        var behind = down.Behind.Count == 0 ? Html.Of($"Nothing else waits for that.") : Html.Of($"{Counted(down.Behind.Count, "step")} wait{(down.Behind.Count == 1 ? "s" : "")} behind: {string.Join(", ", down.Behind.Select(step => $"{step.Step.Component} {step.Step.Step}"))}.");
        return Notes.LookAt(Html.Of($"Without the {down.Equipment.Name} {string.Join(", ", down.Broken.Select(step => $"{step.Step.Component} {step.Step.Step}"))} cannot be done as written. {behind}"))
            + Notes.List(down.Broken.Select(step => Html.Of($"{step.Step.Component} {step.Step.Step}{(step.Step.TemperatureCelsius is { } celsius ? $", {Figures.Celsius(celsius).Text}" : "")}: {(down.CouldTake(step) is { Count: > 0 } others ? $"could go into the {string.Join(" or the ", others.Select(other => other.Name))}; its time there is another one" : $"nothing else of its kind reaches that{(down.SameKind.Count > 0 ? $" ({string.Join(", ", down.SameKind.Select(other => $"{other.Name}: {Figures.Celsius(other.Celsius.Low).Text} at the coldest"))})" : "")}: freeze the day before or elsewhere, or move the order")}.")));
    }

    /// <summary>The plan while a thing is down: on what its steps go instead, for how long, and whether there is time; or why there is no plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="equipment">The thing, as in <c>equipment.csv</c>.</param>
    public static Html PlanWithout(PlanOfWork plan, string equipment)
    {
        var again = plan.Replanned(equipment);
        var name = again.Down.Equipment.Name;
        if (again.Down.Broken.Count == 0) return Notes.Paragraph(Html.Of($"Without the {name} the plan stays as it is."));
        if (again.Plan is not { } other)
            return Notes.LookAt(Html.Of($"<strong>Without the {name} it cannot be done: the kitchen has nothing else of its kind for {string.Join(", ", again.Nowhere.Select(StepName))}.</strong>"))
                + Notes.Paragraph(Html.Of($"The least that would do: one {again.Down.Equipment.Kind} that {Asked(again.Nowhere)}, lent for that time, with a row in equipment.csv."));
        return (again.StandIns.Any(each => each.IsOtherTemperature) ? Notes.LookAt(Html.Of($"This plan stands only if somebody who may decide it allows another temperature. Every limit of the core stays as it is, and is measured.")) : Html.Empty)
            + Notes.List(again.StandIns.Select(each => Html.Of($"{StepName(each.Written)} in the {each.Instead.Equipment ?? ""}{(each.IsOtherTemperature ? $" at {Figures.Celsius(each.Instead.TemperatureCelsius).Text} and not at {Figures.Celsius(each.Written.TemperatureCelsius).Text}" : "")}: {(each.ModelMinutes is { } model ? $"frozen to the core after {KitchenTime.InWords(Math.Ceiling(model))} by the model of the piece, in the poorest air; the longer of that and the written time is planned" : each.TimesAsLong is { } times ? $"up to {Figures.Number(times, 1).Text} times as long, by how the air takes heat and how far it is below the freezing point" : "how long it takes there is not known, so the written time is planned")}.")))
            + PlanOfWork(other);
    }

    private static string StepName(Formulas.MethodStep step) => $"{step.Component} {step.Step}";

    private static string Asked(IReadOnlyList<Formulas.MethodStep> steps) =>
        steps.Select(step => step.TemperatureCelsius).OfType<double>().Distinct().Order().ToArray() is { Length: > 0 } heat ? $"reaches {string.Join(" and ", heat.Select(celsius => Figures.Celsius(celsius).Text))}" : "does the same work";

    private static Html Critical(WorkSchedule schedule)
    {
        PlacedTask[] critical = [.. schedule.Tasks.Where(task => task.IsCritical)];
        return critical.Length == 0 ? Html.Of($"Every task has some slack: the least is {KitchenTime.InWords(schedule.Tasks.Min(task => task.SlackMinutes))}.")
            : Html.Of($"{Counted(critical.Length, "task")} of {schedule.Tasks.Count} {(critical.Length == 1 ? "is" : "are")} critical: {string.Join(", ", critical.Select(task => task.Task.Name))}.");
    }

    private static Html Tasks(PlanOfWork plan, WorkSchedule schedule, IReadOnlyDictionary<string, int> numbers)
    {
        var cautions = WeighingPages.CautionsOf(plan.Dessert, plan.Trial, inFull: false);
        return Notes.Paragraph(Html.Of($"<small>{CautionRule.Deferral}</small>")) + TaskTable(plan, schedule, numbers, cautions);
    }

    private static Html TaskTable(PlanOfWork plan, WorkSchedule schedule, IReadOnlyDictionary<string, int> numbers, ILookup<(string, int), string> cautions) => new DataTable("The tasks in the order of their starts",
        [Column.Words("Task"), Column.Words("from"), Column.Words("to"), Column.Words("who and on what"), Column.Words("what"), Column.Words("slack")],
        [.. schedule.Tasks.OrderBy(task => numbers[task.Task.Name]).Select(task => new Row([
            Html.Of($"{numbers[task.Task.Name]} <b>{task.Task.Name}</b>"),
            Html.Of($"<span class=\"n\">{Brief(plan.At(task.StartMinutes))}</span>"), Html.Of($"<span class=\"n\">{Brief(plan.At(task.EndMinutes))}</span>"),
            task.On.Count == 0 ? "waits" : string.Join(", ", task.On),
            ToDo(plan.StepOf(task), cautions),
            task.IsCritical ? Html.Of($"<b>critical</b>") : Html.Text(KitchenTime.InWords(task.SlackMinutes))])
        { Kind = task.IsCritical ? RowKind.Chosen : RowKind.Line })])
    { IsWide = true, IsLong = true, LeastRem = 48, Caption = Html.Of($"The tasks; slack is how much later a task can start with all still in time, hands and order kept") }.ToHtml();

    // A hazard that the step's own caution names is not said twice.
    private static Html ToDo(WorkStep task, ILookup<(string, int), string> cautions)
    {
        var step = task.Step;
        var hazards = cautions[(Names.Key(step.Component), step.Step)].Where(hazard => step.Caution?.Contains(hazard, StringComparison.OrdinalIgnoreCase) != true);
        string[] careful = [.. hazards, .. step.Caution is { Length: > 0 } own ? [own] : Array.Empty<string>()];
        return Html.Text(Typeset.Text(step.Do))
            + (careful.Length > 0 ? Html.Of($" <b>Caution:</b> {Typeset.Text(string.Join("; ", careful))}.") : Html.Empty)
            + (task.Remark.Length > 0 ? Html.Of($" <small>({Typeset.Text(task.Remark)})</small>") : Html.Empty);
    }

    private static Html NoPlan(PlanOfWork plan, string what)
    {
        var verdict = plan.Answer.IsImpossible ? "cannot be done with these people, hours and things" : "no plan was found before the search ended, and it is not settled that there is none";
        var ways = plan.Answer.WaysOut;
        return Notes.LookAt(Html.Of($"<strong>{what}: {verdict}.</strong>"))
            + (ways.Count == 0 ? Notes.Paragraph(Html.Of($"No single thing that gives way would do: not the hour, not the shifts, not the times, not one more of anything. More than one has to."))
                : Notes.Paragraph(Html.Of($"It becomes possible with any one of these, the smallest first:")) + Notes.List(ways.Select(way => Html.Of($"{WayInWords(plan, way)}{(way.IsSmallest ? "" : " (less may do: the search ended before that was settled)")}."))));
    }

    private static Html WayInWords(PlanOfWork plan, WayOut way) => Html.Text(Capital(string.Join("; ", way.Gives.Select(each => each switch
    {
        DoneLater late => $"{KitchenTime.InWords(late.Minutes)} later: done {Clock(plan.At(late.EndMinutes))}",
        ComeEarlier early => $"{early.Person} comes {KitchenTime.InWords(early.Minutes)} before the shift of {Clock(plan.At(early.ShiftMinutes))}",
        StayLonger longer => $"{longer.Person} stays {KitchenTime.InWords(longer.Minutes)} after the shift that ends {Clock(plan.At(longer.ShiftMinutes))}",
        Faster faster => $"{faster.Task} in {KitchenTime.InWords(faster.PlannedMinutes - faster.Minutes)} and not {KitchenTime.InWords(faster.PlannedMinutes)}, which is within what is written",
        KeptLonger kept => $"{kept.Before} kept {KitchenTime.InWords(kept.Minutes)} longer before {kept.After} than is written, if somebody who may decide that allows it",
        OneMore more => $"one more {more.Resource}, or twice its room",
        _ => throw new InvalidOperationException($"A page cannot say {each} yet."),
    }))));

    private static string Brief(DateTime time) => time.ToString("ddd HH:mm", CultureInfo.InvariantCulture);

    private static string Clock(DateTime time) => time.ToString("ddd d MMM HH:mm", CultureInfo.InvariantCulture);
}
