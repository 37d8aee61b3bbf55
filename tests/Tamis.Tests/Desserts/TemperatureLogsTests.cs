using Tamis.Desserts;
using Tamis.Physics;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public class TemperatureLogsTests
{
    [Fact]
    public void In_ReadingsWithAnHour_AreOneLog()
    {
        var log = Assert.Single(TemperatureLogs.In(Read("T8,1,mousse,core temperature,83,°C,2026-10-13 10:12,\nT8,1,mousse,core temperature,26,°C,2026-10-13 10:31,\nT8,1,mousse,density,0.7,g/mL,2026-10-13 10:40,\n")));
        Assert.Equal([(0, 83), (19, 26)], log.Log.Readings);
        Assert.Equal(CoolingOutcome.InTime, CoolingRule.Named("US model code")[0].Check(TemperatureLog.Of([.. log.Log.Readings, (40.0, 15.0)], log.Log.Source)).Outcome);
    }

    [Fact]
    public void In_OneReadingOrADayWithoutAnHour_IsNoLog() =>
        Assert.Empty(TemperatureLogs.In(Read("T1,1,cream,core temperature,78,°C,2026-09-11 11:20,\nT1,1,gel,core temperature,30,°C,2026-09-11,\nT1,1,gel,core temperature,20,°C,2026-09-12,\n")));

    [Fact]
    public void ReadAll_BelowAbsoluteZeroOrNoHour_NamesTheCells()
    {
        List<CellProblem> problems = [];
        Measurement.ReadAll(Sheet("T1,1,cream,core temperature,-300,°C,2026-09-11 11:20,\nT1,1,cream,core temperature,78,°C,2026-09-11 27:20,\n"), problems);
        Assert.Equal([(2, "value"), (3, "at")], problems.Select(problem => (problem.Row, problem.Column)));
    }

    private static IReadOnlyList<Measurement> Read(string rows)
    {
        List<CellProblem> problems = [];
        var all = Measurement.ReadAll(Sheet(rows), problems);
        Assert.Empty(problems);
        return all;
    }

    private static Sheet Sheet(string rows) => Kitchen.Sheet("measured.csv", "trial,make,component,what,value,unit,at,notes\n" + rows);
}
