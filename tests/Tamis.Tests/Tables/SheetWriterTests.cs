using System.Text;
using CsCheck;
using Tamis.Tables;

namespace Tamis.Tests.Tables;

public class SheetWriterTests
{
    private static string Written(string cell) =>
        Encoding.UTF8.GetString(SheetWriter.Bytes(SheetDialect.Shipped with { HasByteOrderMark = false }, ["name"], [[cell]])).Split('\n')[1];

    // The characters are those of OWASP's page on CSV injection; the first cell is its example of a command.
    [Theory]
    [InlineData("=cmd|' /C calc'!A0")]
    [InlineData("+1+1")]
    [InlineData("-1+1")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1+1")]
    [InlineData("\r=1+1")]
    [InlineData(" =1+1")]
    [InlineData("\n=1+1")]
    [InlineData("\uff1d1+1")]
    [InlineData("-5 g")]
    public void Bytes_CellThatCouldBecomeAFormula_Guarded(string cell) => Assert.StartsWith("'", Written(cell).TrimStart('"'), StringComparison.Ordinal);

    [Theory]
    [InlineData("-5")]
    [InlineData("+5.25")]
    [InlineData("butter")]
    [InlineData("<0.1")]
    [InlineData("'quoted'")]
    public void Bytes_PlainCell_Untouched(string cell) => Assert.Equal(cell, Written(cell));

    [Fact]
    public void Off_AfterOn_IsTheText() => Gen.String[Gen.Char["=+-@'\t\r\n 1.a\uff1d\u00a0"], 0, 6].Sample(text => FormulaGuard.Off(FormulaGuard.On(text)) == text);

    [Fact]
    public void Bytes_OldCodePage_KeptWhereItsLettersSuffice()
    {
        var dialect = SheetDialect.Shipped with { Encoding = SheetEncoding.Windows1252, HasByteOrderMark = false };

        Assert.Equal([.. "name\ncr"u8, 0xE8, .. "me\n"u8], SheetWriter.Bytes(dialect, ["name"], [["crème"]]));
        Assert.Equal("name\nčaj\n", Encoding.UTF8.GetString(SheetWriter.Bytes(dialect, ["name"], [["čaj"]])).TrimStart('\uFEFF'));
    }

    [Theory]
    [InlineData(SheetEncoding.Utf16)]
    [InlineData(SheetEncoding.Utf16BigEndian)]
    public void Bytes_Utf16_ReadsBack(SheetEncoding encoding)
    {
        var sheet = SheetFile.Parse("x.csv", SheetWriter.Bytes(SheetDialect.Shipped with { Encoding = encoding }, ["name"], [["crème ½"]]));

        Assert.Equal((encoding, "crème ½"), (sheet.Dialect.Encoding, sheet.Rows[0]["name"]));
    }

    [Fact]
    public void Bytes_RowOfOtherLength_Refused() => Assert.Throws<ArgumentException>(() => SheetWriter.Bytes(SheetDialect.Shipped, ["a", "b"], [["1"]]));

    [Fact]
    public void Write_Fails_PreviousFileIsWhole()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("servings.csv", "before");

        Assert.Throws<ArgumentException>(() => SheetWriter.Write(path, SheetDialect.Shipped, ["a"], Rows()));
        Assert.Equal("before", File.ReadAllText(path));
        Assert.Equal(["servings.csv"], Directory.EnumerateFiles(folder.Path).Select(Path.GetFileName));

        static IEnumerable<IReadOnlyList<string>> Rows()
        {
            yield return ["1"];
            throw new ArgumentException("interrupted");
        }
    }

    [Fact]
    public void Write_WhereAFolderStands_SaysSoAndLeavesNothingBehind()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "servings.csv", "inside"));

        var error = Assert.Throws<TableException>(() => SheetWriter.Write(Path.Combine(folder.Path, "servings.csv"), SheetDialect.Shipped, ["a"], []));

        Assert.Contains("is as it was", error.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(folder.Path));
    }

    [Fact]
    public void Write_OpenInTheSpreadsheet_Refused()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("servings.csv", "before");
        folder.Write(".~lock.servings.csv#", "");

        Assert.Contains("still open", Assert.Throws<TableException>(() => SheetWriter.Write(path, SheetDialect.Shipped, ["a"], [])).Message, StringComparison.Ordinal);
        Assert.Equal("before", File.ReadAllText(path));
    }

    [Fact]
    public void Update_FileOfAnotherDialect_KeepsItsColumnsRowsAndNotes()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("prices.csv", "Notes;ingredient;date;Price;Shelf\r\nask;butter;25/11/2026;7,9;A\r\n;honey;24/11/2026;5,5;B\r\n");

        SheetUpdate.Write(path, ["ingredient", "date"],
        [
            new Dictionary<string, object?> { ["ingredient"] = "Butter", ["date"] = new DateOnly(2026, 11, 25), ["price"] = 8.25 },
            new Dictionary<string, object?> { ["ingredient"] = "egg", ["date"] = new DateOnly(2026, 11, 26), ["price"] = 0.3, ["currency"] = "EUR" },
        ]);

        Assert.Equal("Notes;ingredient;date;Price;Shelf;currency\r\nask;Butter;25/11/2026;8,25;A;\r\n;honey;24/11/2026;5,5;B;\r\n;egg;26/11/2026;0,3;;EUR\r\n", File.ReadAllText(path));
    }

    [Fact]
    public void Update_NoFile_WritesAsTheKitShips()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Path, "servings.csv");

        SheetUpdate.Write(path, ["code"], [new Dictionary<string, object?> { ["code"] = 454, ["trial"] = "T2" }]);

        Assert.Equal([.. Encoding.UTF8.Preamble, .. "code,trial\n454,T2\n"u8], File.ReadAllBytes(path));
    }

    [Fact]
    public void WriteWhole_OverAFile_ReplacesIt()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("index.html", "before");

        TextFile.WriteWhole(path, "after é");

        Assert.Equal("after é"u8.ToArray(), File.ReadAllBytes(path));
    }
}
