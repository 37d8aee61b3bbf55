using Tamis.Tables;
using Tamis.Trials;

namespace Tamis.Tests.Trials;

public class TrialLogTests
{
    [Fact]
    public void Read_SeveralDates_AreSeveralMakes()
    {
        var log = TrialLog.Read(Kitchen.Sheet("trials.csv", "trial,parent,made_on,question\nT1,,2026-09-11; 2026-09-17,Does it hold?\nT2,t1,,\n"), []);

        Assert.Equal([new(2026, 9, 11), new(2026, 9, 17)], log!.Find("t1")!.MadeOn);
        Assert.Equal(["T2"], log.ChildrenOf("T1").Select(trial => trial.Name));
        Assert.Equal(["T2", "t1"], log.Lineage.LineOf("T2"));
    }

    [Theory]
    [InlineData("trial,parent\nT1,\nT2,T9\n", "parent", "T9")]
    [InlineData("trial,parent\nT1,T2\nT2,T1\n", "parent", "T2")]
    [InlineData("trial,parent\nT1,\nT1,\n", "trial", "T1")]
    [InlineData("trial,parent,made_on\nT1,,next week\n", "made_on", "next week")]
    public void Read_Fault_IsNamedWithWhatWasFound(string text, string column, string found)
    {
        List<CellProblem> problems = [];
        var log = TrialLog.Read(Kitchen.Sheet("trials.csv", text), problems);

        Assert.Null(log);
        Assert.Contains(problems, problem => problem.Column == column && problem.Found == found);
    }
}
