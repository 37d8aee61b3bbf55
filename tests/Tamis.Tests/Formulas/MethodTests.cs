using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Tests.Formulas;

public class MethodTests
{
    private const string Header = "component,step,trial,do,temperature_c,minutes,hands_minutes,equipment,after,caution\n";

    private static Method Read(string rows)
    {
        List<CellProblem> problems = [];
        var method = Method.Read(Kitchen.Sheet("steps.csv", Header + rows), problems);
        return problems.Count == 0 ? method : throw new TableException(problems);
    }

    [Fact]
    public void Read_HandsAndAfter_AreThoseOfTheCells()
    {
        var step = Read("gel,3,,Freeze,-30,90 to 120,0,chiller,,\nmousse,6,,Fill,,15 to 20,,,gel 3; mousse 5,\nmousse,5,,Fold,,5,,,,\n").StepsOf("mousse", ["T1"])[1];

        Assert.Null(step.HandsMinutes);
        Assert.Equal([new("gel", 3), new("mousse", 5)], step.After);
        Assert.Equal(3, step.Row);
    }

    [Theory]
    [InlineData("gel,1,,Soak,,10,,,gle 2,\ngel,2,,Warm,,10,,,,", "after", "gel 2")]
    [InlineData("gel,1,,Soak,,10,,,gel 7,", "after", "it has 1")]
    [InlineData("gel,1,,Soak,,10,,,gel,", "after", "number of its step")]
    [InlineData("gel,1,,Soak,,10,12,,,", "hands_minutes", "no more than")]
    [InlineData("gel,1,,Soak,,10,-1,,,", "hands_minutes", "from 0")]
    public void Read_BadCell_IsNamed(string rows, string column, string expected)
    {
        var problem = Assert.Single(Kitchen.ProblemsOf(() => Read(rows + "\n")));
        Assert.Equal(column, problem.Column);
        Assert.Contains(expected, problem.Expected, StringComparison.Ordinal);
    }
}
