using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Tests.Production;

public class EquipmentTests
{
    private const string Header = "name,kind,count,capacity,unit,smallest,min_c,max_c,from,to,notes\n";

    private static EquipmentList Read(string rows)
    {
        List<CellProblem> problems = [];
        var list = EquipmentList.Read(Kitchen.Sheet("equipment.csv", Header + rows), problems);
        return problems.Count == 0 ? list : throw new TableException(problems);
    }

    [Fact]
    public void Read_PeopleAndShifts_StandInTheOrderOfTime()
    {
        var list = Read("P1,person,1,,,,,,2026-11-27 06:00,2026-11-27 14:00,\nP1,person,1,,,,,,2026-11-26 07:00,2026-11-26 13:00,\noven,oven,1,4,trays,,30,250,,,\noven,oven,0,,,,,,2026-11-27 14:00,2026-11-27 15:00,\n");

        Assert.Equal(["P1"], list.People);
        Assert.Equal([new(2026, 11, 26, 7, 0, 0), new(2026, 11, 27, 6, 0, 0)], list.ShiftsOf("p1").Select(shift => shift.From));
        Assert.Equal(4, list.Find("Oven")!.Capacity);
        Assert.Equal(new DateTime(2026, 11, 27, 14, 0, 0), list.AwayOf("oven").Single().From);
        Assert.True(list.Find("oven")!.Reaches(250));
        Assert.False(list.Find("oven")!.Reaches(251));
    }

    [Fact]
    public void Scales_AreThoseWithAStep_FinestFirst() =>
        Assert.Equal([(500, 0.1), (6000, 1)], Read("bench,scale,1,6000,g,1,,,,,\nfine,scale,1,500,g,0.1,,,,,\nold,scale,1,3000,g,,,,,,\n").Scales);

    [Theory]
    [InlineData("oven,oven,1,4,,,,,,,", "unit")]
    [InlineData("oven,oven,1,4,trays,,250,30,,,", "max_c")]
    [InlineData("P1,person,1,,,,,,2026-11-27 14:00,2026-11-27 06:00,", "to")]
    [InlineData("P1,person,1,,,,,,2026-11-27 14:00,,", "to")]
    [InlineData("P1,person,1,,,,,,27th at two,2026-11-27 14:00,", "from")]
    [InlineData("oven,oven,-1,,,,,,,,", "count")]
    [InlineData("oven,,1,,,,,,,,", "kind")]
    [InlineData("oven,oven,1,,,,,,,,\noven,hob,1,,,,,,,,", "kind")]
    public void Read_BadCell_IsNamed(string rows, string column) =>
        Assert.Equal(column, Assert.Single(Kitchen.ProblemsOf(() => Read(rows + "\n"))).Column);

    [Fact]
    public void Without_UnknownName_NamesThoseThereAre() =>
        Assert.Contains("oven", Assert.Throws<KeyNotFoundException>(() => Read("oven,oven,1,,,,,,,,\n").Without("kiln")).Message, StringComparison.Ordinal);
}
