using CsCheck;
using Tamis.Composition;
using Tamis.Composition.Import;
using Tamis.Tables;

namespace Tamis.Tests.Composition.Import;

/// <summary>Figures are those of the publisher (Anses. 2020. Ciqual French food composition table; Licence Ouverte), in a few of its columns, but for those that a test says it has spoilt.</summary>
public sealed class CiqualTests : IDisposable
{
    private const string Header = "alim_grp_nom_eng;alim_ssgrp_nom_eng;alim_ssssgrp_nom_eng;alim_code;alim_nom_eng;Energy, Regulation EU No 1169/2011 (kJ/100g);Energy, Regulation EU No 1169/2011 (kcal/100g);"
        + "Protein (g/100g);Protein, crude, N x 6.25 (g/100g);Carbohydrate (g/100g);Fat (g/100g);glucose (g/100g);Fibres (g/100g);Salt (g/100g);Sodium (mg/100g);Retinol (µg/100g);Beta-carotene (µg/100g);Vitamin D (µg/100g)";

    private const string Mascarpone = "milk;cheeses;-;19584;Mascarpone cheese, from cow's milk;-;-;4,38;4,29;4;39;< 0,1;0;0,081;32,2;345;258;< 0,5";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Import_Table_ReadsCommasDashesLimitsAndTraces()
    {
        Table(Mascarpone.Replace("345;258", "traces;-", StringComparison.Ordinal));

        var imported = _folder.Import("ciqual");
        var mascarpone = imported.ToTable().Profile("CIQUAL 19584");

        Assert.Equal(39, mascarpone["FAT"].Per100Grams);
        Assert.Equal((ContentState.BelowLimit, Interval.Between(0, 0.1)), (mascarpone["GLUS"].State, mascarpone["GLUS"].Range));
        Assert.Equal(ContentState.Zero, mascarpone["FIBTG"].State);
        Assert.Equal(ContentState.Trace, mascarpone["RETOL"].State);
        Assert.False(mascarpone["CARTB"].IsKnown || mascarpone["ENERC_KJ"].IsKnown);
        Assert.Equal(3, imported.Count(ImportDeed.Left, "a dash"));
    }

