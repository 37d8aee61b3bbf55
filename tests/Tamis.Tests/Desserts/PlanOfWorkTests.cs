using Tamis.Desserts;
using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public class PlanOfWorkTests
{
    private const string Formula = "component,line,way,step,T1\nbase,flour,,1,100 g\nbase,paste,,2,50 g\npaste,sugar,,1,100 g\n";
    private const string Steps = "component,step,trial,do,temperature_c,minutes,hands_minutes,equipment,after,caution\n"
        + "paste,1,,Grind,,20 to 30,,grinder,,\nbase,1,,Mix,,10,,mixer,,\nbase,2,,Bake,160,40,0,oven,,\nbase,3,,Cool,,30,0,,,\nassembly,1,,Dress,,10,,,,\n";
    private const string Equipment = "name,kind,count,capacity,unit,smallest,min_c,max_c,from,to,notes\n"
        + "oven,oven,1,1,trays,,30,250,,,\nmixer,mixer,1,1000,g,,,,,,\ngrinder,grinder,1,1000,g,,,,,,\n"
        + "P1,person,1,,,,,,2026-11-27 08:00,2026-11-27 12:00,\nP1,person,1,,,,,,2026-11-28 08:00,2026-11-28 12:00,\n";

    private static PlanOfWork Plan(string steps = Steps, string equipment = Equipment, string due = "2026-11-28 11:00", int pieces = 4, string components = "component\nbase\n", string? moulds = null)
    {
        using var folder = new TemporaryFolder();
        Dictionary<string, string> files = new()
        {
            ["formula.csv"] = Formula, ["steps.csv"] = steps, ["components.csv"] = components, ["dessert.csv"] = $"key,value\npieces,4\norder,{pieces} of T1 for {due}\n",
            ["store/ingredients.csv"] = "ingredient\nflour\nsugar\n", ["store/equipment.csv"] = equipment,
        };
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        if (moulds is not null)
        {
            files["store/moulds.csv"] = "mould,shape,diameter_mm,height_mm,places,count\n" + moulds;
            files["montage.csv"] = "order,component,as,mould,mass_g\n1,base,moulded,tin,25\n";
        }
        foreach (var (file, text) in files) File.WriteAllText(Path.Combine(folder.Path, file), text);
        return PlanOfWork.Of(Dessert.Open(folder.Path), "T1", pieces, usePhysics: false);
    }

    [Fact]
    public void Of_ComponentInside_ComesBeforeWhatTakesIt()
    {
        var plan = Plan();
        var schedule = plan.Answer.Schedule!;

        Assert.Empty(schedule.Breaches());
        Assert.True(schedule["paste 1"].EndMinutes <= schedule["base 2"].StartMinutes);
        Assert.True(schedule["base 3"].EndMinutes <= schedule["assembly 1"].StartMinutes);
        Assert.True(schedule["base 2"].StartMinutes - schedule["base 1"].EndMinutes <= 15);
        Assert.True(schedule.IsProven);
        Assert.Equal(new DateTime(2026, 11, 28, 9, 0, 0), plan.At(schedule.StartMinutes));
    }

    [Fact]
    public void Of_MorePieces_GrowHandsAloneAndForceRuns()
    {
        var plan = Plan(pieces: 64);

        // 16 times the formula: 1,600 g of flour in bowls of a kilogram, with 800 g of paste on trays of a kilogram of loose goods.
        Assert.Equal(160, plan.Answer.Schedule!["assembly 1"].Task.Minutes);
        Assert.Equal(3, plan.Steps.Count(step => step.Step is { Component: "base", Step: 2 }));
        Assert.Equal(2, plan.Steps.Count(step => step.Step is { Component: "base", Step: 1 }));
        Assert.Empty(plan.Answer.Schedule.Breaches());
    }

    // Two tins for four pieces: mixed, baked and cooled twice, the second time when the tins are free; the paste is ground once, for it keeps.
    [Fact]
    public void Of_FewerMouldsThanPieces_WorksInRounds()
    {
        var plan = Plan(components: "component,density_g_ml\nbase,0.5\n", moulds: "tin,ring,60,40,1,2\n");
        var schedule = plan.Answer.Schedule!;

        Assert.Empty(schedule.Breaches());
        Assert.Equal([1, 2, 2, 2, 1], new[] { ("paste", 1), ("base", 1), ("base", 2), ("base", 3), ("assembly", 1) }.Select(name => plan.Steps.Count(step => (step.Step.Component, step.Step.Step) == name)));
        Assert.True(schedule["base 2, 2 of 2"].StartMinutes >= schedule["base 3, 1 of 2"].EndMinutes || schedule["base 1, 2 of 2"].StartMinutes >= schedule["base 3, 1 of 2"].EndMinutes);
        Assert.True(schedule["base 2, 2 of 2"].StartMinutes - schedule["base 1, 2 of 2"].EndMinutes is >= 0 and <= 15);
        Assert.True(schedule["assembly 1"].StartMinutes >= schedule["base 3, 2 of 2"].EndMinutes);
        Assert.All(plan.Problem.Holds, hold => Assert.Equal(("tin", 2), (hold.Resource, hold.Demand)));
        Assert.Contains("2 rounds: 4 places of tin, the kitchen has 2", plan.Steps.First(step => step.Step is { Component: "base", Step: 2 }).Remark, StringComparison.Ordinal);
        Assert.Equal((2, "2 rounds: 4 places of tin, the kitchen has 2"), (plan.Amounts.Amounts.Find("base")!.Makes, plan.Amounts.Amounts.Find("base")!.WhySeveral));
        Assert.Equal(1, plan.Amounts.Amounts.Find("paste")!.Makes);
        Assert.Equal(0, plan.Amounts.Amounts.Account.UnaccountedGrams, 6);
    }

    [Fact]
    public void Of_MouldsForAll_TakesThemAtOnce() =>
        Assert.Equal(new WorkHold("tin", 4, "base 1", "base 3"), Assert.Single(Plan(components: "component,density_g_ml\nbase,0.5\n", moulds: "tin,ring,60,40,1,4\n").Problem.Holds));

    [Fact]
    public void Of_MouldThatNobodyHas_IsNamedWithItsCell()
    {
        var problem = Assert.Single(Kitchen.ProblemsOf(() => Plan(components: "component,density_g_ml\nbase,0.5\n", moulds: "tin,ring,60,40,1,0\n")));

        Assert.Equal(("montage.csv", 2, "mould", "tin"), (problem.File, problem.Row, problem.Column, problem.Found));
    }

    // Seven tart rings for twelve tarts: lined and filled in two rounds, from the rolling to the lifting off of the rings.
    [Fact]
    public void Of_DemoWithSevenTartRings_LinesAndBakesTwice()
    {
        using var folder = new TemporaryFolder();
        folder.TakeIn(KitFolder.Data("desserts"));
        var moulds = Path.Combine(folder.Path, "store", "moulds.csv");
        File.WriteAllText(moulds, File.ReadAllText(moulds).Replace("ring 160x20,ring,160,,,,20,1,14", "ring 160x20,ring,160,,,,20,1,7", StringComparison.Ordinal));
        var plan = PlanOfWork.Of(Dessert.Open(Path.Combine(folder.Path, "damson-tart")), "T10", usePhysics: false);
        int Runs(string component, int step) => plan.Steps.Count(each => each.Step.Component == component && each.Step.Step == step);

        Assert.Equal([1, 2, 2, 2], new[] { 3, 4, 5, 6 }.Select(step => Runs("shell", step)));
        Assert.Equal([2, 2, 2, 2, 2], new[] { 1, 2, 3, 4, 5 }.Select(step => Runs("almond cream", step)));
        Assert.Equal((1, 2), (plan.Amounts.Amounts.Find("shell")!.Makes, plan.Amounts.Amounts.Find("almond cream")!.Makes));
        Assert.True(plan.Answer.Schedule is { } schedule ? !schedule.Breaches().Any() : plan.Answer.WaysOut.Count > 0);
    }

    [Fact]
    public void Of_TooLate_SaysWhatWouldMakeItPossible()
    {
        var plan = Plan(due: "2026-11-27 09:30");

        Assert.True(plan.Answer.IsImpossible);
        Assert.Contains(plan.Answer.WaysOut, way => way.Gives is [DoneLater { Minutes: 30 }]);
        Assert.Contains(plan.Answer.WaysOut, way => way.Gives is [ComeEarlier { Person: "P1", Minutes: 30 }]);
    }

    [Fact]
    public void Of_ShortKeeping_IsKeptTo()
    {
        var schedule = Plan(components: "component,hold_hours\npaste,0.25\n").Answer.Schedule!;

        Assert.InRange(schedule["base 2"].StartMinutes - schedule["paste 1"].EndMinutes, 0, 15);
    }

    [Theory]
    [InlineData("base,2,,Bake,160,40,0,kiln,,", 4, "equipment", "something that the kitchen has")]
    [InlineData("base,2,,Bake,290,40,0,oven,,", 4, "temperature_c", "30 to 250 °C")]
    [InlineData("base,2,,Bake,160,40,0,oven,assembly 1,", 4, "after", "without a circle")]
    public void Of_BadStep_IsNamedWithItsCell(string bake, int row, string column, string expected)
    {
        var problem = Assert.Single(Kitchen.ProblemsOf(() => Plan(Steps.Replace("base,2,,Bake,160,40,0,oven,,", bake, StringComparison.Ordinal))));

        Assert.Equal(("steps.csv", row, column), (problem.File, problem.Row, problem.Column));
        Assert.Contains(expected, problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_DueBeforeAnybodyWorks_IsNamed() =>
        Assert.Equal("dessert.csv", Assert.Single(Kitchen.ProblemsOf(() => Plan(due: "2026-11-20 11:00"))).File);

    [Fact]
    public void Without_TheOven_NamesWhatBreaksAndWhatWaits()
    {
        var down = Plan().Without("oven");

        Assert.Equal(["base 2"], down.Broken.Select(step => step.Name));
        Assert.Equal(["base 3", "assembly 1"], down.Behind.Select(step => step.Name));
    }

    // Of the 50 minutes of hands for 4 pieces only the dressing grows: 30 + 10 + 10 and 30 + 10 + 20.
    [Theory]
    [InlineData(4, 50)]
    [InlineData(8, 60)]
    public void HandsMinutes_MorePieces_GrowByHandsAlone(int pieces, int minutes) =>
        Assert.Equal(minutes, PlanOfWork.HandsMinutes(Plan().Dessert, "T1", pieces));

    [Fact]
    public void Replanned_TheOnlyOven_HasNoPlanAndNamesTheStep()
    {
        var again = Plan().Replanned("oven");

        Assert.Null(again.Plan);
        Assert.Equal([("base", 2)], again.Nowhere.Select(step => (step.Component, step.Step)));
    }

    [Fact]
    public void Replanned_OneOfTwoOvens_BakesInTheOther()
    {
        var again = Plan(equipment: Equipment + "deck oven,oven,1,1,trays,,30,150,,,\n").Replanned("oven");

        var moved = Assert.Single(again.StandIns);
        Assert.Equal(("deck oven", 150.0, true), (moved.Instead.Equipment, moved.Instead.TemperatureCelsius!.Value, moved.IsOtherTemperature));
        Assert.Null(moved.TimesAsLong);
        Assert.Equal("deck oven", again.Plan!.Answer.Schedule!["base 2"].On.Single());
        Assert.Empty(again.Plan.Answer.Schedule.Breaches());
    }

    [Fact]
    public void Replanned_DemoWithoutBlastChiller_FreezesInTheFreezerForLonger()
    {
        var again = PlanOfWork.Of(Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart")), "T10", usePhysics: false).Replanned("blast chiller");

        Assert.All(again.StandIns, each => Assert.Equal(("freezer", -22.0), (each.Instead.Equipment, each.Instead.TemperatureCelsius!.Value)));
        Assert.All(again.StandIns, each => Assert.InRange(each.TimesAsLong!.Value, 3, 6));
        Assert.True(again.Plan!.Answer.Schedule is { } schedule ? !schedule.Breaches().Any() : again.Plan.Answer.IsImpossible);
    }

    // Plank's time for a thin slab, where only the surface holds the heat back: transfer and distance to the freezing point, each to the power of −1.
    [Fact]
    public void FreezingTimeRatio_ThinSlab_IsThatOfPlanksTimes()
    {
        static double Seconds(double air, double transfer) => Tamis.Physics.FreezingTimes.PlankSeconds(Tamis.Physics.ConductionShape.Slab, 1e-9, 1000, 250_000, -2, air, transfer, 1.5);

        Assert.Equal(Seconds(-22, 9) / Seconds(-30, 30), StandIn.FreezingTimeRatio(30, -30, 9, -22, -2), 6);
        Assert.Throws<ArgumentOutOfRangeException>(() => StandIn.FreezingTimeRatio(30, -30, 9, 0, -2));
    }

    [Fact]
    public void Of_TheDemoOrder_IsPlannedAndProven()
    {
        var plan = PlanOfWork.Of(Dessert.Open(Path.Combine(KitFolder.Data("desserts"), "damson-tart")), "T10", usePhysics: false);

        Assert.True(plan.Answer.Schedule!.IsProven);
        Assert.Empty(plan.Answer.Schedule.Breaches());
        Assert.True(plan.At(plan.Answer.Schedule.EndMinutes) <= new DateTime(2026, 11, 28, 11, 0, 0));
        Assert.Equal(2, plan.Steps.Count(step => step.Step is { Component: "mousse", Step: 7 }));
    }
}
