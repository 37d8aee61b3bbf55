using Tamis.App.Check;
using Tamis.App.Plan;

namespace Tamis.App.Tests.Plan;

public class PlanCommandTests
{
    private static string Tart => Path.Combine(KitFolder.Data("desserts"), "damson-tart");

    [Fact]
    public void Run_DemoOrder_ShowsTheSearchAndThePlan()
    {
        using var writer = new StringWriter();

        Assert.Equal(0, PlanCommand.Run(Tart, null, null, writer));
        Assert.Contains("plan 1 found", writer.ToString(), StringComparison.Ordinal);
        Assert.Contains("12 pieces of T10", writer.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Run_TrialThatIsNotThere_NamesThoseThatAre()
    {
        using var writer = new StringWriter();

        Assert.Equal(1, PlanCommand.Run(Tart, "T99", 12, writer));
        Assert.Contains("T10", writer.ToString(), StringComparison.Ordinal);
    }

    // Each on a copy of the demo: the cell is named, by check too, and there is no plan.
    [Theory]
    [InlineData("damson-tart/montage.csv", "gel,insert,mousse,ring 120x10", "gel,insert,mousse,ring 160x20", "montage.csv, row 7, column 'mould'")]
    [InlineData("damson-tart/steps.csv", "crumble,1,,Rub everything to even crumbs.,,6 to 8,,planetary mixer,,", "crumble,1,,Rub everything to even crumbs.,,6 to 8,,planetary mixer,mousse 7,", "steps.csv, row 18, column 'after'")]
    [InlineData("damson-tart/components.csv", "custard base,whole milk,,0.70,0.70", "custard base,whole milk,,0.70,", "montage.csv, row 5, column 'component'")]
    [InlineData("store/prices.csv", "bay leaf,S6,bunch,60,2.50", "bay leaf,S6,bunch,60,-2.50", "prices.csv, row 60, column 'price'")]
    [InlineData("store/prices.csv", "bay leaf,S6,bunch,60,2.50", "bay leaf,S6,bunch,,2.50", "prices.csv, row 60, column 'pack_g'")]
    [InlineData("damson-tart/steps.csv", "18 to 22,0,oven", "18 to 22,0,kiln", "steps.csv, row 20, column 'equipment'")]
    [InlineData("store/moulds.csv", "ring 140x30,ring,140,,,,30,1,14", "ring 140x30,ring,140,,,,30,1,0", "montage.csv, row 5, column 'mould'")]
    public void Run_BadCell_IsNamedAndThereIsNoPlan(string file, string good, string bad, string cell)
    {
        using var scratch = new ScratchFolder();
        foreach (var from in Directory.EnumerateFiles(KitFolder.Data("desserts"), "*.csv", SearchOption.AllDirectories))
        {
            var to = scratch[Path.GetRelativePath(KitFolder.Data("desserts"), from)];
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(from, to);
        }
        var text = File.ReadAllText(scratch[file]);
        Assert.Contains(good, text, StringComparison.Ordinal);
        File.WriteAllText(scratch[file], text.Replace(good, bad, StringComparison.Ordinal));
        using StringWriter plan = new(), check = new();

        Assert.Equal((1, 1), (PlanCommand.Run(scratch["damson-tart"], null, null, plan), CheckCommand.Run(scratch["damson-tart"], check)));
        Assert.Contains(cell, plan.ToString(), StringComparison.Ordinal);
        Assert.Contains("There is no plan.", plan.ToString(), StringComparison.Ordinal);
        Assert.Contains(cell, check.ToString(), StringComparison.Ordinal);
        Assert.Contains("1 cell to mend.", check.ToString(), StringComparison.Ordinal);
    }

    // A plan is said and never written.
    [Fact]
    public void Run_TrialThatIsNotThere_NamesThoseThatAreAndSpeaksOfNoFile()
    {
        using var writer = new StringWriter();

        Assert.Equal(1, PlanCommand.Run(Tart, "T99", 3, writer));
        Assert.Contains("T10", writer.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("written", writer.ToString(), StringComparison.Ordinal);
    }
}
