using System.CommandLine;
using Tamis.Desserts;
using Tamis.Production;
using Tamis.Views;

namespace Tamis.App.Plan;

/// <summary>The command <c>plan</c>: the plan of work of an order on the console, with the search shown while it runs.</summary>
internal static class PlanCommand
{
    /// <summary>The command with its argument.</summary>
    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "The dessert folder; its store is the folder store in it or beside it." };
        var trial = new Option<string?>("--trial") { Description = "The trial; the ordered one where it is left out." };
        var pieces = new Option<int?>("--pieces") { Description = "How many; as many as are ordered where it is left out." };
        var command = new Command("plan", "Plan my work: who does what, when, on what, for the order of a dessert folder.") { folder, trial, pieces };
        command.SetDeed(arguments => Task.FromResult(Run(arguments.GetRequiredValue(folder), arguments.GetValue(trial), arguments.GetValue(pieces), Console.Out)));
        return command;
    }

    /// <summary>Plans; 0 with a plan, 1 where there is none or a cell must be mended.</summary>
    public static int Run(string folder, string? trial, int? pieces, TextWriter writer) => CommandEnding.Guarded(writer, () =>
    {
        var dessert = Dessert.Open(folder);
        if (pieces is < 1) throw new UserProblem("A number of pieces is 1 or more.");
        // An order is bought before it is made: with a bad price there is no plan of it.
        _ = dessert.Prices;
        var plan = PlanOfWork.Of(dessert, trial ?? dessert.Candidate, pieces, progress: new Said(writer));
        writer.WriteLine(Show.PlanOfWork(plan).ToPlainText());
        return plan.Answer.Schedule is null ? 1 : 0;
    }, "There is no plan.");

    private sealed class Said(TextWriter writer) : IProgress<ScheduleProgress>
    {
        public void Report(ScheduleProgress value) => writer.WriteLine(FormattableString.Invariant($"plan {value.Plans} found; at most {Math.Abs(value.ObjectiveMinutes - value.BoundMinutes)} min from the best there can be"));
    }
}
