using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public class DessertFactsTests
{
    // What takes one value for a trial and is written twice: both rows are named, with what the other says.
    [Theory]
    [InlineData("box_mm,100 x 60 x 40,\nbox_mm,185 x 75 x 65,\n", "2: 100 x 60 x 40 | 3: 185 x 75 x 65")]
    [InlineData("net_g,320,\nkeep,cool,\nnet_g,400,\n", "2: 320 | 4: 400")]
    [InlineData("Net_g,320,\nnet_g,320,\n", "2: 320 | 3: 320")]
    [InlineData("net_g,320,V1; V2\nnet_g,400,V2\nnet_g,500,V3\n", "2: 320 | 3: 400")]
    [InlineData("thawed,yes,\nthawed,no,\n", "2: yes | 3: no")]
    [InlineData("net_g,320,\nnet_ml,400,\n", "2: 320 | 3: 400")]
    [InlineData("net_g,320,\nnet_ml,400,\ndensity_g_ml,1.1,\n", "2: 320 | 3: 400")]
    [InlineData("net_g,320,\nnet_ml,400,V2\ndensity_g_ml,1.1,\n", "2: 320 | 3: 400")]
    public void Read_OneValueWrittenTwice_NamesBothRows(string rows, string expected)
    {
        var problems = Problems(rows);

        Assert.Equal(expected, string.Join(" | ", problems.Select(problem => $"{problem.Row}: {problem.Found}")));
        Assert.All(problems, problem => Assert.Equal(("dessert.csv", "value"), (problem.File, problem.Column)));
        foreach (var (problem, other) in problems.Zip(problems.Reverse())) Assert.Contains($"row {other.Row}", problem.Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("net_g,320,\nnet_g,400,V2\n")]
    [InlineData("net_g,320,V1\nnet_g,400,V2\n")]
    [InlineData("market,IE; EU; en,\nmarket,FR; EU; fr,\nclaim,light,V1\nclaim,source of fibre,V1\nface,185 x 65: list,\nface,185 x 65: rest,\n")]
    [InlineData("emphasis,rye,\nemphasis,honey,\ndeclare,iron,\ndeclare,zinc,\nother_amount,2 slices; 80,\nother_amount,1 cake; 320,\n")]
    [InlineData("exemption,a,\nexemption,b,\nfortified_with,iron,\nfortified_with,zinc,\nretention,a,\nretention,b,\ncross_contact,milk,\ncross_contact,egg,\n")]
    [InlineData("a note of my own,first,\na note of my own,second,\n")]
    [InlineData("net_g,412,\nnet_ml,400,\ndensity_g_ml,1.03,\n")]
    [InlineData("net_g,412,V1\nnet_ml,400,V2\n")]
    public void Read_WhatMayStandSoOften_IsNoProblem(string rows) => Assert.Empty(Problems(rows));

    private static IReadOnlyList<CellProblem> Problems(string rows)
    {
        List<CellProblem> problems = [];
        DessertFacts.Read(Kitchen.Sheet("dessert.csv", $"key,value,trial\n{rows}"), problems);
        return problems;
    }
}
