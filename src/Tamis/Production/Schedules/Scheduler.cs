using Google.OrTools.Sat;

namespace Tamis.Production;

/// <summary>How far the search for a plan has come.</summary>
/// <param name="Plans">How many plans were found, each better than the one before.</param>
/// <param name="ObjectiveMinutes">The best so far.</param>
/// <param name="BoundMinutes">What no plan can better.</param>
public sealed record ScheduleProgress(int Plans, int ObjectiveMinutes, int BoundMinutes);

/// <summary>What the search for a plan gave.</summary>
/// <param name="Schedule">The plan; null where there is none.</param>
/// <param name="IsImpossible">Whether it is proven that there is none; false where the search ended before it found one.</param>
/// <param name="WaysOut">How it would be possible, the smallest first; empty where there is a plan or nobody asked.</param>
public sealed record ScheduleAnswer(WorkSchedule? Schedule, bool IsImpossible, IReadOnlyList<WayOut> WaysOut);

/// <summary>Finds plans of work by constraint programming (CP-SAT of Google.OrTools).</summary>
/// <remarks>The search is the same on every run: one seed, one worker, and its effort is counted in work done and not in seconds of a clock.</remarks>
public static class Scheduler
{
    private const double Effort = 0.8, TidyEffort = 0.2, WayOutEffort = 0.5;

    /// <summary>A plan: what was aimed at first, then every task as early as that allows.</summary>
    /// <param name="problem">What it has to meet.</param>
    /// <param name="progress">Told of every better plan; null where nobody watches.</param>
    /// <param name="withWaysOut">Whether to look for ways out where there is no plan.</param>
    /// <exception cref="OrderException">The problem is not one: an unknown name, a circle; all faults are named.</exception>
    public static ScheduleAnswer Solve(WorkProblem problem, IProgress<ScheduleProgress>? progress = null, bool withWaysOut = true)
    {
        string[] faults = [.. problem.Faults()];
        if (faults.Length > 0) throw new OrderException($"There is no plan: {string.Join("; ", faults)}.");
        var model = new ScheduleModel(problem);
        var solver = SolverWith(Effort);
        var status = solver.Solve(model.Model, progress is null ? null : new Watch(progress, problem.Aim));
        if (status == CpSolverStatus.ModelInvalid) throw new InvalidOperationException($"The plan could not be put to the solver: {model.Model.Validate()} {solver.SolutionInfo()}");
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
            return new(null, status == CpSolverStatus.Infeasible, withWaysOut ? [.. WaysOut(problem)] : []);
        var sign = problem.Aim == PlanAim.LatestStart ? -1 : 1;
        var (objective, bound) = ((int)Math.Round(solver.ObjectiveValue), (int)Math.Round(Math.Ceiling(solver.BestObjectiveBound - 1e-6)));
        var tasks = Tidied(problem, model, solver, objective);
        return new(ScheduleSlack.With(new(problem, tasks, sign * objective, sign * (status == CpSolverStatus.Optimal ? objective : bound))), false, []);
    }

    // With what was aimed at kept, everything as early as can be found: what is slack is then at the end, where it helps.
    private static IReadOnlyList<PlacedTask> Tidied(WorkProblem problem, ScheduleModel first, CpSolver solved, int objective)
    {
        var found = first.Read(solved);
        var model = new ScheduleModel(problem);
        model.Model.Add(model.Objective <= objective);
        foreach (var task in found) model.Model.AddHint(model.Times[task.Task.Name].Start, task.StartMinutes);
        model.Model.Minimize(LinearExpr.Sum(model.Times.Values.Select(each => each.Start)));
        var solver = SolverWith(TidyEffort);
        return solver.Solve(model.Model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible && model.Read(solver) is var tidy && tidy.Sum(task => task.StartMinutes) <= found.Sum(task => task.StartMinutes) ? tidy : found;
    }

    private static IEnumerable<WayOut> WaysOut(WorkProblem problem)
    {
        var minutes = new[] { GivesWay.Due, GivesWay.Shifts, GivesWay.Times, GivesWay.Keeping }
            .Where(gives => gives != GivesWay.Due || problem.DueMinutes is not null)
            .Select(gives => WayOutOf(problem, gives)).OfType<WayOut>().OrderBy(way => way.Minutes);
        return minutes.Concat(problem.Resources.Where(resource => !resource.IsPerson && problem.Tasks.Any(task => task.Uses.Any(use => use.AnyOf.Contains(resource.Name)))).Select(resource => WithOneMore(problem, resource)).OfType<WayOut>());
    }

    private static WayOut? WayOutOf(WorkProblem problem, GivesWay gives)
    {
        var model = new ScheduleModel(problem, gives);
        var solver = SolverWith(WayOutEffort);
        var status = solver.Solve(model.Model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? new(model.Gave(solver), status == CpSolverStatus.Optimal, new(problem, model.Read(solver), (int)solver.ObjectiveValue, (int)solver.BestObjectiveBound)) : null;
    }

    private static WayOut? WithOneMore(WorkProblem problem, WorkResource resource)
    {
        var more = problem with { Resources = [.. problem.Resources.Select(each => each == resource ? each with { Capacity = resource.Capacity * 2, Away = [] } : each)] };
        var model = new ScheduleModel(more);
        var solver = SolverWith(WayOutEffort);
        return solver.Solve(model.Model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? new([new OneMore(resource.Name)], true, new(more, model.Read(solver), (int)solver.ObjectiveValue, (int)solver.BestObjectiveBound)) : null;
    }

    // Without a linear relaxation: on plans with a choice of people it finds better ones in a quarter of the time, and proves published instances as well.
    private static CpSolver SolverWith(double effort) => new()
    {
        StringParameters = FormattableString.Invariant($"num_workers:1 random_seed:1 linearization_level:0 max_deterministic_time:{effort}"),
    };

    private sealed class Watch(IProgress<ScheduleProgress> progress, PlanAim aim) : CpSolverSolutionCallback
    {
        private int _plans;

        public override void OnSolutionCallback()
        {
            var sign = aim == PlanAim.LatestStart ? -1 : 1;
            progress.Report(new(++_plans, sign * (int)Math.Round(ObjectiveValue()), sign * (int)Math.Round(BestObjectiveBound())));
        }
    }
}
