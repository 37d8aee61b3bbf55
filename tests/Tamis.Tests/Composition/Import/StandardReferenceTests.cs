using System.Text;
using Tamis.Composition;
using Tamis.Composition.Import;
using Tamis.Tables;

namespace Tamis.Tests.Composition.Import;

/// <summary>Lines are those of the release (USDA, Standard Reference 28, public domain), but for those that a test says it has spoilt.</summary>
public sealed class StandardReferenceTests : IDisposable
{
    private const string Butter = "~01145~^~0100~^~Butter, without salt~^~BUTTER,WITHOUT SALT~^^^~Y~^^0^^6.38^4.27^8.79^3.87";
    private const string Cocoa = "~19165~^~1900~^~Cocoa, dry powder, unsweetened~^~COCOA,DRY PDR,UNSWTND~^^^~Y~^^0^^5.63^1.83^8.37^1.33";

    private const string ButterAbbreviated = "~01145~^~BUTTER,WITHOUT SALT~^17.94^717^0.85^81.11^0.09^0.06^0.0^0.06^24^0.02^2^24^24^11^0.09^0.016^0.004^1.0^0.0^0.005^0.034^0.042^0.110^0.003^3^0^3^3^18.8^0.17"
        + "^2499^684^671^0^158^0^0^0^2.32^0.0^0^7.0^50.489^23.430^3.010^215^5.0^~1 pat,  (1\" sq, 1/3\" high)~^14.2^~1 tbsp~^0";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Import_ValueFile_KeepsSamplesSpreadAndOrigin()
    {
        Foods();
        _folder.Write("DERIV_CD.txt", "~BFFN~^~Based on another form of the food or similar food;  fat adjusted~\r\n");
        _folder.Write("NUT_DATA.txt", "~19165~^~203~^19.60^8^0.520^~1~^^^^^^^^^^^08/1991^\r\n~01145~^~324~^0^0^^~4~^~BFFN~^~01002~^^^^^^^^^09/2015^\r\n~19165~^~221~^0.0^0^^~7~^^^^^^^^^^^08/1991^\r\n");

        var table = _folder.Import("sr28").ToTable();
        var protein = table.Content("SR28 19165", "PROCNT");

        Assert.Equal((ContentState.Measured, 19.6, 8), (protein.State, protein.Per100Grams, protein.Samples));
        // The spread of the samples is the published standard error times √n.
        Assert.Equal(0.520 * Math.Sqrt(8), protein.StandardDeviation!.Value, 12);
        Assert.Equal("SR28, food 19165, analysed", protein.Source!.ToString());
        Assert.Equal("SR28, food 01145, calculated; BFFN, Based on another form of the food or similar food; fat adjusted; from food 01002", table.Content("SR28 01145", "VITD_IU").Source!.ToString());
        Assert.Equal((ContentState.Zero, "SR28, food 19165, assumed zero by the publisher"), (table.Content("SR28 19165", "ALC").State, table.Content("SR28 19165", "ALC").Source!.ToString()));
    }

    [Fact]
    public void Import_Foods_CarryFactorsGroupAndEdibleShare()
    {
        Foods();
        _folder.Write("ABBREV.txt", ButterAbbreviated + "\n");

        var cocoa = _folder.Import("sr28").ToTable().Find("SR28 19165");

        Assert.Equal((5.63, new EnergyFactors(1.83, 8.37, 1.33), "Sweets", 100.0), (cocoa.NitrogenFactor, cocoa.EnergyFactors, cocoa.Group, cocoa.EdiblePercent));
    }

    [Fact]
    public void Import_AbbreviatedFileAlone_GivesItsNutrientsAndLeavesBlanksUnknown()
    {
        Foods();
        _folder.Write("ABBREV.txt", ButterAbbreviated.Replace("^50.489^", "^^", StringComparison.Ordinal) + "\n");

        var imported = _folder.Import("sr28");
        var butter = imported.ToTable().Profile("SR28 01145");

        Assert.Equal((17.94, 81.11, 11.0, 2.32, 717.0), (butter["WATER"].Per100Grams, butter["FAT"].Per100Grams, butter["NA"].Per100Grams, butter["TOCPHA"].Per100Grams, butter["ENERC_KCAL"].Per100Grams));
        Assert.False(butter["FASAT"].IsKnown);
        Assert.Equal(1, imported.Count(ImportDeed.Left, "blank in ABBREV"));
    }

    [Fact]
    public void Import_BothFiles_ValueFileCountsAndTheDifferenceIsReported()
    {
        Foods();
        _folder.Write("NUT_DATA.txt", "~01145~^~203~^0.85^0^^~1~^^^^^^^^^^^11/1976^\n~01145~^~204~^81.99^0^^~1~^^^^^^^^^^^11/1976^\n");
        _folder.Write("ABBREV.txt", ButterAbbreviated + "\n");

        var imported = _folder.Import("sr28");

        Assert.Equal(81.99, imported.ToTable().Content("SR28 01145", "FAT").Per100Grams);
        Assert.Equal(1, imported.Count(ImportDeed.Merged, "stated twice alike"));
        Assert.Equal("SR28 01145 Total lipid (fat) 81.11 beside 81.99", Assert.Single(Assert.Single(imported.Report.Notes, note => note.Why.Contains("not alike", StringComparison.Ordinal)).Examples));
    }

