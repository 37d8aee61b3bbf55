using System.Text;
using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Tests.Composition;

public class StatedFiguresTests
{
    private static readonly StatedFigures Figures = StatedFigures.Load(ShippedTable.Folder, ShippedTable.Table.Nutrients);

    [Fact]
    public void Load_ShippedColumns_NameOnlyNutrientsOfTheTable() =>
        Assert.All(Figures.Columns, column => Assert.True(ShippedTable.Table.Nutrients.IndexOf(column.Tag) >= 0));

    [Fact]
    public void Over_NoFood_BlankIsUnknownAndZeroIsZero()
    {
        var profile = Over(null, "water_g,fat_g,sugars_g", "30,0,");

        Assert.Equal(30, profile["WATER"].Per100Grams);
        Assert.Equal(ContentState.Zero, profile["FAT"].State);
        Assert.False(profile["SUGAR"].IsKnown);
        Assert.False(profile["VITC"].IsKnown);
    }

    [Fact]
    public void Over_AFood_FilledCellsWinAndBlanksAreTheFoods()
    {
        var food = ShippedTable.Table.Profile("SR28 01145");
        var profile = Over(food, "fat_g,saturates_g", "82.5,");

        Assert.Equal(82.5, profile["FAT"].Per100Grams);
        Assert.Equal(food["FASAT"], profile["FASAT"]);
        Assert.Equal(food.NitrogenFactor, profile.NitrogenFactor);
    }

    [Fact]
    public void Over_BelowLimit_LiesBetweenZeroAndTheLimit()
    {
        var saturates = Over(null, "saturates_g", "<0.1")["FASAT"];

        Assert.Equal(ContentState.BelowLimit, saturates.State);
        Assert.Equal(Interval.Between(0, 0.1), saturates.Range);
    }

    // Regulation (EU) No 1169/2011 Annex I point 11: salt = sodium × 2.5.
    [Fact]
    public void Over_Salt_IsSodium() => Assert.Equal(12, Over(null, "salt_g", "0.03")["NA"].Per100Grams, 9);

    [Fact]
    public void Over_SodiumAndSalt_SodiumCounts() => Assert.Equal(25, Over(null, "salt_g,sodium_mg", "0.1,25")["NA"].Per100Grams);

