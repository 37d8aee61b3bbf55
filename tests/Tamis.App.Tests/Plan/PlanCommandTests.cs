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
    public void Run_MorePiecesThanMoulds_NamesTheCellAndFails()
    {
        using var writer = new StringWriter();

        Assert.Equal(1, PlanCommand.Run(Tart, "T10", 60, writer));
        Assert.Contains("moulds.csv, column 'count'", writer.ToString(), StringComparison.Ordinal);
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