    [Fact]
    public void Import_TableInFrenchAndTheWesternCodePage_KeepsGroupsAndSaysSo()
    {
        var french = Header.Replace("_eng", "_fr", StringComparison.Ordinal).Replace("Fat (g/100g)", "Lipides (g/100 g)", StringComparison.Ordinal);
        var bytes = System.Text.CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes($"{french}\r\n{Mascarpone.Replace("milk;cheeses", "lait;crèmes", StringComparison.Ordinal)}\r\n");
        File.WriteAllBytes(Path.Combine(_folder.Path, "Table Ciqual.csv"), bytes);

        var imported = _folder.Import("ciqual");

        Assert.Equal("crèmes", imported.ToTable().Find("CIQUAL 19584").Group);
        Assert.Equal(39, imported.ToTable().Content("CIQUAL 19584", "FAT").Per100Grams);
        Assert.Contains("Windows-1252", imported.Report.Files[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Import_TableWithSlips_NamesThemAllAtOnce()
    {
        Table(Mascarpone.Replace(";4,38;4,29", ";#DIV/0!;lots", StringComparison.Ordinal), Mascarpone.Replace("19584", "", StringComparison.Ordinal));

        Assert.Equal([(2, "Protein (g/100g)"), (2, "Protein, crude, N x 6.25 (g/100g)"), (3, "alim_code")],
            Assert.Throws<TableException>(() => _folder.Import("ciqual")).Problems.Select(problem => (problem.Row, problem.Column)).Order());
    }

    [Fact]
    public void Import_Protein_KeepsBothWithTheirFactors()
    {
        Table(Mascarpone);

        var table = _folder.Import("ciqual").ToTable();

        Assert.Equal((4.29, 4.38, 6.25), (table.Content("CIQUAL 19584", "PROCNT").Per100Grams, table.Content("CIQUAL 19584", "PROCNT_JONES").Per100Grams, table.Find("CIQUAL 19584").NitrogenFactor));
        Assert.Equal((4.0, false), (table.Content("CIQUAL 19584", "CHOAVLDF").Per100Grams, table.Content("CIQUAL 19584", "CHOCDF").IsKnown));
    }

    [Fact]
    public void Import_SaltWithoutSodium_IsConvertedAndSaysSo()
    {
        Table(Mascarpone.Replace("0,081;32,2", "0,081;-", StringComparison.Ordinal));

        var mascarpone = _folder.Import("ciqual").ToTable().Profile("CIQUAL 19584");

        Assert.Equal((81, 32.4), (mascarpone["NACL"].Per100Grams, mascarpone["NA"].Per100Grams));
        Assert.Contains("sodium from salt", mascarpone["NA"].Source!.Locator, StringComparison.Ordinal);
    }

    [Fact]
    public void Import_VitaminA_IsALowerBoundFromRetinolAndBetaCarotene()
    {
        Table(Mascarpone);

        var activity = _folder.Import("ciqual").ToTable().Content("CIQUAL 19584", "VITA_RAE");

        Assert.Equal((ContentState.Estimated, 345 + 258 / 12.0), (activity.State, activity.Per100Grams));
    }

    [Fact]
    public void Import_RepeatedCode_IsMergedToOneFood()
    {
        // The publisher's wheat bran: one energy stands in a row of its own.
        Table("miscellaneous;ingredients;-;9621;Wheat bran;;279;15,4;15,2;23,6;4,35;0,5;42;0,033;13,3;0;6;0", "miscellaneous;vegetarian;-;9621;Wheat bran;1160;;;;;;;;;;;;");

        var imported = _folder.Import("ciqual");
        var bran = imported.ToTable().Profile("CIQUAL 9621");

        Assert.Equal((1160, 279, 42), (bran["ENERC_KJ"].Per100Grams, bran["ENERC_KCAL"].Per100Grams, bran["FIBTG"].Per100Grams));
        Assert.Equal((1, 1), (imported.Rows.Foods.Count, imported.Count(ImportDeed.Merged, "a code that comes again")));
    }

    [Fact]
    public void Import_BadCell_IsNamed()
    {
        // Spoilt: a point and a comma in one number; a word.
        Table(Mascarpone.Replace(";39;", ";3.9,0;", StringComparison.Ordinal).Replace("32,2", "some", StringComparison.Ordinal));

        var problems = Assert.Throws<TableException>(() => _folder.Import("ciqual")).Problems;

        Assert.Equal(["Fat (g/100g)", "Sodium (mg/100g)"], problems.Select(problem => problem.Column));
    }

    [Fact]
    public void Import_AnyCell_IsReadAsItIsOrNamed() => Gen.String[Gen.Char["0123456789,.-< traces"], 0, 9].Sample(text =>
    {
        Table(Mascarpone.Replace("0,081;32,2", $"-;{text}", StringComparison.Ordinal));
        try
        {
            var sodium = _folder.Import("ciqual").ToTable().Content("CIQUAL 19584", "NA");
            // A figure holds the digits of its cell; what is no figure is none.
            return sodium.State is not ContentState.Measured || text.Any(char.IsAsciiDigit) && sodium.Per100Grams > 0;
        }
        catch (TableException error)
        {
            return error.Problems is [{ Column: "Sodium (mg/100g)", Row: 2 }];
        }
    }, iter: 300, threads: 1);

    [Fact]
    public void Import_UnknownColumn_IsLeftAndSaid()
    {
        _folder.Write("table.csv", $"{Header};Fluoride (mg/100g)\n{Mascarpone};1\n");

        Assert.Equal(1, _folder.Import("ciqual").Count(ImportDeed.Left, "does not know in this unit"));
    }

    [Fact]
    public void Import_XmlParts_GiveBothNamesRangeConfidenceAndSource()
    {
        _folder.Write("alim_2020.xml", "<TABLE><ALIM><alim_code> 16400 </alim_code><alim_nom_fr> Beurre à 82% MG, doux </alim_nom_fr><alim_nom_eng> Butter, 82% fat, unsalted </alim_nom_eng><alim_grp_code> 09 </alim_grp_code><alim_ssgrp_code> 0901 </alim_ssgrp_code><alim_ssssgrp_code> 000000 </alim_ssssgrp_code></ALIM></TABLE>");
        _folder.Write("alim_grp_2020.xml", "<TABLE><ALIM_GRP><alim_grp_code> 09 </alim_grp_code><alim_grp_nom_eng> fats and oils </alim_grp_nom_eng><alim_ssgrp_code> 0901 </alim_ssgrp_code><alim_ssgrp_nom_eng> butters </alim_ssgrp_nom_eng><alim_ssssgrp_code> 000000 </alim_ssssgrp_code><alim_ssssgrp_nom_eng> - </alim_ssssgrp_nom_eng></ALIM_GRP></TABLE>");
        _folder.Write("const_2020.xml", "<TABLE><CONST><const_code> 40000 </const_code><const_nom_fr> Lipides (g/100 g) </const_nom_fr><const_nom_eng> Fat (g/100g) </const_nom_eng></CONST></TABLE>");
        // Minimum, maximum, confidence and source are invented: the file of values was not at hand. One limit stands bare, as some releases have it.
        _folder.Write("compo_2020.xml", "<TABLE><COMPO><alim_code> 16400 </alim_code><const_code> 40000 </const_code><teneur> 82,9 </teneur><min> 82 </min><max> 84 </max><code_confiance> A </code_confiance><source_code> 12 </source_code></COMPO>"
            + "<COMPO><alim_code> 16400 </alim_code><const_code> 32250 </const_code><teneur> < 0,1 </teneur><min missing=\" \" /><max missing=\" \" /><code_confiance missing=\" \" /><source_code missing=\" \" /></COMPO></TABLE>");

        var table = _folder.Import("ciqual").ToTable();

        Assert.Equal(("Butter, 82% fat, unsalted", "Beurre à 82% MG, doux", "butters"), (table.Foods[0].Name, table.Foods[0].PublishedName, table.Foods[0].Group));
        Assert.Equal("CIQUAL 2020, food 16400, confidence A; publisher’s source 12", table.Content("CIQUAL 16400", "FAT").Source!.ToString());
        Assert.Equal(ContentState.BelowLimit, table.Content("CIQUAL 16400", Shelf.Codes.Of("ciqual")["32250"].Tag).State);
    }

    [Fact]
    public void Import_NoValues_SaysWhatIsNeeded() => Assert.Contains("compo", Assert.Throws<TableException>(() => _folder.Import("ciqual")).Message, StringComparison.Ordinal);

    private void Table(params string[] rows) => _folder.Write("Table_Ciqual.csv", $"{Header}\n{string.Join('\n', rows)}\n");
}
