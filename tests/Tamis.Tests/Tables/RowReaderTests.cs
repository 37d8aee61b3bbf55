using System.Text;
using Tamis.Tables;

namespace Tamis.Tests.Tables;

public class RowReaderTests
{
    private readonly List<CellProblem> _problems = [];

    private enum Kind
    {
        Liking,
        Intensity,
    }

    private static readonly Dictionary<string, Kind> Kinds = new() { ["liking"] = Kind.Liking, ["intensity"] = Kind.Intensity };

    private RowReader Reader(string cell, char decimalMark = '.', string column = "c")
    {
        var text = $"name;{column};mark;mark too\nx;\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\";{(decimalMark == '.' ? "0.5;0.5" : "0,5;0,5")}\n";
        return new(SheetFile.Parse("sheet.csv", Encoding.UTF8.GetBytes(text)).Rows[0], _problems);
    }

    private string Expected() => Assert.Single(_problems).Expected;

    [Fact]
    public void Any_BlankCell_IsUnknownAndNoProblem()
    {
        var reader = Reader("");

        Assert.Null(reader.Text("c"));
        Assert.Null(reader.Number("c"));
        Assert.Null(reader.Whole("c"));
        Assert.Null(reader.Percent("c"));
        Assert.Null(reader.Stated("c"));
        Assert.Null(reader.Date("c"));
        Assert.Null(reader.Choice("c", Kinds));
        Assert.Empty(reader.Words("c"));
        Assert.Empty(reader.Dates("c"));
        Assert.Null(reader.Number("no such column"));
        Assert.Empty(_problems);
    }

    [Fact]
    public void Required_BlankCell_IsAProblem()
    {
        var reader = Reader("");

        Assert.Equal("", reader.Required("c"));
        Assert.True(double.IsNaN(reader.RequiredNumber("c")));
        Assert.Equal(2, _problems.Count);
    }

    [Fact]
    public void Number_OutOfLimits_SaysTheLimitsInTheFilesOwnMark()
    {
        Assert.Null(Reader("12,5", ',').Number("c", 0, 0.5));
        Assert.Equal("sheet.csv, row 2, column 'c': found '12,5', expected a number from 0 to 0,5.", Assert.Single(_problems).ToString());
    }

    [Theory]
    [InlineData("1,5", '.')]
    [InlineData("1.5", ',')]
    [InlineData("1.234", ',')]
    public void Number_InTheOtherMark_RefusedNeverMisread(string cell, char decimalMark)
    {
        Assert.Null(Reader(cell, decimalMark).Number("c"));
        Assert.Contains("decimal", Expected(), StringComparison.Ordinal);
    }

