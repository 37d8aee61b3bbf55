using System.Text;
using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Tests.Composition;

/// <summary>The contents of a table as spreadsheets save them: each way reads the same, or names what it cannot read.</summary>
public sealed class ContentsSheetTests : IDisposable
{
    private const string Header = "food,tag,state,value,low,high,samples,standard_deviation,source,method";

    private readonly TemporaryFolder _folder = new();

    public ContentsSheetTests()
    {
        _folder.Write("sources.csv", "key,evidence,title\nlab,published,Our laboratory\n");
        _folder.Write("nutrients.csv", "tag,word,unit\nFAT,fat,g\nNA,sodium,mg\nFOL,folate,ug\nENERC_KCAL,\"energy, kilocalories\",kcal\n");
        _folder.Write("foods.csv", "food,name,source\nSR28 01145,Butter,lab\nLAB 3E2,Rye crumb,lab\n");
    }

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string, string> Dialects => new()
    {
        { "commas", $"{Header}\nSR28 01145,FAT,,81.11,,,,,lab,\nSR28 01145,NA,,1643,,,,,lab,\n" },
        { "byte order mark and CRLF", $"\uFEFF{Header}\r\nSR28 01145,FAT,,81.11,,,,,lab,\r\nSR28 01145,NA,,1643,,,,,lab,\r\n" },
        { "semicolons, decimal comma, thousands", "food;tag;state;value;low;high;samples;standard_deviation;source;method\nSR28 01145;FAT;;81,11;;;;;lab;\nSR28 01145;NA;;1.643,0;;;;;lab;\n" },
        { "thousands by a blank", "food;tag;value;source\nSR28 01145;FAT;81,11;lab\nSR28 01145;NA;1 643;lab\n" },
        { "commas, decimal comma in quotes", "food,tag,value,source\nSR28 01145,FAT,\"81,11\",lab\nSR28 01145,NA,\"1.643,0\",lab\n" },
        { "tabs", "food\ttag\tvalue\tsource\nSR28 01145\tFAT\t81.11\tlab\nSR28 01145\tNA\t1643\tlab\n" },
        { "sep= line", "sep=;\r\nfood;tag;value;source\r\nSR28 01145;FAT;81,11;lab\r\nSR28 01145;NA;1643;lab\r\n" },
        { "leading zeros gone", "food,tag,state,value,source\nSR28 1145,FAT,,81.11,lab\nSR28 1145,NA,,1643,lab\n" },
        { "trailing blank rows and columns", "food,tag,value,source,,\nSR28 01145,FAT,81.11,lab,,\nSR28 01145,NA,1643,lab,,\n,,,,,\n,,,,,\n" },
        { "wide", "food,FAT,NA,source\nSR28 01145,81.11,1643,lab\n" },
        { "wide by words, units in headers", "food;Fat (g);sodium_mg;source\nSR28 01145;81,11;1643;lab\n" },
        { "wide, another unit in a header", "food,FAT [mg],Sodium g,source\nSR28 01145,81110,1.643,lab\n" },
        { "units in cells", "food,FAT,NA,source\nSR28 01145,81.11 g,1.643 g,lab\n" },
        { "a column of units", "food,tag,value,unit,source\nSR28 01145,FAT,81.11,g,lab\nSR28 01145,NA,1.643,g,lab\n" },
    };

    [Theory]
    [MemberData(nameof(Dialects))]
    public void Load_AsSpreadsheetsSaveIt_IsTheSame(string how, string contents)
    {
        var table = Load(contents);

        Assert.True(table.Content("SR28 01145", "FAT").Per100Grams == 81.11, how);
        Assert.True(table.Content("SR28 01145", "NA").Per100Grams == 1643, how);
        Assert.False(table.Content("LAB 3E2", "FAT").IsKnown);
    }

