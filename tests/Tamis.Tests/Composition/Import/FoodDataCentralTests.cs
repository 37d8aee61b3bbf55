using Tamis.Composition;
using Tamis.Composition.Import;
using Tamis.Tables;

namespace Tamis.Tests.Composition.Import;

/// <summary>The layout is that of USDA FoodData Central's CSV download (CC0); figures of the butter are those of SR28 01145, its food of origin. The rest is invented for the test.</summary>
public sealed class FoodDataCentralTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public FoodDataCentralTests()
    {
        _folder.Write("food.csv", """
            "fdc_id","data_type","description","food_category_id","publication_date"
            "173430","sr_legacy_food","Butter, without salt","1","2019-04-01"
            "900001","foundation_food","Flour, invented","20","2026-01-01"
            "900002","sub_sample_food","Flour, one bag","20","2026-01-01"

            """);
        _folder.Write("food_category.csv", "\"id\",\"code\",\"description\"\n\"1\",\"0100\",\"Dairy and Egg Products\"\n\"20\",\"2000\",\"Cereal Grains and Pasta\"\n");
        _folder.Write("sr_legacy_food.csv", "\"fdc_id\",\"NDB_number\"\n\"173430\",\"1145\"\n");
        _folder.Write("nutrient.csv", """
            "id","name","unit_name","nutrient_nbr","rank"
            "1003","Protein","G","203","600.0"
            "1008","Energy","KCAL","208","300.0"
            "2048","Energy (Atwater Specific Factors)","KCAL","958","290.0"
            "1079","Fiber, total dietary","G","291","1200.0"
            "2033","Total dietary fiber (AOAC 2011.25)","G","293","1300.0"
            "1110","Vitamin D (D2 + D3), International Units","IU","324","8650.0"
            "1259","SFA 4:0","G","607","9800.0"
            "1400","Nonsense","G","9999","1.0"

            """);
        _folder.Write("food_nutrient_derivation.csv", "\"id\",\"code\",\"description\",\"source_id\"\n\"1\",\"A\",\"Analytical\",\"1\"\n");
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Import_Values_CarrySamplesExtremesAndDerivation()
    {
        Values("\"1\",\"173430\",\"1003\",\"0.85\",\"16\",\"1\",\"0.7\",\"1.1\",\"\",\"\",\"\"");

        var table = _folder.Import("fdc").ToTable();
        var protein = table.Content("FDC 173430", "PROCNT");

        Assert.Equal((0.85, "FDC, food 173430, A, Analytical"), (protein.Per100Grams, protein.Source!.ToString()));
        Assert.Equal(("Dairy and Egg Products", "Number 01145 of the Standard Reference."), (table.Find("FDC 173430").Group, table.Find("FDC 173430").Notes));
    }

    [Fact]
    public void Import_ALowestSampleAboveTheHighest_IsLeftAndTheTableStillReads()
    {
        Values("\"1\",\"900001\",\"1003\",\"1.5\",\"3\",\"1\",\"2\",\"1\",\"\",\"\",\"\"");

        var imported = _folder.Import("fdc");

        Assert.Equal(1.5, imported.ToTable().Content("FDC 900001", "PROCNT").Per100Grams);
        Assert.Equal(1, imported.Count(ImportDeed.Left, "the lowest is above the highest"));
    }

    [Fact]
    public void Import_AFoodWithoutItsNumber_IsNamedAndOneThatComesAgainIsSaid()
    {
        Values("\"1\",\"900001\",\"1003\",\"1.5\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"");
        var foods = File.ReadAllText(Path.Combine(_folder.Path, "food.csv")).TrimEnd() + "\n\"900001\",\"foundation_food\",\"Flour, once more\",\"20\",\"\"\n";
        _folder.Write("food.csv", foods);

        Assert.Contains("merged 1 food: a number that comes again: the first description counts (900001 Flour, once more)", _folder.Import("fdc").Report.Sentences());

        _folder.Write("food.csv", foods + "\"\",\"foundation_food\",\"Flour, nameless\",\"20\",\"\"\n");
        Assert.Equal((6, "fdc_id"), Assert.Throws<TableException>(() => _folder.Import("fdc")).Problems is [var only] ? (only.Row, only.Column) : default);
    }

    [Fact]
    public void Import_HalfASample_IsNamedAndNotCutOff()
    {
        Values("\"1\",\"900001\",\"1003\",\"1.5\",\"2.5\",\"1\",\"\",\"\",\"\",\"\",\"\"");

        Assert.Equal("data_points", Assert.Single(Assert.Throws<TableException>(() => _folder.Import("fdc")).Problems).Column);
    }

    [Fact]
    public void Import_FibreByTwoMethods_StaysTwoNutrients()
    {
        Values("\"1\",\"900001\",\"1079\",\"2.4\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"", "\"2\",\"900001\",\"2033\",\"3.1\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"");

        var flour = _folder.Import("fdc").ToTable().Profile("FDC 900001");

        Assert.Equal((2.4, 3.1), (flour["FIBTG"].Per100Grams, flour["FIBT_2011"].Per100Grams));
    }

    [Fact]
    public void Import_EnergyBySpecificFactorsAlone_IsTakenByName()
    {
        Values("\"1\",\"900001\",\"2048\",\"364\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"");

        var energy = _folder.Import("fdc").ToTable().Content("FDC 900001", "ENERC_KCAL");

        Assert.Equal(364, energy.Per100Grams);
        Assert.Contains("energy as the specific factors give it", energy.Source!.Locator, StringComparison.Ordinal);
    }

    [Fact]
    public void Import_ZeroWithALimit_IsBelowIt()
    {
        _folder.Write("food_nutrient.csv", "id,fdc_id,nutrient_id,amount,data_points,derivation_id,min,max,median,loq,footnote,min_year_acquired,percent_daily_value\n1,900001,1079,0,3,1,,,,0.5,,2020,\n");

        Assert.Equal((ContentState.BelowLimit, Interval.Between(0, 0.5)), _folder.Import("fdc").ToTable().Content("FDC 900001", "FIBTG") is var fibre ? (fibre.State, fibre.Range!.Value) : default);
    }

    [Fact]
    public void Import_NutrientKnownByItsOlderNumberAlone_IsTaken()
    {
        Values("\"1\",\"173430\",\"1259\",\"3.226\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"");

        Assert.Equal(3.226, _folder.Import("fdc").ToTable().Content("FDC 173430", "F4D0").Per100Grams);
    }

    [Fact]
    public void Import_WhatIsNoRecord_IsLeftAndCounted()
    {
        Values("\"1\",\"900002\",\"1003\",\"10\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"", "\"2\",\"900001\",\"1400\",\"1\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"",
            "\"3\",\"900001\",\"1003\",\"\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"", "\"4\",\"900001\",\"1079\",\"-0.2\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"");

        var imported = _folder.Import("fdc");

        Assert.Equal((1, 1, 1, 1), (imported.Count(ImportDeed.Left, "sub_sample_food"), imported.Count(ImportDeed.Left, "of a food that was left"),
            imported.Count(ImportDeed.Left, "blank in the file"), imported.Count(ImportDeed.Left, "below zero")));
        Assert.Equal(1, imported.Report.Count(ImportDeed.Left, "nutrients"));
    }

    [Fact]
    public void Import_PortionsFactorsAndRefuse_AreTakenInEveryForm()
    {
        Values("\"1\",\"173430\",\"1003\",\"0.85\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"");
        _folder.Write("measure_unit.csv", "\"id\",\"name\"\n\"1001\",\"tablespoon\"\n\"9999\",\"undetermined\"\n");
        _folder.Write("food_portion.csv", """
            "id","fdc_id","seq_num","amount","measure_unit_id","portion_description","modifier","gram_weight","data_points","footnote","min_year_acquired"
            "1","173430","1","1","9999","","cup","227","","",""
            "2","900001","1","2","1001","","sifted","16","4","",""
            "3","900001","2","","9999","1 cup","10205","120","","",""
            "4","900001","3","1","9999","","","30","","",""

            """);
        _folder.Write("food_nutrient_conversion_factor.csv", "id,fdc_id\n11,173430\n12,173430\n");
        _folder.Write("food_protein_conversion_factor.csv", "food_nutrient_conversion_factor_id,value\n11,6.38\n");
        _folder.Write("food_calorie_conversion_factor.csv", "food_nutrient_conversion_factor_id,protein_value,fat_value,carbohydrate_value\n12,4.27,8.79,3.87\n");
        _folder.Write("food_component.csv", "id,fdc_id,name,pct_weight,is_refuse,gram_weight,data_points,min_year_acquired\n1,900001,Bran,20,Y,,,\n");

        var imported = _folder.Import("fdc");
        var table = imported.ToTable();

        Assert.Equal((6.38, new EnergyFactors(4.27, 8.79, 3.87)), (table.Find("FDC 173430").NitrogenFactor, table.Find("FDC 173430").EnergyFactors));
        Assert.Equal(80, table.Find("FDC 900001").EdiblePercent);
        Assert.Equal(["cup", "tablespoon, sifted", "1 cup"], table.Measures.Select(measure => measure.Measure));
        Assert.Equal([0.9595, 0.541, 0.5072], table.Measures.Select(measure => Math.Round(measure.DensityGramsPerMillilitre!.Value, 4)));
        Assert.Equal(1, imported.Count(ImportDeed.Left, "without a mass or a word"));
    }

    [Fact]
    public void Import_MissingColumnAndChangedUnit_AreNamed()
    {
        Values();
        _folder.Write("food.csv", "fdc_id,description\n1,x\n");
        _folder.Write("nutrient.csv", "id,name,unit_name,nutrient_nbr\n1003,Protein,MG,203\n");

        Assert.Equal(["food.csv, column 'data_type': the layout needs a column of this name.", "nutrient.csv, row 2, column 'unit_name': found 'MG', expected g, the unit of nutrient 1003 in import-codes.csv."],
            Assert.Throws<TableException>(() => _folder.Import("fdc")).Problems.Select(problem => problem.ToString()));
    }

    private void Values(params string[] rows) => _folder.Write("food_nutrient.csv",
        "\"id\",\"fdc_id\",\"nutrient_id\",\"amount\",\"data_points\",\"derivation_id\",\"min\",\"max\",\"median\",\"footnote\",\"min_year_acquired\"\n" + string.Concat(rows.Select(row => row + "\n")));
}
