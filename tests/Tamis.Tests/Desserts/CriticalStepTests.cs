using Tamis.Desserts;
using Tamis.Tables;

namespace Tamis.Tests.Desserts;

public class CriticalStepTests
{
    private const string Steps = "component,step,trial,do,temperature_c,minutes,hands_minutes,equipment,after,caution\n"
        + "cream,1,,Cook with the yolks,83,6,,,,\ncream,2,,Bake,165,20,0,oven,,core at least 75 °C\ncream,3,,Cool on ice,20,15,,,,\ncream,4,,Freeze hard,-30,90,0,chiller,,\n"
        + "caramel,1,,Cook to a caramel,175,10,,,,\ncaramel,2,,Cool hard,20,30,0,,,\nassembly,1,,Thaw cold,4,300,0,,,\n";

    private static void In(Action<Dessert> look, string log = "", string facts = "")
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "store"));
        Dictionary<string, string> files = new()
        {
            ["formula.csv"] = "component,line,T1\ncream,milk,100 g\ncaramel,sugar,50 g\n", ["steps.csv"] = Steps, ["dessert.csv"] = "key,value\npieces,4\n" + facts,
            ["components.csv"] = "component,hold_hours,hold_c\ncream,48,4\ncaramel,500,18\n",
            ["store/ingredients.csv"] = "ingredient,allergens\nmilk,milk\nsugar,none\n",
            ["store/equipment.csv"] = "name,kind,count,capacity,unit\noven,oven,1,4,trays\nchiller,freezer,1,4,trays\n",
        };
        if (log.Length > 0) files[CriticalLog.File] = "trial,make,component,step,what,limit,value,unit,at,notes\n" + log;
        foreach (var (file, text) in files) File.WriteAllText(Path.Combine(folder.Path, file), text);
        look(Dessert.Open(folder.Path));
    }

    private static CriticalOutcome Outcome(string log, string component, int? number, string facts = "")
    {
        CriticalOutcome? outcome = null;
        In(dessert =>
        {
            var step = CriticalStep.Of(dessert, "T1").Single(each => each.Component == component && each.Step?.Step == number);
            outcome = step.Judge(CriticalLog.Of(dessert, "T1", step));
        }, log, facts);
        return outcome!.Value;
    }

    [Fact]
    public void Of_Method_MarksWhatIsOfAnimalsAndWhatIsColdAndNoCaramel() => In(dessert => Assert.Equal(
        ["cream 1 cook at least 83 °C", "cream 2 cook at least 75 °C", "cream 3 chill by the cooling rule of your code: name it as cooling_rule in dessert.csv", "cream 4 freeze at most -18 °C",
            "cream  hold at most 4 °C; at most 48 h", "assembly 1 thaw at most 4 °C"],
        CriticalStep.Of(dessert, "T1").Select(step => $"{step.Component} {step.Step?.Step} {step.Kind} {step.Limit}")));

    [Theory]
    [InlineData("", CriticalOutcome.NotRecorded)]
    [InlineData("T1,1,cream,2,core temperature,,76,°C,,\n", CriticalOutcome.Within)]
    [InlineData("T1,1,cream,2,core temperature,,70,°C,,\nT1,1,cream,2,core temperature,,74,°C,,\n", CriticalOutcome.Outside)]
    [InlineData("T2,1,cream,2,core temperature,,76,°C,,\nT1,1,cream,1,core temperature,,84,°C,,\nT1,1,cream,2,core temperature,,,°C,,\n", CriticalOutcome.NotRecorded)]
    public void Judge_Cooking_AsksForTheHottest(string log, CriticalOutcome expected) => Assert.Equal(expected, Outcome(log, "cream", 2));

    [Theory]
    [InlineData("T1,1,cream,4,core temperature,,-10,°C,,\nT1,1,cream,4,core temperature,,-19,°C,,\n", CriticalOutcome.Within)]
    [InlineData("T1,1,cream,4,core temperature,,-10,°C,,\n", CriticalOutcome.Outside)]
    public void Judge_Freezing_AsksForTheColdest(string log, CriticalOutcome expected) => Assert.Equal(expected, Outcome(log, "cream", 4));

    [Theory]
    [InlineData("T1,1,cream,,warmest while kept,,4,°C,2026-11-26 08:00,\nT1,1,cream,,warmest while kept,,3,°C,2026-11-27 08:00,\n", CriticalOutcome.Within)]
    [InlineData("T1,1,cream,,warmest while kept,,6,°C,2026-11-26 08:00,\n", CriticalOutcome.Outside)]
    [InlineData("T1,1,cream,,warmest while kept,,4,°C,2026-11-26 08:00,\nT1,1,cream,,warmest while kept,,4,°C,2026-11-29 08:00,\n", CriticalOutcome.Outside)]
    public void Judge_Keeping_AsksForWarmthAndHours(string log, CriticalOutcome expected) => Assert.Equal(expected, Outcome(log, "cream", null));

    // UK guidance of data/physics/cooling-rules.csv: 63 to 8 °C in an hour and a half.
    [Theory]
    [InlineData("09:20", "cooling_rule,UK guidance\n", CriticalOutcome.Within)]
    [InlineData("10:20", "cooling_rule,UK guidance\n", CriticalOutcome.Outside)]
    [InlineData("09:20", "", CriticalOutcome.TooLittle)]
    public void Judge_Cooling_HoldsTheLogAgainstTheChosenRule(string end, string facts, CriticalOutcome expected) => Assert.Equal(expected, Outcome(
        $"T1,1,cream,3,temperature while cooling,,80,°C,2026-11-26 08:00,\nT1,1,cream,3,temperature while cooling,,63,°C,2026-11-26 08:10,\nT1,1,cream,3,temperature while cooling,,7,°C,2026-11-26 {end},\n", "cream", 3, facts));

    [Fact]
    public void Of_UnknownCoolingRule_NamesThoseThereAre() => In(dessert =>
        Assert.Contains("UK guidance", Assert.Single(Kitchen.ProblemsOf(() => CriticalStep.Of(dessert, "T1"))).Expected, StringComparison.Ordinal), facts: "cooling_rule,my own\n");

    [Fact]
    public void Of_BadLog_IsNamedWithItsCell() => In(dessert =>
    {
        var step = CriticalStep.Of(dessert, "T1")[1];
        var problem = Assert.Single(Kitchen.ProblemsOf(() => CriticalLog.Of(dessert, "T1", step)));
        Assert.Equal((CriticalLog.File, 2, "value"), (problem.File, problem.Row, problem.Column));
    }, "T1,1,cream,2,core temperature,,hot,°C,,\n");

    [Fact]
    public void WriteEmpty_HasARowAStepAndNeverWritesOverRecords() => In(dessert =>
    {
        CriticalLog.WriteEmpty(dessert, "T1");

        Assert.Equal(CriticalStep.Of(dessert, "T1").Count, SheetFile.Read(Path.Combine(dessert.Folder, CriticalLog.File)).Rows.Count);
        Assert.All(CriticalStep.Of(dessert, "T1"), step => Assert.Empty(CriticalLog.Of(dessert, "T1", step)));
        Assert.Single(Kitchen.ProblemsOf(() => CriticalLog.WriteEmpty(dessert, "T1")));
    });
}