    [Fact]
    public void Load_WesternCodePage_KeepsItsLetters()
    {
        var bytes = CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes("food,tag,value,source,method\nSR28 01145,FAT,81.11,lab,pesée\n");
        File.WriteAllBytes(Path.Combine(_folder.Path, "contents.csv"), bytes);

        var table = CompositionTable.Load(_folder.Path);

        Assert.Contains("pesée", table.Content("SR28 01145", "FAT").Source!.Locator, StringComparison.Ordinal);
        Assert.StartsWith("contents.csv: letters of Windows-1252", Assert.Single(table.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void Load_WideStates_AreKeptApart()
    {
        var table = Load("food,FAT,NA,FOL,source\nSR28 01145,traces,<5 mg,,lab\nLAB 3E2,0,1,2,lab\n");

        Assert.Equal(ContentState.Trace, table.Content("SR28 01145", "FAT").State);
        Assert.Equal(Interval.Between(0, 5), table.Content("SR28 01145", "NA").Range);
        Assert.False(table.Content("SR28 01145", "FOL").IsKnown);
        Assert.Equal(ContentState.Zero, table.Content("LAB 3E2", "FAT").State);
    }

    [Theory]
    [InlineData("food,tag,value,source\nSR28 01145,FAT,#DIV/0!,lab\n", 2, "value", "#DIV/0!")]
    [InlineData("food;tag;value;source\nSR28 01145;FAT;#N/A;lab\n", 2, "value", "#N/A")]
    [InlineData("food,tag,value,source\nSR28 01145,FAT,81,lab\n,NA,5,lab\n", 3, "food", "")]
    [InlineData("food;FAT;NA;source\nSR28 01145;1,5;2;lab\n;2,5;3;lab\n", 3, "food", "")]
    [InlineData("food,tag,value,source\n3.00E+02,FAT,81,lab\n", 2, "food", "3.00E+02")]
    [InlineData("food,tag,value,source\n1145,FAT,81,lab\n", 2, "food", "1145")]
    [InlineData("food;tag;value;source\nSR28 01145;FAT;01. Feb;lab\n", 2, "value", "01. Feb")]
    [InlineData("food;FAT;source\nSR28 01145;2-Jan;lab\n", 2, "FAT", "2-Jan")]
    [InlineData("food;tag;value;source\nSR28 01145;FAT;27,5;lab\nLAB 3E2;FAT;1.234;lab\n", 3, "value", "1.234")]
    [InlineData("food,tag,value,source\nSR28 01145,FAT,\"1,5\",lab\nLAB 3E2,FAT,2.5,lab\n", 2, "value", "1,5")]
    [InlineData("food,tag,value,source,method\nSR28 01145,FAT,1.5,lab,#NAME?\n", 2, "method", "#NAME?")]
    [InlineData("food;tag;state;value;source\nSR28 01145;FAT;zero;0,4;lab\n", 2, "value", "0,4")]
    [InlineData("food;Fat (g);fat;source\nSR28 01145;1;1;lab\n", 1, "fat", "Fat (g); fat")]
    [InlineData("food;FAT;source\nSR28 01145;1,5;lab\nSR28 1145;3;lab\n", 3, "FAT", "3")]
    [InlineData("food;NA;source\nSR28 01145;100001;lab\n", 2, "NA", "100001")]
    [InlineData("food,FAT,FATT,source\nSR28 01145,1,2,lab\n", 1, "FATT", "FATT")]
    [InlineData("food,FAT (kcal),source\nSR28 01145,1,lab\n", 1, "FAT (kcal)", "FAT (kcal)")]
    [InlineData("food,FAT,source\nSR28 01145,1 kcal,lab\n", 2, "FAT", "1 kcal")]
    [InlineData("food,FAT,source\n\nSR28 01145,101,lab\n", 3, "FAT", "101")]
    [InlineData("food,tag,value,unit,source\nSR28 01145,FAT,1,kcal,lab\n", 2, "unit", "kcal")]
    public void Load_WhatCannotBeRead_IsNamedInTheFilesOwnRowAndColumn(string contents, int row, string column, string found)
    {
        var problem = Assert.Throws<TableException>(() => Load(contents)).Problems[0];

        Assert.Equal(("contents.csv", row, column, found), (problem.File, problem.Row, problem.Column, problem.Found));
    }

    [Theory]
    [InlineData("food,tag,value,source\n3.00E+02,FAT,81,lab\n", "perhaps LAB 3E2; the spreadsheet made a number of it")]
    [InlineData("food,tag,value,source\nLAB 300,FAT,81,lab\n", "perhaps LAB 3E2")]
    [InlineData("food,tag,value,source\n01.Okt,FAT,81,lab\n", "the spreadsheet made a date of it")]
    [InlineData("food,tag,value,source\nrye crumb,FAT,81,lab\n", "perhaps LAB 3E2")]
    [InlineData("food,tag,value,source\nRye crum,FAT,81,lab\n", "perhaps LAB 3E2")]
    [InlineData("food;FAT;source\nSR28 01145;ten;lab\n", "such as 1,5, or tr, or <0,1")]
    [InlineData("food,tag,value,source\nSR28 01145,FAT,1-Feb,lab\n", "the spreadsheet made a date of it")]
    [InlineData("food,tag,value,source\nSR28 01145,FAT,#DIV/0!,lab\n", "an error of the spreadsheet")]
    [InlineData("Fats of the week\nfood,tag,value,source\nSR28 01145,FAT,1,lab\n", "a title belongs in no CSV file")]
    public void Load_WhatCannotBeRead_IsSaidWithWhatItMayHaveBeen(string contents, string said)
    {
        var problem = Assert.Single(Assert.Throws<TableException>(() => Load(contents)).Problems);

        Assert.Contains(said, problem.Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("food;tag;value;low;source\nSR28 01145;FAT;#DIV/0!;x;lab\n1;NAA;1;;labb\n", 5)]
    [InlineData("food,tag,value,low,source\nSR28 01145,FAT,#DIV/0!,x,lab\n1,NAA,1,,labb\n", 5)]
    [InlineData("food;FAT;NA;source\nSR28 01145;#N/A;lots;lab\nLAB 3E2;1;1;lab;beyond\n;1;;labb\n", 5)]
    public void Load_AnErrorOfTheSpreadsheetAmongOthers_HidesNoneOfThem(string contents, int count) =>
        Assert.Equal(count, Assert.Throws<TableException>(() => Load(contents)).Problems.Count);

    [Theory]
    [InlineData("food;FAT\nSR28 01145;1\nLAB 3E2;1\n", "source")]
    [InlineData("food;tag;value\nSR28 01145;FAT;1\nLAB 3E2;FAT;1\n", "source")]
    public void Load_NoColumnOfSources_AskedForOnce(string contents, string column) =>
        Assert.Equal(("contents.csv", 0, column), Assert.Throws<TableException>(() => Load(contents)).Problems is [var only] ? (only.File, only.Row, only.Column) : default);

    private CompositionTable Load(string contents)
    {
        _folder.Write("contents.csv", contents);
        return CompositionTable.Load(_folder.Path);
    }
}
