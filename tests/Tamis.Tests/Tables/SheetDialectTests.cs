using System.Text;
using CsCheck;
using Tamis.Tables;

namespace Tamis.Tests.Tables;

public class SheetDialectTests
{
    private static readonly string[] NewLines = ["\n", "\r\n", "\r"];

    private static readonly Gen<SheetDialect> Dialects = Gen.Select(
        Gen.Char[",;\t"], Gen.Char[".,"], Gen.Enum<DateOrder>(), Gen.Bool, Gen.Int[0, 2].Select(i => NewLines[i]), Gen.Bool,
        (separator, mark, order, hasMark, newLine, hasSeparatorLine) => new SheetDialect(separator, mark, order, hasMark, newLine) { HasSeparatorLine = hasSeparatorLine });

    private static SheetDialect Of(string text, SheetSettings? settings = null) => SheetFile.Parse("x.csv", Encoding.UTF8.GetBytes(text), settings).Dialect;

    [Theory]
    [InlineData("line;T1\na;27,5 g\n", ',')]
    [InlineData("line;T1\na;27.5 g\n", '.')]
    [InlineData("line,T1\na,27.5 g\n", '.')]
    [InlineData("line,T1\na,\"27,5 g\"\n", ',')]
    [InlineData("line,T1\na,\"2,5-3 kg\"\n", ',')]
    [InlineData("line;T1\na;250\n", ',')]
    [InlineData("line,T1\na,250\n", '.')]
    [InlineData("line;T1\na;1.234\n", ',')]
    [InlineData("line,T1\na,1.234\n", '.')]
    [InlineData("line;T1\na;1.234,5\n", ',')]
    [InlineData("line\tT1\na\t0,25\n", ',')]
    [InlineData("line;T1;date\na;27.5 g;25.11.2026\n", '.')]
    [InlineData("line;T1;date\na;5;25.11.2026\n", ',')]
    [InlineData("line;T1;notes\na;27,5 g;0.5 mm thick wall\n", ',')]
    public void Parse_NumbersOfAFile_DecideItsDecimalMark(string text, char mark) => Assert.Equal(mark, Of(text).DecimalMark);

    [Theory]
    [InlineData("d\n25/11/2026\n", DateOrder.DayMonthYear)]
    [InlineData("d\n11/25/2026\n", DateOrder.MonthDayYear)]
    [InlineData("d\n05/11/2026\n25/11/2026\n", DateOrder.DayMonthYear)]
    [InlineData("d\n05.11.2026\n", DateOrder.DayMonthYear)]
    [InlineData("d\n2026-11-05\n", DateOrder.YearMonthDay)]
    [InlineData("d\n05/05/2026\n", DateOrder.YearMonthDay)]
    public void Parse_DatesOfAFile_DecideTheirOrder(string text, DateOrder order)
    {
        var dialect = Of(text);

        Assert.Equal((order, null), (dialect.DateOrder, dialect.DateOrderDoubt));
    }

    [Theory]
    [InlineData("d\n05/11/2026\n06/11/2026\n", "date_order")]
    [InlineData("d\n25/11/2026\n11/25/2026\n", "two orders")]
    public void Parse_DatesThatStayOpen_LeaveAQuestion(string text, string word) => Assert.Contains(word, Of(text).DateOrderDoubt, StringComparison.Ordinal);

    [Fact]
    public void Parse_Settings_WinOverTheFile()
    {
        var dialect = Of("d;T1\n05/11/2026;27,5\n", new('.', DateOrder.MonthDayYear));

        Assert.Equal(('.', DateOrder.MonthDayYear, null), (dialect.DecimalMark, dialect.DateOrder, dialect.DateOrderDoubt));
    }

    [Fact]
    public void InWords_OfAFile_SaysHowItWasRead() => Assert.Equal("semicolons, decimal comma, dates day first", Of("d;T1\n25/11/2026;27,5\n").InWords());

    [Fact]
    public void WrittenNumber_InAnyDialect_MeansTheSameOrIsRefused() =>
        Gen.Select(Dialects, Gen.OneOf(Gen.Double[-1e6, 1e6], Gen.Int[-5000, 5000].Select(i => i / 1000d)).Array[1, 4]).Sample((dialect, numbers) =>
        {
            var bytes = SheetWriter.Bytes(dialect, ["name", "value"], [.. numbers.Select(number => new[] { "x", SheetCell.Write(number, dialect) })]);
            List<CellProblem> problems = [];
            var read = SheetFile.Parse("x.csv", bytes).Rows.Select(row => new RowReader(row, problems).Number("value")).ToArray();
            return read.Length == numbers.Length
                && read.Zip(numbers).All(pair => pair.First is null || pair.First == pair.Second)
                && read.Count(number => number is null) == problems.Count;
        });

    [Fact]
    public void WrittenNumber_WithItsMarkSaid_MeansTheSame() =>
        Gen.Select(Dialects, Gen.Double[-1e6, 1e6]).Sample((dialect, number) =>
        {
            var bytes = SheetWriter.Bytes(dialect, ["name", "value"], [["x", SheetCell.Write(number, dialect)]]);
            var sheet = SheetFile.Parse("x.csv", bytes, new(dialect.DecimalMark));
            return new RowReader(sheet.Rows[0], []).Number("value") == number;
        });

    [Fact]
    public void Sheet_WrittenInAnyDialect_ReadsBackCellByCell() =>
        Gen.Select(Dialects, Gen.String[Gen.Char["ab1=+-@'\",;\t\r\n é½"], 0, 8].Array[3].Array[1, 5]).Sample((dialect, rows) =>
        {
            var sheet = SheetFile.Parse("x.csv", SheetWriter.Bytes(dialect, ["name", "b", "c"], rows.Select(row => (string[])["x", .. row[1..]])));
            return sheet.Dialect.Separator == dialect.Separator && sheet.Dialect.HasByteOrderMark == dialect.HasByteOrderMark
                && sheet.Rows.Zip(rows).All(pair => pair.First["b"] == pair.Second[1].Trim() && pair.First["c"] == pair.Second[2].Trim())
                && sheet.Rows.Count == rows.Length;
        });
}
