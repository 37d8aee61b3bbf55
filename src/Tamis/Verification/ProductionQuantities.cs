using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Verification;

/// <summary>Plans of work, as check files ask for them.</summary>
public static class ProductionQuantities
{
    /// <summary>The quantities by name.</summary>
    public static IReadOnlyDictionary<string, Func<CheckInputs, CheckValue>> All { get; } = new Dictionary<string, Func<CheckInputs, CheckValue>>(StringComparer.Ordinal)
    {
        ["job_shop_shortest"] = inputs => CheckValue.Of(Proven(JobShop(SheetFile.Read(inputs.DataFile("instance")))).ObjectiveMinutes),
        ["job_shop_tasks"] = inputs => CheckValue.Of(JobShop(SheetFile.Read(inputs.DataFile("instance"))).Tasks.Count),
    };

    /// <summary>A job shop from a sheet with the columns job, step, machine and minutes: each job's steps in order, one task at a time on a machine.</summary>
    /// <exception cref="TableException">A cell cannot be read; all are named.</exception>
    public static WorkProblem JobShop(Sheet sheet)
    {
        List<CellProblem> problems = [];
        if (!sheet.Require(["job", "step", "machine", "minutes"], problems)) throw new TableException(problems);
        (string Job, int Step, string Machine, int Minutes)[] rows = [.. sheet.Rows.Select(row => new RowReader(row, problems)).Select(reader =>
            (reader.Required("job"), reader.Whole("step", 1) ?? 0, reader.Required("machine"), reader.Whole("minutes", 0) ?? 0))];
        if (problems.Count > 0) throw new TableException(problems);
        return new()
        {
            Tasks = [.. rows.Select(row => new WorkTask
            {
                Name = Name(row.Job, row.Step), Minutes = row.Minutes, Uses = [new([row.Machine])],
                After = rows.Any(other => other.Job == row.Job && other.Step == row.Step - 1) ? [new(Name(row.Job, row.Step - 1))] : [],
            })],
            Resources = [.. rows.Select(row => row.Machine).Distinct().Select(machine => new WorkResource(machine))],
            HorizonMinutes = rows.Sum(row => row.Minutes),
        };

        static string Name(string job, int step) => FormattableString.Invariant($"job {job}, step {step}");
    }

    private static WorkSchedule Proven(WorkProblem problem) => Scheduler.Solve(problem).Schedule is { IsProven: true } schedule && !schedule.Breaches().Any()
        ? schedule : throw new InvalidOperationException("no plan was proven to be the shortest");
}
