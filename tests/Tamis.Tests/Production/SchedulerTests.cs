using CsCheck;
using Tamis.Production;
using Tamis.Tables;
using Tamis.Verification;

namespace Tamis.Tests.Production;

public class SchedulerTests
{
    private static WorkTask Task(string name, int minutes, string on, params string[] after) =>
        new() { Name = name, Minutes = minutes, Uses = [new([on])], After = [.. after.Select(each => new TaskLink(each))] };

    private static WorkProblem Problem(params WorkTask[] tasks) => new()
    {
        Tasks = tasks,
        Resources = [new("P1") { IsPerson = true, Away = [(0, 60), (180, 300), (420, 600)] }, new("oven", 2), new("mixer")],
        HorizonMinutes = 600,
    };

    private static WorkSchedule Planned(WorkProblem problem)
    {
        var schedule = Scheduler.Solve(problem).Schedule!;
        Assert.Empty(schedule.Breaches());
        return schedule;
    }

    // Optima: Fisher and Thompson 1963 (ft06), Lawrence 1984 (la01); both from memory.
    [Theory]
    [InlineData("ft06", 55)]
    [InlineData("la01", 666)]
    public void Solve_PublishedJobShop_ProvesItsOptimum(string instance, int optimum)
    {
        var schedule = Planned(ProductionQuantities.JobShop(SheetFile.Read(Path.Combine(KitFolder.Data("published"), "datasets", instance + ".csv"))));

        Assert.True(schedule.IsProven);
        Assert.Equal((optimum, optimum), (schedule.ObjectiveMinutes, schedule.EndMinutes));
    }

    [Fact]
    public void Solve_HandWork_StaysInsideShifts()
    {
        var schedule = Planned(Problem(Task("a", 70, "P1"), Task("b", 70, "P1", "a")));

        // 60 to 180 and 300 to 420: the second does not fit in the first shift.
        Assert.Equal((60, 300), (schedule["a"].StartMinutes, schedule["b"].StartMinutes));
        Assert.Equal(370, schedule.EndMinutes);
    }

    [Fact]
    public void Solve_OneTemperatureAtATime_PutsOthersAfter()
    {
        WorkTask At(string name, double celsius) => new() { Name = name, Minutes = 30, Uses = [new(["oven"], 1, null, celsius)] };

        Assert.Equal(60, Planned(Problem(At("a", 160), At("b", 160), At("c", 180))).EndMinutes);
        Assert.Equal(30, Planned(Problem(At("a", 160), At("b", 160))).EndMinutes);
    }

    [Fact]
    public void Solve_WaitingThatMustBePutInAndTakenOut_NeedsSomebodyThere()
    {
        var bake = new WorkTask { Name = "bake", Minutes = 150, Uses = [new(["oven"])], StartsAttended = true, EndsAttended = true };

        // In the oven from 60 it would be out at 210, when nobody is there.
        Assert.Equal(150, Planned(Problem(bake)).StartMinutes);
    }

    [Fact]
    public void Solve_LatestStart_BeginsAsLateAsTheDueTimeAllows()
    {
        var schedule = Planned(Problem(Task("a", 30, "P1"), Task("b", 100, "oven", "a")) with { DueMinutes = 400, Aim = PlanAim.LatestStart });

        Assert.Equal((270 - 120, 150), (schedule["a"].StartMinutes, schedule.ObjectiveMinutes));
        Assert.True(schedule.IsProven);
        Assert.Equal(120, schedule["b"].SlackMinutes);
    }

    [Fact]
    public void Solve_KeepingTime_HoldsWhatComesBeforeBack()
    {
        var schedule = Planned(Problem(Task("cream", 10, "mixer"), Task("fill", 100, "P1"), Task("top", 30, "P1", "fill") with { After = [new("fill"), new("cream", 15)] }));

        Assert.True(schedule["top"].StartMinutes - schedule["cream"].EndMinutes <= 15);
    }

    [Fact]
    public void Solve_MouldsHeldOverSeveralTasks_AreCounted()
    {
        var two = Problem(Task("fill 1", 10, "P1"), Task("freeze 1", 100, "oven", "fill 1"), Task("fill 2", 10, "P1"), Task("freeze 2", 100, "oven", "fill 2"));
        var held = two with { Resources = [.. two.Resources, new WorkResource("rings", 12)], Holds = [new("rings", 12, "fill 1", "freeze 1"), new("rings", 12, "fill 2", "freeze 2")] };

        Assert.Equal(180, Planned(two).EndMinutes);
        Assert.Equal(280, Planned(held).EndMinutes);
    }

