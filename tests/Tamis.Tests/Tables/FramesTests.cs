using Microsoft.Data.Analysis;
using Tamis.Tables;

namespace Tamis.Tests.Tables;

public class FramesTests
{
    private sealed record Line(string Name, double MassGrams, double? Share, DateOnly Made, bool IsFlour, DateOrder Order);

    [Fact]
    public void ToFrame_Sheet_TypedColumnsWithMissingValues()
    {
        // 500,5 is the figure that the frame library's own reader turns into 5005.
        var sheet = SheetFile.Parse("x.csv", "name;mass_g;made\nrye;500,5;25/11/2026\nbutter;;26/11/2026\n"u8.ToArray());

        var frame = sheet.ToFrame();

        Assert.IsType<DoubleDataFrameColumn>(frame.Columns["mass_g"]);
        Assert.Equal(500.5, frame[0, 1]);
        Assert.Null(frame[1, 1]);
        Assert.Equal(new DateTime(2026, 11, 26), frame[1, 2]);
        Assert.Equal("butter", frame[1, 0]);
    }

    [Fact]
    public void ToFrame_Records_OneColumnAProperty()
    {
        var frame = new[] { new Line("rye", 75, null, new(2026, 11, 25), true, DateOrder.DayMonthYear), new Line("salt", double.NaN, 0.5, new(2026, 11, 26), false, DateOrder.YearMonthDay) }.ToFrame();

        Assert.Equal(["Name", "MassGrams", "Share", "Made", "IsFlour", "Order"], frame.Columns.Select(column => column.Name));
        Assert.Equal(["rye", 75d, null, new DateTime(2026, 11, 25), true, "DayMonthYear"], frame.Rows[0]);
        Assert.Null(frame[1, 1]);
    }

    [Fact]
    public void ToSheet_Frame_BackAgain()
    {
        var sheet = SheetFile.Parse("x.csv", "name,mass_g,made\nrye,500.5,2026-11-25\nbutter,,2026-11-26\n"u8.ToArray());

        var back = sheet.ToFrame().ToSheet("x.csv");

        Assert.Equal(sheet.Columns, back.Columns);
        Assert.Equal(sheet.Rows.SelectMany(row => sheet.Columns.Select(column => row[column])), back.Rows.SelectMany(row => back.Columns.Select(column => row[column])));
        Assert.Equal([2, 3], back.Rows.Select(row => row.Number));
    }
}
