using System.Text;
using Tamis.Tables;

namespace Tamis.Tests.Tables;

public class SheetFileTests
{
    private static Sheet Parse(string text, SheetSettings? settings = null) => SheetFile.Parse("formula.csv", Encoding.UTF8.GetBytes(text), settings);

    private static CellProblem Problem(string text) => Assert.Single(Assert.Throws<TableException>(() => Parse(text)).Problems);

    [Theory]
    [InlineData("component,line,T1\nshell,butter,140 g\n", ',')]
    [InlineData("component;line;T1\r\nshell;butter;140 g\r\n", ';')]
    [InlineData("component\tline\tT1\rshell\tbutter\t140 g\r", '\t')]
    [InlineData("\uFEFFcomponent,line,T1\nshell,butter,140 g", ',')]
    [InlineData("sep=;\r\ncomponent;line;T1\r\nshell;butter;140 g\r\n", ';')]
    public void Parse_AsSpreadsheetsWriteIt_SameCells(string text, char separator)
    {
        var sheet = Parse(text);

        Assert.Equal(separator, sheet.Dialect.Separator);
        Assert.Equal(["component", "line", "T1"], sheet.Columns);
        var row = Assert.Single(sheet.Rows);
        Assert.Equal(("shell", "butter", "140 g", 2), (row["Component"], row["LINE"], row["t1"], row.Number));
    }

    [Fact]
    public void Parse_TrailingBlankRowsAndColumns_LeftOut()
    {
        var sheet = Parse("a,b,,\n1,2,,\n,,,\n3,4,,\n,,,\n\n\n");

        Assert.Equal(["a", "b"], sheet.Columns);
        Assert.Equal([2, 4], sheet.Rows.Select(row => row.Number));
    }

    [Fact]
    public void Parse_LineBreakInQuotes_CountsAsOneRow()
    {
        var sheet = Parse("line,notes\nbutter,\"cold\nin dice\"\n\negg,x\n");

        Assert.Equal([2, 4], sheet.Rows.Select(row => row.Number));
        Assert.Equal("cold\nin dice", sheet.Rows[0]["notes"]);
    }

    [Fact]
    public void Parse_ShortRow_FilledUp() => Assert.Equal("", Parse("a,b,c\n1,2\n").Rows[0]["c"]);

    [Fact]
    public void Parse_UnclosedQuote_NamesRowAndLine()
    {
        var problem = Problem("line,notes\nbutter,x\negg,\"cold\nmilk,y\n");

        Assert.Equal(3, problem.Row);
        Assert.Contains("line 3", problem.Expected, StringComparison.Ordinal);
        Assert.Contains("closing quote", problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_QuoteThatALaterCellCloses_NamesRowAndLine()
    {
        var error = Assert.Throws<TableException>(() => Parse("line,notes\nbutter,x\n\negg,\"cold\nmilk,\"y, z\"\n"));

        Assert.Equal(4, error.Problems[0].Row);
        Assert.Contains("line 4", error.Problems[0].Expected, StringComparison.Ordinal);
        Assert.Contains("never closed", error.Problems[0].Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_StrayQuoteInsideACell_IsText() => Assert.Equal("6\" ring", Parse("line,notes\nring,6\" ring\n").Rows[0]["notes"]);

    [Fact]
    public void Parse_RowWithMoreCellsThanHeader_NamesCell()
    {
        var problem = Problem("line,T1\nbutter,27,5 g\n");

        Assert.Equal((2, "5 g"), (problem.Row, problem.Found));
        Assert.Contains("quotes", problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_DuplicateColumns_Refused() => Assert.Equal(1, Problem("line,T1,t1\nbutter,1,2\n").Row);

    [Fact]
    public void Parse_ValuesUnderNoName_Refused()
    {
        var problem = Problem("line,,T1\nbutter,cold,2\n");

        Assert.Equal((2, "cold"), (problem.Row, problem.Found));
        Assert.Contains("column B", problem.Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\uFEFF")]
    [InlineData(",,\n,,\n\n")]
    [InlineData("12,27\n13,28\n")]
    public void Parse_NoHeader_Refused(string text) => Assert.Contains("name", Problem(text).Expected, StringComparison.Ordinal);

    [Theory]
    [InlineData(new byte[] { 0x50, 0x4B, 0x03, 0x04, 0x14 })]
    [InlineData(new byte[] { 0xD0, 0xCF, 0x11, 0xE0, 0xA1 })]
    [InlineData(new byte[] { 0x61, 0x00, 0x2C, 0x00 })]
    [InlineData(new byte[] { 0x3C, 0x68, 0x74, 0x6D, 0x6C })]
    public void Parse_NoCsv_SaysSaveAsCsv(byte[] bytes)
    {
        var error = Assert.Throws<TableException>(() => SheetFile.Parse("formula.csv", bytes));

        Assert.Contains("save as CSV", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    [InlineData("utf-8")]
    public void Parse_UnicodeWithMark_AccentsSurvive(string name)
    {
        var encoding = Encoding.GetEncoding(name);
        byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes("line;T1\ncrème brûlée;½\n")];

        Assert.Equal("crème brûlée", SheetFile.Parse("formula.csv", bytes).Rows[0]["line"]);
    }

    [Fact]
    public void Parse_WesternCodePage_AccentsSurviveAndDialectSaysSo()
    {
        // 0xE8 is è and 0x80 the euro sign in Windows-1252 (Unicode consortium mapping table CP1252.TXT).
        byte[] bytes = [.. "line;price\r\ncr"u8, 0xE8, .. "me;3 "u8, 0x80, .. "\r\n"u8];

        var sheet = SheetFile.Parse("prices.csv", bytes);

        Assert.Equal(("crème", "3 €"), (sheet.Rows[0]["line"], sheet.Rows[0]["price"]));
        Assert.Contains("Windows-1252", sheet.Dialect.InWords(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Missing_SaysSo()
    {
        var error = Assert.Throws<TableException>(() => SheetFile.Read(Path.Combine(Path.GetTempPath(), "no-such-folder", "formula.csv")));

        Assert.Contains("formula.csv: there is no such file", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_HeldOpen_SaysCloseIt()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("formula.csv", "line,T1\nbutter,1\n");
        using var held = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);

        var error = Assert.Throws<TableException>(() => SheetFile.Read(path));

        Assert.Contains("still open", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_WithSpreadsheetsLock_ReadsAndSaysItIsOpen()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("formula.csv", "line,T1\nbutter,1\n");
        folder.Write(".~lock.formula.csv#", ",somebody,machine,;");

        Assert.True(SheetFile.Read(path).IsOpenElsewhere);
    }

    [Fact]
    public void Read_HalfSavedWithSpreadsheetsLock_SaysItIsOpen()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("formula.csv", "");
        folder.Write(".~lock.formula.csv#", "");

        Assert.Contains("still open in the spreadsheet", Assert.Throws<TableException>(() => SheetFile.Read(path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Require_MissingColumn_NamesTheNearest()
    {
        List<CellProblem> problems = [];

        Assert.False(Parse("componant,line\nshell,butter\n").Require(["component", "line"], problems));
        Assert.Contains("componant", Assert.Single(problems).Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Besides_UnknownColumns_KeptAndNamed() => Assert.Equal(["Supplier's code"], Parse("line,Supplier's code,T1\nbutter,7,1\n").Besides(["Line", "T1"]));
}