    [Fact]
    public void Import_InternationalUnits_StayAndAreConvertedByName()
    {
        Foods();
        _folder.Write("NUT_DATA.txt", "~01145~^~324~^60^0^^~1~^^^^^^^^^^^11/1976^\n~01145~^~319~^671^0^^~4~^~T~^^^^^^^^^^02/2009^\n~01145~^~321~^158^2^^~1~^~A~^^^^^^^^^^01/2003^\n"
            + "~01145~^~322~^0^2^^~1~^~A~^^^^^^^^^^01/2003^\n~01145~^~334~^0^2^^~1~^~A~^^^^^^^^^^01/2003^\n");

        var butter = _folder.Import("sr28").ToTable().Profile("SR28 01145");

        Assert.Equal((60, 1.5), (butter["VITD_IU"].Per100Grams, butter["VITD"].Per100Grams));
        // SR28 states 684 ug of activity for this record, from the same 671 ug of retinol and 158 ug of beta-carotene.
        Assert.Equal(684, butter["VITA_RAE"].Per100Grams, 0.5);
        Assert.Contains("vitamin A activity from retinol and carotenes", butter["VITA_RAE"].Source!.Locator, StringComparison.Ordinal);
    }

    [Fact]
    public void Import_Measures_GiveDensitiesForVolumesAlone()
    {
        Foods();
        _folder.Write("ABBREV.txt", ButterAbbreviated + "\n");
        // Some rows of the release end in CR CR LF; quotes stand bare in the text.
        _folder.Write("WEIGHT.txt", "~01145~^1^1^~pat (1\" sq, 1/3\" high)~^5.0^^\r\r\n~01145~^3^1^~cup~^227^^\r\n");

        var measures = _folder.Import("sr28").ToTable().MeasuresOf("SR28 01145").ToArray();

        Assert.Null(measures[0].DensityGramsPerMillilitre);
        Assert.Equal(("pat (1\" sq, 1/3\" high)", 0.9595), (measures[0].Measure, Math.Round(measures[1].DensityGramsPerMillilitre!.Value, 4)));
    }

    [Fact]
    public void Import_BrokenRows_AreNamedAllAtOnce()
    {
        Foods();
        // Spoilt: a value that is no number, a row that was cut, half a sample.
        _folder.Write("NUT_DATA.txt", "~01145~^~203~^0.8S^0^^~1~^^^^^^^^^^^11/1976^\n~01145~^~204~^81.11\n~01145~^~307~^11^2.5^^~1~^^^^^^^^^^^11/1976^\n");

        var problems = Assert.Throws<TableException>(() => _folder.Import("sr28")).Problems;

        Assert.Equal("NUT_DATA.txt, row 1, column 'Nutr_Val': found '0.8S', expected a number of 0 or more, or nothing.", problems[0].ToString());
        Assert.Equal("NUT_DATA.txt, row 2: found '~01145~^~204~^81.11', expected 18 fields parted by ^, not 3.", problems[1].ToString());
        Assert.Equal("NUT_DATA.txt, row 3, column 'Num_Data_Pts': found '2.5', expected a whole number, or nothing.", problems[2].ToString());
    }

    [Fact]
    public void Import_ChangedUnit_IsRefused()
    {
        Foods();
        _folder.Write("ABBREV.txt", ButterAbbreviated + "\n");
        // Spoilt: sodium in grams. The micro sign of the other is ISO-8859-1, as published.
        File.WriteAllText(Path.Combine(_folder.Path, "NUTR_DEF.txt"), "~307~^~g~^~NA~^~Sodium, Na~^~0~^~5800~\r\n~317~^~\u00b5g~^~SE~^~Selenium, Se~^~1~^~6200~\r\n", Encoding.Latin1);

        Assert.Equal("NUTR_DEF.txt, row 1, column 'Units': found 'g', expected mg, the unit of nutrient 307 in import-codes.csv.", Assert.Throws<TableException>(() => _folder.Import("sr28")).Message);
    }

    [Fact]
    public void Import_NoFiles_SaysWhichAreNeeded() => Assert.Contains("FOOD_DES.txt", Assert.Throws<TableException>(() => _folder.Import("sr28")).Message, StringComparison.Ordinal);

    private void Foods()
    {
        _folder.Write("FOOD_DES.txt", $"{Butter}\r\n{Cocoa}");
        _folder.Write("FD_GROUP.txt", "~0100~^~Dairy and Egg Products~\r\n~1900~^~Sweets~\r\n");
    }
}