    // 1 g of salt is 400 mg of sodium, give or take the rounding: 40 mg beside it is a slip of one of the two.
    [Theory]
    [InlineData("1.0,400", null)]
    [InlineData("1.0,381", null)]
    [InlineData("<1,40", null)]
    [InlineData("1.0,40", "about 0.1, since sodium_mg says 40")]
    [InlineData("0,400", "about 1, since sodium_mg says 400")]
    public void Over_SaltThatContradictsSodium_IsNamed(string cells, string? expected)
    {
        List<CellProblem> problems = [];
        Figures.Over(null, "an ingredient", new(Row("salt_g,sodium_mg", cells), problems));

        Assert.Equal(expected is null ? [] : ["salt_g"], problems.Select(problem => problem.Column));
        Assert.All(problems, problem => Assert.StartsWith(expected!, problem.Expected, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("carbohydrate_g,fibre_g", "57,4.6", 57, 61.6)]
    [InlineData("total_carbohydrate_g,fibre_g", "16.5,2.3", 14.2, 16.5)]
    [InlineData("carbohydrate_g,fibre_g", "62,", 62, double.NaN)]
    [InlineData("total_carbohydrate_g,fibre_g", "62,", double.NaN, 62)]
    [InlineData("carbohydrate_g,total_carbohydrate_g", "57,61", 57, 61)]
    public void Over_Carbohydrate_WithAndWithoutFibreFollowFromEachOther(string columns, string cells, double withoutFibre, double withFibre)
    {
        var profile = Over(null, columns, cells);

        Assert.Equal(withoutFibre, profile["CHOAVLDF"].Per100Grams, 9);
        Assert.Equal(withFibre, profile["CHOCDF"].Per100Grams, 9);
    }

    [Fact]
    public void Over_StatedCarbohydrateWithoutFibre_LeavesNoFigureOfTheFoodThatContradictsIt()
    {
        // Blackcurrants: the record has carbohydrate by difference but no fibre.
        var profile = Over(ShippedTable.Table.Profile("SR28 09083"), "carbohydrate_g", "6.6");

        Assert.Equal(6.6, profile["CHOAVLDF"].Per100Grams);
        Assert.False(profile["CHOCDF"].IsKnown);
    }

    [Fact]
    public void Over_StatedFibreOverAFood_ChangesCarbohydrateWithoutFibre()
    {
        var food = ShippedTable.Table.Profile("SR28 20064");

        Assert.Equal(food["CHOCDF"].Per100Grams - 10, Over(food, "fibre_g", "10")["CHOAVLDF"].Per100Grams, 9);
    }

    [Fact]
    public void Over_StatedProtein_HasTheFactorOfALabel()
    {
        var food = ShippedTable.Table.Profile("SR28 01145");

        // Regulation (EU) No 1169/2011 Annex I point 10: protein = total nitrogen × 6.25.
        Assert.Equal(6.25, Over(food, "protein_g", "0.7").NitrogenFactor);
        Assert.Equal(6.38, food.NitrogenFactor);
    }

    [Theory]
    [InlineData("CHIP-07", ContentState.Measured, Evidence.Supplier)]
    [InlineData("own estimate", ContentState.Estimated, Evidence.Estimate)]
    [InlineData("pack label and own estimate", ContentState.Estimated, Evidence.Estimate)]
    public void Over_EveryFigure_KeepsDocumentRowAndColumn(string document, ContentState state, Evidence evidence)
    {
        var fat = Over(null, "document,supplier,date,fat_g", $"{document},S8,2026-02-10,33")["FAT"];

        Assert.Equal(state, fat.State);
        Assert.Equal(new Source($"{document}, S8, 2026-02-10", evidence, "specifications.csv row 2, column fat_g"), fat.Source);
    }

    [Theory]
    [InlineData("33", 32.5, 33.5)]
    [InlineData("2.8", 2.75, 2.85)]
    [InlineData("0.10", 0.095, 0.105)]
    [InlineData("0", 0, 0.5)]
    public void Over_DeclaredFigure_IsAnIntervalFromItsDigits(string cell, double low, double high)
    {
        var fat = Over(null, "document,fat_g", $"CHIP-07,{cell}")["FAT"];

        Assert.Equal((low, high), (Math.Round(fat.Range!.Value.Low, 9), Math.Round(fat.Range.Value.High, 9)));
        Assert.Equal(IntervalBasis.Declaration, ContentInterval.Of(fat)!.Basis);
    }

    // Commission guidance on tolerances for nutrient values (December 2012), table 1, from memory: fat below 10 g ± 1.5 g, to 40 g ± 20 %, above ± 8 g.
    [Theory]
    [InlineData("fat_g", "5.0", "FAT", 3.5, 6.5)]
    [InlineData("fat_g", "33", "FAT", 26.4, 39.6)]
    [InlineData("fat_g", "60", "FAT", 52, 68)]
    [InlineData("salt_g", "1.0", "NA", 250, 550)]
    [InlineData("water_g", "30", "WATER", 29.5, 30.5)]
    public void Over_ChosenTolerance_WidensWhatTheRulesSpeakOf(string column, string cell, string tag, double low, double high)
    {
        var range = Over(null, $"document,tolerance,{column}", $"CHIP-07,eu,{cell}")[tag].Range!.Value;

        Assert.Equal((low, high), (Math.Round(range.Low, 9), Math.Round(range.High, 9)));
    }

    [Fact]
    public void Over_OwnEstimate_PretendsNoInterval() => Assert.Null(Over(null, "document,fat_g", "own estimate,33")["FAT"].Range);

    [Fact]
    public void Over_UnknownTolerance_IsNoted()
    {
        List<CellProblem> problems = [];
        Figures.Over(null, "an ingredient", new(Row("document,tolerance,fat_g", "CHIP-07,eux,33"), problems));

        Assert.Equal("tolerance", Assert.Single(problems).Column);
    }

    [Fact]
    public void Over_AWordWhereAFigureBelongs_IsNotedAndUnknown()
    {
        List<CellProblem> problems = [];
        var profile = Figures.Over(null, "damson puree", new(Row("water_g,fat_g", "much,0.1"), problems));

        Assert.Equal(("specifications.csv", 2, "water_g", "much"), problems.Select(p => (p.File, p.Row, p.Column, p.Found)).Single());
        Assert.False(profile["WATER"].IsKnown);
        Assert.Equal(0.1, profile["FAT"].Per100Grams);
    }

    private static NutrientProfile Over(NutrientProfile? food, string columns, string cells)
    {
        List<CellProblem> problems = [];
        var profile = Figures.Over(food, "an ingredient", new(Row(columns, cells), problems));
        Assert.Empty(problems);
        return profile;
    }

    private static SheetRow Row(string columns, string cells) =>
        SheetFile.Parse("specifications.csv", Encoding.UTF8.GetBytes($"ingredient,{columns}\nan ingredient,{cells}\n")).Rows.Single();
}