    [Fact]
    public void Number_TurnedDate_SaysWhatTheSpreadsheetDid()
    {
        Assert.Null(Reader("12-Aug").Number("c"));
        Assert.Contains("the spreadsheet made a date", Expected(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3", 3)]
    [InlineData("3.0", 3)]
    public void Whole_WholeNumber_Read(string cell, int value) => Assert.Equal(value, Reader(cell).Whole("c", 1, 9));

    [Theory]
    [InlineData("3.5")]
    [InlineData("10")]
    [InlineData("three")]
    public void Whole_Other_Refused(string cell)
    {
        Assert.Null(Reader(cell).Whole("c", 1, 9));
        Assert.Equal("a whole number from 1 to 9", Expected());
    }

    [Theory]
    [InlineData("12", 12)]
    [InlineData("12 %", 12)]
    [InlineData("12.00%", 12)]
    public void Percent_AsSpreadsheetsGiveItBack_Read(string cell, double value) => Assert.Equal(value, Reader(cell).Percent("c"));

    [Fact]
    public void Percent_Above100_Refused()
    {
        Assert.Null(Reader("1200%").Percent("c"));
        Assert.Equal("a percentage from 0 to 100", Expected());
    }

    [Theory]
    [InlineData("0", StatedKind.Number, 0)]
    [InlineData("12.5", StatedKind.Number, 12.5)]
    [InlineData("tr", StatedKind.Trace, 0)]
    [InlineData("Traces", StatedKind.Trace, 0)]
    [InlineData("<0.1", StatedKind.Below, 0.1)]
    [InlineData("< 0.1", StatedKind.Below, 0.1)]
    public void Stated_AsDocumentsState_Read(string cell, StatedKind kind, double value) => Assert.Equal((kind, value), Reader(cell).Stated("c") is { } figure ? (figure.Kind, figure.Value) : default);

    [Theory]
    [InlineData("-1")]
    [InlineData("n.d.")]
    [InlineData(">5")]
    public void Stated_Other_Refused(string cell)
    {
        Assert.Null(Reader(cell).Stated("c"));
        Assert.Contains("blank", Expected(), StringComparison.Ordinal);
    }

    [Fact]
    public void Dates_SeveralInACell_Read() =>
        Assert.Equal([new DateOnly(2026, 9, 11), new DateOnly(2026, 9, 17)], Reader("2026-09-11; 2026-09-17").Dates("c"));

    [Fact]
    public void Date_AmbiguousInWholeFile_AskedOnce()
    {
        var sheet = SheetFile.Parse("trials.csv", "trial,made_on\nT1,05/11/2026\nT2,06/11/2026; 07/11/2026\nT3,2026-11-08\n"u8.ToArray());

        DateOnly?[] dates = [.. sheet.Rows.SelectMany(row => new RowReader(row, _problems).Dates("made_on")).Select(date => (DateOnly?)date)];

        Assert.Equal([new DateOnly(2026, 11, 8)], dates);
        Assert.Equal(0, Assert.Single(_problems).Row);
        Assert.Contains("date_order", _problems[0].Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Date_InAnotherOrderThanTheRest_SaysWhatDecidesIt()
    {
        var sheet = SheetFile.Parse("trials.csv", "trial,made_on\nT1,25/11/2026\n"u8.ToArray(), new(DateOrder: DateOrder.YearMonthDay));

        Assert.Null(new RowReader(sheet.Rows[0], _problems).Date("made_on"));
        Assert.Contains("say that dates stand year first", Assert.Single(_problems).Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void Date_ShownAsNumber_SaysHowToFormatIt()
    {
        Assert.Null(Reader("46276").Date("c"));
        Assert.Contains("format the cell as a date", Expected(), StringComparison.Ordinal);
    }

    [Fact]
    public void Choice_Known_CaseForgiven() => Assert.Equal(Kind.Intensity, Reader("Intensity ").Choice("c", Kinds));

    [Fact]
    public void Choice_Mistyped_NamesChoicesNearestFirst()
    {
        Assert.Null(Reader("intensty").Choice("c", Kinds));
        Assert.Equal("one of: intensity, liking", Expected());
    }

    [Fact]
    public void Named_Mistyped_NamesTheNearest()
    {
        var known = new[] { "rye flour", "wheat flour", "butter", "egg", "salt", "honey", "cream", "milk", "bay leaf" }.ToDictionary(name => name);

        Assert.Null(Reader("rey flour").Named("c", known));
        Assert.StartsWith("a known name, perhaps rye flour", Expected(), StringComparison.Ordinal);
    }

    [Fact]
    public void Words_PartedBySemicolons_Trimmed() => Assert.Equal(["milk", "egg"], Reader(" milk ; egg;").Words("c"));

    [Theory]
    [InlineData("#REF!")]
    [InlineData("#DIV/0!")]
    [InlineData("Err:502")]
    [InlineData("#####")]
    public void Parse_CellThatTheSpreadsheetCouldNotShow_Refused(string cell)
    {
        var error = Assert.Throws<TableException>(() => Reader(cell));

        Assert.Equal((2, "c", cell), (error.Problems[0].Row, error.Problems[0].Column, error.Problems[0].Found));
    }
}