    [Fact]
    public void Slack_OfACriticalTask_IsNone()
    {
        var schedule = Planned(Problem(Task("a", 30, "P1"), Task("b", 90, "P1", "a"), Task("c", 20, "mixer")));

        Assert.True(schedule["a"].IsCritical && schedule["b"].IsCritical);
        Assert.Equal(schedule.EndMinutes - 20, schedule["c"].SlackMinutes);
    }

    [Fact]
    public void Solve_TooMuchForTheShift_SaysTheSmallestWaysOut()
    {
        var answer = Scheduler.Solve(Problem(Task("a", 130, "P1") with { LeastMinutes = 110 }) with { DueMinutes = 300 });

        Assert.Null(answer.Schedule);
        Assert.True(answer.IsImpossible);
        Assert.Equal(10, Assert.IsType<Faster>(Assert.Single(answer.WaysOut.First(way => way.Gives[0] is Faster).Gives)).Minutes);
        Assert.Equal(10, answer.WaysOut.First(way => way.Gives[0] is ComeEarlier or StayLonger).Minutes);
        Assert.All(answer.WaysOut, way => Assert.True(way.IsSmallest));
    }

    [Fact]
    public void Solve_LateForTheDueTime_SaysByHowMuch()
    {
        var answer = Scheduler.Solve(Problem(Task("a", 100, "P1"), Task("b", 100, "P1", "a")) with { DueMinutes = 380 });

        Assert.Equal(new DoneLater(20, 400), Assert.Single(answer.WaysOut.First(way => way.Gives[0] is DoneLater).Gives));
    }

    [Fact]
    public void Solve_OneMoreOfAThing_IsAWayOut()
    {
        var answer = Scheduler.Solve(Problem(Task("a", 100, "mixer"), Task("b", 100, "mixer")) with { DueMinutes = 150 });

        Assert.Contains(answer.WaysOut, way => way.Gives is [OneMore { Resource: "mixer" }]);
    }

    [Fact]
    public void Solve_Faults_AreNamedTogether()
    {
        var error = Assert.Throws<OrderException>(() => Scheduler.Solve(Problem(Task("a", 10, "kiln"), Task("b", 10, "P1", "c"), Task("d", 5, "P1", "e"), Task("e", 5, "P1", "d"))));

        Assert.Contains("a needs kiln, which nobody has", error.Message, StringComparison.Ordinal);
        Assert.Contains("b comes after c, which is no task", error.Message, StringComparison.Ordinal);
        Assert.Contains("in a circle: d, e, d", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Solve_Twice_GivesTheSamePlan()
    {
        static string Of() => string.Join(';', Scheduler.Solve(Big()).Schedule!.Tasks.Select(task => $"{task.Task.Name} {task.StartMinutes} {string.Join(',', task.On)}"));

        Assert.Equal(Of(), Of());
    }

    [Fact]
    public void Solve_Watched_ReportsPlansThatGetBetter()
    {
        List<ScheduleProgress> seen = [];
        Scheduler.Solve(Big(), new Seen(seen.Add));

        Assert.NotEmpty(seen);
        Assert.Equal(seen.Select(each => each.ObjectiveMinutes).OrderDescending(), seen.Select(each => each.ObjectiveMinutes));
        Assert.All(seen, each => Assert.True(each.BoundMinutes <= each.ObjectiveMinutes));
    }

    [Fact]
    public void Solve_AnyKitchen_MeetsEverythingItShould() =>
        Gen.Select(Gen.Int[1, 60], Gen.Select(Gen.Int[0, 2], Gen.Int[0, 4], Gen.Int[0, 1])).Array[1, 8].Sample(drawn =>
        {
            WorkTask[] tasks = [.. drawn.Select((each, i) => new WorkTask
            {
                Name = $"t{i}", Minutes = each.Item1, Uses = [new([each.Item2.Item1 switch { 0 => "P1", 1 => "oven", _ => "mixer" }])],
                After = each.Item2.Item3 == 1 && i > 0 ? [new($"t{each.Item2.Item2 % i}")] : [], StartsAttended = each.Item2.Item1 == 1,
            })];
            var answer = Scheduler.Solve(Problem(tasks), withWaysOut: false);
            Assert.Empty(answer.Schedule?.Breaches() ?? []);
            Assert.True(answer.Schedule is not null || answer.IsImpossible);
        }, iter: 20);

    private static WorkProblem Big() => Problem([.. Enumerable.Range(0, 12).Select(i => Task($"t{i}", 10 + i % 5, i % 3 == 0 ? "P1" : i % 3 == 1 ? "oven" : "mixer", i > 2 ? [$"t{i - 3}"] : []))]);

    private sealed class Seen(Action<ScheduleProgress> see) : IProgress<ScheduleProgress>
    {
        public void Report(ScheduleProgress value) => see(value);
    }
}
