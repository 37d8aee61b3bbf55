using Tamis.Composition;
using Tamis.Composition.Import;

namespace Tamis.Tests.Composition.Import;

public sealed class ImportedTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void WriteTo_ThenLoad_IsTheSameTable()
    {
        var imported = Small();
        var target = Path.Combine(_folder.Path, "out");

        imported.WriteTo(target);
        var (written, direct) = (CompositionTable.Load(target), imported.ToTable());

        Assert.Equal(direct.Contents, written.Contents);
        Assert.Equal(direct.Measures, written.Measures);
        Assert.Contains("read,rows,", File.ReadAllText(Path.Combine(target, ImportReport.FileName)), StringComparison.Ordinal);
    }

    [Fact]
    public void WriteTo_FolderThatHoldsSomething_LeavesItAlone()
    {
        var target = Directory.CreateDirectory(Path.Combine(_folder.Path, "mine")).FullName;
        File.WriteAllText(Path.Combine(target, "notes.txt"), "mine");

        Assert.Throws<IOException>(() => Small().WriteTo(target));

        Assert.Equal(["notes.txt"], Directory.EnumerateFileSystemEntries(target).Select(Path.GetFileName));
        Assert.Empty(Directory.EnumerateDirectories(_folder.Path, ".mine*"));
    }

    [Theory]
    [InlineData("RETOL + CARTB / 12", 671 + 158 / 12.0)]
    [InlineData("PROCNT / XN * 6.25", 0.85 / 6.38 * 6.25)]
    [InlineData("FOL - FOLAC + FOLAC * 1.7", 3)]
    [InlineData("CAFFN * 2", double.NaN)]
    public void Conversion_Formula_IsWorkedOutAndUnknownWhereATermIs(string formula, double expected)
    {
        Conversion conversion = new("test", "X", formula, ConversionUse.OnRequest, new("test", Evidence.Practice), "");
        Dictionary<string, double> butter = new() { ["RETOL"] = 671, ["CARTB"] = 158, ["PROCNT"] = 0.85, ["FOL"] = 3, ["FOLAC"] = 0 };

        Assert.Equal(expected, conversion.Of(tag => butter.GetValueOrDefault(tag, double.NaN), 6.38), 9);
    }

    [Theory]
    [InlineData("RETOL +")]
    [InlineData("RETOL CARTB")]
    [InlineData("")]
    [InlineData("RETOL ^ 2")]
    public void Conversion_NoFormula_IsRefused(string formula) =>
        Assert.Throws<ArgumentException>(() => new Conversion("test", "X", formula, ConversionUse.OnRequest, new("test", Evidence.Practice), ""));

    [Fact]
    public void Codes_EveryConversion_SpeaksOfNutrientsThatAnImportMayBring() =>
        Assert.DoesNotContain(Shelf.Codes.Conversions.SelectMany(conversion => conversion.From.Append(conversion.Tag)), tag => Shelf.Codes.Nutrients.IndexOf(tag) < 0);

    [Fact]
    public void With_NamedConversion_PutsTheResultBesideAndSaysSo()
    {
        var imported = Small().With("nitrogen from protein");

        Assert.Equal(0.85 / 6.38, imported.ToTable().Content("SR28 01145", "NT").Per100Grams, 9);
        Assert.Equal(1, imported.Count(ImportDeed.Converted, "nitrogen from protein"));
        Assert.Throws<KeyNotFoundException>(() => Small().With("nitrogen from fat"));
    }

    [Fact]
    public void Rows_WithADocument_HoldWhatItDeclaresAndNothingElse()
    {
        var butter = Small().ToTable().Profile("SR28 01145");
        NutrientProfile declared = new("our butter", butter.Nutrients, [.. butter.Nutrients.All.Select(nutrient => nutrient.Tag == "PROCNT"
            ? new Content(ContentState.Measured, 0.7, Interval.Between(0.65, 0.75), new("B-1, S1", Evidence.Supplier, "specifications.csv row 2, column protein_g")) : butter[nutrient.Tag])]);

        var rows = Small().Rows.With("SHEET 1", "Suppliers’ sheets", declared, "B-1, S1");
        var table = rows.ToTable();

        Assert.Equal((0.7, "B-1, S1, specifications.csv row 2, column protein_g"), (table.Content("our butter", "PROCNT").Per100Grams, table.Content("our butter", "PROCNT").Source!.ToString()));
        Assert.False(table.Content("our butter", "CHOCDF").IsKnown);
        Assert.Equal(["SHEET 1"], rows.Without("SR28 01145").Foods.Select(food => food.Id));
    }

    private Imported Small()
    {
        _folder.Write("FOOD_DES.txt", "~01145~^~0100~^~Butter, without salt~^~BUTTER,WITHOUT SALT~^^^~Y~^^0^^6.38^4.27^8.79^3.87\n");
        _folder.Write("NUT_DATA.txt", "~01145~^~203~^0.85^16^0.074^~1~^^^^^0.7^1.1^^^^^11/1976^\n~01145~^~291~^0.0^0^^~7~^^^^^^^^^^^11/1976^\n~01145~^~205~^0.06^0^^~4~^^^^^^^^^^^11/1976^\n");
        _folder.Write("WEIGHT.txt", "~01145~^3^1^~cup~^227^^\n");
        return _folder.Import("sr28");
    }
}
